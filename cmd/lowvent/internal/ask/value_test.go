package ask

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/schema/layout"
	"lowvent.example/schema/source"
)

func stateOf(t *testing.T, text string) *state {
	t.Helper()
	st, err := begin("van", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return st
}

func TestReading(t *testing.T) {
	st := stateOf(t, `{ "format": "lowvent-layout/1", "spaces": { "cabin": {}, "cab": {} }, "lockers": { "gas": {}, "cab": {} } }`)
	word := layout.Key{Form: layout.FormWord, Words: []string{"none", "mesh"}}
	words := layout.Key{Form: layout.FormWords, Words: []string{"propane", "butane"}}
	ref := layout.Key{Form: layout.FormRef, Refs: []string{"open-air", "spaces", "lockers"}}
	for _, tt := range []struct {
		key    layout.Key
		answer string
		want   any
	}{
		{word, "MESH", "mesh"}, {word, "2", "mesh"}, {word, "3", "3"}, {word, "0", "0"}, {word, "net", "net"},
		{words, "1, butane", list{"propane", "butane"}}, {words, "none", list{}},
		{ref, "open-air", "open-air"}, {ref, "gas", "lockers/gas"}, {ref, "cab", "cab"}, {ref, "lockers/cab", "lockers/cab"}, {ref, "2", "spaces/cabin"}, {ref, "attic", "attic"},
		{layout.Key{Form: layout.FormRefs, Refs: []string{"spaces"}}, "cabin, 2", list{"spaces/cabin", "spaces/cab"}},
		{layout.Key{Form: layout.FormYesNo}, "Yes", true}, {layout.Key{Form: layout.FormYesNo}, "false", false},
		{layout.Key{Form: layout.FormCount}, "12", 12},
		{layout.Key{Form: layout.FormPoint}, `["1 m", "2 ft 1 in", "-3 in"]`, list{"1 m", "2 ft 1 in", "-3 in"}},
		{layout.Key{Form: layout.FormText}, "as it is, all of it", "as it is, all of it"},
		{layout.Key{Form: layout.FormQuantity}, "24 in ± 1/2 in", "24 in ± 1/2 in"},
	} {
		got, err := st.read(Asked{Key: tt.key}, tt.answer)
		if diff := cmp.Diff(tt.want, got); err != nil || diff != "" {
			t.Errorf("%s %q: %v %s", tt.key.Form, tt.answer, err, diff)
		}
	}
	for form, answer := range map[layout.Form]string{layout.FormYesNo: "perhaps", layout.FormCount: "-1", layout.FormPoint: "1 m", layout.FormPoints: "1 m, 1 m, 1 m; 2 m"} {
		if got, err := st.read(Asked{Key: layout.Key{Form: form}}, answer); err == nil {
			t.Errorf("%s: %q was taken as %v", form, answer, got)
		}
	}
}

func TestTree(t *testing.T) {
	o := &object{}
	o.set("/a/b~1c/d", "x")
	o.set("/a/e", true)
	if got := o.at("/a/b~1c/d"); got != "x" {
		t.Errorf("%v", got)
	}
	if o.at("/a/e/f") != nil || o.at("/z") != nil || o.object("/a/e") != nil || len(o.object("/z").keys()) != 0 {
		t.Error("found what is not there")
	}
	twin := o.clone()
	o.cut("/a/b~1c/d")
	o.cut("/nothing/here")
	if twin.at("/a/b~1c/d") != "x" || o.at("/a/b~1c/d") != nil || o.object("/a/b~1c") == nil {
		t.Error("a copy shares what is cut, or too much is cut")
	}
	if within, key := parent("/a/b~1c"); within != "/a" || key != "b/c" {
		t.Errorf("%s and %s", within, key)
	}
}

// TestABoxWaitsForBothCorners holds that half a box is never written, and that one
// corner left out takes the other along.
func TestABoxWaitsForBothCorners(t *testing.T) {
	st := stateOf(t, `{ "format": "lowvent-layout/1", "spaces": { "cabin": {} } }`)
	from, to := list{"0 m", "0 m", "0 m"}, list{"1 m", "1 m", "1 m"}
	st.set("/spaces/cabin/box/from", from)
	if st.root.at("/spaces/cabin/box") != nil || st.check() != nil {
		t.Error("half a box was written")
	}
	whole := st.clone()
	whole.set("/spaces/cabin/box/to", to)
	if diff := cmp.Diff(to, whole.root.at("/spaces/cabin/box/to")); diff != "" || whole.check() != nil {
		t.Error(diff)
	}
	st.leave("/spaces/cabin/box/to")
	if len(st.held) != 0 || st.root.at("/spaces/cabin/box") != nil {
		t.Error("a corner without the other is still held")
	}
	whole.leave("/spaces/cabin/box/from")
	if whole.root.at("/spaces/cabin/box") != nil {
		t.Error("half a box was left")
	}
}

func TestSheddingTakesWhatHungOnIt(t *testing.T) {
	st := stateOf(t, `{ "format": "lowvent-layout/1", "cylinders": { "a": {} }, "regulators": { "r": {} }, "appliances": { "hob": { "in": "spaces/gone" } },
		"lines": { "one": { "from": "cylinders/a", "to": "regulators/r" }, "two": { "from": "regulators/r", "to": "appliances/hob" } } }`)
	st.root.cut("/appliances/hob")
	gone := st.shed()
	if err := st.check(); err != nil || len(st.root.object("/lines").keys()) != 0 || len(gone) == 0 {
		t.Errorf("%v; gone: %v", err, gone)
	}
	if st.shed() != nil {
		t.Error("something sound was taken out")
	}
}

func TestWhatIsNoJSONBeginsNothing(t *testing.T) {
	if _, err := begin("van", []byte("{")); err == nil {
		t.Error("half a file was taken")
	}
	if _, _, err := Run(nil, nil, Options{First: []byte("[")}); err == nil {
		t.Error("a list was taken for a layout")
	}
	if root, fault := source.Parse(source.NewFile("x", []byte(`{"n": 2.0, "l": [["a"]], "b": false}`)), source.DefaultLimits()); fault != nil || flat(treeOf(root), "/x") != `{ "n": 2, "l": [["a"]], "b": false }` {
		t.Error("a tree is not what was parsed")
	}
}

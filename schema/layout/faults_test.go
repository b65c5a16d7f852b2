package layout

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// pointersOf gives the pointers of what a text is faulted for.
func pointersOf(text string) []string {
	_, faults := loadText(text)
	var at []string
	for _, f := range faults {
		at = append(at, f.Place.Pointer)
	}
	return at
}

// TestFaultsThatFollow holds that a part that could not be read is told once,
// and not again by everything that refers to it.
func TestFaultsThatFollow(t *testing.T) {
	for _, c := range []struct {
		name, text string
		want       []string
	}{
		{"a list that is none", `"lockers": 3, "cylinders": { "A": { "in": "lockers/side" } }`, []string{"/lockers"}},
		{"a list under a wrong name", `"lokers": {}, "cylinders": { "A": { "in": "lockers/side" } }`, []string{"/lokers"}},
		{"a part under a wrong name", `"lockers": { "side": { "vens": {} } }, "openings": { "a": {} },
			"tapeMeasures": { "t": { "from": "lockers/side/vents/low", "to": "openings/a", "is": "1 m" } }`, []string{"/lockers/side/vens"}},
		{"a bad id", `"lockers": { "a b": {} }, "cylinders": { "A": { "in": "lockers/a b" } }`, []string{"/lockers/a b"}},
		{"a thing that is none", `"lockers": { "side": 3 }, "openings": { "a": {} },
			"tapeMeasures": { "t": { "from": "lockers/side/vents/low", "to": "openings/a", "is": "1 m" } }`, []string{"/lockers/side"}},
		{"spaces that are none", `"spaces": [], "lockers": { "side": { "sealedFrom": { "cabin": {} } } }`, []string{"/spaces"}},
		{"a survey of a list that is none", `"fans": [], "outside": { "surveyed": { "complete": ["fans"] } }`, []string{"/fans"}},
		{"a line whose end is wrong", `"junctions": { "tee": {} }, "cylinders": { "A": {} }, "appliances": { "hob": {} },
			"lines": { "one": { "from": "cylinders/A", "to": "junctions/tee" }, "two": { "from": "junctions/te", "to": "appliances/hob" } }`, []string{"/lines/two/from"}},
		{"a line without an end", `"junctions": { "tee": {} }, "cylinders": { "A": {} },
			"lines": { "one": { "from": "cylinders/A", "to": "junctions/tee" }, "two": { "from": "junctions/tee" } }`, []string{"/lines/two"}},
		{"lines that are none", `"junctions": { "tee": {} }, "cylinders": { "A": {} }, "lines": { "one": { "from": "cylinders/A", "to": "junctions/tee" }, "t o": {} }`, []string{"/lines/t o"}},
		{"another form", `"lockers": []`, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			format := Format
			if c.want == nil {
				format, c.want = "lowvent-layout/9", []string{"/format"}
			}
			got := pointersOf(fmt.Sprintf(`{ "format": %q, %s }`, format, c.text))
			if diff := cmp.Diff(c.want, got); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// TestOneFaultAPlace holds that of several faults at one place the first found,
// which is the one that the others follow from, is told.
func TestOneFaultAPlace(t *testing.T) {
	_, faults := loadText(`{ "format": "lowvent-layout/1", "cylinders": { "A": { "evidence": { "tare": {} } } } }`)
	if len(faults) != 1 || !strings.Contains(faults[0].What, `lacks "basis"`) {
		t.Errorf("%v", faults)
	}
}

// TestManyFaults holds that a file full of faults is told of in bounded words,
// and that what is not told is counted.
func TestManyFaults(t *testing.T) {
	var b strings.Builder
	b.WriteString(`{ "format": "lowvent-layout/1", "cylinders": {`)
	const n = 3000
	for i := range n {
		fmt.Fprintf(&b, `"c%d": { "in": "lockers/l%d" },`, i, i)
	}
	b.WriteString(`"last": {} }, "lockers": { "side": {} } }`)
	l, faults := loadText(b.String())
	if l != nil || len(faults) != mostFaults+1 {
		t.Fatalf("%d faults", len(faults))
	}
	if last := faults[mostFaults]; last.What != fmt.Sprintf("%d more faults from here on", n-mostFaults) || last.Place.Pointer != fmt.Sprintf("/cylinders/c%d/in", mostFaults) {
		t.Errorf("%v", last)
	}
}

// TestManyThings holds that a small file can't ask for much memory.
func TestManyThings(t *testing.T) {
	var b strings.Builder
	b.WriteString(`{ "format": "lowvent-layout/1", "cylinders": { "A": { "in": "lockers/none" }`)
	for i := range mostThings {
		fmt.Fprintf(&b, `,"%d":{}`, i)
	}
	b.WriteString(`}, "lockers": { "a": {} } }`)
	if got := pointersOf(b.String()); len(got) != 1 || got[0] != fmt.Sprintf("/cylinders/%d", mostThings-2) {
		t.Errorf("%v", got)
	}
}

// TestLongTextsAreCut holds that no text of a file floods a message.
func TestLongTextsAreCut(t *testing.T) {
	long := strings.Repeat("ä", 5000)
	for _, text := range []string{`"dwelling": { "kind": %q }`, `%q: {}`, `"cylinders": { %q: {} }`, `"cylinders": { "A": { "in": %q } }`, `"climate": { "coldest": %q }`, `"appliances": { "h": { "use": { "s": { "at": %q } } } }`} {
		_, faults := loadText(fmt.Sprintf(`{ "format": "lowvent-layout/1", `+text+` }`, long))
		if len(faults) != 1 || len([]rune(faults[0].Error())) > 1000 {
			t.Errorf("%s: %d faults, %d letters", text, len(faults), len([]rune(faults.Error())))
		}
	}
}

// TestKeyThatBelongsElsewhere holds that the nearest home of a key comes first.
func TestKeyThatBelongsElsewhere(t *testing.T) {
	for _, c := range []struct{ key, at, mend string }{
		{"capacity", "/cylinders/*", `it belongs in an entry of "regulators"`},
		{"basis", "/appliances/*", `it belongs in "plate" in an entry of "appliances"`},
		{"open", "/lockers/*/vents/*", `it belongs in "cover" in an entry of "vents" in an entry of "lockers" or "cover" in an entry of "fixedVents"`},
		{"lockers", "/spaces/*", "it belongs in the top level of the file"},
		{"colour", "/spaces/*", `take it out, or write what it says into the "note"`},
		{"note", "/spaces/*/box", `take it out, or write what it says into the "note"`},
	} {
		if _, mend := unknownKey(c.key, []string{"zzzzzzzz"}, c.at); mend != c.mend {
			t.Errorf("%s at %s: %s", c.key, c.at, mend)
		}
	}
	_, mend := unknownKey("kind", []string{"x"}, "/dwelling")
	if !strings.HasSuffix(mend, "other places") || strings.Count(mend, " or ") != 3 {
		t.Error(mend)
	}
	if _, mend := unknownKey("sil", []string{"sill"}, "/x"); mend != `did you mean "sill"?` {
		t.Error(mend)
	}
	if _, mend := unknownKey("bore", []string{"bores"}, "/x"); mend != `did you mean "bores"? Or should it stand in an entry of "vents" in an entry of "lockers"?` {
		t.Error(mend)
	}
}

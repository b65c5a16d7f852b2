package ask

import (
	"slices"
	"strings"
	"testing"

	"lowvent.example/schema/layout"
)

func walkOf(t *testing.T, text string) Walk {
	t.Helper()
	w, err := NewWalk(Options{Scene: "van", First: []byte(text), Needs: NeedsOf(allChecks())})
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// TestTheKeyAtAPointer: of the contract, by a pointer with the names of things in it; not
// where the contract has none.
func TestTheKeyAtAPointer(t *testing.T) {
	for pointer, want := range map[string]layout.Form{
		"/title": layout.FormText, "/lockers/gas/vents/low/gross": layout.FormQuantity, "/lockers/gas/vents": layout.FormThings, "/cylinders": layout.FormThings,
		"/alarms/co/at": layout.FormPoint, "/spaces/cabin/surveyed/complete": layout.FormWords, "/surveyedBy/complete": layout.FormWords, "/lockers/gas/door/opensTo": layout.FormRef,
	} {
		k, known := AskedAt(pointer)
		if !known || k.Form != want || k.Template != layout.Template(pointer) || HowTo(k) == "" {
			t.Errorf("%s: %v, of the form %q at %s", pointer, known, k.Form, k.Template)
		}
	}
	for _, pointer := range []string{"", "/nothing", "/lockers/gas/nothing", "/title/more", "/lockers/gas/vents/low/gross/more", "/cylinders/a"} {
		if k, known := AskedAt(pointer); known {
			t.Errorf("%s: found as %+v", pointer, k)
		}
	}
}

// TestWhatCanBeCompleteWhere: each list whose things can be in such a place, and no other.
func TestWhatCanBeCompleteWhere(t *testing.T) {
	w := walkOf(t, `{ "format": "lowvent-layout/1" }`)
	for at, want := range map[string]string{
		"/spaces/cabin": "ignitionSources openings combustibles contents fans fixedVents",
		"/lockers/gas":  "ignitionSources openings penetrations combustibles contents fans",
		"/outside":      "ignitionSources openings contents",
		"/surveyedBy":   strings.Join(layout.InventoryList("").Choices(), " "),
	} {
		words, meanings := w.Surveys(at)
		if got := strings.Join(words, " "); got != want {
			t.Errorf("%s: %s, want %s", at, got, want)
		}
		if len(meanings) != len(words) || slices.Contains(meanings, "") {
			t.Errorf("%s: the meanings are %q", at, meanings)
		}
	}
}

// TestWhatIsNotCompleteYet: the lists that a place could have complete, without those that
// it states to be.
func TestWhatIsNotCompleteYet(t *testing.T) {
	w := walkOf(t, `{ "format": "lowvent-layout/1", "openings": {}, "cylinders": {}, "spaces": { "cabin": { "surveyed": { "complete": ["openings"] } }, "cab": { "surveyed": { "on": "2026-05-01" } } }, "surveyedBy": { "complete": ["cylinders"] } }`)
	for at, gone := range map[string]string{"/spaces/cabin": "openings", "/spaces/cab": "", "/spaces/attic": "", "/outside": "", "/surveyedBy": "cylinders"} {
		all, meanings := w.Surveys(at)
		left, told := w.Incomplete(at)
		for i, word := range all {
			k := slices.Index(left, word)
			if (k < 0) != (word == gone) {
				t.Errorf("%s: %s is told to be incomplete: %v", at, word, k >= 0)
			}
			if k >= 0 && told[k] != meanings[i] {
				t.Errorf("%s: %s means %q, and then %q", at, word, meanings[i], told[k])
			}
		}
		if !slices.IsSortedFunc(left, func(a, b string) int { return slices.Index(all, a) - slices.Index(all, b) }) {
			t.Errorf("%s: in another order: %v", at, left)
		}
	}
}

// TestRowsAreTheKeysThatComeFirst, as far as they fit what the thing is; its lists stand
// apart.
func TestRowsAreTheKeysThatComeFirst(t *testing.T) {
	w := walkOf(t, `{ "format": "lowvent-layout/1", "dwelling": { "kind": "boat" }, "appliances": { "hob": { "kind": "cooktop" }, "fridge": { "kind": "refrigerator" } }, "cylinders": { "a": {}, "b": {} },
		"lockers": { "gas": { "vents": { "low": { "level": "low" }, "high": { "level": "high" } } } } }`)
	has := func(at, key string) bool {
		return slices.ContainsFunc(append(w.Rows(at), w.Lists(at)...), func(k Asked) bool { return k.Template == layout.Template(at)+"/"+key })
	}
	for _, c := range []struct {
		at, key string
		want    bool
	}{
		{"/appliances/hob", "flameGuard", true}, {"/appliances/hob", "plate/serial", false}, {"/appliances/hob", "burners", true}, {"/appliances/fridge", "burners", false},
		{"/appliances/fridge", "rearSealedFromRoom", true}, {"/appliances/hob", "rearSealedFromRoom", false}, {"/dwelling", "frontAxle", false}, {"/dwelling", "kind", true},
		{"/lockers/gas/vents/low", "lowerEdgeOverLowest", true}, {"/lockers/gas/vents/high", "lowerEdgeOverLowest", false}, {"/lockers/gas", "vents", true}, {"/lockers/gas", "box/from", true},
	} {
		if has(c.at, c.key) != c.want {
			t.Errorf("%s: %s is a row: %v", c.at, c.key, !c.want)
		}
	}
	for _, at := range []string{"/appliances/hob", "/lockers/gas"} {
		for _, k := range w.Rows(at) {
			if k.Form == layout.FormThings || !k.First {
				t.Errorf("%s: the row %s is a list, or does not come first", at, k.Template)
			}
		}
		for _, k := range w.Lists(at) {
			if k.Form != layout.FormThings {
				t.Errorf("%s: %s is no list", at, k.Template)
			}
		}
	}
	if got := strings.Join(w.Names("/cylinders"), " "); got != "a b" {
		t.Errorf("the cylinders are %s", got)
	}
	if got := w.Names("/fans"); len(got) != 0 {
		t.Errorf("fans that are not there: %v", got)
	}
	if _, err := NewWalk(Options{First: []byte("[")}); err == nil {
		t.Error("a list was taken for a layout")
	}
}

// TestHowAnAnswerIsWrittenInFewWords: each form has its own, and a quantity names its units.
func TestHowAnAnswerIsWrittenInFewWords(t *testing.T) {
	seen := map[string]layout.Form{}
	everyAsked(NeedsOf(allChecks()), func(k Asked) {
		text := Unit(k)
		switch k.Form {
		case layout.FormQuantity:
			if !strings.Contains(text, k.Kind.Accepted()) {
				t.Errorf("%s: %q", k.Template, text)
			}
		case layout.FormWord, layout.FormWords:
			for _, word := range k.Words {
				if !strings.Contains(text, word) {
					t.Errorf("%s: %q lacks %s", k.Template, text, word)
				}
			}
		case layout.FormRef, layout.FormRefs:
			if !strings.Contains(text, k.Refs[0]) {
				t.Errorf("%s: %q", k.Template, text)
			}
		default:
			if other, is := seen[text]; is && other != k.Form {
				t.Errorf("%s: %q is said of %s and of %s", k.Template, text, k.Form, other)
			}
			seen[text] = k.Form
		}
	})
	if len(seen) < 6 {
		t.Errorf("only %d ways to write an answer: %v", len(seen), seen)
	}
}

package code

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"lowvent.example/schema/unit"
)

func TestTerms(t *testing.T) {
	form := regexp.MustCompile(`^[a-z]+(-[a-z]+)*\.[a-z]+(-[a-z]+)*$`)
	all := Terms()
	if !slices.IsSortedFunc(all, func(a, b *Term) int { return strings.Compare(a.ID, b.ID) }) {
		t.Error("terms are not sorted by id")
	}
	seen := map[string]bool{}
	for _, term := range all {
		switch {
		case seen[term.ID]:
			t.Errorf("two terms %s", term.ID)
		case !form.MatchString(term.ID):
			t.Errorf("%q is no id of a term", term.ID)
		case !strings.HasSuffix(term.Asks, "?"):
			t.Errorf("%s asks no question: %q", term.ID, term.Asks)
		case term.numeric() != (term.Kind != 0):
			t.Errorf("%s is %s of kind %s", term.ID, term.Sense, term.Kind)
		case (term.Sense == Allowed) != (len(term.Words) > 0):
			t.Errorf("%s is %s and has the words %v", term.ID, term.Sense, term.Words)
		case term.Book.String() == "" || term.Sense.String() == "":
			t.Errorf("%s has no book or no sense", term.ID)
		case termByID(term.ID) != term:
			t.Errorf("%s is not found by its id", term.ID)
		}
		seen[term.ID] = true
		for _, f := range term.Facts {
			if f.info().name == "" || strings.HasPrefix(string(f), "dwelling.") {
				t.Errorf("%s lists the fact %s", term.ID, f)
			}
		}
	}
}

// TestBookOfTerm holds that the prefix of an id tells custom and own rules from
// what a code says, since a reader sees only the id.
func TestBookOfTerm(t *testing.T) {
	for _, term := range Terms() {
		prefix, _, _ := strings.Cut(term.ID, ".")
		if (prefix == "practice") != (term.Book == BookPractice) || (prefix == "own") != (term.Book == BookOwn) {
			t.Errorf("%s is of the book %s", term.ID, term.Book)
		}
	}
}

// TestTermsCannotBeLost holds that the list handed out is the caller's own.
func TestTermsCannotBeLost(t *testing.T) {
	Terms()[0] = nil
	if Terms()[0] == nil {
		t.Error("a caller emptied the list of terms")
	}
}

func TestSymbols(t *testing.T) {
	cases := map[*Term]string{
		LockerLowVentArea.Term: "A_need", LockerHighVentEdge.Term: "L_most", RegulatorOutletCeiling.Term: "p_most",
		CylinderFill.Term: "m_most", ClearanceAbove.Term: "L_need",
	}
	for term, want := range cases {
		if got := term.symbol(); got != want {
			t.Errorf("%s: %s, want %s", term.ID, got, want)
		}
	}
	for _, k := range unit.Kinds() {
		if letter(k) == "" {
			t.Errorf("%s has no symbol", k)
		}
	}
}

func TestWordsOfEnums(t *testing.T) {
	got := []string{BookProfile.String(), BookComponent.String(), BookPractice.String(), BookOwn.String(), Book(0).String(), (BookOwn + 1).String(),
		Least.String(), Most.String(), Allowed.String(), Duty.String(), Sense(0).String(), (Duty + 1).String(),
		Silent.String(), Remembered.String(), NotAsked.String(), Open.String(), Answered.String(), (Answered + 1).String()}
	want := []string{"profile", "component", "practice", "own", "", "", "least", "most", "allowed", "duty", "", "",
		"silent", "remembered", "not asked", "open", "answered", ""}
	if !slices.Equal(got, want) {
		t.Errorf("%q", got)
	}
}

func TestFactsAreComplete(t *testing.T) {
	every := EveryFact()
	if !slices.IsSorted(every) || len(slices.Compact(slices.Clone(every))) != len(every) {
		t.Errorf("facts are not sorted or not distinct: %v", every)
	}
	symbols := map[string]Fact{}
	for _, f := range every {
		info := f.info()
		switch {
		case f.Phrase() == "":
			t.Errorf("%s has no phrase", f)
		case info.form == numberFact && (f.Kind() == 0 || info.symbol == "" || f.Words() != nil || f.IsDate()):
			t.Errorf("%s is no proper number", f)
		case info.form == wordFact && (f.Kind() != 0 || len(f.Words()) == 0 || f.IsDate()):
			t.Errorf("%s is no proper word", f)
		case info.form == dateFact && (f.Kind() != 0 || f.Words() != nil || !f.IsDate()):
			t.Errorf("%s is no proper date", f)
		case info.form == 0:
			t.Errorf("%s has no form", f)
		}
		if other := symbols[info.symbol]; info.symbol != "" && other != "" {
			t.Errorf("%s and %s have the symbol %s", f, other, info.symbol)
		}
		symbols[info.symbol] = f
	}
	if f := Fact("nothing.here"); f.Kind() != 0 || f.Phrase() != "" || f.Words() != nil || f.IsDate() {
		t.Error("a name that is no fact has properties")
	}
	FactSpaceUse.Words()[0] = "spoilt"
	if FactSpaceUse.Words()[0] == "spoilt" {
		t.Error("a caller changed the words of a fact")
	}
}

package code

import (
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"lowvent.example/schema/unit"
)

func use(t *testing.T, id string) Codes {
	t.Helper()
	c, err := Use(id)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func TestUse(t *testing.T) {
	none := use(t, "")
	if none.Profile != nil || none.Component == nil || none.Practice == nil || none.Own == nil {
		t.Errorf("no code chosen: %+v", none)
	}
	us := use(t, "us-mobile-structure")
	if us.Profile == nil || us.Profile.ID != "us-mobile-structure" || us.Component != none.Component {
		t.Errorf("one code chosen: %+v", us)
	}
	const all = "The profiles are: anz-caravan-boat, eu-inland-vessel, eu-leisure-vehicle, fr-dwelling, fr-small-craft, uk-inland-boat, " +
		"us-commercial-vehicle, us-fixed-cabin, us-inspected-vessel, us-mobile-structure"
	cases := []struct{ id, want string }{
		{"us-mobile-structures", `there is no code profile "us-mobile-structures". "us-mobile-structure" may be meant. ` + all},
		{"US-MOBILE-STRUCTURE", `there is no code profile "US-MOBILE-STRUCTURE". "us-mobile-structure" may be meant. ` + all},
		{"moon", `there is no code profile "moon". ` + all},
		{"component-law", `there is no code profile "component-law". That file is asked in every run and can't be chosen. ` + all},
	}
	for _, c := range cases {
		got, err := Use(c.id)
		if err == nil || err.Error() != c.want || got != (Codes{}) {
			t.Errorf("%s: %v, want %s", c.id, err, c.want)
		}
	}
}

// TestBooksStayApart holds that a term is answered by its own book alone: with
// that book gone nothing steps in.
func TestBooksStayApart(t *testing.T) {
	full := use(t, "us-mobile-structure")
	without := map[Book]Codes{}
	for _, b := range []Book{BookProfile, BookComponent, BookPractice, BookOwn} {
		c := full
		*map[Book]**Profile{BookProfile: &c.Profile, BookComponent: &c.Component, BookPractice: &c.Practice, BookOwn: &c.Own}[b] = nil
		without[b] = c
	}
	facts := everyFact(t)
	for _, term := range Terms() {
		for b, c := range without {
			got, want := c.Ask(term, facts), full.Ask(term, facts)
			if b == term.Book {
				want = Answer{State: Silent, SI: got.SI, Text: "no code was chosen that could answer this"}
			}
			if diff := cmp.Diff(want, got, cmpopts.EquateNaNs(), cmp.AllowUnexported(), cmpopts.IgnoreTypes(&Entry{})); diff != "" {
				t.Errorf("%s without the book %s: %s", term.ID, b, diff)
			}
		}
	}
	if a := full.Ask(&Term{ID: "test.none", Sense: Least}, facts); a.State != Silent || !math.IsNaN(a.SI) {
		t.Errorf("a term of no book: %+v", a)
	}
}

// TestSilenceAndRemember holds what the theorem of the checks rests on: without
// its entry a term is silent, and with an entry from memory it is remembered;
// every other term is as before, and so are the codes that were copied.
func TestSilenceAndRemember(t *testing.T) {
	full, facts := use(t, "us-mobile-structure"), everyFact(t)
	before := map[string]State{}
	for _, term := range Terms() {
		before[term.ID] = full.Ask(term, facts).State
	}
	for _, changed := range Terms() {
		silenced, remembered := full.Silence(changed.ID), full.Remember(changed.ID)
		for _, term := range Terms() {
			silent, remember := before[term.ID], before[term.ID]
			if term == changed {
				silent = Silent
				if full.Ask(term, facts).Entry != nil {
					remember = Remembered
				}
			}
			if got := silenced.Ask(term, facts).State; got != silent {
				t.Errorf("silence %s: %s is %v, want %v", changed.ID, term.ID, got, silent)
			}
			a := remembered.Ask(term, facts)
			if a.State != remember {
				t.Errorf("remember %s: %s is %v, want %v", changed.ID, term.ID, a.State, remember)
			}
			if a.State == Remembered && term.numeric() && !math.IsNaN(a.SI) {
				t.Errorf("%s is only remembered and has the figure %v", term.ID, a.SI)
			}
		}
	}
	for _, term := range Terms() {
		if got := full.Ask(term, facts).State; got != before[term.ID] {
			t.Errorf("%s was %v and is %v after copies were changed", term.ID, before[term.ID], got)
		}
	}
	if c := (Codes{}).Silence("locker.sealed").Remember("locker.sealed"); c != (Codes{}) {
		t.Errorf("a copy of no books: %+v", c)
	}
}

// TestNothingStatedNothingLimited holds that a term whose rule reads facts is
// open when nothing is stated, with nil facts as with empty ones.
func TestNothingStatedNothingLimited(t *testing.T) {
	for _, p := range Profiles() {
		c := use(t, "").With(p)
		for _, e := range p.Entries {
			want := Answered
			switch {
			case e.Provenance == Memory:
				want = Remembered
			case len(e.Rule.Facts()) > 0:
				want = Open
			}
			for _, f := range []Facts{nil, known{}} {
				if got := c.Ask(termByID(e.Term), f).State; got != want {
					t.Errorf("%s on nothing: %v, want %v", e.Term, got, want)
				}
			}
		}
	}
}

func TestWith(t *testing.T) {
	mine := &Profile{ID: "mine", Book: BookProfile}
	c := use(t, "us-mobile-structure")
	got := c.With(mine)
	if got.Profile != mine || got.Component != c.Component || c.Profile.ID != "us-mobile-structure" {
		t.Errorf("%+v", got)
	}
	if c.With(nil) != c || c.With(&Profile{}) != c {
		t.Error("a profile of no book changed the codes")
	}
}

// TestInForce holds an entry's own dates the day before, on and after each, and
// for dates of first use that are only a year or a month.
func TestInForce(t *testing.T) {
	from, until := day(t, "2010-05-01"), day(t, "2020-05-01")
	cases := []struct {
		from, until unit.Date
		first       string
		want        State
	}{
		{from, unit.Date{}, "2010-04-30", Silent}, {from, unit.Date{}, "2010-05-01", Answered}, {from, unit.Date{}, "2010-05-02", Answered},
		{from, unit.Date{}, "2010", Open}, {from, unit.Date{}, "2009", Silent}, {from, unit.Date{}, "2011", Answered}, {from, unit.Date{}, "", Open},
		{unit.Date{}, until, "2020-04-30", Answered}, {unit.Date{}, until, "2020-05-01", Silent}, {unit.Date{}, until, "2020-05-02", Silent},
		{unit.Date{}, until, "2020", Open}, {unit.Date{}, until, "2020-05", Silent}, {unit.Date{}, until, "2020-04", Answered}, {unit.Date{}, until, "", Open},
		{from, until, "2010-04-30", Silent}, {from, until, "2015", Answered}, {from, until, "2020-05-01", Silent}, {from, until, "2010", Open}, {from, until, "2020", Open},
		{unit.Date{}, unit.Date{}, "", Answered},
	}
	for _, c := range cases {
		e := Entry{Term: leastArea.ID, Rule: ruleFor(t, leastArea, `{"fixed": "1 m2"}`), Provenance: Read, From: c.from, Until: c.until}
		f := known{}
		if c.first != "" {
			f[FactFirstUsed] = day(t, c.first)
		}
		a := Codes{Profile: &Profile{Book: BookProfile, Entries: []Entry{e}}}.Ask(leastArea, f)
		if a.State != c.want {
			t.Errorf("from %s until %s, first used %q: %v, want %v", c.from, c.until, c.first, a.State, c.want)
		}
		if a.State != Answered && !math.IsNaN(a.SI) {
			t.Errorf("first used %q: %v has a figure", c.first, a.State)
		}
		if a.State == Silent && !strings.Contains(a.Text, "the text is for what was first used") {
			t.Errorf("first used %q: no reason in %q", c.first, a.Text)
		}
	}
}

func TestReasons(t *testing.T) {
	c := use(t, "us-mobile-structure")
	cases := []struct {
		term *Term
		with known
		want string
	}{
		{VentToOpening.Term, nil, "US mobile structures (24 CFR 3280, 675 IAC 15-2) has no text for this"},
		{AlarmCODuty.Term, nil, "24 CFR 3280.211 is only remembered, nobody read it: a question for the fitter"},
		{ApplianceFlue.Term, known{FactApplianceKind: "cooktop"}, "the text does not ask this here: the kind of appliance is cooktop, oven, range, lamp or dryer"},
		{LockerLowVentArea.Term, nil, "this depends on the locker's floor area"},
		{CylinderFill.Term, known{FactCylinderGas: "mix"}, "the text has no figure for this case: what the cylinder holds is mix"},
		{LockerSealed.Term, nil, "The compartment is vapour-tight to the inside of the dwelling."},
	}
	for _, each := range cases {
		if got := c.Ask(each.term, each.with).Text; got != each.want {
			t.Errorf("%s: %q, want %q", each.term.ID, got, each.want)
		}
	}
}

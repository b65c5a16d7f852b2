package code

import (
	"bytes"
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/santhosh-tekuri/jsonschema/v5"
	"pgregory.net/rapid"

	"lowvent.example/schema/unit"
)

func thorn(t testing.TB) []byte {
	t.Helper()
	data, err := os.ReadFile("testdata/overlay.json")
	if err != nil {
		t.Fatal(err)
	}
	return data
}

func overlay(t testing.TB, data []byte) *Overlay {
	t.Helper()
	o, faults := LoadOverlay("overlay.json", data, nil)
	if faults != nil {
		t.Fatal(faults)
	}
	return o
}

func TestLoadOverlay(t *testing.T) {
	o := overlay(t, thorn(t))
	var got []string
	for _, e := range o.Entries {
		got = append(got, e.Term+" by "+e.Cite()+" "+string(e.Provenance))
	}
	want := []string{"clearance.above by Thorn Ordinance 12 4 local", "locker.low-vent-area by Thorn Ordinance 12 7 local", "locker.vent-to-ignition by Thorn Ordinance 12 8 local"}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	loosens := &Loosening{By: "R. Invented", Licence: "TH-0000", Reason: "A metal hood stands over it.", Until: unit.Date{Year: 2027, Month: 6}}
	if diff := cmp.Diff(loosens, o.Entries[0].Loosens); diff != "" || o.Entries[1].Loosens != nil {
		t.Error(diff)
	}
	if terms := o.Loosened(); len(terms) != 1 || terms[0] != ClearanceAbove.Term {
		t.Errorf("it may loosen %v", terms)
	}
	if o.File != "overlay.json" || len(o.SHA256) != 64 || o.Over != "us-mobile-structure" {
		t.Errorf("%q, %q, over %q", o.File, o.SHA256, o.Over)
	}
}

func TestOverlayRefused(t *testing.T) {
	never := map[*Term]string{ClearanceAbove.Term: "so it was settled"}
	cases := []struct{ edit, pointer, what string }{
		{`delete /over`, "", "left out here"},
		{`/over = "us-mobile-strcture"`, "/over", "not known here"},
		{`/over = "common-practice"`, "/over", "not known here"},
		{`/format = "lowvent-code/1"`, "/format", "not known here"},
		{`/entries = {}`, "/entries", "no entries"},
		{`/entries = []`, "/entries", "no entries"},
		{`/entries/clearance.above = 7`, "/entries/clearance.above", "stands here"},
		{`/entries/clearance.above/provenance = "read"`, "/entries/clearance.above/provenance", "not known here"},
		{`/entries/practice.alarm-gas = { "says": "s", "rule": { "asked": true }, "document": "d" }`, "/entries/practice.alarm-gas", "a term of the book"},
		{`delete /entries/clearance.above/document`, "/entries/clearance.above", "left out here"},
		{`delete /entries/clearance.above/loosens/licence`, "/entries/clearance.above/loosens", "left out here"},
		{`delete /entries/clearance.above/loosens/until`, "/entries/clearance.above/loosens", "left out here"},
		{`/entries/clearance.above/loosens/until = "soon"`, "/entries/clearance.above/loosens/until", "no date"},
		{`/entries/clearance.above/loosens/by = " "`, "/entries/clearance.above/loosens/by", "empty"},
		{`/entries/clearance.above/rule = { "fixed": "20 kW" }`, "/entries/clearance.above/rule/fixed", ""},
	}
	for _, c := range cases {
		o, faults := LoadOverlay("overlay.json", edited(t, thorn(t), c.edit), nil)
		if o != nil || len(faults) != 1 || faults[0].Place.Pointer != c.pointer || !strings.Contains(faults[0].What, c.what) || faults[0].Place.Line() == 0 {
			t.Errorf("%s: %v", c.edit, faults)
		}
	}
	o, faults := LoadOverlay("overlay.json", thorn(t), never)
	if o != nil || len(faults) != 1 || faults[0].Place.Pointer != "/entries/clearance.above/loosens" || !strings.Contains(faults[0].What, "so it was settled") {
		t.Errorf("a limit that can't be loosened: %v", faults)
	}
	if _, faults := LoadOverlay("overlay.json", edited(t, thorn(t), `delete /entries/clearance.above/loosens`), never); faults != nil {
		t.Errorf("one that only asks more: %v", faults)
	}
	if _, faults := LoadOverlay("overlay.json", []byte("{"), nil); len(faults) != 1 {
		t.Errorf("no JSON: %v", faults)
	}
}

// TestOverlayAsks holds what an overlay makes of a code's answer. The code asks for
// 24 in over a cooking surface (24 CFR 3280.204), for half of 2 % of the floor at the
// low vent of a locker (675 IAC 15-2-74), and has no distance from a vent to a spark.
func TestOverlayAsks(t *testing.T) {
	facts := everyFact(t)
	inch, foot := 0.0254, 0.3048
	cases := []struct {
		name, edit string
		on         unit.Date
		term       *Term
		si         float64
		by         Provenance
	}{
		{"loosens", "", unit.Date{Year: 2026, Month: 11, Day: 25}, ClearanceAbove.Term, 20 * inch, Local},
		{"loosens to its last day", "", unit.Date{Year: 2027, Month: 6, Day: 30}, ClearanceAbove.Term, 20 * inch, Local},
		{"has expired", "", unit.Date{Year: 2027, Month: 7, Day: 1}, ClearanceAbove.Term, 24 * inch, Read},
		{"may not loosen", "delete /entries/clearance.above/loosens", unit.Date{Year: 2026}, ClearanceAbove.Term, 24 * inch, Read},
		{"tightens", `/entries/clearance.above = { "says": "s", "document": "d", "rule": { "fixed": "30 in" } }`, unit.Date{Year: 2026}, ClearanceAbove.Term, 30 * inch, Local},
		{"asks the same", `/entries/clearance.above = { "says": "s", "document": "d", "rule": { "fixed": "24 in" } }`, unit.Date{Year: 2026}, ClearanceAbove.Term, 24 * inch, Read},
		{"asks where the code is silent", "", unit.Date{Year: 2026}, VentToIgnition.Term, 10 * foot, Local},
		{"does not exempt", `/entries/clearance.above = { "says": "s", "document": "d", "rule": { "when": [{ "fact": "appliance.kind", "isOneOf": ["cooktop"], "then": "notAsked" }], "otherwise": { "fixed": "99 in" } } }`, unit.Date{Year: 2026}, ClearanceAbove.Term, 24 * inch, Read},
	}
	for _, c := range cases {
		data := thorn(t)
		if c.edit != "" {
			data = edited(t, data, c.edit)
		}
		if c.name == "does not exempt" {
			facts = known{FactApplianceKind: "cooktop"}
		}
		a := use(t, "us-mobile-structure").Under(overlay(t, data), c.on).Ask(c.term, facts)
		if a.State != Answered || math.Abs(a.SI-c.si) > 1e-12 || a.Entry.Provenance != c.by {
			t.Errorf("%s: %s %v by %q, want %v", c.name, a.State, a.SI, a.Text, c.si)
		}
	}
	a := use(t, "us-mobile-structure").Under(overlay(t, thorn(t)), unit.Date{Year: 2026}).Ask(ClearanceAbove.Term, known{})
	if !strings.Contains(a.Text, "24 in") {
		t.Errorf("a loosened limit does not tell what the code asks for: %q", a.Text)
	}
}

// TestOverlayOverAnotherCode changes nothing, and neither does one over no code.
func TestOverlayOverAnotherCode(t *testing.T) {
	o := overlay(t, thorn(t))
	for _, id := range []string{"", "uk-inland-boat"} {
		plain := use(t, id)
		under := plain.Under(o, unit.Date{Year: 2026})
		for _, term := range Terms() {
			if a, b := plain.Ask(term, everyFact(t)), under.Ask(term, everyFact(t)); a.State != b.State || a.Text != b.Text {
				t.Errorf("%s, %s: %q became %q", id, term.ID, a.Text, b.Text)
			}
		}
	}
}

// TestTighteningNeverLoosens holds for every code, every term of it and any local
// figure or words: what was asked for is asked for still.
func TestTighteningNeverLoosens(t *testing.T) {
	facts := everyFact(t)
	var profiles []*Profile
	for _, p := range Profiles() {
		if p.Book == BookProfile {
			profiles = append(profiles, p)
		}
	}
	rapid.Check(t, func(rt *rapid.T) {
		p := rapid.SampledFrom(profiles).Draw(rt, "code")
		term := rapid.SampledFrom(Terms()).Draw(rt, "term")
		if term.Book != BookProfile {
			return
		}
		plain := use(t, p.ID)
		with := facts
		if rapid.Bool().Draw(rt, "nothing known") {
			with = known{}
		}
		var r Rule
		switch {
		case term.numeric():
			r = fixed{figure{kind: term.Kind, si: rapid.Float64Range(0.001, 1e4).Draw(rt, "figure"), written: "x"}, rapid.Bool().Draw(rt, "exclusive")}
		case term.Sense == Allowed:
			r = oneOf{words: rapid.SliceOfDistinct(rapid.SampledFrom(term.Words), rapid.ID).Draw(rt, "words")}
		default:
			r = asked{}
		}
		o := &Overlay{Over: p.ID, Entries: []OverlayEntry{{Entry: Entry{Term: term.ID, Says: "s", Rule: r, Document: "d", Provenance: Local}}}}
		a, b := plain.Ask(term, with), plain.Under(o, unit.Date{Year: 2026}).Ask(term, with)
		switch {
		case a.State == Open && b.State != Open:
			rt.Fatalf("%s of %s was open and is %s", term.ID, p.ID, b.State)
		case a.State != Answered:
		case b.State != Answered,
			term.Sense == Least && b.SI < a.SI,
			term.Sense == Most && b.SI > a.SI,
			slices.ContainsFunc(b.Words, func(w string) bool { return !slices.Contains(a.Words, w) }):
			rt.Fatalf("%s of %s: %+v became %+v", term.ID, p.ID, a, b)
		}
	})
}

// TestOverlaySchema holds the published schema of overlays against the meta-schema, and
// the reader against the schema: what the one takes, the other takes.
func TestOverlaySchema(t *testing.T) {
	c := jsonschema.NewCompiler()
	c.LoadURL = noLoading
	for name, data := range map[string][]byte{"code.schema.json": Schema(), "overlay.schema.json": OverlaySchema()} {
		if err := c.AddResource(name, bytes.NewReader(data)); err != nil {
			t.Fatal(err)
		}
	}
	s, err := c.Compile("overlay.schema.json")
	if err != nil {
		t.Fatal(err)
	}
	if err := s.Validate(tree(t, string(thorn(t))).Value()); err != nil {
		t.Error(err)
	}
	for _, edit := range []string{`delete /over`, `/format = "x"`, `/entries = {}`, `/entries/clearance.above/provenance = "read"`, `delete /entries/clearance.above/loosens/licence`, `/entries/clearance.above/rule = 7`} {
		if s.Validate(tree(t, string(edited(t, thorn(t), edit))).Value()) == nil {
			t.Errorf("the schema takes %s", edit)
		}
	}
	OverlaySchema()[0] = 'x'
	if OverlaySchema()[0] != '{' {
		t.Error("a caller changed the schema")
	}
}

// FuzzLoadOverlay holds for any bytes: no panic; an overlay or faults with a place,
// never both; and nothing loosened without an end.
func FuzzLoadOverlay(f *testing.F) {
	f.Add(thorn(f))
	f.Add([]byte(`{"entries": {"clearance.above": {"loosens": {}}}}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		o, faults := LoadOverlay("fuzz.json", data, nil)
		if (o == nil) != (len(faults) > 0) {
			t.Fatalf("overlay %v with faults %v", o, faults)
		}
		for _, each := range faults {
			if each.What == "" || each.Place.Line() == 0 {
				t.Fatalf("a fault without place or reason: %+v", each)
			}
		}
		if o == nil {
			return
		}
		for _, e := range o.Entries {
			if e.Provenance != Local || e.Loosens != nil && (e.Loosens.Until.IsZero() || e.Loosens.Licence == "") {
				t.Fatalf("%+v", e)
			}
		}
	})
}

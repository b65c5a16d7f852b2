package vent_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/schema/check/checktest"
	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
)

// TestParts holds what a finding is made of where its outcome alone does not tell: what
// each part says, what it misses, and where the hand has to go.
func TestParts(t *testing.T) {
	for _, c := range partCases {
		t.Run(c.name, func(t *testing.T) {
			f := askedOf(t, c.code, c.check, c.subject, c.edits)
			got := partsOf(f)
			if c.reads {
				got = append(append(got, inputsOf(f)...), limitsOf(f)...)
			}
			if diff := cmp.Diff(c.want, got); diff != "" {
				t.Errorf("parts (-want +got):\n%s", diff)
			}
		})
	}
}

// askedOf is what a check says of one subject of Sorrel with edits, by a code.
func askedOf(t *testing.T, codeName, id, subject string, edits []string) report.Finding {
	t.Helper()
	codes, err := bench(t).Codes(codeName)
	if err != nil {
		t.Fatal(err)
	}
	var all []source.Edit
	for _, line := range edits {
		all = append(all, editsIn(t, line)...)
	}
	l, err := bench(t).Layout(checktest.DefaultBase, all)
	if err != nil {
		t.Fatalf("%s: %v", id, err)
	}
	found, err := ask(l, codes, id)
	if err != nil {
		t.Fatal(err)
	}
	f, known := found[id+" "+subject]
	if !known {
		t.Fatalf("%s is not asked of %s", id, subject)
	}
	return f
}

type partCase struct {
	name, code, check, subject string
	edits                      []string
	want                       []string
	reads                      bool // what was read is wanted as well
}

// partsOf tells each part in a line: how it ended, what about, what was found and needed,
// what is missing.
func partsOf(f report.Finding) (lines []string) {
	for _, p := range f.Parts {
		line := strings.TrimSpace(fmt.Sprintf("%s %s", p.Outcome, p.Reason))
		if p.About != "" {
			line += ", " + p.About
		}
		if p.Found != nil {
			line += ": " + p.Found.Text + " → " + p.Needed.Text
		}
		var missing []string
		for _, m := range p.Missing {
			missing = append(missing, m.Place.Pointer)
		}
		slices.Sort(missing)
		if len(missing) > 0 {
			line += " missing " + strings.Join(missing, " ")
		}
		lines = append(lines, line)
	}
	return lines
}

var partCases = []partCase{
	{name: "both ways of counting rest on the list of cylinders", code: everyTerm, check: "cylinder.count-size", subject: "dwelling",
		edits: []string{`/surveyedBy/complete = ["lines", "appliances"]`}, want: []string{
			"not-known not-surveyed, cylinders in service: 2 → 2 missing /surveyedBy/complete",
			"not-known not-surveyed, cylinder A, propane when full: 9 kg (19.9 lb) → 11.3 kg (25 lb) missing /surveyedBy/complete",
			"not-known not-surveyed, cylinder A, water capacity: 21.6 kg (47.6 lb) → 27.2 kg (60 lb) missing /surveyedBy/complete",
			"not-known not-surveyed, cylinders in all: 2 → 3 missing /surveyedBy/complete",
			"not-known not-surveyed, cylinder A, propane when full: 9 kg (19.9 lb) → 4.5 kg (10 lb) missing /surveyedBy/complete",
			"within, cylinder B, propane when full: 9 kg (19.9 lb) → 11.3 kg (25 lb)",
			"within, cylinder B, water capacity: 21.6 kg (47.6 lb) → 27.2 kg (60 lb)",
			"within, cylinder B, propane when full: 9 kg (19.9 lb) → 4.5 kg (10 lb)",
		}},
	{name: "what is missing of a changeover is told at once", code: everyTerm, check: "changeover.no-return", subject: "changeovers/auto",
		edits: []string{"delete /lines/tail-B", `/tests/high-side/covers = ["lines/tail-A", "lines/inlet"]`, "delete /changeovers/auto/connects", "/changeovers/auto/evidence = {}", "delete /changeovers/auto/nonReturn"}, want: []string{
			"not-known missing-input missing /changeovers/auto/connects /changeovers/auto/nonReturn",
			"not-known missing-input missing /changeovers/auto/connects",
		}},
	{name: "where regulated gas meets cylinder pressure both lines are read", code: everyTerm, check: "changeover.no-return", subject: "changeovers/y",
		edits: []string{`/cylinders/C = { "in": "open-air", "role": "in-service" }`,
			`/changeovers/y = { "in": "open-air", "connects": ["cylinders/C"], "nonReturn": false, "automatic": false, "freeTailPlugged": false }`,
			`/lines/trunk/to = "changeovers/y"`, `/lines/tail-C = { "from": "cylinders/C", "to": "changeovers/y" }`, `/lines/on = { "from": "changeovers/y", "to": "junctions/block" }`},
		want: []string{"not-met: gas can flow back → a non-return valve at each inlet", "not-met: a free tail hangs open → a free tail is plugged",
			"/changeovers/y/connects", "/changeovers/y/freeTailPlugged", "/changeovers/y/nonReturn", "/lines", "/lines/tail-C/from", "/lines/tail-C/to", "/lines/trunk/from", "/lines/trunk/to",
			"changeover.non-return", "practice.free-tail-plugged"}, reads: true},
	{name: "of two sparks at one height the first is named", code: everyTerm, check: "space.leak-time", subject: "spaces/studio",
		edits: []string{`/ignitionSources/a-plug = { "kind": "socket", "in": "spaces/studio", "at": ["3 m", "1 m", "0.05 m"], "protection": "none" }`,
			`/ignitionSources/b-plug = { "kind": "socket", "in": "spaces/studio", "at": ["2 m", "1 m", "0.05 m"], "protection": "none" }`},
		want: []string{"within, appliance hob, up to ignition source a-plug: 40 s → 113 s", "not-applicable rule-does-not-apply, appliance fridge",
			"not-applicable rule-does-not-apply, appliance heater", "not-applicable rule-does-not-apply, appliance water"}},
	{name: "the lowest spark is that which may lie lowest", code: everyTerm, check: "space.leak-time", subject: "spaces/studio",
		edits: []string{`/ignitionSources/a-plug = { "kind": "socket", "in": "spaces/studio", "at": ["3 m", "1 m", "0.06 m"], "protection": "none" }`,
			`/ignitionSources/b-plug = { "kind": "socket", "in": "spaces/studio", "at": ["2 m", "1 m", "0.07 m ± 5 cm"], "protection": "none" }`},
		want: []string{"within, appliance hob, up to ignition source b-plug: 40 s → 45.2 s", "not-applicable rule-does-not-apply, appliance fridge",
			"not-applicable rule-does-not-apply, appliance heater", "not-applicable rule-does-not-apply, appliance water"}},
	{name: "nothing is read beyond the regulator before a regulator", code: everyTerm, check: "supply.cold-pressure", subject: "regulators/second",
		edits: []string{`/regulators/second = { "in": "open-air", "gas": "propane", "outlet": "11 inH2O" }`, `/lines/to-water/from = "regulators/second"`,
			`/lines/between = { "from": "junctions/block", "to": "regulators/second", "kind": "copper" }`},
		want: []string{"not-applicable rule-does-not-apply", "/lines", "/lines/between/from", "/lines/trunk/from"}, reads: true},
}

// TestTheLimitIsAskedFirst: where there is nothing to hold against a limit, the answer has
// asked for the limit all the same, so that a silent code is not passed over.
func TestTheLimitIsAskedFirst(t *testing.T) {
	outlet := `/outdoorOutlets = { "side": { "at": ["4.20 m", "2.35 m", "0.40 m"], "shutoff": true, "capped": true } }`
	noOpenings := []string{"/openings = {}", "/tapeMeasures = {}"}
	for _, c := range []struct {
		code, check, subject string
		edits, want          []string // the limits of each part to which nothing applies
	}{
		{checktest.DefaultCode, "line.shutoff", "appliances/hob", []string{"/lines/to-hob/shutoffs = {}"}, []string{"shutoff.to-appliance practice.shutoff-reach"}},
		{"none", "clearance.above", "appliances/hob", []string{"/combustibles = {}", "/tapeMeasures = {}"}, []string{"practice.clearance-above"}},
		{everyTerm, "cylinder.relief-path", "cylinders/A", append([]string{`/cylinders/A/in = "open-air"`}, noOpenings...), []string{"cylinder.relief-to-opening"}},
		{everyTerm, "cylinder.clear", "cylinders/A", append([]string{`/cylinders/A/in = "open-air"`, "/fixedVents = {}"}, noOpenings...), []string{"cylinder.to-opening"}},
		{everyTerm, "regulator.place", "regulators/main", []string{`/cylinders/A/role = "spare"`, `/cylinders/B/role = "spare"`}, []string{"regulator.above-cylinder"}},
		{everyTerm, "line.engine-space", "lines/trunk", []string{`/spaces/engine/use = "living"`}, []string{"line.not-in-engine-space"}},
		{everyTerm, "locker.heat", "lockers/skirt", []string{"/exhausts = {}", "delete /flues/of-engine"}, []string{"locker.to-exhaust"}},
		{everyTerm, "outdoor-outlet.place", "outdoorOutlets/side", append([]string{outlet, "/lockers/skirt/vents = {}"}, noOpenings...), []string{"practice.outlet-to-opening", "practice.outlet-to-opening"}},
	} {
		var got []string
		for _, p := range askedOf(t, c.code, c.check, c.subject, c.edits).Parts {
			if p.Reason == report.RuleExempts {
				got = append(got, strings.Join(p.Limits, " "))
			}
		}
		if diff := cmp.Diff(c.want, got); diff != "" {
			t.Errorf("%s, the limits of what does not apply (-want +got):\n%s", c.check, diff)
		}
	}
}

// TestVentsAreToBeMovedToTheirEnd: a low vent nearer to the floor, a high one to the
// ceiling.
func TestVentsAreToBeMovedToTheirEnd(t *testing.T) {
	for edit, want := range map[string]string{
		`/fixedVents/studio-roof/at = ["2.30 m", "2.30 m", "1.20 m"]`: "A high vent nearer to the ceiling.",
		`/fixedVents/studio-floor/at = ["1.75 m", "0 m", "1.20 m"]`:   "A low vent nearer to the floor.",
	} {
		f := askedOf(t, everyTerm, "room.vent-place", "spaces/studio", []string{edit})
		if p := f.Parts[0]; p.Outcome != report.NotMet || p.Mend == nil || p.Mend.Text != want {
			t.Errorf("%s: %s, %+v, want %q", edit, p.Outcome, p.Mend, want)
		}
	}
}

// TestWhatIsUnsureIsRaisedByItsWorst: what may hang lower than it is drawn is to be raised
// by what lacks at its lowest: 1.37 m over 0.92 m lacks 15.96 cm of 24 in.
func TestWhatIsUnsureIsRaisedByItsWorst(t *testing.T) {
	f := askedOf(t, everyTerm, "clearance.above", "appliances/hob", []string{"delete /tapeMeasures/hob-to-rack", `/combustibles/spice-rack/box/from/2 = "1.40 m ± 3 cm"`})
	if p := f.Parts[0]; p.Mend == nil || len(p.Mend.Set) == 0 || p.Mend.Set[0].Value != `"1.56 m"` {
		t.Errorf("%s, %+v", p.Outcome, p.Mend)
	}
}

package vent_test

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"lowvent.example/schema/check/checktest"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
	"lowvent.example/schema/unit"
)

// partKey tells the parts of one finding apart: by the other thing, the limits, and
// where the answer stands.
func partKey(p report.Part) string {
	return fmt.Sprint(p.About, " ", p.Limits, " ", p.Place.Pointer)
}

// TestMendsMend: every edit that a finding offers is made. The part of which it was
// offered is not unmet any more; and where the edit is a number, one that is 1 % short
// of it, on the side that the edit names, does not do.
func TestMendsMend(t *testing.T) {
	for _, c := range allChecks().Checks {
		t.Run(c.ID, func(t *testing.T) {
			edits, numbers := 0, 0
			for _, a := range actedCasesOf(t, c.ID) {
				for _, f := range a.findings {
					for _, p := range f.Parts {
						edited, number := a.mended(t, f, p)
						edits, numbers = edits+edited, numbers+number
					}
				}
			}
			if slices.Contains(offerEdits, c.ID) && edits == 0 {
				t.Errorf("no example of %s offers an edit", c.ID)
			}
			if slices.Contains(offerNumbers, c.ID) && numbers == 0 {
				t.Errorf("no example of %s offers a number", c.ID)
			}
		})
	}
}

// offerEdits are the checks of which some example offers an edit, offerNumbers those of
// which one offers a number.
var (
	offerEdits = []string{"changeover.no-return", "cylinder.fits", "cylinder.secured", "cylinder.valve", "hose.length", "hose.route", "regulator.place", "regulator.stages",
		"alarm.co", "alarm.gas", "appliance.gas-kind", "appliance.room-sealed", "clearance.above", "cylinder.fill", "cylinder.in-locker", "cylinder.outside-living",
		"cylinder.upright", "line.open-end", "locker.access", "locker.high-vent", "locker.low-vent", "locker.penetrations", "locker.sealed", "regulator.capacity", "regulator.outlet",
		"regulator.present", "supply.run-time"}
	offerNumbers = []string{"clearance.above", "cylinder.fill", "cylinder.fits", "cylinder.secured", "hose.length", "locker.high-vent", "locker.low-vent", "regulator.capacity", "regulator.outlet", "supply.run-time"}
)

// mended tries what is offered for one part, and counts the edits and the numbers.
func (a *acted) mended(t *testing.T, f report.Finding, p report.Part) (edits, numbers int) {
	t.Helper()
	if p.Mend == nil || p.Outcome != report.NotMet {
		return 0, 0
	}
	if len(p.Mend.Text) < 20 {
		t.Errorf("%s: the mend of %s, about %q, says no more than %q", a.name, pairOf(f), p.About, p.Mend.Text)
	}
	if len(p.Mend.Set) == 0 {
		return 0, 0
	}
	if left := a.after(t, f, p, p.Mend.Set); left {
		t.Errorf("%s: %s, about %q, is still not met with %v", a.name, pairOf(f), p.About, p.Mend.Set)
	}
	less := onePercentShort(t, p.Mend.Set)
	if less == nil {
		return 1, 0
	}
	if left := a.after(t, f, p, less); !left {
		t.Errorf("%s: %s, about %q, is met with %v already, 1 %% short of what it asks for", a.name, pairOf(f), p.About, less)
	}
	return 1, 1
}

// after makes the edits and tells whether the part is still unmet.
func (a *acted) after(t *testing.T, f report.Finding, part report.Part, set []report.Edit) (unmet bool) {
	t.Helper()
	var edits []source.Edit
	for _, e := range set {
		edits = append(edits, source.Edit{Pointer: e.Pointer, Value: e.Value})
	}
	root := a.layout.Root()
	file, err := source.Apply(root.File(), root, edits)
	if err != nil {
		t.Errorf("%s: %v", a.name, err)
		return false
	}
	l, faults := layout.Load(file)
	if faults != nil {
		t.Errorf("%s: with %v the file does not load: %v", a.name, set, faults)
		return false
	}
	after, err := ask(l, a.codes, f.Check)
	if err != nil {
		t.Fatal(err)
	}
	return slices.ContainsFunc(after[pairOf(f)].Parts, func(p report.Part) bool { return partKey(p) == partKey(part) && p.Outcome == report.NotMet })
}

// onePercentShort gives the edits with each number 1 % on the wrong side, or nil where
// none is a number.
func onePercentShort(t *testing.T, set []report.Edit) []report.Edit {
	t.Helper()
	var out []report.Edit
	numbers := 0
	for _, e := range set {
		if e.Sense == "" {
			out = append(out, e)
			continue
		}
		numbers++
		kind := kindNamed(t, e.Kind)
		r, err := unit.ParseKind(kind, strings.Trim(e.Value, `"`))
		if err != nil {
			t.Errorf("the edit %v can't be read: %v", e, err)
			return nil
		}
		off := max(r.Nominal, -r.Nominal) / 100
		si := r.Nominal - off
		if e.Sense == "most" {
			si = r.Nominal + off
		}
		if r.Nominal == 0 {
			si = 1e-3 // a limit of nothing: a thousandth of the unit is past it
		}
		e.Value = quoted(strings.TrimSuffix(strings.TrimRight(strconv.FormatFloat(si, 'f', 12, 64), "0"), ".") + " " + kind.Symbol())
		out = append(out, e)
	}
	if numbers == 0 {
		return nil
	}
	return out
}

func kindNamed(t *testing.T, name string) unit.Kind {
	t.Helper()
	for _, k := range unit.Kinds() {
		if k.String() == name {
			return k
		}
	}
	t.Fatalf("there is no quantity %q", name)
	return 0
}

// TestEveryBadExampleOffersAWayOut in words at least: somebody has to know what to ask
// for.
func TestEveryBadExampleOffersAWayOut(t *testing.T) {
	for _, a := range actedCases(t) {
		for _, f := range a.findings {
			for _, p := range f.Parts {
				if p.Outcome == report.NotMet && p.Mend == nil {
					t.Errorf("%s: %s, about %q, is not met, and nothing is offered", a.name, checktest.Of(f), p.About)
				}
			}
		}
	}
}

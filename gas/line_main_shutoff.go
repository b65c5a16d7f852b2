package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "line.main-shutoff",
	Asks:       "Is there a main shut-off that can be reached on every way from a cylinder to the appliance?",
	Why:        "When something burns or leaks, all gas has to be off within seconds, away from the flames.",
	NotCovered: "Whether the valve holds: the fitter tests that. How it is marked: see the signs.",
	Word:       report.Warning,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.ShutoffMainReach.Term, code.PracticeMainReach.Term},
	Reads:      []string{"/lines", "/lines/*/from", "/lines/*/to", "/lines/*/shutoffs", "/lines/*/shutoffs/*/kind", "/lines/*/shutoffs/*/reachedFrom"},
	Inventory:  []layout.InventoryList{layout.InventoryListLines},
}, appliances, func(s *check.Sheet, a *layout.Appliance) check.Ruling {
	return check.ByEither(s, code.ShutoffMainReach, code.PracticeMainReach, func(s *check.Sheet, l code.WordLimit) check.Ruling {
		allowed := check.AllowedWords(s, l, nil)
		reach := mainReach(s, a.Ref(), allowed)
		ruling := check.OneOf(s, reach, allowed)
		if reach == noReach {
			ruling = ruling.Worded("a way from a cylinder without a valve by hand within reach", allowed.String())
		}
		return ruling.Points(a.Spot()).Mend("A main shut-off before everything else, where a hand gets to it; the fitter puts it in.")
	})
}))

// noReach stands for a way that no valve within reach shuts; no code allows it.
const noReach = layout.ReachBlocked

// mainReach takes from where the gas of a thing is shut off: by the valve of every
// way, or none where one way has no valve that can be reached.
func mainReach(s *check.Sheet, of layout.Ref, allowed check.Words) layout.Reach {
	found := noReach
	seen := map[layout.Ref]bool{}
	var shut func(to layout.Ref) bool
	shut = func(to layout.Ref) bool {
		if seen[to] {
			return true // where ways meet again, what is before is looked at once
		}
		seen[to] = true
		for _, line := range feeding(s, to) {
			from := check.Read(s, &line.From)
			main := to != of || from.Section() == "cylinders"
			if main {
				if valves := handValves(s, line, allowed, layout.ShutoffKindManualValve, layout.ShutoffKindCylinderValve); len(valves) > 0 {
					found = check.Read(s, &valves[0].Reach)
					continue
				}
			}
			if from.Section() == "cylinders" || !shut(from) {
				return false
			}
		}
		return true
	}
	if !shut(of) {
		return noReach
	}
	return found
}

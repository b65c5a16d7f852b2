package gas

import (
	"slices"

	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "line.shutoff",
	Asks:       "Has the appliance a valve of its own within reach, near enough to it, and a main shut-off before it that can be reached?",
	Why:        "When something burns or leaks, the gas has to be off within seconds, by a hand that knows where to go.",
	NotCovered: "Whether the valves hold: the fitter tests that. How the main shut-off is marked: see the signs.",
	Word:       report.Warning,
	MayAct:     report.LicensedFitter,
	Limits: []*code.Term{code.ShutoffAppliance.Term, code.ShutoffToAppliance.Term, code.ShutoffMainReach.Term,
		code.PracticeShutoffAppliance.Term, code.PracticeShutoffReach.Term, code.PracticeMainReach.Term},
	Reads: []string{"/lines", "/lines/*/from", "/lines/*/to", "/lines/*/shutoffs", "/lines/*/shutoffs/*/kind", "/lines/*/shutoffs/*/reachedFrom",
		"/lines/*/shutoffs/*/toAppliance", "/appliances/*/kind"},
	Inventory: []layout.InventoryList{layout.InventoryListLines},
}, appliances, ownValve, valveNear, mainValve))

const addValve = "A valve by hand in the line to the appliance, where it can be reached; the fitter puts it in."

func ownValve(s *check.Sheet, a *layout.Appliance) check.Ruling {
	return check.Every(s, feeding(s, a.Ref()), nil, func(s *check.Sheet, line *layout.Line) check.Ruling {
		return orCustom(s, code.ShutoffAppliance, code.PracticeShutoffAppliance, func(s *check.Sheet, l code.DutyLimit) check.Ruling {
			duty := check.Asked(s, l, applianceFacts(a))
			found := "no valve by hand within reach"
			valves := handValves(s, line, check.AllowedWords(s, code.PracticeShutoffReach, nil), layout.ShutoffKindManualValve)
			if len(valves) > 0 {
				found = valves[0].Label()
			}
			return check.Is(s, len(valves) > 0, duty, found, "a valve by hand within reach").Mend(addValve)
		})
	})
}

func valveNear(s *check.Sheet, a *layout.Appliance) check.Ruling {
	return check.Every(s, feeding(s, a.Ref()), nil, func(s *check.Sheet, line *layout.Line) check.Ruling {
		check.Limit(s, "d_max", code.ShutoffToAppliance, applianceFacts(a))
		var tries []func(*check.Sheet) check.Ruling
		for _, v := range handValves(s, line, check.AllowedWords(s, code.PracticeShutoffReach, nil), layout.ShutoffKindManualValve) {
			tries = append(tries, func(s *check.Sheet) check.Ruling {
				most := check.Limit(s, "d_max", code.ShutoffToAppliance, applianceFacts(a))
				return check.AtMost(s, check.Measure(s, "d", &v.ToAppliance), most).About("%s", v.Label()).Mend(addValve)
			})
		}
		if len(tries) == 0 {
			return check.NotApplicable(s, "there is no valve of which to ask how near it is")
		}
		return check.Any(s, tries...)
	})
}

// mainValve asks that on every way from a cylinder there is a valve by hand that can
// be reached, other than the appliance's own.
func mainValve(s *check.Sheet, a *layout.Appliance) check.Ruling {
	return orCustom(s, code.ShutoffMainReach, code.PracticeMainReach, func(s *check.Sheet, l code.WordLimit) check.Ruling {
		allowed := check.AllowedWords(s, l, nil)
		reach := mainReach(s, a.Ref(), allowed)
		ruling := check.OneOf(s, reach, allowed)
		if reach == noReach {
			ruling = ruling.Worded("a way from a cylinder without a valve by hand within reach", allowed.String())
		}
		return ruling.Points(a.Spot()).Mend("A main shut-off before everything else, where a hand gets to it; the fitter puts it in.")
	})
}

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

// handValves takes the valves of a line that a hand can turn, by their kinds, and
// that are reached from where it is allowed.
func handValves(s *check.Sheet, line *layout.Line, from check.Words, kinds ...layout.ShutoffKind) []*layout.Shutoff {
	var valves []*layout.Shutoff
	for _, v := range check.List(s, &line.Shutoffs) {
		if slices.Contains(kinds, check.Read(s, &v.Kind)) && from.Has(string(check.Read(s, &v.Reach))) {
			valves = append(valves, v)
		}
	}
	return valves
}

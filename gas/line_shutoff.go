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
	Asks:       "Has the appliance a shut-off valve of its own, within reach and near enough to it?",
	Why:        "When something burns or leaks, the gas has to be off within seconds, by a hand that knows where to go.",
	NotCovered: "Whether the valve holds: the fitter tests that.",
	Word:       report.Warning,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.ShutoffAppliance.Term, code.ShutoffToAppliance.Term, code.PracticeShutoffAppliance.Term, code.PracticeShutoffReach.Term},
	Reads: []string{"/lines", "/lines/*/to", "/lines/*/shutoffs", "/lines/*/shutoffs/*/kind", "/lines/*/shutoffs/*/reachedFrom",
		"/lines/*/shutoffs/*/toAppliance", "/appliances/*/kind"},
	Inventory: []layout.InventoryList{layout.InventoryListLines},
}, appliances, ownValve, valveNear))

const addValve = "A valve by hand in the line to the appliance, where it can be reached; the fitter puts it in."

func ownValve(s *check.Sheet, a *layout.Appliance) check.Ruling {
	return check.Every(s, feeding(s, a.Ref()), nil, func(s *check.Sheet, line *layout.Line) check.Ruling {
		return check.ByEither(s, code.ShutoffAppliance, code.PracticeShutoffAppliance, func(s *check.Sheet, l code.DutyLimit) check.Ruling {
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

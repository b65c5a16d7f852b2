package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "regulator.outlet",
	Asks:       "Is the regulator's outlet pressure under the code's ceiling, and within what every appliance behind it takes?",
	Why:        "Too much pressure makes flames that lift, soot and poison the air; too little makes flames that go out.",
	NotCovered: "Lock-up, running pressure and a failed regulator: the fitter measures them.",
	Word:       report.Danger,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.RegulatorOutletCeiling.Term, code.RegulatorFirstStageCeiling.Term, code.PracticePlatePressure.Term},
	Reads:      []string{"/regulators/*/outlet", "/lines", "/lines/*/to", "/appliances", "/appliances/*/plate/leastInlet", "/appliances/*/plate/mostInlet"},
	Inventory:  []layout.InventoryList{layout.InventoryListLines, layout.InventoryListAppliances},
}, regulators, underCeiling, withinPlates))

func underCeiling(s *check.Sheet, r *layout.Regulator) check.Ruling {
	limit := code.RegulatorOutletCeiling
	if firstStage(s, r) {
		limit = code.RegulatorFirstStageCeiling
	}
	outlet := check.Measure(s, "p_outlet", &r.Outlet)
	ceiling := check.Limit(s, "p_max", limit, nil)
	return check.AtMost(s, outlet, ceiling).
		Mend("A regulator set for the appliances; the fitter chooses and proves it.", check.Lower(&r.Outlet, ceiling.At()))
}

// firstStage tells whether a regulator delivers to further regulators and to
// nothing else. One line that misses them makes it the last stage of its way.
func firstStage(s *check.Sheet, r *layout.Regulator) bool {
	check.List(s, &s.Layout().Lines)
	check.Inventory(s, layout.InventoryListLines)
	further, bare := false, false
	walk(s.Layout(), r.Ref(), func(line *layout.Line, to layout.Ref) bool {
		check.Read(s, &line.To)
		isRegulator := to.Section() == "regulators"
		further = further || isRegulator
		bare = bare || !isRegulator && to.Section() != "junctions" && to.Section() != "changeovers"
		return !isRegulator
	})
	return further && !bare
}

func withinPlates(s *check.Sheet, r *layout.Regulator) check.Ruling {
	none := func() check.Ruling {
		return check.NotApplicable(s, "the file lists no appliance behind this regulator")
	}
	return check.Every(s, fedBy(s, r), none, func(s *check.Sheet, a *layout.Appliance) check.Ruling {
		return check.All(s,
			func(s *check.Sheet) check.Ruling {
				duty := check.Asked(s, code.PracticePlatePressure, nil)
				outlet, least := check.Measure(s, "p_outlet", &r.Outlet), check.Measure(s, "p_least", &a.Plate.LeastInlet)
				return check.AtLeast(s, outlet, check.Against(duty, least)).About("%s, least inlet of its plate", a.Label()).
					Mend("A regulator set for the appliances; the fitter chooses and proves it.")
			},
			func(s *check.Sheet) check.Ruling {
				duty := check.Asked(s, code.PracticePlatePressure, nil)
				outlet, most := check.Measure(s, "p_outlet", &r.Outlet), check.Measure(s, "p_most", &a.Plate.MostInlet)
				return check.AtMost(s, outlet, check.Against(duty, most)).About("%s, greatest inlet of its plate", a.Label()).
					Mend("A regulator set for the appliances, or an appliance made for this pressure; the fitter chooses and proves it.")
			})
	})
}

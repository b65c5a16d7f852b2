package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

var _ = add(check.For(check.Descriptor{
	ID:         "line.pressure-drop",
	Asks:       "Does enough pressure arrive at the appliance while everything burns?",
	Why:        "A burner that is starved when the others are lit burns badly, goes out, and may come alight again in a room full of gas.",
	NotCovered: "What the regulator itself gives up at full flow, dirt, dents and burrs in the line, and the appliance's own valves. The fitter measures it, all on.",
	Word:       report.Warning,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.LinePressureDrop.Term, code.PracticePressureDrop.Term, code.PracticePlateRunning.Term},
	Reads: []string{"/lines", "/lines/*/from", "/lines/*/to", "/lines/*/kind", "/lines/*/outside", "/lines/*/wall", "/lines/*/length", "/lines/*/route",
		"/lines/*/fittings/elbow90", "/lines/*/fittings/elbow45", "/lines/*/fittings/teeThrough", "/lines/*/fittings/teeBranch", "/lines/*/fittings/valve",
		"/lines/*/fittings/coupling", "/lines/*/fittings/bend", "/lines/*/carries", "/lines/*/losesThen", "/climate/highestPlace", "/regulators/*/outlet",
		"/appliances", "/appliances/*/plate/input", "/appliances/*/plate/consumption", "/appliances/*/plate/basis", "/appliances/*/plate/leastInlet"},
	Inventory: []layout.InventoryList{layout.InventoryListLines, layout.InventoryListAppliances},
	Instead:   []string{"/appliances/*/plate/consumption", "/lines/*/route"},
	Sources:   []string{codeEquationSource, frictionSource, heatSource},
}, appliances, lostOnTheWay(dropByCode, "by the codes' equation"), lostOnTheWay(dropByFriction, "by friction and rise"),
	func(s *check.Sheet, a *layout.Appliance) check.Ruling {
		duty := check.Asked(s, code.PracticePlateRunning, nil)
		least := check.Measure(s, "p_least", &a.Plate.LeastInlet)
		return check.AtLeast(s, check.Fig(s, "p_run", runningPressure, a), check.Against(duty, least)).
			About("least inlet of its plate").Mend(measureRunning)
	}))

const measureRunning = "Have the fitter measure it with everything lit; a wider line, a shorter way or another regulator is for the fitter to choose."

// lostOnTheWay asks how much pressure is lost on the way, by one method.
func lostOnTheWay(by *check.Figure[unit.GaugePressure, *layout.Appliance], how string) func(*check.Sheet, *layout.Appliance) check.Ruling {
	return func(s *check.Sheet, a *layout.Appliance) check.Ruling {
		return check.ByEither(s, code.LinePressureDrop, code.PracticePressureDrop, func(s *check.Sheet, l code.Limit[unit.GaugePressure]) check.Ruling {
			most := check.Limit(s, "dp_max", l, nil)
			return check.AtMost(s, check.Fig(s, "dp_way", by, a), most).About("lost on the way, %s", how).Mend(measureRunning)
		})
	}
}

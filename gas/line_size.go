package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

var _ = add(check.For(check.Descriptor{
	ID:   "line.size",
	Asks: "Is the line wide enough for all that burns behind it, by the longest-length method of the fuel gas codes?",
	Why:  "Where one stretch is too narrow, everything behind it starves together: flames sink, and some go out.",
	NotCovered: "The pressure that arrives, which line.pressure-drop reckons, and a size to buy: the fitter chooses that. " +
		"Hose and corrugated tube go by their makers' tables.",
	Word:   report.Caution,
	MayAct: report.LicensedFitter,
	Limits: []*code.Term{code.LinePressureDrop.Term, code.PracticePressureDrop.Term},
	Reads: []string{"/lines", "/lines/*/from", "/lines/*/to", "/lines/*/kind", "/lines/*/outside", "/lines/*/wall", "/lines/*/length",
		"/lines/*/fittings/elbow90", "/lines/*/fittings/elbow45", "/lines/*/fittings/teeThrough", "/lines/*/fittings/teeBranch", "/lines/*/fittings/valve",
		"/lines/*/fittings/coupling", "/lines/*/fittings/bend",
		"/appliances", "/appliances/*/plate/input", "/appliances/*/plate/consumption", "/appliances/*/plate/basis"},
	Inventory: []layout.InventoryList{layout.InventoryListLines, layout.InventoryListAppliances},
	Instead:   []string{"/appliances/*/plate/consumption"},
	Sources:   []string{codeEquationSource, heatSource},
}, lines, func(s *check.Sheet, line *layout.Line) check.Ruling {
	return atLastPressure(s, line, func() check.Ruling {
		return ofPipe(s, line, func() check.Ruling {
			if check.Read(s, &line.Kind) == layout.LineKindCorrugatedStainless {
				return check.NotApplicable(s, "corrugated tube goes by its maker's table, which is no equation")
			}
			return check.ByEither(s, code.LinePressureDrop, code.PracticePressureDrop, func(s *check.Sheet, l code.Limit[unit.GaugePressure]) check.Ruling {
				most := check.Limit(s, "dp_max", l, nil)
				return check.AtMost(s, check.Fig(s, "dp_long", overLongest, line), most).
					About("lost if the line were as long as the longest way").Mend("A wider line; the fitter chooses the size.")
			})
		})
	})
}))

// overLongest is what the load of a line would lose in its bore over the whole length of
// the longest way: the longest-length method, turned round.
var overLongest = &check.Figure[unit.GaugePressure, *layout.Line]{
	ID: "line.drop-over-longest-run", Title: "pressure lost over the length of the longest way",
	Calc: func(s *check.Sheet, line *layout.Line) unit.GaugePressure {
		r := regulatorBefore(s, line)
		if r == nil {
			return 0
		}
		run := check.Fig(s, "L", longestEvenRun, r)
		load, bore := check.Fig(s, "P", lineLoad, line), boreOf(s, line)
		return codeDrop(s, line, load, bore, run)
	},
}

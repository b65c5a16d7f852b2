package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "line.capacity",
	Asks:       "Does the line carry no more heat than the code's own table has for its size and length?",
	Why:        "A line that is too narrow starves the flames behind it when everything burns: they go out, or burn badly.",
	NotCovered: "What the gas itself does in the line, which line.pressure-drop reckons: a table made for another gas is no bound for propane.",
	Word:       report.Warning,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.LineCapacity.Term},
	Reads: []string{"/lines", "/lines/*/from", "/lines/*/to", "/lines/*/kind", "/lines/*/outside", "/lines/*/length",
		"/appliances", "/appliances/*/plate/input", "/appliances/*/plate/consumption", "/appliances/*/plate/basis"},
	Inventory: []layout.InventoryList{layout.InventoryListLines, layout.InventoryListAppliances},
	Instead:   []string{"/appliances/*/plate/consumption"},
	Sources:   []string{heatSource},
}, lines, func(s *check.Sheet, line *layout.Line) check.Ruling {
	return atLastPressure(s, line, func() check.Ruling {
		return ofPipe(s, line, func() check.Ruling {
			r := regulatorBefore(s, line)
			if r == nil {
				return check.Ruling{} // what is missing is noted
			}
			facts := lineFacts(line)
			facts[code.FactLineRun] = func(s *check.Sheet) any { return float64(check.Fig(s, "L_run", longestRun, r)) }
			most := check.Limit(s, "P_max", code.LineCapacity, facts)
			return check.AtMost(s, check.Fig(s, "P_load", lineLoad, line), most).
				Mend("A wider line; the fitter chooses it, and the table of the code is only one of the things to look at.")
		})
	})
}))

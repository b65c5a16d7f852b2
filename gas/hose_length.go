package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

var _ = add(check.For(check.Descriptor{
	ID:         "hose.length",
	Asks:       "Is the hose no longer than the code allows?",
	Why:        "Hose is the weakest part of the pipework, and every foot more of it can chafe, kink, burn or be cut.",
	NotCovered: "Of what kind it is and how it ends: the fitter reads what is printed on it.",
	Word:       report.Warning,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.HoseLength.Term, code.PracticeHoseLength.Term},
	Reads:      []string{"/lines/*/kind", "/lines/*/length", "/lines/*/pressureClass", "/lines/*/to", "/appliances/*/kind"},
}, lines, func(s *check.Sheet, h *layout.Line) check.Ruling {
	if !isHose(s, h) {
		return notAHose(s)
	}
	return check.ByEither(s, code.HoseLength, code.PracticeHoseLength, func(s *check.Sheet, limit code.Limit[unit.Length]) check.Ruling {
		most := check.Limit(s, "L_max", limit, lineFacts(h))
		return check.AtMost(s, check.Measure(s, "L", &h.Length), most).
			Mend("A shorter hose, or pipe up to where the hose is needed; the fitter makes it.", check.Lower(&h.Length, most.At()))
	})
}))

// endUse takes what a line leads to, as a word of code.FactLineFeeds.
func endUse(s *check.Sheet, line *layout.Line) string {
	a, is := check.Item(s, &line.To).(*layout.Appliance)
	if !is {
		return "no-appliance"
	}
	switch check.Read(s, &a.Kind) {
	case layout.ApplianceKindCooktop, layout.ApplianceKindOven, layout.ApplianceKindRange, layout.ApplianceKindBarbecue:
		return "cooking-appliance"
	}
	return "other-appliance"
}

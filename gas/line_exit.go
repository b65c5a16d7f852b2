package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "line.exit",
	Asks:       "Is the line clear of the ways out?",
	Why:        "What leaks and burns by the door meets the people who flee.",
	NotCovered: "Cylinders, lockers and cookers beside the ways out.",
	Word:       report.Warning,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.LineNotUnderExit.Term, code.PracticeNotUnderExit.Term},
	Reads:      []string{"/lines/*/underExit"},
}, lines, func(s *check.Sheet, line *layout.Line) check.Ruling {
	return check.ByEither(s, code.LineNotUnderExit, code.PracticeNotUnderExit, func(s *check.Sheet, l code.DutyLimit) check.Ruling {
		duty := check.Asked(s, l, nil)
		under := check.Read(s, &line.UnderExit)
		return check.Is(s, !under, duty, underExit(under), underExit(false)).Mend(reroute)
	})
}))

const reroute = "Another way for the line; the fitter lays it."

func underExit(under bool) string {
	if under {
		return "under a way out"
	}
	return "clear of the ways out"
}

package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

var _ = add(check.For(check.Descriptor{
	ID:         "hose.age",
	Asks:       "Is the hose within the years that a hose may serve?",
	Why:        "A hose hardens and cracks where nobody looks, and one at cylinder pressure lets go at full bore.",
	NotCovered: "Cracks, chafing and oil: bend it and look. Its maker may give it less time than the code does.",
	Word:       report.Caution,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.HoseLife.Term, code.PracticeHoseLife.Term},
	Reads:      []string{"/lines/*/kind", "/lines/*/dated"},
}, lines, func(s *check.Sheet, h *layout.Line) check.Ruling {
	if !isHose(s, h) {
		return notAHose(s)
	}
	made := func(s *check.Sheet) unit.Date { return check.Read(s, &h.Dated) }
	return aged(s, made, code.HoseLife, code.PracticeHoseLife)
}))

func isHose(s *check.Sheet, h *layout.Line) bool {
	kind := check.Read(s, &h.Kind)
	return s.Stuck() || kind == layout.LineKindHose
}

func notAHose(s *check.Sheet) check.Ruling {
	return check.NotApplicable(s, "it is stated to be no hose")
}

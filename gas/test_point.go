package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "test.point",
	Asks:       "Is there a capped point after the regulator at which a gauge can be put on?",
	Why:        "Without it nobody measures what the regulator gives, and a tightness test means taking a joint apart and making it again.",
	NotCovered: "Test points at appliances, and whether the cap of the point is tight.",
	Word:       report.Caution,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.TestPoint.Term, code.PracticeTestPoint.Term},
	Reads:      []string{"/regulators/*/testPoint"},
}, regulators, func(s *check.Sheet, r *layout.Regulator) check.Ruling {
	return check.ByEither(s, code.TestPoint, code.PracticeTestPoint, func(s *check.Sheet, l code.DutyLimit) check.Ruling {
		duty := check.Asked(s, l, nil)
		point := check.Read(s, &r.TestPoint)
		return check.Is(s, point, duty, gaugePoint(point), gaugePoint(true)).
			Mend("A capped test point after the regulator; the fitter puts it in.", check.SetBool(&r.TestPoint, true))
	})
}))

func gaugePoint(is bool) string {
	if is {
		return "a test point"
	}
	return "no test point"
}

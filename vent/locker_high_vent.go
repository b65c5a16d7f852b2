package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "locker.high-vent",
	Asks:       "Are the high vents open enough, close under the ceiling, and never covered or shut?",
	Why:        "Without a way in for air up high, the low vent drains gas only as fast as air can get back past it.",
	NotCovered: "What is near the vent: see locker.vent-clear.",
	Word:       report.Warning,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.LockerHighVentDuty.Term, code.LockerHighVentArea.Term, code.LockerHighVentEdge.Term, code.LockerVentUnrestricted.Term, code.PracticeLockerVentUnrestricted.Term},
	Reads: append([]string{"/lockers/*/vents/*/lowerEdgeBelowCeiling", "/lockers/*/vents/*/closable", "/lockers/*/vents/*/coveredByCylinder"},
		ventReads...),
}, lockers, hasVent(layout.VentLevelHigh, code.LockerHighVentDuty), enough(layout.VentLevelHigh, highFree, code.LockerHighVentArea), underTheCeiling, unrestricted(layout.VentLevelHigh)))

func underTheCeiling(s *check.Sheet, k *layout.Locker) check.Ruling {
	none := func() check.Ruling { return check.NotApplicable(s, "the file lists no high vent") }
	return check.Every(s, ventsAt(s, k, layout.VentLevelHigh), none, func(s *check.Sheet, v *layout.LockerVent) check.Ruling {
		depth := check.Measure(s, "h_below", &v.BelowTop)
		limit := check.Limit(s, "h_max", code.LockerHighVentEdge, nil)
		return check.AtMost(s, depth, limit).Says("depth of the vent's lower edge below the ceiling").
			Mend("The high vent moved up until its lower edge is this close to the ceiling.", check.Lower(&v.BelowTop, limit.At()))
	})
}

package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "cylinder.valve",
	Asks:       "Has the cylinder its safety relief, a stop against overfilling, and a plug where it is not connected?",
	Why:        "Without a relief a hot cylinder bursts, without the stop it is filled till no room is left, and without its plug a knocked valve empties it.",
	NotCovered: "Whether its outlet suits the tail, and whether the devices work: whoever fills it looks.",
	Word:       report.Caution,
	MayAct:     report.Owner,
	Limits:     []*code.Term{code.PracticeReliefValve.Term, code.CylinderOverfillDevice.Term, code.PracticeOverfillDevice.Term, code.PracticeOutletPlugged.Term},
	Reads: []string{"/cylinders/*/specification", "/cylinders/*/reliefValve", "/cylinders/*/overfillDevice", "/cylinders/*/outletPlugged",
		"/cylinders/*/role"},
}, cylinders, hasRelief, stopsFilling, plugged))

func hasRelief(s *check.Sheet, c *layout.Cylinder) check.Ruling {
	asked := check.Asked(s, code.PracticeReliefValve, specificationFacts(c))
	return is(s, &c.ReliefValve, asked, "a safety relief", "no safety relief").
		Mend("Swap it for a cylinder with a safety relief; nobody fits one to this.", check.SetBool(&c.ReliefValve, true))
}

func stopsFilling(s *check.Sheet, c *layout.Cylinder) check.Ruling {
	return check.ByEither(s, code.CylinderOverfillDevice, code.PracticeOverfillDevice, func(s *check.Sheet, duty code.DutyLimit) check.Ruling {
		asked := check.Asked(s, duty, specificationFacts(c))
		return is(s, &c.OverfillDevice, asked, "a stop against overfilling", "nothing that stops its filling").
			Mend("Swap it for a cylinder that stops its own filling, or have it filled by weight only.", check.SetBool(&c.OverfillDevice, true))
	})
}

func plugged(s *check.Sheet, c *layout.Cylinder) check.Ruling {
	if check.Read(s, &c.Role) == layout.CylinderRoleInService {
		return check.NotApplicable(s, "the cylinder is in service, so its outlet is connected")
	}
	return stated(s, &c.OutletPlugged, code.PracticeOutletPlugged, "plugged", "its outlet is open").
		Mend("Close its valve and screw the plug or cap onto its outlet.", check.SetBool(&c.OutletPlugged, true))
}

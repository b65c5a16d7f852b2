package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "cylinder.upright",
	Asks:       "Does the cylinder stand upright, valve uppermost, while it is in service?",
	Why:        "A cylinder on its side sends liquid to the regulator: far more gas through the same hole, and flames to match.",
	NotCovered: "Cylinders made to lie, which say so on their plate; spare and empty ones.",
	Word:       report.Danger,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.CylinderUpright.Term, code.PracticeCylinderUpright.Term},
	Reads:      []string{"/cylinders/*/role", "/cylinders/*/upright"},
	NeverWaive: true,
}, cylinders, orPractice(code.CylinderUpright, code.PracticeCylinderUpright, upright)))

func upright(s *check.Sheet, c *layout.Cylinder, asked code.DutyLimit) check.Ruling {
	if role := check.Read(s, &c.Role); role == layout.CylinderRoleSpare || role == layout.CylinderRoleEmpty {
		return check.NotApplicable(s, "the cylinder is stated "+string(role))
	}
	duty := check.Asked(s, asked, nil)
	is := check.Read(s, &c.Upright)
	return check.Is(s, is, duty, stance(is), stance(true)).
		Mend("Close its valve, then stand it upright and have its restraint made to keep it so.", check.SetBool(&c.Upright, true))
}

func stance(upright bool) string {
	if upright {
		return "upright, valve up"
	}
	return "lying or upside down"
}

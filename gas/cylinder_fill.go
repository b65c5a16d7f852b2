package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "cylinder.fill",
	Asks:       "Does the cylinder hold no more propane, by mass, than its water capacity allows?",
	Why:        "An overfilled cylinder has no vapour space: as it warms the liquid fills it and the relief valve throws out liquid propane.",
	NotCovered: "What a float gauge shows: 80 % by gauge and 42 % by mass are two limits, and only mass is judged.",
	Word:       report.Danger,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.CylinderFill.Term},
	Reads:      []string{"/cylinders/*/role", "/cylinders/*/propane", "/cylinders/*/waterCapacity", "/cylinders/*/gas"},
	NeverWaive: true,
}, cylinders, func(s *check.Sheet, c *layout.Cylinder) check.Ruling {
	if check.Read(s, &c.Role) == layout.CylinderRoleEmpty {
		return check.NotApplicable(s, "the cylinder is stated empty")
	}
	propane := check.Measure(s, "m_propane", &c.Propane)
	limit := check.Limit(s, "m_max", code.CylinderFill, cylinderFacts(c))
	return check.AtMost(s, propane, limit).
		Mend("Have it weighed and the excess taken out by whoever filled it; never bleed it yourself.", check.Lower(&c.Propane, limit.At()))
}))

func cylinders(l *layout.Layout) *layout.Section[layout.Cylinder] { return &l.Cylinders }

func cylinderFacts(c *layout.Cylinder) check.Facts {
	return check.Facts{
		code.FactCylinderGas:   func(s *check.Sheet) any { return string(check.Read(s, &c.Gas)) },
		code.FactCylinderRole:  func(s *check.Sheet) any { return string(check.Read(s, &c.Role)) },
		code.FactWaterCapacity: func(s *check.Sheet) any { return float64(check.Measure(s, "m_water", &c.WaterCapacity)) },
	}
}

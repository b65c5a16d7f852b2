package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "cylinder.gas-mix",
	Asks:       "Is it known what is in the cylinder, and is it propane?",
	Why:        "Butane gives no gas in frost: the flames go out when they are needed most, and people light other things to keep warm.",
	NotCovered: "What was really filled in: only whoever sold it knows.",
	Word:       report.Caution,
	MayAct:     report.Owner,
	Limits:     []*code.Term{code.PracticeCylinderGas.Term, code.PracticePropaneShare.Term},
	Reads:      []string{"/cylinders/*/gas", "/cylinders/*/role", "/gas/propaneShare"},
}, cylinders, func(s *check.Sheet, c *layout.Cylinder) check.Ruling {
	return filled(s, c, func(s *check.Sheet) check.Ruling {
		return check.OneOf(s, check.Read(s, &c.Gas), check.AllowedWords(s, code.PracticeCylinderGas, nil)).Mend(buyPropane)
	})
}, func(s *check.Sheet, c *layout.Cylinder) check.Ruling {
	return filled(s, c, func(s *check.Sheet) check.Ruling {
		least := check.Limit(s, "f_min", code.PracticePropaneShare, nil)
		return check.AtLeast(s, check.Measure(s, "f", &s.Layout().Gas.Propane), least).About("share of propane").Mend(buyPropane)
	})
}))

const buyPropane = "Ask the seller what it is, and swap it for propane before the frost."

// filled asks of cylinders that hold something.
func filled(s *check.Sheet, c *layout.Cylinder, f func(*check.Sheet) check.Ruling) check.Ruling {
	if check.Read(s, &c.Role) == layout.CylinderRoleEmpty {
		return check.NotApplicable(s, "the cylinder is stated empty")
	}
	return f(s)
}

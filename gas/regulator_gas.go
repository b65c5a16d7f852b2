package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "regulator.gas",
	Asks:       "Are the regulator, every cylinder before it and every appliance behind it for propane?",
	Why:        "A regulator or burner for another gas gives flames of the wrong size: they lift, soot and make carbon monoxide, or go out unburnt.",
	NotCovered: "Whether jets and pressure are right (appliance.gas-kind, regulator.outlet), and what is really in the cylinder.",
	Word:       report.Danger,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.OwnGas.Term},
	Reads:      []string{"/regulators/*/gas", "/cylinders/*/gas", "/appliances/*/plate/gas", "/appliances", "/lines", "/lines/*/from", "/lines/*/to"},
	Inventory:  []layout.InventoryList{layout.InventoryListLines, layout.InventoryListAppliances},
	NeverWaive: true,
}, regulators, forPropane, filledForIt, burningIt))

func forPropane(s *check.Sheet, r *layout.Regulator) check.Ruling {
	return ofGas(s, &r.Gas).About("the regulator's plate").Mend("A regulator for propane; the fitter chooses and fits it.")
}

// ofGas rules on which gas a thing is for.
func ofGas(s *check.Sheet, gas *layout.Given[layout.GasKind]) check.Ruling {
	return check.OneOf(s, check.Read(s, gas), check.AllowedWords(s, code.OwnGas, nil))
}

func filledForIt(s *check.Sheet, r *layout.Regulator) check.Ruling {
	none := func() check.Ruling {
		s.Missing("the cylinder that feeds "+r.Label(), s.Layout().Lines.Spot())
		return check.Ruling{}
	}
	return check.Every(s, upstream(s, r.Ref()), none, func(s *check.Sheet, c *layout.Cylinder) check.Ruling {
		return ofGas(s, &c.Gas).Mend("Close it, take it off the supply, and swap it for one with propane.")
	})
}

func burningIt(s *check.Sheet, r *layout.Regulator) check.Ruling {
	none := func() check.Ruling {
		return check.NotApplicable(s, "the file lists no appliance behind this regulator")
	}
	return check.Every(s, downstream(s, r.Ref()), none, func(s *check.Sheet, a *layout.Appliance) check.Ruling {
		return ofGas(s, &a.Plate.Gas).Mend("Ask the fitter whether its maker has a set for propane; else another appliance.")
	})
}

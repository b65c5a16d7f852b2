package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

var _ = add(check.For(check.Descriptor{
	ID:         "fridge.compartment",
	Asks:       "Is the space behind a gas refrigerator shut off from the room, vented low and high, and free of joints in wires?",
	Why:        "Its burner stands by the floor, where leaked gas comes first, and its fumes go where the draught takes them.",
	NotCovered: "What the manual asks of fans, baffles and the shape of the vents, and whether the seal holds.",
	Word:       report.Danger,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.PracticeFridgeSealed.Term, code.PracticeFridgeVent.Term},
	Reads: []string{"/appliances/*/in", "/appliances/*/kind", "/appliances/*/rearSealedFromRoom", "/appliances/*/wiringSplicesBehind",
		"/appliances/*/compartmentLowVent", "/appliances/*/compartmentHighVent"},
	Claims: []string{"/appliances/*/rearSealedFromRoom"},
}, appliances,
	aFridge(behindFridge(func(a *layout.Appliance) *layout.Given[bool] { return &a.RearSealed }, true,
		"shut off from the room", "open to the room", "Close the space behind it draught-tight from the room, as its manual shows.")),
	aFridge(behindFridge(func(a *layout.Appliance) *layout.Given[bool] { return &a.Splices }, false,
		"wires are joined behind it", "no wire is joined behind it", "Move every joint of wires out of the space behind it.")),
	aFridge(fridgeVent("low vent", func(a *layout.Appliance) *layout.Measure[unit.Area] { return &a.LowVent })),
	aFridge(fridgeVent("high vent", func(a *layout.Appliance) *layout.Measure[unit.Area] { return &a.HighVent }))))

func aFridge(f func(*check.Sheet, *layout.Appliance) check.Ruling) func(*check.Sheet, *layout.Appliance) check.Ruling {
	return indoors(func(s *check.Sheet, a *layout.Appliance) check.Ruling {
		if check.Read(s, &a.Kind) != layout.ApplianceKindRefrigerator {
			return check.NotApplicable(s, "it is no refrigerator")
		}
		return f(s, a)
	})
}

func behindFridge(of func(*layout.Appliance) *layout.Given[bool], want bool, yes, no, mend string) func(*check.Sheet, *layout.Appliance) check.Ruling {
	return func(s *check.Sheet, a *layout.Appliance) check.Ruling {
		asked := check.Asked(s, code.PracticeFridgeSealed, nil)
		is := check.Read(s, of(a))
		return check.Is(s, is == want, asked, either(is, yes, no), either(want, yes, no)).Mend(mend, check.SetBool(of(a), want))
	}
}

func fridgeVent(name string, of func(*layout.Appliance) *layout.Measure[unit.Area]) func(*check.Sheet, *layout.Appliance) check.Ruling {
	return func(s *check.Sheet, a *layout.Appliance) check.Ruling {
		free := check.Measure(s, "A_free", of(a))
		need := check.Limit(s, "A_need", code.PracticeFridgeVent, nil)
		return check.AtLeast(s, free, need).About("%s", name).Mend("A vent as large as its manual asks, and no smaller than this.", check.Raise(of(a), need.At()))
	}
}

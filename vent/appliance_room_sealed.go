package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "appliance.room-sealed",
	Asks:       "Is the appliance's burning sealed from the air that people breathe, where the code asks for it?",
	Why:        "A water heater or heater that takes its air from a small room and gives its fumes back kills people in their sleep.",
	NotCovered: "Whether the flue and its seal hold: a fitter proves it. Cooking appliances: see the ventilation of the room.",
	Word:       report.Danger,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.ApplianceFlue.Term, code.PracticeApplianceFlue.Term},
	Reads:      []string{"/appliances/*/in", "/appliances/*/kind", "/appliances/*/flue", "/spaces/*/use"},
	Claims:     []string{"/appliances/*/flue"},
	NeverWaive: true,
}, appliances, orPractice(code.ApplianceFlue, code.PracticeApplianceFlue, flued)))

func flued(s *check.Sheet, a *layout.Appliance, allowed code.WordLimit) check.Ruling {
	if check.Read(s, &a.In) == layout.OpenAir {
		return check.NotApplicable(s, "it stands in the open air")
	}
	return check.OneOf(s, check.Read(s, &a.Flue), check.AllowedWords(s, allowed, applianceFacts(a))).
		Mend("An appliance made room-sealed, with its own air intake and flue to the outside.", check.SetWord(&a.Flue, layout.FlueKindRoomSealed))
}

func applianceFacts(a *layout.Appliance) check.Facts {
	return check.Facts{
		code.FactApplianceKind: func(s *check.Sheet) any { return string(check.Read(s, &a.Kind)) },
		code.FactSpaceUse: func(s *check.Sheet) any {
			space, ok := check.Item(s, &a.In).(*layout.Space)
			if !ok {
				return string(layout.SpaceUseTechnical) // a locker is a space that nobody uses
			}
			return string(check.Read(s, &space.Use))
		},
	}
}

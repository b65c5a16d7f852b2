package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "appliance.room-forbidden",
	Asks:       "Is nothing that burns the air of the room in a washroom, or where people sleep?",
	Why:        "A small room with its door shut runs out of air in minutes, and the one who sleeps or washes there does not notice.",
	NotCovered: "The next room, when the door between stands open, and a cooker where people sleep: its air is for the ventilation of the room.",
	Word:       report.Danger,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.ApplianceFlueByRoom.Term, code.PracticeFlueByRoom.Term},
	Reads:      []string{"/appliances/*/in", "/appliances/*/kind", "/appliances/*/flue", "/spaces/*/use"},
	Claims:     []string{"/appliances/*/flue"},
}, appliances, func(s *check.Sheet, a *layout.Appliance) check.Ruling {
	space, ok := check.Item(s, &a.In).(*layout.Space)
	if !ok {
		return check.NotApplicable(s, "it stands in no space of the dwelling")
	}
	if use := check.Read(s, &space.Use); use != layout.SpaceUseSleeping && use != layout.SpaceUseWashroom {
		return check.NotApplicable(s, "nobody sleeps or washes where it stands")
	}
	return check.ByEither(s, code.ApplianceFlueByRoom, code.PracticeFlueByRoom, func(s *check.Sheet, l code.WordLimit) check.Ruling { return flueAllowed(s, a, l) })
}))

func flueAllowed(s *check.Sheet, a *layout.Appliance, limit code.WordLimit) check.Ruling {
	return check.OneOf(s, check.Read(s, &a.Flue), check.AllowedWords(s, limit, applianceFacts(a))).
		Mend("Another place for the appliance, or one made room-sealed, with its own air intake and flue to the outside.", check.SetWord(&a.Flue, layout.FlueKindRoomSealed))
}

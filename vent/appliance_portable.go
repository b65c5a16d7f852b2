package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "appliance.portable",
	Asks:       "Does nothing burn inside that can be carried about, and is no cooker used to warm the room?",
	Why:        "A heater that is carried in takes its air from the sleepers and gives them its fumes; so does a hob that is left on for warmth.",
	NotCovered: "A heater that nobody listed. A sensor for oxygen in the appliance changes nothing: it is blind to carbon monoxide.",
	Word:       report.Danger,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.AppliancePortable.Term, code.PracticePortable.Term, code.CookingNotForHeat.Term, code.PracticeCookingNotForHeat.Term},
	Reads:      []string{"/appliances/*/in", "/appliances/*/kind", "/appliances/*/portable", "/appliances/*/usedForHeating"},
	NeverWaive: true,
}, appliances, indoors(dutyPair{code.AppliancePortable, code.PracticePortable}.owed(
	func(a *layout.Appliance) *layout.Given[bool] { return &a.Portable }, false, "can be carried about", "fixed in its place",
	"Take it out of the dwelling, with its cylinder. A heater that is fixed, room-sealed and approved for such a dwelling in its place.")),
	indoors(notForHeat)))

func notForHeat(s *check.Sheet, a *layout.Appliance) check.Ruling {
	if !cooks(check.Read(s, &a.Kind)) {
		return check.NotApplicable(s, "it is not for cooking")
	}
	return dutyPair{code.CookingNotForHeat, code.PracticeCookingNotForHeat}.owed(
		func(a *layout.Appliance) *layout.Given[bool] { return &a.ForHeat }, false, "used to warm the room", "used for cooking only",
		"Never light it for warmth; a heater that is room-sealed for that.")(s, a)
}

package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "appliance.pilot",
	Asks:       "Is the appliance lit in a way that the code allows?",
	Why:        "A pilot that burns all the time lights whatever leaks anywhere aboard, day and night.",
	NotCovered: "A glow plug that lights by itself, which some texts bar as well: ask what the electronic lighting is.",
	Word:       report.Warning,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.AppliancePilot.Term},
	Reads:      []string{"/appliances/*/in", "/appliances/*/pilot"},
}, appliances, indoors(func(s *check.Sheet, a *layout.Appliance) check.Ruling {
	return check.OneOf(s, check.Read(s, &a.Pilot), check.AllowedWords(s, code.AppliancePilot, applianceFacts(a))).
		Mend("An appliance of a kind that is lit without a constant pilot.")
})))

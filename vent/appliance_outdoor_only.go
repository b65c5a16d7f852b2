package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "appliance.outdoor-only",
	Asks:       "Is nothing inside that its maker keeps to the open air?",
	Why:        "An appliance for outdoors may give off as much carbon monoxide as it likes; indoors that kills within the hour.",
	NotCovered: "An appliance that nobody listed, and one that is carried in on a cold night.",
	Word:       report.Danger,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.PracticeOutdoorOnly.Term},
	Reads:      []string{"/appliances/*/in", "/appliances/*/outdoorOnly"},
	NeverWaive: true,
}, appliances, indoors(func(s *check.Sheet, a *layout.Appliance) check.Ruling {
	asked := check.Asked(s, code.PracticeOutdoorOnly, nil)
	only := check.Read(s, &a.OutdoorOnly)
	return check.Is(s, !only, asked, either(only, "made for outdoor use only", "made for use indoors"), "made for use indoors").
		Mend("Take it out of the dwelling for good, and have its connection capped; an appliance made for indoors in its place.")
})))

package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "appliance.service",
	Asks:       "Can a fitter get at the appliance and see its burner without taking furniture apart?",
	Why:        "What can't be seen is not looked at: soot, a loose joint or a lazy flame goes on for years.",
	NotCovered: "How much room each maker asks for round its appliance: see clearance.appliance and the manual.",
	Word:       report.Notice,
	MayAct:     report.Owner,
	Limits:     []*code.Term{code.ApplianceService.Term, code.PracticeService.Term},
	Reads:      []string{"/appliances/*/serviceAccess"},
}, appliances, dutyPair{code.ApplianceService, code.PracticeService}.owed(
	func(a *layout.Appliance) *layout.Given[bool] { return &a.Access }, true, "within reach for service", "not within reach for service",
	"A panel that comes off without tools in front of the burner and of the connection.")))

package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "cylinder.outside-living",
	Asks:       "Does the cylinder, connected, spare or empty, stand out of every space in which people sit, sleep, wash or cook?",
	Why:        "Propane is heavier than air: what a cylinder leaks lies on the floor around people and finds the first spark.",
	NotCovered: "Any other enclosed space: see cylinder.in-locker.",
	Word:       report.Danger,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.CylinderInside.Term, code.PracticeCylinderInside.Term},
	Reads:      []string{"/cylinders/*/in", "/spaces/*/use"},
	NeverWaive: true,
}, cylinders, orPractice(code.CylinderInside, code.PracticeCylinderInside, outsideLiving)))

func outsideLiving(s *check.Sheet, c *layout.Cylinder, asked code.DutyLimit) check.Ruling {
	duty := check.Asked(s, asked, nil)
	place := check.Item(s, &c.In)
	space, inside := place.(*layout.Space)
	if !inside {
		return check.Is(s, true, duty, standsIn(place), "out of every space that people use")
	}
	use := check.Read(s, &space.Use)
	return check.Is(s, !isOccupied(use), duty, standsIn(place)+", a space for "+string(use), "out of every space that people use").
		Mend("Outside, or in a locker that is sealed from every space and opens and vents only to the open air.", check.SetWord(&c.In, layout.OpenAir))
}

func standsIn(place layout.Item) string {
	if place == nil {
		return "in the open air"
	}
	return "in " + place.Label()
}

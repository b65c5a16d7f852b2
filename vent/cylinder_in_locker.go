package vent

import (
	"slices"

	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "cylinder.in-locker",
	Asks:       "Does the cylinder stand in the open air, or in a locker that is itself sealed, opened from outside and vented low?",
	Why:        "An underfloor bay, a boot or a cabinet is no locker: gas gathers there and seeps in where people are.",
	NotCovered: "Vents high up, distances and restraint: they have checks of their own.",
	Word:       report.Danger,
	MayAct:     report.LicensedFitter,
	Limits: slices.Concat([]*code.Term{code.CylinderPlaces.Term, code.PracticeCylinderPlaces.Term},
		lockerSealed.Limits, lockerAccess.Limits, lockerLowVent.Limits),
	Reads:      append([]string{"/cylinders", "/cylinders/*/in", "/cylinders/*/propane", "/dwelling/firstUsed", "/lockers/*/vents/*/pipeLength", "/lockers/*/vents/*/fallsOutward"}, lockerReads...),
	Inventory:  []layout.InventoryList{layout.InventoryListCylinders},
	Claims:     append([]string{"/lockers/*/door/seal"}, sealClaims...),
	NeverWaive: true,
}, cylinders, orPractice(code.CylinderPlaces, code.PracticeCylinderPlaces, inAPlaceForIt), inASoundLocker))

func inAPlaceForIt(s *check.Sheet, c *layout.Cylinder, places code.WordLimit) check.Ruling {
	place := check.Item(s, &c.In)
	in, _ := c.In.Get()
	allowed := check.AllowedWords(s, places, nil)
	return check.OneOf(s, in.Section(), allowed).Worded(standsIn(place), "in one of: "+allowed.String()).
		Mend("Outside, or in a locker that is sealed from every space and opens and vents only to the open air.", check.SetWord(&c.In, layout.OpenAir))
}

func inASoundLocker(s *check.Sheet, c *layout.Cylinder) check.Ruling {
	locker, ok := check.Item(s, &c.In).(*layout.Locker)
	if !ok {
		return check.NotApplicable(s, "it stands in no locker")
	}
	return check.All(s,
		func(s *check.Sheet) check.Ruling { return check.Same(s, lockerSealed, locker) },
		func(s *check.Sheet) check.Ruling { return check.Same(s, lockerAccess, locker) },
		func(s *check.Sheet) check.Ruling { return check.Same(s, lockerLowVent, locker) })
}

package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
	"lowvent.example/vent/box"
)

var _ = add(check.For(check.Descriptor{
	ID:         "regulator.place",
	Asks:       "Is the regulator outside or in the cylinders' locker, fixed, covered, over the cylinders, with its breather down?",
	Why:        "Its breather lets gas out when it fails. Spray and ice in there jam it wide open, and what runs down a tail drowns it.",
	NotCovered: "Regulators that are part of an appliance, and where a relief pipe ends.",
	Word:       report.Warning,
	MayAct:     report.LicensedFitter,
	Limits: []*code.Term{code.RegulatorPlaces.Term, code.PracticeRegulatorPlaces.Term, code.RegulatorMounted.Term, code.PracticeRegulatorMounted.Term,
		code.RegulatorVentFaces.Term, code.PracticeRegulatorVentFaces.Term, code.RegulatorCovered.Term, code.PracticeRegulatorCovered.Term, code.RegulatorAbove.Term},
	Reads: []string{"/regulators/*/in", "/regulators/*/mounted", "/regulators/*/ventFaces", "/regulators/*/covered",
		"/regulators/*/at", "/regulators/*/box/from", "/regulators/*/box/to", "/cylinders", "/cylinders/*/role", "/cylinders/*/at",
		"/cylinders/*/box/from", "/cylinders/*/box/to", "/cylinders/*/diameter", "/cylinders/*/height"},
}, regulators, regulatorIn, mounted, breatherDown, covered, overCylinders))

func regulators(l *layout.Layout) *layout.Section[layout.Regulator] { return &l.Regulators }

const moveRegulator = "Into the cylinders' locker, on its wall or a bracket, breather down, over the cylinders; the fitter moves it."

// wordBy asks that a word is one that the code, or failing that common practice,
// allows.
func wordBy[W ~string](s *check.Sheet, byCode, byPractice code.WordLimit, found func(*check.Sheet) W, mend func(check.Ruling) check.Ruling) check.Ruling {
	return check.ByEither(s, byCode, byPractice, func(s *check.Sheet, limit code.WordLimit) check.Ruling {
		return mend(check.OneOf(s, found(s), check.AllowedWords(s, limit, nil)))
	})
}

func regulatorIn(s *check.Sheet, r *layout.Regulator) check.Ruling {
	return wordBy(s, code.RegulatorPlaces, code.PracticeRegulatorPlaces,
		func(s *check.Sheet) string { return check.Read(s, &r.In).Section() },
		func(ruling check.Ruling) check.Ruling { return ruling.About("where it is").Mend(moveRegulator) })
}

func mounted(s *check.Sheet, r *layout.Regulator) check.Ruling {
	return wordBy(s, code.RegulatorMounted, code.PracticeRegulatorMounted,
		func(s *check.Sheet) layout.Mounting { return check.Read(s, &r.Mounted) },
		func(ruling check.Ruling) check.Ruling { return ruling.About("what it is fixed to").Mend(moveRegulator) })
}

func breatherDown(s *check.Sheet, r *layout.Regulator) check.Ruling {
	return wordBy(s, code.RegulatorVentFaces, code.PracticeRegulatorVentFaces,
		func(s *check.Sheet) layout.Facing { return check.Read(s, &r.VentFaces) },
		func(ruling check.Ruling) check.Ruling {
			return ruling.About("its breather").Mend(moveRegulator, check.SetWord(&r.VentFaces, layout.FacingDown))
		})
}

func covered(s *check.Sheet, r *layout.Regulator) check.Ruling {
	return check.ByEither(s, code.RegulatorCovered, code.PracticeRegulatorCovered, func(s *check.Sheet, duty code.DutyLimit) check.Ruling {
		asked := check.Asked(s, duty, nil)
		is := check.Read(s, &r.Covered)
		return check.Is(s, is, asked, underCover(is), underCover(true)).
			Mend("A hood over it that keeps spray and ice off and lets air to its breather.", check.SetBool(&r.Covered, true))
	})
}

func underCover(is bool) string {
	if is {
		return "covered"
	}
	return "open to rain, spray and ice"
}

// overCylinders asks that the regulator hangs no lower than the top of any cylinder
// that is in service, so that nothing runs into it.
func overCylinders(s *check.Sheet, r *layout.Regulator) check.Ruling {
	check.Asked(s, code.RegulatorAbove, nil)
	var serving []*layout.Cylinder
	for _, c := range check.List(s, &s.Layout().Cylinders) {
		if check.Read(s, &c.Role) == layout.CylinderRoleInService {
			serving = append(serving, c)
		}
	}
	none := func() check.Ruling { return check.NotApplicable(s, "no cylinder is in service") }
	return check.Every(s, serving, none, func(s *check.Sheet, c *layout.Cylinder) check.Ruling {
		duty := check.Asked(s, code.RegulatorAbove, nil)
		regulator, cylinder := at(s, r, &r.Position), cylinderAt(s, c)
		over := check.Band(s, "h", between(cylinder, regulator, "height"), heightOverTop(cylinder.box, regulator.box))
		return check.AtLeast(s, over, check.Against(duty, unit.Length(0))).About("over the top of %s", c.Label()).Mend(moveRegulator)
	})
}

// heightOverTop is how far the lowest point of a thing lies over the highest of
// another.
func heightOverTop(below, thing box.Box) unit.Value[unit.Length] {
	lowest, _ := box.LowestPoint(thing)
	return less(lowest, below.To.Z)
}

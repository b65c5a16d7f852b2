package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "cylinder.relief-path",
	Asks:       "Does the cylinder's safety relief point away from where people are, and clear of the openings below it?",
	Why:        "In a fire or a hot summer the relief throws out a jet of propane: at a window, a door or a bed it is a flame thrower.",
	NotCovered: "Cylinders in a locker let their jet out by its vents: locker.vent-clear. What lights it: ignition.near-gas. Ways out: exit.clear.",
	Word:       report.Danger,
	Instead:    []string{"/tapeMeasures/*/is"},
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.CylinderReliefFaces.Term, code.PracticeReliefFaces.Term, code.CylinderReliefToOpening.Term, code.PracticeReliefToOpening.Term},
	Reads: []string{"/cylinders/*/reliefValve", "/cylinders/*/reliefFaces", "/cylinders/*/in", "/cylinders/*/at", "/cylinders/*/box/from", "/cylinders/*/box/to",
		"/cylinders/*/diameter", "/cylinders/*/height", "/openings", "/openings/*/at", "/openings/*/box/from", "/openings/*/box/to", "/spaces", "/tapeMeasures/*/is"},
	Surveys: []layout.SurveyList{layout.SurveyListOpenings},
	Sources: []string{"Euclid, least distance between boxes"},
}, cylinders, reliefFaces, reliefClear))

func noRelief(s *check.Sheet) check.Ruling {
	return check.NotApplicable(s, "it is stated to have no safety relief")
}

func reliefFaces(s *check.Sheet, c *layout.Cylinder) check.Ruling {
	if !check.Read(s, &c.ReliefValve) && !s.Stuck() {
		return noRelief(s)
	}
	return wordBy(s, code.CylinderReliefFaces, code.PracticeReliefFaces,
		func(s *check.Sheet) layout.Facing { return check.Read(s, &c.ReliefFaces) },
		func(ruling check.Ruling) check.Ruling {
			return ruling.About("which way it points").Mend("Turn the cylinder until its relief points into the open, and hold it there.")
		})
}

func reliefClear(s *check.Sheet, c *layout.Cylinder) check.Ruling {
	switch {
	case !check.Read(s, &c.ReliefValve) && !s.Stuck():
		return noRelief(s)
	case check.Read(s, &c.In) != layout.OpenAir && !s.Stuck():
		return check.NotApplicable(s, "it does not stand in the open air")
	}
	return check.ByEither(s, code.CylinderReliefToOpening, code.PracticeReliefToOpening, func(s *check.Sheet, limit lengthLimit) check.Ruling { return clearBelow(s, c, limit) })
}

// clearBelow asks for the distance in plan to every opening that does not lie wholly
// above the cylinder's top, where its relief is.
func clearBelow(s *check.Sheet, c *layout.Cylinder, limit lengthLimit) check.Ruling {
	surveyEverywhere(s, layout.SurveyListOpenings)
	check.Limit(s, "d_need", limit, nil)
	none := func() check.Ruling { return check.NotApplicable(s, "the file states that there is no opening") }
	return check.Every(s, check.List(s, &s.Layout().Openings), none, func(s *check.Sheet, o *layout.Opening) check.Ruling {
		need := check.Limit(s, "d_need", limit, nil)
		relief, opening := cylinderAt(s, c), at(s, o, &o.Position)
		relief.box.From.Z = relief.box.To.Z
		if wholly(above(relief, opening)) {
			return check.NotApplicable(s, "the opening lies wholly above the relief")
		}
		return check.AtLeast(s, apartInPlan(s, "d", relief, opening), need).Points(o.Spot()).
			Mend("Stand the cylinder further off, or close the opening for good.")
	})
}

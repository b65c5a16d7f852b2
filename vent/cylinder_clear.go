package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "cylinder.clear",
	Asks:       "Is a cylinder in the open air clear of every opening at or below its top through which gas could get in?",
	Why:        "A cylinder without a locker leaks along the wall it stands at, and the next door or grating takes the gas in.",
	NotCovered: "A cylinder in a locker: there the vents are judged. Ignition sources (ignition.near-gas), and where its relief valve blows.",
	Word:       report.Danger,
	Instead:    []string{"/tapeMeasures/*/is"},
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.CylinderToOpening.Term, code.PracticeCylinderToOpening.Term},
	Reads: []string{"/cylinders/*/in", "/cylinders/*/at", "/cylinders/*/box/from", "/cylinders/*/box/to", "/cylinders/*/diameter", "/cylinders/*/height",
		"/openings", "/openings/*/kind", "/openings/*/at", "/openings/*/box/from", "/openings/*/box/to", "/fixedVents", "/fixedVents/*/at", "/spaces", "/tapeMeasures/*/is"},
	Surveys: []layout.SurveyList{layout.SurveyListOpenings, layout.SurveyListFixedVents},
	Sources: []string{"Euclid, least distance between boxes"},
}, cylinders, func(s *check.Sheet, c *layout.Cylinder) check.Ruling {
	if check.Read(s, &c.In) != layout.OpenAir {
		return check.NotApplicable(s, "it does not stand in the open air")
	}
	return check.ByEither(s, code.CylinderToOpening, code.PracticeCylinderToOpening, func(s *check.Sheet, limit lengthLimit) check.Ruling { return clearOfLowOpenings(s, c, limit) })
}))

func clearOfLowOpenings(s *check.Sheet, c *layout.Cylinder, limit lengthLimit) check.Ruling {
	check.Limit(s, "d_need", limit, cylinderFacts(c))
	none := func() check.Ruling { return check.NotApplicable(s, "the file states that there is no opening") }
	return check.Every(s, waysIn(s), none, func(s *check.Sheet, o layout.Item) check.Ruling {
		need := check.Limit(s, "d_need", limit, cylinderFacts(c))
		if wholly(above(cylinderAt(s, c), wayAt(s, o))) && !countsAtAnyHeight(s, o) {
			return check.NotApplicable(s, "the opening lies wholly above the cylinder")
		}
		return check.AtLeast(s, spaced(s, standing(c), wayFrom(o)), need).Points(o.Spot()).
			Mend("Move the cylinder away from the opening, or close the opening for good.")
	})
}

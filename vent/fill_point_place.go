package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:   "fill-point.place",
	Asks: "Is each point at which a cylinder is filled in place on the outside, guarded, and clear of openings, intakes and whatever lights gas?",
	Why:  "Every filling lets some gas go at the coupling, and a filling that nobody stops fills the cylinder with liquid to the brim.",
	NotCovered: "Whether a cylinder may be filled in place at all, for which it has to be made and its law has to allow it: ask the fitter. " +
		"The hose of whoever fills it, and the ground below.",
	Word:    report.Danger,
	Instead: []string{"/tapeMeasures/*/is"},
	MayAct:  report.LicensedFitter,
	Limits: []*code.Term{code.PracticeFillPointPlaces.Term, code.PracticeFillPointGuards.Term, code.PracticeFillPointToOpening.Term,
		code.FillPointToIgnition.Term, code.FillPointToIntake.Term, code.PracticeFillPointToIgnition.Term},
	Reads: []string{"/fillPoints/*/in", "/fillPoints/*/at", "/fillPoints/*/box/from", "/fillPoints/*/box/to", "/fillPoints/*/capped", "/fillPoints/*/nonReturn",
		"/fillPoints/*/overfillStop", "/openings", "/openings/*/kind", "/openings/*/at", "/openings/*/box/from", "/openings/*/box/to", "/fixedVents", "/fixedVents/*/at", "/spaces",
		"/ignitionSources", "/ignitionSources/*/in", "/ignitionSources/*/at", "/ignitionSources/*/box/from", "/ignitionSources/*/box/to",
		"/appliances", "/appliances/*/in", "/appliances/*/at", "/appliances/*/box/from", "/appliances/*/box/to", "/stoves", "/stoves/*/in",
		"/exhausts", "/exhausts/*/in", "/exhausts/*/at", "/exhausts/*/box/from", "/exhausts/*/box/to", "/fans", "/fans/*/in",
		"/flues", "/flues/*/terminal/at", "/flues/*/intake/at", "/tapeMeasures/*/is"},
	Surveys:   []layout.SurveyList{layout.SurveyListOpenings, layout.SurveyListFixedVents, layout.SurveyListIgnitionSources},
	Inventory: append([]layout.InventoryList{layout.InventoryListFlues}, sparkLists...),
	Sources:   []string{"Euclid, least distance between boxes"},
}, fillPoints, onTheOutside, fillGuarded, fillClearOfOpenings, fillClearOfSparks, fillClearOfIntakes))

func fillPoints(l *layout.Layout) *layout.Section[layout.FillPoint] { return &l.FillPoints }

func onTheOutside(s *check.Sheet, f *layout.FillPoint) check.Ruling {
	in := check.Read(s, &f.In)
	return check.OneOf(s, in.Section(), check.AllowedWords(s, code.PracticeFillPointPlaces, nil)).
		Mend("A fill point in the outer skin, its pipe made and tested by the fitter.", check.SetWord(&f.In, layout.OpenAir))
}

func fillGuarded(s *check.Sheet, f *layout.FillPoint) check.Ruling {
	part := func(g *layout.Given[bool], what string) func(*check.Sheet) check.Ruling {
		return func(s *check.Sheet) check.Ruling {
			duty := check.Asked(s, code.PracticeFillPointGuards, nil)
			found, has := "with "+what, check.Read(s, g)
			if !has {
				found = "without " + what
			}
			return check.Is(s, has, duty, found, "with "+what).
				Mend("A fill point and a cylinder made for filling in place, with "+what+"; nobody fills it until then.", check.SetBool(g, true))
		}
	}
	return check.All(s, part(&f.Capped, "a cap"), part(&f.NonReturn, "a check valve"), part(&f.StopAt80, "a stop at 80 %"))
}

func fillClearOfOpenings(s *check.Sheet, f *layout.FillPoint) check.Ruling {
	var ways []neighbour
	for _, way := range waysIn(s) {
		ways = append(ways, wayFrom(way))
	}
	return keptClear(s, standing(f), ways, code.PracticeFillPointToOpening, nil, "the file states that there is no opening",
		"Move the fill point away from the opening, where the fitter agrees.")
}

func fillClearOfSparks(s *check.Sheet, f *layout.FillPoint) check.Ruling {
	return check.ByEither(s, code.FillPointToIgnition, code.PracticeFillPointToIgnition, func(s *check.Sheet, limit lengthLimit) check.Ruling {
		return keptClear(s, standing(f), append(outdoorSparks(s), flueEnds(s)...), limit, nil, "the file states that nothing outside can light gas",
			"Move the fill point, or what can light gas, until they are this far apart.")
	})
}

func fillClearOfIntakes(s *check.Sheet, f *layout.FillPoint) check.Ruling {
	return check.ByEither(s, code.FillPointToIntake, code.PracticeFillPointToIgnition, func(s *check.Sheet, limit lengthLimit) check.Ruling {
		return keptClear(s, standing(f), append(openingsThat(s, isIntake), flueEnds(s)...), limit, nil, "the file states that there is no air intake",
			"Move the fill point away from the intake, where the fitter agrees.")
	})
}

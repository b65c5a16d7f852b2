package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "generator.outside",
	Asks:       "Does every engine, generator and fuel heater keep its fumes outside: the generator itself, the joints of the exhaust, and its end?",
	Why:        "The exhaust of a generator in a garage below the bed kills everybody in it before the tank is empty.",
	NotCovered: "The heat of the exhaust, its flue (flue.route), a portable generator beside a neighbour's window, and awnings and tents put up round its end.",
	Word:       report.Danger,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.PracticeGeneratorPlaces.Term, code.PracticeExhaustJoints.Term, code.PracticeExhaustToOpening.Term},
	Reads: []string{"/exhausts/*/kind", "/exhausts/*/in", "/exhausts/*/jointsInside", "/exhausts/*/outlet", "/spaces", "/spaces/*/use",
		"/openings", "/openings/*/of", "/openings/*/at", "/openings/*/box/from", "/openings/*/box/to", "/fixedVents", "/fixedVents/*/of", "/fixedVents/*/at"},
	Surveys: []layout.SurveyList{layout.SurveyListOpenings, layout.SurveyListFixedVents},
	Sources: []string{"Euclid, least distance between boxes"},
}, exhausts, generatorPlace, jointsOutside, endsClear))

func exhausts(l *layout.Layout) *layout.Section[layout.Exhaust] { return &l.Exhausts }

// generatorPlace asks where a generator stands. An engine and a heater have their
// places; their exhausts are judged all the same.
func generatorPlace(s *check.Sheet, x *layout.Exhaust) check.Ruling {
	if check.Read(s, &x.Kind) != layout.ExhaustKindGenerator {
		return check.NotApplicable(s, "it is no generator")
	}
	place := check.Item(s, &x.In)
	if place == nil {
		return check.NotApplicable(s, "it stands in the open air")
	}
	allowed := check.AllowedWords(s, code.PracticeGeneratorPlaces, nil)
	found := "lockers"
	if space, is := place.(*layout.Space); is {
		found = string(check.Read(s, &space.Use))
	}
	return check.OneOf(s, found, allowed).Worded(standsIn(place)+", for "+found, "in the open air, or in a space for "+allowed.String()).
		Mend("Run it in the open air, away from every opening; never inside, not even with the doors open.", check.SetWord(&x.In, layout.OpenAir))
}

func jointsOutside(s *check.Sheet, x *layout.Exhaust) check.Ruling {
	duty := check.Asked(s, code.PracticeExhaustJoints, nil)
	inside := check.Read(s, &x.JointsInside)
	found := "no joint inside"
	if inside {
		found = "a joint inside"
	}
	return check.Is(s, !inside, duty, found, "no joint inside").
		Mend("An exhaust in one piece until it is outside, made by whoever may work on it.", check.SetBool(&x.JointsInside, false))
}

// endsClear asks that the end of the exhaust is away from every opening and fixed vent of
// a space that people use.
func endsClear(s *check.Sheet, x *layout.Exhaust) check.Ruling {
	var ways []neighbour
	for _, way := range waysIn(s) {
		if ofPeople(s, way) {
			ways = append(ways, wayFrom(way))
		}
	}
	return keptClear(s, endAt(x, &x.Outlet), ways, code.PracticeExhaustToOpening, nil, "no space that people use has an opening",
		"The exhaust led on to where nothing opens, by whoever may work on it; until then keep that opening shut while it runs.")
}

// ofPeople takes whether a way in leads into a space that people use.
func ofPeople(s *check.Sheet, way layout.Item) bool {
	var of *layout.Given[layout.Ref]
	switch way := way.(type) {
	case *layout.Opening:
		of = &way.Of
	case *layout.FixedVent:
		of = &way.Of
	}
	space, is := check.Item(s, of).(*layout.Space)
	return is && isOccupied(check.Read(s, &space.Use))
}

package vent

import (
	"slices"

	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/vent/box"
)

var _ = add(check.ForItems(check.Descriptor{
	ID:   "flue.terminal",
	Asks: "Does the flue end clear of every way back in: not under the floor, and far from openings, air intakes, fuel and locker vents?",
	Why:  "Fumes that leave by the flue and come in by the window have killed whole families; a hot end beside leaking gas lights it.",
	NotCovered: "Awnings and tents put up over the end, snow, wind, and the outlet of an engine or generator (generator.outside). " +
		"The end of an air pipe of the appliance is judged by its manual.",
	Word:   report.Danger,
	MayAct: report.LicensedFitter,
	Limits: []*code.Term{code.TerminalNotUnder.Term, code.PracticeTerminalNotUnder.Term, code.TerminalToOpening.Term, code.PracticeTerminalToOpening.Term,
		code.TerminalToFuel.Term, code.PracticeTerminalToFuel.Term, code.TerminalIntakeReach.Term, code.TerminalOverIntake.Term},
	Reads: append([]string{"/flues/*/kind", "/flues/*/terminal/underDwelling", "/flues/*/terminal/at", "/flues/*/terminal/wall",
		"/appliances/*/plate/input", "/appliances/*/plate/basis", "/appliances/*/plate/consumption", "/stoves/*/output",
		"/openings", "/openings/*/kind", "/openings/*/of", "/openings/*/at", "/openings/*/box/from", "/openings/*/box/to", "/spaces",
		"/fixedVents", "/fixedVents/*/at", "/lockers", "/lockers/*/vents", "/lockers/*/vents/*/at", "/lockers/*/vents/*/endsAt",
		"/fillPoints", "/fillPoints/*/at", "/fillPoints/*/box/from", "/fillPoints/*/box/to"}, flueReads...),
	Instead:   []string{"/appliances/*/plate/consumption", "/lockers/*/vents/*/endsAt"},
	Surveys:   []layout.SurveyList{layout.SurveyListOpenings, layout.SurveyListFixedVents},
	Inventory: []layout.InventoryList{layout.InventoryListFlues},
	Sources:   []string{"Euclid, least distance between boxes"},
}, fired, eachFlue(notUnder), eachFlue(clearOfWaysIn), eachFlue(aboveIntakes), eachFlue(clearOfFuel)))

func notUnder(s *check.Sheet, item layout.Item, x *layout.Flue) check.Ruling {
	return check.ByEither(s, code.TerminalNotUnder, code.PracticeTerminalNotUnder, func(s *check.Sheet, duty code.DutyLimit) check.Ruling {
		asked := check.Asked(s, duty, flueFacts(item, x))
		under := check.Read(s, &x.Terminal.Underside)
		return check.Is(s, !under, asked, either(under, "ends under the floor", "ends beside or above"), "ends beside or above").
			Mend("The fitter leads it out through a wall or the roof.")
	})
}

// terminalAt takes where a flue ends.
func terminalAt(s *check.Sheet, x *layout.Flue) thing {
	return endOf(s, x, &x.Terminal.At)
}

// farFrom asks that a flue's end is so far from each of some things.
func farFrom(s *check.Sheet, item layout.Item, x *layout.Flue, limit lengthLimit, things []layout.Item) check.Ruling {
	check.Limit(s, "d_need", limit, flueFacts(item, x))
	none := func() check.Ruling {
		return check.NotApplicable(s, "the file states that there is nothing of the kind")
	}
	return check.Every(s, things, none, func(s *check.Sheet, each layout.Item) check.Ruling {
		need := check.Limit(s, "d_need", limit, flueFacts(item, x))
		return check.AtLeast(s, apart(s, "d", terminalAt(s, x), wayAt(s, each)), need).About("%s to %s", x.Label(), each.Label()).
			Points(x.Terminal.At.Spot()).Mend("The fitter moves the flue's end, or the opening is closed for good.")
	})
}

func clearOfWaysIn(s *check.Sheet, item layout.Item, x *layout.Flue) check.Ruling {
	return check.ByEither(s, code.TerminalToOpening, code.PracticeTerminalToOpening, func(s *check.Sheet, limit lengthLimit) check.Ruling {
		return farFrom(s, item, x, limit, waysIntoRooms(s))
	})
}

// waysIntoRooms lists every opening and fixed vent of a space by which fumes can come in.
func waysIntoRooms(s *check.Sheet) []layout.Item {
	surveyEverywhere(s, layout.SurveyListOpenings)
	surveyEverywhere(s, layout.SurveyListFixedVents)
	var all []layout.Item
	for _, o := range check.List(s, &s.Layout().Openings) {
		if check.Read(s, &o.Of) != layout.OpenAir {
			all = append(all, o)
		}
	}
	for _, v := range check.List(s, &s.Layout().FixedVents) {
		all = append(all, v)
	}
	return all
}

// openingsOf lists the openings of some kinds.
func openingsOf(s *check.Sheet, kinds ...layout.OpeningKind) []layout.Item {
	surveyEverywhere(s, layout.SurveyListOpenings)
	var all []layout.Item
	for _, o := range check.List(s, &s.Layout().Openings) {
		if slices.Contains(kinds, check.Read(s, &o.Kind)) {
			all = append(all, o)
		}
	}
	return all
}

// aboveIntakes asks that a flue's end near an air intake with a fan lies above it.
func aboveIntakes(s *check.Sheet, item layout.Item, x *layout.Flue) check.Ruling {
	none := func() check.Ruling {
		return check.NotApplicable(s, "the file states that there is no air intake with a fan")
	}
	return check.Every(s, openingsOf(s, layout.OpeningKindMechanicalIntake), none, func(s *check.Sheet, each layout.Item) check.Ruling {
		reach := check.Limit(s, "d_need", code.TerminalIntakeReach, flueFacts(item, x))
		above := check.Limit(s, "h_need", code.TerminalOverIntake, flueFacts(item, x))
		a, b := terminalAt(s, x), at(s, each, layout.PositionOf(each))
		high := func(s *check.Sheet) check.Ruling {
			return check.AtLeast(s, check.Band(s, "h", between(b, a, "height of the flue's end"), box.Rise(b.box, a.box)), above)
		}
		far := func(s *check.Sheet) check.Ruling {
			return check.AtLeast(s, check.Band(s, "d", between(a, b, "distance in plan"), box.PlanGap(a.box, b.box)), reach)
		}
		return check.Any(s, high, far).About("%s to %s", x.Label(), each.Label()).
			Mend("The fitter leads the flue's end higher, or farther from the intake.")
	})
}

func clearOfFuel(s *check.Sheet, item layout.Item, x *layout.Flue) check.Ruling {
	return check.ByEither(s, code.TerminalToFuel, code.PracticeTerminalToFuel, func(s *check.Sheet, limit lengthLimit) check.Ruling {
		return farFrom(s, item, x, limit, fuelOutlets(s))
	})
}

// fuelOutlets lists the places outside where fuel or its vapour comes out.
func fuelOutlets(s *check.Sheet) []layout.Item {
	all := openingsOf(s, layout.OpeningKindVehicleFuelFiller)
	for _, k := range check.List(s, &s.Layout().Lockers) {
		for _, v := range check.List(s, &k.Vents) {
			all = append(all, v)
		}
	}
	for _, p := range check.List(s, &s.Layout().FillPoints) {
		all = append(all, p)
	}
	return all
}

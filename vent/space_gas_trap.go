package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:   "space.gas-trap",
	Asks: "Where gas can get into a space that holds something to light it, does a fixed opening at the bottom let the gas out?",
	Why:  "A bay, a bilge or a stepwell without a low opening keeps what leaks into it, and sooner or later a pump or switch in there works.",
	NotCovered: "How large that opening is, how far gas spreads along a floor, and what leaks in through a floor or a wall that is not drawn. " +
		"Afloat there is often no low opening to be had: then what sparks has to go.",
	Word:   report.Danger,
	MayAct: report.LicensedFitter,
	Limits: []*code.Term{code.PracticeLowOpening.Term, code.PracticeVentEnds.Term, code.PracticeTightGlands.Term},
	Reads: []string{"/spaces/*/lowestPoint", "/spaces/*/openTo", "/ignitionSources", "/ignitionSources/*/in", "/appliances", "/appliances/*/in",
		"/stoves", "/stoves/*/in", "/exhausts", "/exhausts/*/in", "/fans", "/fans/*/in",
		"/regulators", "/regulators/*/in", "/cylinders", "/cylinders/*/in", "/openEnds", "/openEnds/*/in", "/junctions", "/junctions/*/in",
		"/lines", "/lines/*/joints", "/lines/*/joints/*/in", "/lockers", "/lockers/*/sealedFrom/*/seal", "/lockers/*/penetrations/*/to", "/lockers/*/penetrations/*/gland",
		"/fixedVents", "/fixedVents/*/of", "/fixedVents/*/level", "/fixedVents/*/closable", "/fixedVents/*/endsIn/kind"},
	Surveys: []layout.SurveyList{layout.SurveyListIgnitionSources},
	Inventory: append([]layout.InventoryList{layout.InventoryListRegulators, layout.InventoryListCylinders, layout.InventoryListOpenEnds,
		layout.InventoryListLines}, sparkLists...),
	Claims: []string{"/lockers/*/sealedFrom/*/seal", "/lockers/*/penetrations/*/gland"},
}, spaces, func(s *check.Sheet, space *layout.Space) check.Ruling {
	if len(standingIn(s, space, lights(s))) == 0 {
		surveyIn(s, space, layout.SurveyListIgnitionSources)
		sparks(s)
		return check.NotApplicable(s, "the file states that nothing there can light gas")
	}
	way := wayIn(s, space)
	if way == "" {
		for _, list := range gasLists {
			check.Inventory(s, list)
		}
		return check.NotApplicable(s, "the file states nothing there from which gas can come")
	}
	duty := check.Asked(s, code.PracticeLowOpening, nil)
	found, open := way+"; no fixed opening at its bottom", opensLow(s, space)
	if open {
		found = way + "; a fixed opening at its bottom"
	}
	return check.Is(s, open, duty, found, "a fixed opening at its bottom").Points(space.Spot()).
		Mend("A fixed opening to the open air at the lowest point; or what sparks, and every gas part, taken out of the space.")
}))

// gasLists are the lists of what gas can come from.
var gasLists = []layout.InventoryList{layout.InventoryListAppliances, layout.InventoryListRegulators, layout.InventoryListCylinders,
	layout.InventoryListOpenEnds, layout.InventoryListLines}

// wayIn takes by which way gas can get into a space, in words, and "" for none that the
// file states: a part in it that can leak, a locker that is not tight to it, or a space
// beside it from whose floor gas runs down into it.
func wayIn(s *check.Sheet, space *layout.Space) string {
	if part := gasPart(s, space); part != "" {
		return part + " in it"
	}
	for _, k := range check.List(s, &s.Layout().Lockers) {
		if tight, _ := tightTo(s, k, space); !tight {
			return k.Label() + " not tight to it"
		}
	}
	for _, way := range check.List(s, &space.OpenTo) {
		beside := s.Layout().Spaces.Get(way.ID())
		floor, next := check.Measure(s, "h", &space.Lowest), check.Measure(s, check.Symbol("h", way.ID()), &beside.Lowest)
		if part := gasPart(s, beside); part != "" && floor < next {
			return part + " in " + beside.Label() + ", from which gas runs down into it"
		}
	}
	return ""
}

// gasPart takes the first part of the gas installation in a space that can leak.
func gasPart(s *check.Sheet, space *layout.Space) string {
	l := s.Layout()
	for _, find := range []func() layout.Item{
		func() layout.Item { return first(standingIn(s, space, check.List(s, &l.Appliances))) },
		func() layout.Item { return first(standingIn(s, space, check.List(s, &l.Regulators))) },
		func() layout.Item { return first(standingIn(s, space, check.List(s, &l.Cylinders))) },
		func() layout.Item { return first(standingIn(s, space, check.List(s, &l.OpenEnds))) },
		func() layout.Item { return first(standingIn(s, space, check.List(s, &l.Junctions))) },
		func() layout.Item { return lineJoinedIn(s, space) },
	} {
		if part := find(); part != nil {
			return part.Label()
		}
	}
	return ""
}

// lineJoinedIn takes the first line with a joint in a space, or nil.
func lineJoinedIn(s *check.Sheet, space *layout.Space) layout.Item {
	for _, line := range check.List(s, &s.Layout().Lines) {
		if len(standingIn(s, space, check.List(s, &line.Joints))) > 0 {
			return line
		}
	}
	return nil
}

func first[T layout.Item](items []T) layout.Item {
	if len(items) == 0 {
		return nil
	}
	return items[0]
}

// opensLow takes whether a space has a fixed low opening to the open air.
func opensLow(s *check.Sheet, space *layout.Space) bool {
	for _, v := range check.List(s, &s.Layout().FixedVents) {
		if check.Read(s, &v.Of) != space.Ref() || check.Read(s, &v.Level) != layout.VentLevelLow {
			continue
		}
		shuts, ends := check.Read(s, &v.Closable), check.Read(s, &v.EndsIn.Kind)
		if !shuts && check.AllowedWords(s, code.PracticeVentEnds, nil).Has(string(ends)) {
			return true
		}
	}
	return false
}

package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/vent/box"
)

var _ = add(check.For(check.Descriptor{
	ID:         "locker.vent-clear",
	Asks:       "Are the locker's vents clear of every opening at or below them through which gas could get in, and of flue terminals?",
	Why:        "What drains from the vent flows down and along the outside: a door, hatch or floor hole beside it takes the gas in again.",
	NotCovered: "Ignition sources (ignition.near-gas), wind, and gas that lies on still ground around the dwelling.",
	Word:       report.Danger,
	Instead:    []string{"/lockers/*/vents/*/endsAt", "/tapeMeasures/*/is"},
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.VentToOpening.Term, code.PracticeVentToOpening.Term, code.PracticeVentToFlue.Term},
	Reads: []string{"/lockers/*/vents", "/lockers/*/vents/*/at", "/lockers/*/vents/*/endsAt", "/openings", "/openings/*/kind",
		"/openings/*/at", "/openings/*/box/from", "/openings/*/box/to", "/spaces", "/tapeMeasures/*/is",
		"/fixedVents", "/fixedVents/*/at", "/flues", "/flues/*/terminal/at", "/flues/*/intake/at"},
	Surveys:   []layout.SurveyList{layout.SurveyListOpenings, layout.SurveyListFixedVents},
	Inventory: []layout.InventoryList{layout.InventoryListFlues},
	Sources:   []string{"Euclid, least distance between boxes"},
}, lockers, func(s *check.Sheet, k *layout.Locker) check.Ruling {
	return check.ByEither(s, code.VentToOpening, code.PracticeVentToOpening, func(s *check.Sheet, l lengthLimit) check.Ruling { return clearOfOpenings(s, k, l) })
}, clearOfFlues))

// clearOfFlues asks that no vent is beside the end of a flue, where fumes are hot and a
// burner draws its air.
func clearOfFlues(s *check.Sheet, k *layout.Locker) check.Ruling {
	none := func() check.Ruling { return check.NotApplicable(s, "the file states that the locker has no vent") }
	return check.Every(s, check.List(s, &k.Vents), none, func(s *check.Sheet, v *layout.LockerVent) check.Ruling {
		end := neighbour{Item: v, drawn: true, where: func(s *check.Sheet) thing { return ventAt(s, v) }}
		return keptClear(s, end, flueEnds(s), code.PracticeVentToFlue, nil, "the file states that there is no flue",
			"Move the vent or its end; a flue is moved by a licensed fitter only.")
	})
}

// waySorts parts ways in by kind, the lowest first: one that lies wholly above the vent
// is no way in for most kinds.
var waySorts = sorts{"ways in", func(i layout.Item) (string, bool) {
	if o, is := i.(*layout.Opening); is {
		return stated(&o.Kind)
	}
	return "fixed vent", true
}, lowestFirst}

func clearOfOpenings(s *check.Sheet, k *layout.Locker, limit lengthLimit) check.Ruling {
	apart := check.Limit(s, "d_need", limit, nil).At()
	entries := waysIn(s)
	vents := check.List(s, &k.Vents)
	noVent := func() check.Ruling { return check.NotApplicable(s, "the file states that the locker has no vent") }
	noOpening := func() check.Ruling { return check.NotApplicable(s, "the file states that there is no opening") }
	return check.Every(s, vents, noVent, func(s *check.Sheet, v *layout.LockerVent) check.Ruling {
		return check.Every(s, withinReach(s, waySorts, entries, v, apart), noOpening, func(s *check.Sheet, o layout.Item) check.Ruling {
			need := check.Limit(s, "d_need", limit, nil)
			a, b := ventAt(s, v), wayAt(s, o)
			if wholly(above(a, b)) && !countsAtAnyHeight(s, o) {
				return check.NotApplicable(s, "the opening lies wholly above the vent").About("%s to %s", v.Label(), o.Label())
			}
			return check.AtLeast(s, apartInPlan(s, "d", a, b), need).About("%s to %s", v.Label(), o.Label()).Points(o.Spot()).
				Mend("Move the vent or its end, or close the opening for good.")
		})
	})
}

// above is how far the lowest point of b lies over a.
func above(a, b thing) float64 { return float64(box.Rise(a.box, b.box).Low) }

func wholly(rise float64) bool { return rise > 0 }

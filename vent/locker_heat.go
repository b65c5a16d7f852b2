package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "locker.heat",
	Asks:       "Is the locker far enough from exhaust pipes, burners, stoves and engines, or shielded from them where the code lets a shield do?",
	Why:        "A cylinder that is warmed beside an exhaust opens its relief valve, and what it blows off is next to what is hot.",
	NotCovered: "The sun, and how warm the locker gets inside; the sparks of the same things (ignition.near-gas).",
	Word:       report.Warning,
	Instead:    []string{"/tapeMeasures/*/is"},
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.LockerToExhaust.Term, code.PracticeLockerToHeat.Term},
	Reads: []string{"/lockers/*/leastToExhaust", "/lockers/*/heatShield", "/lockers/*/box/from", "/lockers/*/box/to", "/exhausts", "/exhausts/*/at", "/exhausts/*/box/from", "/exhausts/*/box/to",
		"/appliances", "/appliances/*/at", "/appliances/*/box/from", "/appliances/*/box/to", "/stoves", "/stoves/*/at", "/stoves/*/box/from", "/stoves/*/box/to",
		"/tapeMeasures/*/is"},
	Inventory: []layout.InventoryList{layout.InventoryListExhausts, layout.InventoryListAppliances, layout.InventoryListStoves},
	Sources:   []string{"Euclid, least distance between boxes"},
}, lockers, offTheExhaust, offWhatIsHot))

// offTheExhaust asks for the distance to the nearest part of any exhaust pipe. No list
// says how a pipe runs, so the distance is one that was measured.
func offTheExhaust(s *check.Sheet, k *layout.Locker) check.Ruling {
	by := func(limit lengthLimit, facts check.Facts) func(*check.Sheet) check.Ruling {
		return func(s *check.Sheet) check.Ruling {
			check.Inventory(s, layout.InventoryListExhausts)
			if len(check.List(s, &s.Layout().Exhausts)) == 0 {
				check.Limit(s, "d_need", limit, facts)
				return check.NotApplicable(s, "the file states that nothing has an exhaust")
			}
			need := check.Limit(s, "d_need", limit, facts)
			return check.AtLeast(s, check.Measure(s, "d", &k.ToExhaust), need).
				Mend("The exhaust led further off; the locker moved, where that can't be.", check.Raise(&k.ToExhaust, need.At()))
		}
	}
	return check.OrPractice(s, by(code.LockerToExhaust, lockerFacts(k)), by(code.PracticeLockerToHeat, nil))
}

// offWhatIsHot asks for the distance to everything that burns or runs hot.
func offWhatIsHot(s *check.Sheet, k *layout.Locker) check.Ruling {
	l := s.Layout()
	var hot []neighbour
	for _, a := range check.List(s, &l.Appliances) {
		hot = append(hot, standing(a))
	}
	for _, x := range check.List(s, &l.Stoves) {
		hot = append(hot, standing(x))
	}
	for _, x := range check.List(s, &l.Exhausts) {
		hot = append(hot, standing(x))
	}
	for _, list := range []layout.InventoryList{layout.InventoryListExhausts, layout.InventoryListAppliances, layout.InventoryListStoves} {
		check.Inventory(s, list)
	}
	return keptClear(s, standing(k), hot, code.PracticeLockerToHeat, nil, "the file states that nothing burns or runs hot",
		"Move what is hot, or the locker, until they are this far apart; a shield is for the fitter to judge.")
}

package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/vent/box"
)

var _ = add(check.For(check.Descriptor{
	ID:         "exit.clear",
	Asks:       "From where people live or sleep, is there a way out, there or next door, that no appliance, locker or cylinder on fire would hold?",
	Why:        "A fire starts where the gas is; if that is beside the only door, nobody gets past it.",
	NotCovered: "The way to that door, which may lead past the fire, and the jet of a relief valve (cylinder.relief-path).",
	Word:       report.Warning,
	MayAct:     report.Owner,
	Limits:     []*code.Term{code.ExitClear.Term, code.PracticeExitClear.Term, code.PracticeExitDistance.Term},
	Reads: append([]string{"/spaces/*/use", "/appliances", "/appliances/*/at", "/appliances/*/box/from", "/appliances/*/box/to",
		"/lockers", "/lockers/*/box/from", "/lockers/*/box/to", "/cylinders", "/cylinders/*/in", "/cylinders/*/at", "/cylinders/*/box/from",
		"/cylinders/*/box/to", "/cylinders/*/diameter", "/cylinders/*/height"}, outReads...),
	Inventory: []layout.InventoryList{layout.InventoryListAppliances, layout.InventoryListCylinders},
	Sources:   []string{"Euclid, least distance between boxes seen from above"},
}, spaces, func(s *check.Sheet, space *layout.Space) check.Ruling {
	if use := check.Read(s, &space.Use); use != layout.SpaceUseSleeping && use != layout.SpaceUseLiving {
		return check.NotApplicable(s, "nobody lives or sleeps there")
	}
	return check.ByEither(s, code.ExitClear, code.PracticeExitClear, func(s *check.Sheet, l code.DutyLimit) check.Ruling { return someWayOut(s, space, l) })
}))

func someWayOut(s *check.Sheet, space *layout.Space, duty code.DutyLimit) check.Ruling {
	asked := check.Asked(s, duty, nil)
	check.Inventory(s, layout.InventoryListAppliances)
	check.Inventory(s, layout.InventoryListCylinders)
	fires := mayBurn(s)
	var tries []func(*check.Sheet) check.Ruling
	for _, out := range waysOut(s, withNeighbours(s, space)) {
		tries = append(tries, func(s *check.Sheet) check.Ruling { return freeOf(s, out, fires, duty) })
	}
	if len(tries) == 0 {
		return check.Is(s, false, asked, "no way out is stated there or next door", "a way out").Points(space.Spot()).
			Mend("A door, hatch or window by which a person gets out in the dark, without a tool.")
	}
	return check.Any(s, tries...)
}

func freeOf(s *check.Sheet, out *layout.Opening, fires []layout.Item, duty code.DutyLimit) check.Ruling {
	none := func() check.Ruling { return check.NotApplicable(s, "the file states that nothing burns there") }
	return check.Every(s, fires, none, func(s *check.Sheet, each layout.Item) check.Ruling {
		check.Asked(s, duty, nil)
		need := check.Limit(s, "d_need", code.PracticeExitDistance, nil)
		door, fire := at(s, out, &out.Position), fireAt(s, each)
		return check.AtLeast(s, check.Band(s, "d", between(door, fire, "distance in plan"), box.PlanGap(door.box, fire.box)), need).About("%s to %s", out.Label(), each.Label()).
			Points(out.Spot()).Mend("Another way out, away from what can burn; or that moved elsewhere.")
	})
}

// mayBurn lists what a fire of gas starts at: appliances, lockers, and cylinders
// outside of lockers.
func mayBurn(s *check.Sheet) []layout.Item {
	var all []layout.Item
	for _, a := range check.List(s, &s.Layout().Appliances) {
		all = append(all, a)
	}
	for _, k := range check.List(s, &s.Layout().Lockers) {
		all = append(all, k)
	}
	for _, c := range check.List(s, &s.Layout().Cylinders) {
		if _, kept := check.Item(s, &c.In).(*layout.Locker); !kept {
			all = append(all, c)
		}
	}
	return all
}

func fireAt(s *check.Sheet, each layout.Item) thing {
	switch each := each.(type) {
	case *layout.Locker:
		return thing{item: each, box: boxOf(check.Corners(s, &each.Box))}
	case *layout.Cylinder:
		return cylinderAt(s, each)
	}
	return at(s, each, layout.PositionOf(each))
}

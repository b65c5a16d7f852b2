package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.ForItems(check.Descriptor{
	ID:         "filling.near-ignition",
	Asks:       "Is the filler of the vehicle's or boat's own fuel away from flue terminals, their air inlets and burners in the open air?",
	Why:        "Petrol vapour runs down from the filler while the tank fills, and a fridge on gas lights by itself at the forecourt.",
	NotCovered: "Whether burners are off while it is filled (travel.flames-out); vents of lockers, which are judged against the filler in locker.vent-clear.",
	Word:       report.Warning,
	Instead:    []string{"/tapeMeasures/*/is"},
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.FuelFillerToFlue.Term, code.PracticeFuelFillerToFlame.Term},
	Reads: []string{"/openings/*/kind", "/openings/*/at", "/openings/*/box/from", "/openings/*/box/to", "/flues", "/flues/*/terminal/at", "/flues/*/intake/at",
		"/appliances", "/appliances/*/in", "/appliances/*/at", "/appliances/*/box/from", "/appliances/*/box/to", "/tapeMeasures/*/is"},
	Inventory: []layout.InventoryList{layout.InventoryListFlues, layout.InventoryListAppliances},
	Sources:   []string{"Euclid, least distance between boxes"},
}, fillers, ofFillers(fillerOffFlues), ofFillers(fillerOffBurners)))

// fillers lists the openings that are fuel fillers, and those of which the file does not
// say what they are.
func fillers(l *layout.Layout) ([]layout.Item, *layout.Spot, bool) {
	var some []layout.Item
	for _, o := range l.Openings.All() {
		if kind, known := o.Kind.Get(); !known || kind == layout.OpeningKindVehicleFuelFiller {
			some = append(some, o)
		}
	}
	return some, l.Openings.Spot(), l.Openings.Known()
}

// ofFillers asks of an opening that is a fuel filler.
func ofFillers(f func(*check.Sheet, *layout.Opening) check.Ruling) func(*check.Sheet, layout.Item) check.Ruling {
	return func(s *check.Sheet, item layout.Item) check.Ruling {
		o := item.(*layout.Opening)
		check.Read(s, &o.Kind)
		return f(s, o)
	}
}

const moveFiller = "The flue's end moved by a licensed fitter, or the filler by whoever may work on the fuel; until then nothing burns while it is filled."

func fillerOffFlues(s *check.Sheet, o *layout.Opening) check.Ruling {
	return check.ByEither(s, code.FuelFillerToFlue, code.PracticeFuelFillerToFlame, func(s *check.Sheet, limit lengthLimit) check.Ruling {
		return keptClear(s, standing(o), flueEnds(s), limit, nil, "the file states that there is no flue", moveFiller)
	})
}

func fillerOffBurners(s *check.Sheet, o *layout.Opening) check.Ruling {
	check.Inventory(s, layout.InventoryListAppliances)
	var burners []neighbour
	for _, a := range check.List(s, &s.Layout().Appliances) {
		if check.Read(s, &a.In) == layout.OpenAir {
			burners = append(burners, standing(a))
		}
	}
	return keptClear(s, standing(o), burners, code.PracticeFuelFillerToFlame, nil, "no appliance stands in the open air", moveFiller)
}

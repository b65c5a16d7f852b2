package vent

import (
	"slices"

	"lowvent.example/gas"
	"lowvent.example/gas/propane"
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
	"lowvent.example/vent/box"
	"lowvent.example/vent/pool"
)

var _ = add(check.For(check.Descriptor{
	ID:   "space.leak-time",
	Asks: "When a flame goes out in this space, does its guard stop the gas before it can have pooled up to something that lights it?",
	Why:  "Propane runs to the floor and rises from there: a pump or a heater at ankle height lights it minutes after a pot has boiled over.",
	NotCovered: "Gas near the burner, which is flammable at once; a leak that no guard stops; what lies lower in the next room; draughts. " +
		"The time is no warning: people asleep hear nothing, and an alarm is heard later than this.",
	Word:   report.Warning,
	MayAct: report.LicensedFitter,
	Limits: []*code.Term{code.OwnGuardBeforePool.Term},
	Reads: append([]string{"/spaces/*/box/from", "/spaces/*/box/to", "/appliances", "/appliances/*/in", "/appliances/*/flameGuard", "/appliances/*/dropOut",
		"/appliances/*/flue", "/appliances/*/plate/input", "/appliances/*/plate/basis", "/appliances/*/plate/consumption", "/climate/highestPlace",
		"/ignitionSources/*/at", "/ignitionSources/*/box/from", "/ignitionSources/*/box/to"}, sparkReads...),
	Instead:   []string{"/appliances/*/plate/consumption"},
	Inventory: sparkLists,
	Surveys:   []layout.SurveyList{layout.SurveyListIgnitionSources},
	Claims:    []string{"/appliances/*/flameGuard"},
	Sources:   []string{pooled, "lowest published lower flammable limit, 1.7 %"},
}, spaces, func(s *check.Sheet, space *layout.Space) check.Ruling {
	check.Inventory(s, layout.InventoryListAppliances)
	none := func() check.Ruling { return check.NotApplicable(s, "no gas burns there") }
	return check.Every(s, standingIn(s, space, check.List(s, &s.Layout().Appliances)), none, guardBeforePool)
}))

const pooled = "balance of volume: all of the gas on the floor, at the lower flammable limit"

// guardBeforePool holds the time in which an appliance's guards shut against the soonest
// that its gas can have pooled up to what lights it.
func guardBeforePool(s *check.Sheet, a *layout.Appliance) check.Ruling {
	if check.Read(s, &a.Flue) == layout.FlueKindRoomSealed {
		return check.NotApplicable(s, "its burner is sealed from the room")
	}
	asked := check.Asked(s, code.OwnGuardBeforePool, nil)
	const mend = "An appliance with quick flame-failure devices on every burner; nothing that sparks near the floor."
	if guard := check.Read(s, &a.FlameGuard); guard != layout.FlameGuardEveryBurner {
		return check.Is(s, false, asked, "gas that does not stop by itself", "a guard on every burner").Mend(mend)
	}
	lowest := lowestLight(s, a)
	if lowest == nil {
		return check.NotApplicable(s, "nothing that lights gas is listed in the space")
	}
	shuts := check.Measure(s, "t_guard", &a.DropOut)
	return check.AtMost(s, shuts, check.Against(asked, poolTime(s, a, lowest))).About("%s, up to %s", a.Label(), lowest.Label()).Mend(mend)
}

// lowestLight is the lowest thing in the space of an appliance that can light its gas: no
// part of a room-sealed appliance does, nor the appliance itself.
func lowestLight(s *check.Sheet, a *layout.Appliance) layout.Item {
	space, ok := check.Item(s, &a.In).(*layout.Space)
	if !ok {
		return nil
	}
	check.Survey(s, space, &space.Surveyed, layout.SurveyListIgnitionSources)
	var found layout.Item
	var at unit.Length
	for _, each := range standingIn(s, space, sparks(s)) {
		if other, is := each.(*layout.Appliance); is && (other == a || check.Read(s, &other.Flue) == layout.FlueKindRoomSealed) {
			continue
		}
		if z := bottomOf(s, each); found == nil || z < at {
			found, at = each, z
		}
	}
	return found
}

// bottomOf is how low the lowest point of a thing may be.
func bottomOf(s *check.Sheet, item layout.Item) unit.Length {
	lowest, _ := box.LowestPoint(at(s, item, layout.PositionOf(item)).box)
	return lowest.Low
}

// poolTime is how soon the gas of an appliance with all its burners open can have pooled up
// to a thing in its space.
func poolTime(s *check.Sheet, a *layout.Appliance, up layout.Item) unit.Duration {
	space := check.Item(s, &a.In).(*layout.Space)
	area := check.Fig(s, "A", spaceArea, space)
	from, to := check.Corners(s, &space.Box)
	z := check.Band(s, "z", "height of "+up.Spot().Pointer()+" over the floor", heightAbove(boxOf(from, to), at(s, up, layout.PositionOf(up)).box))
	limit := check.Constant(s, "x", "lower flammable limit of propane in air", propane.WidestRange().Source, propane.WidestRange().Lower)
	q := openBurners(s, a)
	formula := check.Formula{Text: pool.LayerFormula, Source: pooled, Valid: "an even floor without furniture: with it the gas is there sooner"}
	return check.Try(s, a, "t", formula, func() (unit.Duration, error) { return pool.LayerTime(area, max(z, 0), limit, q) })
}

// openBurners is the room that the gas of an appliance takes with all its burners open, warm.
func openBurners(s *check.Sheet, a *layout.Appliance) unit.VolumeFlow {
	input := check.Fig(s, "P", gas.ApplianceInput(), a)
	check.Constant(s, "H", "gross heat of combustion of propane", "NIST Chemistry WebBook, propane: heat of combustion 2219.2 kJ/mol", propane.GrossHeat)
	rho := warmVapour(s, a)
	return check.Step(s, "q", check.Formula{Text: "q = P / H / rho", Source: "definition"}, func() unit.VolumeFlow {
		return unit.VolumeFlow(float64(input) / float64(propane.GrossHeat) / float64(rho))
	})
}

var sparkReads = slices.Concat([]string{"/ignitionSources", "/ignitionSources/*/in", "/stoves", "/stoves/*/in", "/exhausts", "/exhausts/*/in", "/fans", "/fans/*/in"},
	positions("stoves"), positions("exhausts"), positions("fans"), positions("appliances"))

func positions(list string) []string {
	return []string{"/" + list + "/*/at", "/" + list + "/*/box/from", "/" + list + "/*/box/to"}
}

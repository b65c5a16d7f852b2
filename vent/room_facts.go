package vent

import (
	"lowvent.example/gas"
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/unit"
	"lowvent.example/vent/box"
)

// What burns in a space, as a rule of a code is told.
const (
	openFlame = "open-flame" // something lives on the air of the space
	sealed    = "sealed"     // all that burns there is room-sealed
	nothing   = "nothing"
)

// burnReads are the keys that tell what burns in a space.
var burnReads = []string{"/appliances", "/appliances/*/in", "/appliances/*/flue", "/stoves", "/stoves/*/in"}

// burning takes what burns in a space. The lists of appliances and stoves must be
// complete, since one that nobody listed may live on the same air.
func burning(s *check.Sheet, space *layout.Space) string {
	check.Inventory(s, layout.InventoryListAppliances)
	check.Inventory(s, layout.InventoryListStoves)
	found := nothing
	for _, a := range check.List(s, &s.Layout().Appliances) {
		switch {
		case check.Read(s, &a.In) != space.Ref():
		case check.Read(s, &a.Flue) != layout.FlueKindRoomSealed:
			found = openFlame
		case found == nothing:
			found = sealed
		}
	}
	for _, st := range check.List(s, &s.Layout().Stoves) {
		if check.Read(s, &st.In) == space.Ref() {
			found = openFlame
		}
	}
	return found
}

// aired tells whether the vents of a space are asked about: people live or sleep
// there, or something burns there.
func aired(s *check.Sheet, space *layout.Space) bool {
	switch check.Read(s, &space.Use) {
	case layout.SpaceUseLiving, layout.SpaceUseSleeping, layout.SpaceUseKitchen:
		return true
	}
	return burning(s, space) != nothing
}

// unfluedInput and openFluedInput are the heat that lives on the air of a space.
var (
	unfluedInput   = spaceInput("space.unflued-input", "heat input without a flue in the space", layout.FlueKindNone)
	openFluedInput = spaceInput("space.open-flued-input", "heat input with an open flue in the space", layout.FlueKindOpenFlued)
)

func spaceInput(id, title string, flue layout.FlueKind) *check.Figure[unit.GrossPower, *layout.Space] {
	return &check.Figure[unit.GrossPower, *layout.Space]{ID: id, Title: title, Calc: func(s *check.Sheet, space *layout.Space) unit.GrossPower {
		check.Inventory(s, layout.InventoryListAppliances)
		check.Inventory(s, layout.InventoryListStoves)
		var sum float64
		text := "P = 0"
		for _, a := range check.List(s, &s.Layout().Appliances) {
			if check.Read(s, &a.In) == space.Ref() && check.Read(s, &a.Flue) == flue {
				symbol := check.Symbol("P", a.ID())
				sum += float64(check.Fig(s, symbol, gas.ApplianceInput(), a))
				text += " + " + symbol
			}
		}
		for _, st := range check.List(s, &s.Layout().Stoves) {
			if check.Read(s, &st.In) == space.Ref() && flue == layout.FlueKindOpenFlued {
				symbol := check.Symbol("P_stove", st.ID())
				sum += float64(check.Measure(s, symbol, &st.Output))
				text += " + " + symbol
			}
		}
		formula := check.Formula{Text: text, Source: "definition", Valid: "all of it burning at once; a stove counts by its output"}
		return check.Step(s, "P", formula, func() unit.GrossPower { return unit.GrossPower(sum) })
	}}
}

// spaceArea is the floor of a space.
var spaceArea = &check.Figure[unit.Area, *layout.Space]{
	ID: "space.floor-area", Title: "floor area of the space",
	Calc: func(s *check.Sheet, space *layout.Space) unit.Area {
		from, to := check.Corners(s, &space.Box)
		return check.Band(s, "A_space", "floor area of "+space.Spot().Pointer(), box.FloorArea(boxOf(from, to)))
	},
}

// roomFacts tells a code of a space, what burns there, and who sleeps in the
// dwelling.
func roomFacts(space *layout.Space) check.Facts {
	facts := useOf(space)
	facts[code.FactSpaceBurning] = func(s *check.Sheet) any { return burning(s, space) }
	facts[code.FactSpaceFloorArea] = func(s *check.Sheet) any { return float64(check.Fig(s, "A_space", spaceArea, space)) }
	facts[code.FactUnfluedInput] = func(s *check.Sheet) any { return float64(check.Fig(s, "P_unflued", unfluedInput, space)) }
	facts[code.FactOpenFluedInput] = func(s *check.Sheet) any { return float64(check.Fig(s, "P_open", openFluedInput, space)) }
	facts[code.FactDwellingSleeps] = func(s *check.Sheet) any { return check.Count(s, "n_sleeps", &s.Layout().Dwelling.Sleeps) }
	return facts
}

package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

var _ = add(check.For(check.Descriptor{
	ID:   "room.vent-area",
	Asks: "Has the space fixed vents low and high, as large as its burners and its people need by the code?",
	Why:  "A hob uses up the air of a small room in an evening; then it burns badly and makes carbon monoxide.",
	NotCovered: "Windows and hatches, which people shut, and vents that can be shut or end in another space: none of them counts. " +
		"What the air becomes over an evening (room.air), and where vents are (room.vent-place).",
	Word:   report.Danger,
	MayAct: report.LicensedFitter,
	Limits: []*code.Term{code.RoomVentLow.Term, code.RoomVentHigh.Term, code.RoomVentAll.Term, code.PracticeRoomVents.Term},
	Reads: append(append([]string{"/spaces/*/use", "/spaces/*/box/from", "/spaces/*/box/to", "/dwelling/sleeps", "/stoves/*/output",
		"/appliances/*/plate/input", "/appliances/*/plate/basis", "/appliances/*/plate/consumption",
		"/fixedVents/*/gross", "/fixedVents/*/cover/kind", "/fixedVents/*/cover/open"}, burnReads...), fixedReads...),
	Instead:   []string{"/appliances/*/plate/consumption"},
	Inventory: []layout.InventoryList{layout.InventoryListAppliances, layout.InventoryListStoves},
}, spaces, func(s *check.Sheet, space *layout.Space) check.Ruling {
	if !aired(s, space) {
		return check.NotApplicable(s, "nobody lives or sleeps there, and nothing burns there")
	}
	return check.OrPractice(s,
		func(s *check.Sheet) check.Ruling {
			return check.All(s, roomy(space, lowAir, code.RoomVentLow), roomy(space, highAir, code.RoomVentHigh), roomy(space, allAir, code.RoomVentAll))
		},
		func(s *check.Sheet) check.Ruling {
			if burning(s, space) != openFlame {
				return check.NotApplicable(s, "no flame there lives on the air of the space")
			}
			return both(s, space, code.PracticeRoomVents)
		})
}))

// roomy asks that the vents of a space are together as open as the code asks.
func roomy(space *layout.Space, figure *check.Figure[unit.Area, *layout.Space], limit areaLimit) func(*check.Sheet) check.Ruling {
	return func(s *check.Sheet) check.Ruling {
		need := check.Limit(s, "A_need", limit, roomFacts(space))
		free := check.Fig(s, "A_free", figure, space)
		return check.AtLeast(s, free, need).About("%s", figure.Title).Points(space.Spot()).
			Mend("Fixed vents of this free area, where the fitter agrees: clean covers, that nothing can shut.")
	}
}

package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
	"lowvent.example/vent/box"
)

var _ = add(check.For(check.Descriptor{
	ID:         "room.vent-place",
	Asks:       "Has the space a low vent near its floor and a high vent near its ceiling, which nothing can shut?",
	Why:        "Fumes and damp go up and out only while air comes in below; and a vent that has a slide is shut on the first cold night.",
	NotCovered: "How large they are (room.vent-area), that they lie on opposite sides, and bunks above them.",
	Word:       report.Warning,
	MayAct:     report.Owner,
	Limits:     []*code.Term{code.RoomVentFixed.Term, code.RoomVentLowHeight.Term, code.RoomVentHighDepth.Term},
	Reads: append(append([]string{"/spaces/*/use", "/spaces/*/box/from", "/spaces/*/box/to", "/fixedVents/*/at"}, burnReads...),
		fixedReads...),
	Inventory: []layout.InventoryList{layout.InventoryListAppliances, layout.InventoryListStoves},
}, spaces,
	ifAired(func(s *check.Sheet, space *layout.Space) check.Ruling { return both(s, space, code.RoomVentFixed) }),
	ifAired(placedAt(layout.VentLevelLow, code.RoomVentLowHeight, heightAbove)),
	ifAired(placedAt(layout.VentLevelHigh, code.RoomVentHighDepth, depthBelow))))

func ifAired(f func(*check.Sheet, *layout.Space) check.Ruling) func(*check.Sheet, *layout.Space) check.Ruling {
	return func(s *check.Sheet, space *layout.Space) check.Ruling {
		if !aired(s, space) {
			return check.NotApplicable(s, "nobody lives or sleeps there, and nothing burns there")
		}
		return f(s, space)
	}
}

// placedAt asks of each vent at a level that it is as near to the floor or to the
// ceiling as the code asks.
func placedAt(level layout.VentLevel, limit lengthLimit, from func(space, vent box.Box) unit.Value[unit.Length]) func(*check.Sheet, *layout.Space) check.Ruling {
	return func(s *check.Sheet, space *layout.Space) check.Ruling {
		none := func() check.Ruling { return check.NotApplicable(s, "the file lists no vent there that counts") }
		return check.Every(s, fixedVentsAt(s, space, level), none, func(s *check.Sheet, v *layout.FixedVent) check.Ruling {
			most := check.Limit(s, "h_max", limit, roomFacts(space))
			middle := box.At(pointOf(check.Read(s, &v.At)))
			a, b := check.Corners(s, &space.Box)
			return check.AtMost(s, check.Band(s, "h", "distance of "+v.Spot().Pointer()+" from the floor or ceiling", from(boxOf(a, b), middle)), most).
				Mend("A " + string(level) + " vent nearer to the " + either(level == layout.VentLevelLow, "floor", "ceiling") + ".")
		})
	}
}

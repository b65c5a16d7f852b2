package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/unit"
	"lowvent.example/vent/box"
)

var ventReads = []string{"/lockers/*/box/from", "/lockers/*/box/to", "/lockers/*/vents", "/lockers/*/vents/*/level",
	"/lockers/*/vents/*/gross", "/lockers/*/vents/*/cover/kind", "/lockers/*/vents/*/cover/open"}

// freeArea is what is open of one vent behind its cover.
var freeArea = &check.Figure[unit.Area, *layout.LockerVent]{
	ID: "locker.vent-free-area", Title: "free area of the vent",
	Calc: func(s *check.Sheet, v *layout.LockerVent) unit.Area { return behind(s, &v.Gross, &v.Cover) },
}

// behind is what is open of a hole behind its cover.
func behind(s *check.Sheet, hole *layout.Measure[unit.Area], cover *layout.Cover) unit.Area {
	gross := check.Measure(s, "A_gross", hole)
	if check.Read(s, &cover.Kind) == layout.CoverKindNone {
		return check.Step(s, "A_free", check.Formula{Text: "A_free = A_gross", Source: "definition", Valid: "a hole with nothing over it"},
			func() unit.Area { return gross })
	}
	open := check.Measure(s, "open", &cover.Open)
	return check.Step(s, "A_free", check.Formula{Text: "A_free = A_gross * open", Source: "definition", Valid: "a clean cover; dirt, frost and leaves close it further"},
		func() unit.Area { return unit.Area(float64(gross) * float64(open)) })
}

// lowFree and highFree are the free areas of all low and all high vents together.
var (
	lowFree  = sideFree("locker.low-vent-free-area", "free area of the low vents", layout.VentLevelLow)
	highFree = sideFree("locker.high-vent-free-area", "free area of the high vents", layout.VentLevelHigh)
	_        = show(check.Show(lowFree, lockers))
	_        = show(check.Show(highFree, lockers))
)

func sideFree(id, title string, level layout.VentLevel) *check.Figure[unit.Area, *layout.Locker] {
	return &check.Figure[unit.Area, *layout.Locker]{ID: id, Title: title, Calc: func(s *check.Sheet, k *layout.Locker) unit.Area {
		var sum float64
		text := "A = 0"
		for _, v := range ventsAt(s, k, level) {
			symbol := check.Symbol("A", v.ID())
			sum += float64(check.Fig(s, symbol, freeArea, v))
			text += " + " + symbol
		}
		return check.Step(s, "A", check.Formula{Text: text, Source: "definition"}, func() unit.Area { return unit.Area(sum) })
	}}
}

// ventsAt takes the vents of a locker at one level.
func ventsAt(s *check.Sheet, k *layout.Locker, level layout.VentLevel) []*layout.LockerVent {
	var found []*layout.LockerVent
	for _, v := range check.List(s, &k.Vents) {
		if check.Read(s, &v.Level) == level {
			found = append(found, v)
		}
	}
	return found
}

// floorArea is the floor of a locker, as a code's share of it is reckoned.
var floorArea = &check.Figure[unit.Area, *layout.Locker]{
	ID: "locker.floor-area", Title: "floor area of the locker",
	Calc: func(s *check.Sheet, k *layout.Locker) unit.Area {
		from, to := check.Corners(s, &k.Box)
		return check.Band(s, "A_floor", "floor area of "+k.Spot().Pointer(), box.FloorArea(boxOf(from, to)))
	},
}

// enough asks that the vents of one level are together as open as the code asks.
func enough(level layout.VentLevel, figure *check.Figure[unit.Area, *layout.Locker], limit code.Limit[unit.Area]) func(*check.Sheet, *layout.Locker) check.Ruling {
	return func(s *check.Sheet, k *layout.Locker) check.Ruling {
		free := check.Fig(s, "A_free", figure, k)
		need := check.Limit(s, "A_need", limit, lockerFacts(k))
		return widen(s, check.AtLeast(s, free, need), ventsAt(s, k, level), free, need.At())
	}
}

// widen offers to enlarge the first vent of the level by what all of them lack.
func widen(s *check.Sheet, r check.Ruling, vents []*layout.LockerVent, free, need unit.Area) check.Ruling {
	if len(vents) == 0 {
		return r.Mend("A vent of this free area, cut by the builder where the fitter agrees.")
	}
	first := vents[0]
	gross := check.Measure(s, "A_gross", &first.Gross)
	part := check.Fig(s, "A_part", freeArea, first)
	if part == 0 {
		return r.Mend("A cover that lets air through, and behind it a vent of this free area.")
	}
	wanted := unit.Area(float64(gross) * (float64(need) - float64(free) + float64(part)) / float64(part))
	return r.Mend("At least "+unit.WriteAtLeast(wanted.Kind(), float64(wanted), "")+" gross behind this cover at "+first.Label()+".", check.Raise(&first.Gross, wanted))
}

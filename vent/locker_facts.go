package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
)

// lockerFacts tells a rule where to read what it may ask about a locker.
func lockerFacts(k *layout.Locker) check.Facts {
	return check.Facts{
		code.FactLockerFloorArea: func(s *check.Sheet) any { return float64(check.Fig(s, "A_floor", floorArea, k)) },
		code.FactLockerHighArea:  func(s *check.Sheet) any { return float64(check.Fig(s, "A_high", highFree, k)) },
		code.FactLockerHighShare: func(s *check.Sheet) any {
			high, floor := check.Fig(s, "A_high", highFree, k), check.Fig(s, "A_floor", floorArea, k)
			return float64(high) / float64(floor)
		},
		code.FactLockerGas:      func(s *check.Sheet) any { return gasIn(s, k) },
		code.FactLockerLowVents: func(s *check.Sheet) any { return holeOrShaft(s, k) },
		code.FactLockerOpensTo:  func(s *check.Sheet) any { return check.Read(s, &k.Door.OpensTo).Section() },
		code.FactLockerShield: func(s *check.Sheet) any {
			if check.Read(s, &k.HeatShield) {
				return "shielded"
			}
			return "bare"
		},
		code.FactFirstUsed: func(s *check.Sheet) any { return check.Read(s, &s.Layout().Dwelling.FirstUsed) },
	}
}

// gasIn takes the propane that the cylinders of a locker hold together when they are
// full, in kg. Each cylinder that stands in it counts, in service or not.
func gasIn(s *check.Sheet, k *layout.Locker) float64 {
	check.Inventory(s, layout.InventoryListCylinders)
	var sum float64
	for _, c := range check.List(s, &s.Layout().Cylinders) {
		if check.Read(s, &c.In) == k.Ref() {
			sum += float64(check.Measure(s, check.Symbol("m", c.ID()), &c.Propane))
		}
	}
	return sum
}

// holeOrShaft takes what the low vents of a locker are: shafts where each is a pipe
// that falls to the outside, and plain holes otherwise.
func holeOrShaft(s *check.Sheet, k *layout.Locker) string {
	vents := ventsAt(s, k, layout.VentLevelLow)
	shafts := len(vents) > 0
	for _, v := range vents {
		length, falls := check.Measure(s, check.Symbol("L", v.ID()), &v.PipeLength), check.Read(s, &v.FallsAway)
		shafts = shafts && length > 0 && falls
	}
	if shafts {
		return "shaft"
	}
	return "hole"
}

// cylinderFacts tells a rule where to read what it may ask about where a cylinder
// stands and what it holds.
func cylinderFacts(c *layout.Cylinder) check.Facts {
	return check.Facts{code.FactCylinderPlace: func(s *check.Sheet) any { return check.Read(s, &c.In).Section() }}
}

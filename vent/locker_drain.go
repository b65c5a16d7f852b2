package vent

import (
	"slices"

	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:   "locker.drain",
	Asks: "Afloat, does the locker drain from its lowest point, through a pipe that is wide enough, falls all the way and ends above the water?",
	Why:  "A hull is a bowl: gas that the drain does not carry over the side lies in the bilge, below everything that sparks.",
	NotCovered: "What the drain ends in (locker.vent-discharge), its free area and its edge (locker.low-vent), and a boat loaded or heeled further than " +
		"it was when it was measured.",
	Word:   report.Danger,
	MayAct: report.LicensedFitter,
	Limits: []*code.Term{code.LockerDrain.Term, code.PracticeLockerDrain.Term, code.LockerDrainBore.Term, code.PracticeDrainFalls.Term,
		code.LockerDrainOverWater.Term, code.PracticeDrainOverWater.Term},
	Reads: []string{"/dwelling/kind", "/dwelling/firstUsed", "/lockers/*/vents", "/lockers/*/vents/*/level", "/lockers/*/vents/*/bore",
		"/lockers/*/vents/*/fallsOutward", "/lockers/*/vents/*/endsIn/overWaterline", "/cylinders", "/cylinders/*/in", "/cylinders/*/propane"},
	Inventory: []layout.InventoryList{layout.InventoryListCylinders},
}, lockers, afloat(hasDrain), afloat(eachDrain(wideEnough)), afloat(eachDrain(fallsAway)), afloat(eachDrain(aboveWater))))

// afloat asks only of lockers of a boat or vessel.
func afloat(f func(*check.Sheet, *layout.Locker) check.Ruling) func(*check.Sheet, *layout.Locker) check.Ruling {
	floating := []layout.DwellingKind{layout.DwellingKindBoat, layout.DwellingKindInspectedVessel, layout.DwellingKindInlandVessel}
	return func(s *check.Sheet, k *layout.Locker) check.Ruling {
		kind := check.Read(s, &s.Layout().Dwelling.Kind)
		if !slices.Contains(floating, kind) {
			return check.NotApplicable(s, "a "+string(kind)+" does not float")
		}
		return f(s, k)
	}
}

func hasDrain(s *check.Sheet, k *layout.Locker) check.Ruling {
	return check.ByEither(s, code.LockerDrain, code.PracticeLockerDrain, func(s *check.Sheet, asked code.DutyLimit) check.Ruling {
		return someVent(s, k, layout.VentLevelLow, check.Asked(s, asked, nil), "a drain", "A drain from the lowest point of the locker, falling over the side above the water.")
	})
}

// eachDrain asks the same of each low vent, which afloat is a drain.
func eachDrain(f func(*check.Sheet, *layout.Locker, *layout.LockerVent) check.Ruling) func(*check.Sheet, *layout.Locker) check.Ruling {
	return func(s *check.Sheet, k *layout.Locker) check.Ruling {
		return ofEachLow(func(s *check.Sheet, v *layout.LockerVent) check.Ruling { return f(s, k, v) })(s, k)
	}
}

func wideEnough(s *check.Sheet, k *layout.Locker, v *layout.LockerVent) check.Ruling {
	need := check.Limit(s, "D_need", code.LockerDrainBore, lockerFacts(k))
	return check.AtLeast(s, check.Measure(s, "D", &v.Bore), need).Says("bore of the drain at its narrowest").
		Mend("A drain of this bore over its whole length, fittings included.", check.Raise(&v.Bore, need.At()))
}

func fallsAway(s *check.Sheet, _ *layout.Locker, v *layout.LockerVent) check.Ruling {
	duty := check.Asked(s, code.PracticeDrainFalls, nil)
	falls := check.Read(s, &v.FallsAway)
	found := "it falls all the way"
	if !falls {
		found = "it does not fall all the way"
	}
	return check.Is(s, falls, duty, found, "it falls all the way").
		Mend("The drain led so that it falls all the way, without a dip, the boat upright and heeled.", check.SetBool(&v.FallsAway, true))
}

// aboveWater asks that a drain ends above the water, and not level with it.
func aboveWater(s *check.Sheet, _ *layout.Locker, v *layout.LockerVent) check.Ruling {
	return check.ByEither(s, code.LockerDrainOverWater, code.PracticeDrainOverWater, func(s *check.Sheet, asked code.DutyLimit) check.Ruling {
		duty := check.Asked(s, asked, nil)
		height := check.Measure(s, "h", &v.EndsIn.OverWater)
		found := "level with the water or below it"
		if height > 0 {
			found = "above the water"
		}
		return check.Is(s, height > 0, duty, found, "above the water").
			Mend("The drain led out higher up the side, and the locker's floor higher still, so that it keeps its fall.")
	})
}

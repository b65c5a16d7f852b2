package vent

import (
	"slices"

	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

var lockerLowVent = add(check.For(check.Descriptor{
	ID:   "locker.low-vent",
	Asks: "Are the low vents open enough, right at the bottom, and never covered or shut?",
	Why:  "Propane drains like water: what the low vent can't let out stays in the locker, and a sill keeps a pool for ever.",
	NotCovered: "Where the vent ends (locker.vent-discharge), what is near it (locker.vent-clear), and how much leak it can carry away: " +
		"vents alone do not make a leak before the regulator harmless.",
	Word:   report.Danger,
	MayAct: report.LicensedFitter,
	Limits: []*code.Term{code.LockerLowVentDuty.Term, code.LockerLowVentArea.Term, code.LockerLowVentEdge.Term, code.LockerVentUnrestricted.Term,
		code.PracticeLockerLowVent.Term, code.PracticeLowVentEdge.Term, code.PracticeLockerVentUnrestricted.Term},
	Reads: slices.Concat([]string{"/lockers/*/vents/*/lowerEdgeOverLowest", "/lockers/*/vents/*/closable", "/lockers/*/vents/*/coveredByCylinder"},
		ventReads, lowVentReads),
	Inventory: []layout.InventoryList{layout.InventoryListCylinders},
}, lockers, hasVent(layout.VentLevelLow, code.LockerLowVentDuty), enoughLow, orPractice(code.LockerLowVentEdge, code.PracticeLowVentEdge, atTheBottom), unrestricted(layout.VentLevelLow)))

// lowVentReads are the keys by which some codes choose the area of a low vent.
var lowVentReads = []string{"/dwelling/firstUsed", "/cylinders", "/cylinders/*/in", "/cylinders/*/propane", "/lockers/*/door/opensTo",
	"/lockers/*/vents/*/pipeLength", "/lockers/*/vents/*/fallsOutward"}

// hasVent asks for a vent at a level, whatever its size.
func hasVent(level layout.VentLevel, limit code.DutyLimit) func(*check.Sheet, *layout.Locker) check.Ruling {
	return func(s *check.Sheet, k *layout.Locker) check.Ruling {
		return someVent(s, k, level, check.Asked(s, limit, nil), "a "+string(level)+" vent", "A vent at this level, cut by the builder where the fitter agrees.")
	}
}

// someVent asks that a locker has a vent at a level.
func someVent(s *check.Sheet, k *layout.Locker, level layout.VentLevel, duty check.Duty, needed, mend string) check.Ruling {
	found := needed
	vents := ventsAt(s, k, level)
	if len(vents) == 0 {
		found = "none"
	}
	return check.Is(s, len(vents) > 0, duty, found, needed).Points(k.Vents.Spot()).Mend(mend)
}

// enoughLow asks for what the code asks for, and by common practice for some opening
// at least.
func enoughLow(s *check.Sheet, k *layout.Locker) check.Ruling {
	return check.OrPractice(s,
		func(s *check.Sheet) check.Ruling {
			return enough(layout.VentLevelLow, lowFree, code.LockerLowVentArea)(s, k)
		},
		func(s *check.Sheet) check.Ruling {
			duty := check.Asked(s, code.PracticeLockerLowVent, nil)
			free := check.Fig(s, "A_free", lowFree, k)
			return check.Is(s, free > 0, duty, "low vents that are open by "+unit.Text(free), "an opening to the outside at the lowest point").
				Mend("An opening at the lowest point, cut by the builder where the fitter agrees.")
		})
}

// atTheBottom asks that no sill, mat or false floor keeps a pool below the vent.
func atTheBottom(s *check.Sheet, k *layout.Locker, highest lengthLimit) check.Ruling {
	none := func() check.Ruling { return check.NotApplicable(s, "the file lists no low vent") }
	return check.Every(s, ventsAt(s, k, layout.VentLevelLow), none, func(s *check.Sheet, v *layout.LockerVent) check.Ruling {
		edge := check.Measure(s, "h_edge", &v.LowerEdge)
		limit := check.Limit(s, "h_max", highest, nil)
		return check.AtMost(s, edge, limit).Says("height of the vent's lower edge over the lowest point where gas can lie").
			Mend("The vent's lower edge level with the lowest point; nothing laid on the floor that makes a sill.", check.Lower(&v.LowerEdge, limit.At()))
	})
}

// unrestricted asks that nothing can shut or stand over the vents of a level.
func unrestricted(level layout.VentLevel) func(*check.Sheet, *layout.Locker) check.Ruling {
	return func(s *check.Sheet, k *layout.Locker) check.Ruling {
		none := func() check.Ruling { return check.NotApplicable(s, "the file lists no vent at this level") }
		return check.Every(s, ventsAt(s, k, level), none, func(s *check.Sheet, v *layout.LockerVent) check.Ruling {
			return check.All(s,
				func(s *check.Sheet) check.Ruling {
					return never(s, &v.Closable, "can be shut", "can't be shut", "A vent that nothing can close: no slide, no flap, no plug.")
				},
				func(s *check.Sheet) check.Ruling {
					return never(s, &v.Blockable, "a cylinder can stand over it", "nothing stands over it", "A rail or a place for the cylinder's foot that keeps it off the vent.")
				})
		})
	}
}

func never(s *check.Sheet, g *layout.Given[bool], so, not, mend string) check.Ruling {
	ask := orPractice(code.LockerVentUnrestricted, code.PracticeLockerVentUnrestricted, func(s *check.Sheet, g *layout.Given[bool], asked code.DutyLimit) check.Ruling {
		duty := check.Asked(s, asked, nil)
		is := check.Read(s, g)
		found := not
		if is {
			found = so
		}
		return check.Is(s, !is, duty, found, not).Mend(mend, check.SetBool(g, false))
	})
	return ask(s, g)
}

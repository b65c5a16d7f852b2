package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

var _ = add(check.ForDwelling(check.Descriptor{
	ID:         "cylinder.count-size",
	Asks:       "Are there no more cylinders than the code allows, and is each of an allowed size?",
	Why:        "Every cylinder is fuel for a fire and one more thing to leak, and a large one throws out more gas than a locker can lose.",
	NotCovered: "Whether it may be where it is (cylinder.in-locker), and how far it is filled (cylinder.fill).",
	Word:       report.Warning,
	MayAct:     report.Owner,
	Limits: []*code.Term{code.CylinderLimited.Term, code.CylinderCountInService.Term, code.CylinderCountAboard.Term,
		code.CylinderLargestWater.Term, code.CylinderLargestPropane.Term, code.CylinderSmallestPropane.Term},
	Reads:     []string{"/cylinders", "/cylinders/*/role", "/cylinders/*/waterCapacity", "/cylinders/*/propane"},
	Inventory: []layout.InventoryList{layout.InventoryListCylinders},
}, func(s *check.Sheet, l *layout.Layout) check.Ruling {
	limited := check.AllowedWords(s, code.CylinderLimited, nil)
	var clauses []func(*check.Sheet) check.Ruling
	for _, each := range limitedBy {
		if limited.Has(each.word) {
			clauses = append(clauses, each.clause)
		}
	}
	return check.All(s, clauses...)
}))

// limitedBy is the clause for each thing that a code may limit.
var limitedBy = []struct {
	word   string
	clause func(*check.Sheet) check.Ruling
}{
	{"in-service", func(s *check.Sheet) check.Ruling {
		return counted(s, code.CylinderCountInService, "in service", func(c *layout.Cylinder) bool {
			return check.Read(s, &c.Role) == layout.CylinderRoleInService
		})
	}},
	{"aboard", func(s *check.Sheet) check.Ruling {
		return counted(s, code.CylinderCountAboard, "in all", func(*layout.Cylinder) bool { return true })
	}},
	{"water-capacity", func(s *check.Sheet) check.Ruling {
		return eachCylinder(s, func(s *check.Sheet, c *layout.Cylinder) check.Ruling {
			most := check.Limit(s, "m_max", code.CylinderLargestWater, nil)
			return check.AtMost(s, check.Measure(s, "m_water", &c.WaterCapacity), most).About("%s, water capacity", c.Label()).Mend(swapSize)
		})
	}},
	{"propane", func(s *check.Sheet) check.Ruling {
		return eachCylinder(s, func(s *check.Sheet, c *layout.Cylinder) check.Ruling {
			most := check.Limit(s, "m_max", code.CylinderLargestPropane, nil)
			return check.AtMost(s, check.Measure(s, "m_propane", &c.Propane), most).About("%s, propane when full", c.Label()).Mend(swapSize)
		})
	}},
	{"least-propane", func(s *check.Sheet) check.Ruling {
		return eachCylinder(s, func(s *check.Sheet, c *layout.Cylinder) check.Ruling {
			fewest := check.Limit(s, "m_min", code.CylinderSmallestPropane, nil)
			return check.AtLeast(s, check.Measure(s, "m_propane", &c.Propane), fewest).About("%s, propane when full", c.Label()).Mend(swapSize)
		})
	}},
}

// What stands loose anybody may carry away. What hangs on a line holds gas and
// pressure, and to take it off is work on the gas system.
const (
	swapSize = "A cylinder of a size that the code allows, in its place. One that no line is joined to, the owner swaps; " +
		"one that is connected, the licensed fitter takes off."
	takeAway = "Take those that are too many to where they may be kept, away from the dwelling. One that no line is joined to, " +
		"the owner takes away; one that is connected, the licensed fitter takes off first, and closes the end it leaves."
)

func counted(s *check.Sheet, limit code.Limit[unit.Count], which string, counts func(*layout.Cylinder) bool) check.Ruling {
	check.Inventory(s, layout.InventoryListCylinders)
	most := check.Limit(s, "n_max", limit, nil)
	n := 0
	for _, c := range check.List(s, &s.Layout().Cylinders) {
		if counts(c) {
			n++
		}
	}
	return check.AtMost(s, unit.Count(n), most).About("cylinders %s", which).Points(s.Layout().Cylinders.Spot()).
		Mend(takeAway)
}

// eachCylinder asks of every cylinder, whatever it is doing.
func eachCylinder(s *check.Sheet, f func(*check.Sheet, *layout.Cylinder) check.Ruling) check.Ruling {
	check.Inventory(s, layout.InventoryListCylinders)
	none := func() check.Ruling { return check.NotApplicable(s, "the file states that there is no cylinder") }
	return check.Every(s, check.List(s, &s.Layout().Cylinders), none, f)
}

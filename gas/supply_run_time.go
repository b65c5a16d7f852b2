package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.ForDwelling(check.Descriptor{
	ID:         "supply.run-time",
	Asks:       "Do the cylinders in service last as long as the owner wants between swaps?",
	Why:        "A supply that ends early on a cold evening sends people to portable heaters and to swapping cylinders in the dark.",
	NotCovered: "Cold: a cylinder that can't make vapour fast enough stops before it is empty. Frost, short fills, pilots and leaks.",
	Word:       report.Notice,
	Instead:    []string{"/cylinders/*/netMassOnSleeve", "/appliances/*/plate/consumption"},
	MayAct:     report.Owner,
	Limits:     []*code.Term{code.OwnRunTime.Term},
	Reads: []string{"/wants/timeBetweenSwaps", "/cylinders", "/cylinders/*/role", "/cylinders/*/propane", "/cylinders/*/netMassOnSleeve",
		"/appliances", "/appliances/*/plate/input", "/appliances/*/plate/consumption", "/appliances/*/plate/basis",
		"/appliances/*/use", "/appliances/*/use/*/share", "/appliances/*/use/*/for"},
	Inventory: []layout.InventoryList{layout.InventoryListCylinders, layout.InventoryListAppliances},
	Sources:   []string{heatSource},
}, func(s *check.Sheet, l *layout.Layout) check.Ruling {
	if len(check.List(s, &l.Appliances)) == 0 {
		check.Inventory(s, layout.InventoryListAppliances)
		return check.NotApplicable(s, "the file states that nothing burns gas")
	}
	wish := check.Against(check.Asked(s, code.OwnRunTime, nil), check.Measure(s, "t_wanted", &l.Wants.DaysBetweenSwaps))
	lasts := check.Fig(s, "t_run", runTimeByPattern, s.Layout())
	ruling := check.AtLeast(s, lasts, wish)
	const plan = "Plan for an earlier swap, a spare, or more propane within what the code allows aboard."
	if lasts == 0 {
		return ruling.Mend(plan) // nobody can swap every no days
	}
	return ruling.Mend(plan, check.Lower(&l.Wants.DaysBetweenSwaps, lasts))
}))

package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "changeover.no-return",
	Asks:       "Can a cylinder be taken off without gas coming out of its place, or running into it from the other?",
	Why:        "With one cylinder lifted out, the other empties itself through the open tail; left on, the fuller one overfills the emptier.",
	NotCovered: "Whether the valves hold: the fitter tries each tail with leak fluid.",
	Word:       report.Danger,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.ChangeoverNonReturn.Term, code.PracticeNonReturn.Term, code.PracticeFreeTail.Term},
	Reads:      []string{"/changeovers/*/connects", "/changeovers/*/nonReturn", "/changeovers/*/freeTailPlugged", "/lines", "/lines/*/to", "/lines/*/from"},
	Inventory:  []layout.InventoryList{layout.InventoryListLines},
	Claims:     []string{"/changeovers/*/nonReturn"},
}, changeovers, holdsBack, tailPlugged))

func changeovers(l *layout.Layout) *layout.Section[layout.Changeover] { return &l.Changeovers }

func holdsBack(s *check.Sheet, c *layout.Changeover) check.Ruling {
	return check.ByEither(s, code.ChangeoverNonReturn, code.PracticeNonReturn, func(s *check.Sheet, duty code.DutyLimit) check.Ruling {
		return ofSeveral(s, c, &c.NonReturn, duty, "a non-return valve at each inlet", "gas can flow back",
			"A non-return valve at each inlet, or a changeover that has them; the fitter fits it.")
	})
}

func tailPlugged(s *check.Sheet, c *layout.Changeover) check.Ruling {
	return ofSeveral(s, c, &c.FreeTail, code.PracticeFreeTail, "a free tail is plugged", "a free tail hangs open",
		"A plug on a chain at each tail, put in before the next cylinder is opened.")
}

// ofSeveral rules on a statement of a changeover that joins two supplies or more. Where
// cylinder pressure meets regulated gas, no valve and no plug is the way out of it.
func ofSeveral(s *check.Sheet, c *layout.Changeover, given *layout.Given[bool], duty code.DutyLimit, so, notSo, mend string) check.Ruling {
	if single(s, c) {
		return check.NotApplicable(s, "it names one cylinder at most, and one line at most leads to it")
	}
	r := stated(s, given, duty, so, notSo)
	if is, _ := given.Get(); !is && RegulatedMeetsUnregulated(s, c) {
		return r.Mend(PartSupplies).Points(given.Spot())
	}
	return r.Mend(mend, check.SetBool(given, true))
}

// single takes whether a changeover joins fewer than two supplies: the cylinders that
// it names, or the lines that lead to it, whichever are more. A Y-piece that names one
// cylinder and is fed by two lines joins two; that it is no more than one stands only
// where every line is listed.
func single(s *check.Sheet, c *layout.Changeover) bool {
	if len(check.Read(s, &c.Connects.Given)) >= 2 || len(supplies(s, c)) >= 2 {
		return false
	}
	check.Inventory(s, layout.InventoryListLines)
	return !s.Stuck()
}

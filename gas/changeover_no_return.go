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
	Reads:      []string{"/changeovers/*/connects", "/changeovers/*/nonReturn", "/changeovers/*/freeTailPlugged"},
	Claims:     []string{"/changeovers/*/nonReturn"},
}, changeovers, holdsBack, tailPlugged))

func changeovers(l *layout.Layout) *layout.Section[layout.Changeover] { return &l.Changeovers }

func holdsBack(s *check.Sheet, c *layout.Changeover) check.Ruling {
	return check.ByEither(s, code.ChangeoverNonReturn, code.PracticeNonReturn, func(s *check.Sheet, duty code.DutyLimit) check.Ruling {
		if single(s, c) {
			return onePlace(s)
		}
		return stated(s, &c.NonReturn, duty, "a non-return valve at each inlet", "gas can flow back").
			Mend("A non-return valve at each inlet, or a changeover that has them; the fitter fits it.", check.SetBool(&c.NonReturn, true))
	})
}

func tailPlugged(s *check.Sheet, c *layout.Changeover) check.Ruling {
	if single(s, c) {
		return onePlace(s)
	}
	return stated(s, &c.FreeTail, code.PracticeFreeTail, "a free tail is plugged", "a free tail hangs open").
		Mend("A plug on a chain at each tail, put in before the next cylinder is opened.", check.SetBool(&c.FreeTail, true))
}

// single takes whether a changeover has a place for fewer than two cylinders.
func single(s *check.Sheet, c *layout.Changeover) bool {
	return len(check.Read(s, &c.Connects.Given)) < 2 && !s.Stuck()
}

func onePlace(s *check.Sheet) check.Ruling {
	return check.NotApplicable(s, "it has a place for one cylinder only")
}

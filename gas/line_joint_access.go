package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "line.joint-access",
	Asks:       "Can every joint in the line be seen without taking anything off?",
	Why:        "Lines leak at their joints, and one that nobody can see is never tested again.",
	NotCovered: "Whether a spanner gets there, and how few joints are enough.",
	Word:       report.Warning,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.JointsAccessible.Term, code.PracticeJointsInSight.Term},
	Reads:      []string{"/lines/*/kind", "/lines/*/joints", "/lines/*/joints/*/visible"},
}, lines, func(s *check.Sheet, line *layout.Line) check.Ruling {
	return everyJoint(s, line, func(s *check.Sheet, j *layout.Joint) check.Ruling {
		return check.ByEither(s, code.JointsAccessible, code.PracticeJointsInSight, func(s *check.Sheet, l code.DutyLimit) check.Ruling {
			duty := check.Asked(s, l, nil)
			visible := check.Read(s, &j.Visible)
			return check.Is(s, visible, duty, sight(visible), sight(true)).
				Mend("One piece of line through the hidden stretch, with its joints outside it; the fitter makes it.")
		})
	})
}))

package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "line.hidden",
	Asks:       "Is the line in sight where the code asks for it, guarded where it is hidden, and every joint of it to be seen?",
	Why:        "A screw for a shelf goes through the pipe behind the lining, and a joint that nobody can see is never tested again.",
	NotCovered: "How deep the line lies and how thick a plate is: the fitter takes the lining off.",
	Word:       report.Warning,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.LineInSight.Term, code.LineStrikePlates.Term, code.JointsAccessible.Term, code.PracticeStrikePlates.Term, code.PracticeJointsInSight.Term},
	Reads:      []string{"/lines/*/kind", "/lines/*/visible", "/lines/*/strikePlates", "/lines/*/joints", "/lines/*/joints/*/visible"},
}, pipework, inSight, guarded, jointsInSight))

func inSight(s *check.Sheet, line *layout.Line) check.Ruling {
	return ofPipe(s, line, func() check.Ruling {
		duty := check.Asked(s, code.LineInSight, lineFacts(line))
		visible := check.Read(s, &line.Visible)
		return check.Is(s, visible, duty, sight(visible), sight(true)).
			Mend("A line that runs in the open, or of another material; the fitter lays it.")
	})
}

func guarded(s *check.Sheet, line *layout.Line) check.Ruling {
	return ofPipe(s, line, func() check.Ruling {
		if check.Read(s, &line.Visible) {
			return check.NotApplicable(s, "all of the line can be seen")
		}
		return orCustom(s, code.LineStrikePlates, code.PracticeStrikePlates, func(s *check.Sheet, l code.DutyLimit) check.Ruling {
			duty := check.Asked(s, l, lineFacts(line))
			plates := check.Read(s, &line.StrikePlates)
			return check.Is(s, plates, duty, plated(plates), plated(true)).
				Mend("Steel plates over every hidden stretch, fixed beside the line and not through it.", check.SetBool(&line.StrikePlates, true))
		})
	})
}

func jointsInSight(s *check.Sheet, line *layout.Line) check.Ruling {
	return everyJoint(s, line, func(s *check.Sheet, j *layout.Joint) check.Ruling {
		return orCustom(s, code.JointsAccessible, code.PracticeJointsInSight, func(s *check.Sheet, l code.DutyLimit) check.Ruling {
			duty := check.Asked(s, l, nil)
			visible := check.Read(s, &j.Visible)
			return check.Is(s, visible, duty, sight(visible), sight(true)).
				Mend("One piece of line through the hidden stretch, with its joints outside it; the fitter makes it.")
		})
	})
}

func sight(visible bool) string {
	if visible {
		return "in sight"
	}
	return "hidden"
}

func plated(plates bool) string {
	if plates {
		return "guarded by steel plates"
	}
	return "hidden without steel plates"
}

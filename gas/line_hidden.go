package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "line.hidden",
	Asks:       "Is the line in sight where the code asks for it, and guarded where it is hidden?",
	Why:        "A screw for a shelf goes through the pipe behind the lining, and nobody sees what leaks there.",
	NotCovered: "How deep the line lies and how thick a plate is: the fitter takes the lining off.",
	Word:       report.Warning,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.LineInSight.Term, code.LineStrikePlates.Term, code.PracticeStrikePlates.Term},
	Reads:      []string{"/lines/*/kind", "/lines/*/visible", "/lines/*/strikePlates"},
}, lines, inSight, guarded))

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
		return check.ByEither(s, code.LineStrikePlates, code.PracticeStrikePlates, func(s *check.Sheet, l code.DutyLimit) check.Ruling {
			duty := check.Asked(s, l, lineFacts(line))
			plates := check.Read(s, &line.StrikePlates)
			return check.Is(s, plates, duty, plated(plates), plated(true)).
				Mend("Steel plates over every hidden stretch, fixed beside the line and not through it.", check.SetBool(&line.StrikePlates, true))
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

package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "line.movement",
	Asks:       "Is a line to a part that moves a hose, which hangs free over the whole movement?",
	Why:        "A pipe that is bent each day cracks, and a hose that a slide-out pinches or a hot plate touches opens while the burner is lit.",
	NotCovered: "How old and how long the hose is, and lines that only vibrate.",
	Word:       report.Warning,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.PracticeSlack.Term, code.PracticeMovingKinds.Term},
	Reads:      []string{"/lines/*/partsMove", "/lines/*/kind", "/lines/*/slackOverTravel"},
	Claims:     []string{"/lines/*/slackOverTravel"},
}, lines, slack, flexible))

func slack(s *check.Sheet, line *layout.Line) check.Ruling {
	return ofMoving(s, line, func() check.Ruling {
		duty := check.Asked(s, code.PracticeSlack, nil)
		slack := check.Read(s, &line.Slack)
		return check.Is(s, slack, duty, hanging(slack), hanging(true)).
			Mend("Hose that is long enough and held clear of what is hot or sharp; the fitter proves it over the whole movement.", check.SetBool(&line.Slack, true))
	})
}

func flexible(s *check.Sheet, line *layout.Line) check.Ruling {
	return ofMoving(s, line, func() check.Ruling {
		return check.OneOf(s, check.Read(s, &line.Kind), check.AllowedWords(s, code.PracticeMovingKinds, nil)).
			Mend("A hose for the part that moves; the fitter joins it.")
	})
}

func ofMoving(s *check.Sheet, line *layout.Line, ask func() check.Ruling) check.Ruling {
	if !check.Read(s, &line.Moves) {
		return check.NotApplicable(s, "nothing that the line is fixed to moves")
	}
	return ask()
}

func hanging(free bool) string {
	if free {
		return "free over the whole movement"
	}
	return "pulled, pinched or touched by something hot or sharp"
}

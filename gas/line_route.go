package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "line.route",
	Asks:       "Is the line guarded in every hole that it passes through?",
	Why:        "The edge of a hole saws at a bare line on every journey, and what leaks there comes up inside.",
	NotCovered: "How far the line is from the ground and from what drives over it; cables, heat, engines and exits, which have checks of their own.",
	Word:       report.Warning,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.LineSleeves.Term, code.PracticeSleeves.Term},
	Reads:      []string{"/lines/*/through", "/lines/*/through/*/sleeve"},
}, lines, sleeved))

func sleeved(s *check.Sheet, line *layout.Line) check.Ruling {
	none := func() check.Ruling { return check.NotApplicable(s, "the line passes through nothing") }
	return check.Every(s, check.List(s, &line.Through), none, func(s *check.Sheet, p *layout.Passage) check.Ruling {
		return check.ByEither(s, code.LineSleeves, code.PracticeSleeves, func(s *check.Sheet, l code.WordLimit) check.Ruling {
			return check.OneOf(s, check.Read(s, &p.Sleeve), check.AllowedWords(s, l, nil)).
				Mend("A fitting made to go through a wall, or a sealed sleeve; the fitter puts it in.", check.SetWord(&p.Sleeve, layout.SleeveKindBulkheadFitting))
		})
	})
}

package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "line.material",
	Asks:       "Is the fixed gas line of a material that is allowed?",
	Why:        "Plastic and aluminium melt or wear through first, and then a small fire is fed by the whole cylinder.",
	NotCovered: "Hoses; grades of copper, coatings and the print along the line, which the fitter reads.",
	Word:       report.Warning,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.LineMaterials.Term, code.PracticeLineMaterials.Term},
	Reads:      []string{"/lines/*/kind"},
}, lines, func(s *check.Sheet, line *layout.Line) check.Ruling {
	return ofPipe(s, line, func() check.Ruling {
		return check.ByEither(s, code.LineMaterials, code.PracticeLineMaterials, func(s *check.Sheet, l code.WordLimit) check.Ruling {
			return check.OneOf(s, check.Read(s, &line.Kind), check.AllowedWords(s, l, lineFacts(line))).Mend(newLine)
		})
	})
}))

const newLine = "A line that the code allows; the fitter chooses, joins and tests it."

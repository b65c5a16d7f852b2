package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "line.material",
	Asks:       "Is the fixed gas line of a material that is allowed, with a wall that is thick enough, and none that melts early?",
	Why:        "Plastic and aluminium melt or wear through first, and then a small fire is fed by the whole cylinder.",
	NotCovered: "Hoses; grades of copper, coatings and the print along the line, which the fitter reads.",
	Word:       report.Warning,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.LineMaterials.Term, code.LineWall.Term, code.LineMeltsAt.Term, code.PracticeLineMaterials.Term},
	Reads:      []string{"/lines/*/kind", "/lines/*/pressureClass", "/lines/*/outside", "/lines/*/wall", "/lines/*/meltsAt"},
}, pipework, allowedMaterial, thickWall, meltsLate))

const newLine = "A line that the code allows; the fitter chooses, joins and tests it."

func allowedMaterial(s *check.Sheet, line *layout.Line) check.Ruling {
	return ofPipe(s, line, func() check.Ruling {
		return orCustom(s, code.LineMaterials, code.PracticeLineMaterials, func(s *check.Sheet, l code.WordLimit) check.Ruling {
			return check.OneOf(s, check.Read(s, &line.Kind), check.AllowedWords(s, l, lineFacts(line))).Mend(newLine)
		})
	})
}

func thickWall(s *check.Sheet, line *layout.Line) check.Ruling {
	return ofPipe(s, line, func() check.Ruling {
		need := check.Limit(s, "t_need", code.LineWall, lineFacts(line))
		if s.Stuck() {
			return check.Ruling{} // where no wall is asked for, none is read
		}
		return check.AtLeast(s, check.Measure(s, "t", &line.Wall), need).Mend(newLine)
	})
}

func meltsLate(s *check.Sheet, line *layout.Line) check.Ruling {
	return ofPipe(s, line, func() check.Ruling {
		need := check.Limit(s, "T_need", code.LineMeltsAt, lineFacts(line))
		return check.AtLeast(s, check.Measure(s, "T_melts", &line.MeltsAt), need).Mend(newLine)
	})
}

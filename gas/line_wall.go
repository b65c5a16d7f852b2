package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "line.wall",
	Asks:       "Is the wall of the fixed gas line thick enough?",
	Why:        "A thin wall rusts or chafes through, and cracks where it was flared.",
	NotCovered: "Walls that are asked for by the type of a tube, such as K or L, and rust: the fitter looks.",
	Word:       report.Warning,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.LineWall.Term},
	Reads:      []string{"/lines/*/kind", "/lines/*/pressureClass", "/lines/*/outside", "/lines/*/wall"},
}, lines, func(s *check.Sheet, line *layout.Line) check.Ruling {
	return ofPipe(s, line, func() check.Ruling {
		need := check.Limit(s, "t_need", code.LineWall, lineFacts(line))
		if s.Stuck() {
			return check.Ruling{} // where no wall is asked for, none is read
		}
		return check.AtLeast(s, check.Measure(s, "t", &line.Wall), need).Mend(newLine)
	})
}))

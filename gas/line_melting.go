package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "line.melting",
	Asks:       "Does the material of the fixed gas line hold up to the temperature that the code asks for?",
	Why:        "In a small fire a line that melts early adds the whole cylinder to it.",
	NotCovered: "Solder, seats and seals in the line, which melt or burn sooner.",
	Word:       report.Warning,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.LineMeltsAt.Term},
	Reads:      []string{"/lines/*/kind", "/lines/*/meltsAt"},
}, lines, func(s *check.Sheet, line *layout.Line) check.Ruling {
	return ofPipe(s, line, func() check.Ruling {
		need := check.Limit(s, "T_need", code.LineMeltsAt, nil)
		return check.AtLeast(s, check.Measure(s, "T_melts", &line.MeltsAt), need).Mend(newLine)
	})
}))

package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

var _ = add(check.For(check.Descriptor{
	ID:         "line.supports",
	Asks:       "Is the line held at short enough distances?",
	Why:        "A line that swings wears through where it touches and works its joints loose, on the road above all.",
	NotCovered: "Hoses, what the clips are made of, and the first support beside an appliance or a supply connection.",
	Word:       report.Caution,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.LineSupportsEvery.Term, code.PracticeSupportsEvery.Term},
	Reads:      []string{"/lines/*/kind", "/lines/*/supportsEvery"},
}, lines, func(s *check.Sheet, line *layout.Line) check.Ruling {
	return ofPipe(s, line, func() check.Ruling {
		return check.ByEither(s, code.LineSupportsEvery, code.PracticeSupportsEvery, func(s *check.Sheet, l code.Limit[unit.Length]) check.Ruling {
			most := check.Limit(s, "d_max", l, lineFacts(line))
			return check.AtMost(s, check.Measure(s, "d", &line.SupportsEvery), most).
				Mend("More clips, so that no two neighbours are further apart than this.", check.Lower(&line.SupportsEvery, most.At()))
		})
	})
}))

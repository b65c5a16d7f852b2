package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

var _ = add(check.For(check.Descriptor{
	ID:         "line.clearance",
	Asks:       "Is the line far enough from electric cables and from hot parts?",
	Why:        "A cable that chafes burns a hole into the line and lights what comes out, and heat loosens joints.",
	NotCovered: "Cables in conduit, which may be nearer, and hot parts that the line only nears when something moves.",
	Word:       report.Warning,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.LineToWiring.Term, code.LineToHeat.Term, code.PracticeLineToWiring.Term, code.PracticeLineToHeat.Term},
	Reads:      []string{"/lines/*/kind", "/lines/*/leastToWiring", "/lines/*/leastToHeat"},
}, lines, awayFromWiring, awayFromHeat))

func awayFromWiring(s *check.Sheet, line *layout.Line) check.Ruling {
	return keptOff(s, line, &line.ToWiring, code.LineToWiring, code.PracticeLineToWiring)
}

func awayFromHeat(s *check.Sheet, line *layout.Line) check.Ruling {
	return keptOff(s, line, &line.ToHeat, code.LineToHeat, code.PracticeLineToHeat)
}

func keptOff(s *check.Sheet, line *layout.Line, gap *layout.Measure[unit.Length], byCode, byPractice code.Limit[unit.Length]) check.Ruling {
	if check.Read(s, &line.Kind) == layout.LineKindDirect {
		return check.NotApplicable(s, "no pipe is between the two parts")
	}
	return check.ByEither(s, byCode, byPractice, func(s *check.Sheet, l code.Limit[unit.Length]) check.Ruling {
		need := check.Limit(s, "d_need", l, nil)
		return check.AtLeast(s, check.Measure(s, "d", gap), need).Mend(reroute, check.Raise(gap, need.At()))
	})
}

package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "test.high-side",
	Asks:       "Was the line at cylinder pressure tested with leak fluid?",
	Why:        "The air test stops at the regulator: the joints before it, which bear the most, are tested by nothing else.",
	NotCovered: "The test after each later swap of a cylinder, which nobody writes down: the people who swap do it each time.",
	Word:       report.Warning,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.TestHighSide.Term, code.PracticeTestHighSide.Term},
	Reads:      []string{"/lines/*/pressureClass", "/lines/*/from", "/tests", "/tests/*/kind", "/tests/*/covers", "/tests/*/on"},
}, lines, func(s *check.Sheet, line *layout.Line) check.Ruling {
	if check.Read(s, &line.Zone) != layout.PressureZoneHigh && !unregulated(s, line) {
		return check.NotApplicable(s, "the line is after a regulator, where the tests with air reach it")
	}
	return check.ByEither(s, code.TestHighSide, code.PracticeTestHighSide, func(s *check.Sheet, l code.DutyLimit) check.Ruling {
		duty := check.Asked(s, l, nil)
		found := "no such test of this line"
		tests := testsOf(s, line.Ref(), layout.TestKindHighSide)
		if len(tests) > 0 {
			found = "tested, by " + tests[0].Label()
		}
		return check.Is(s, len(tests) > 0, duty, found, "a test with leak fluid").
			Mend("The fitter tests each joint of it with leak fluid at cylinder pressure, and writes it down.")
	})
}))

// unregulated takes whether, by the lines of the file, gas comes to a line from some
// cylinder without going through a regulator, whatever pressure the file states.
func unregulated(s *check.Sheet, line *layout.Line) bool {
	from := check.Read(s, &line.From)
	if from.Section() == "regulators" {
		return false
	}
	bare := from.Section() == "cylinders"
	climb(s.Layout(), from, func(up *layout.Line, _ layout.Ref) bool {
		before := check.Read(s, &up.From).Section()
		bare = bare || before == "cylinders"
		return before != "regulators"
	})
	return bare
}

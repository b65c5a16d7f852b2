package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

// pressureTest is what the codes ask of one of the two tests with air.
type pressureTest struct {
	kind     layout.TestKind
	pressure code.Limit[unit.GaugePressure]
	ceiling  code.Limit[unit.GaugePressure] // of a test that reaches the appliances; else none
	held     code.Limit[unit.Duration]
	drop     code.Limit[unit.GaugePressure]
}

var strengthTest = pressureTest{kind: layout.TestKindStrength, pressure: code.TestStrengthPressure, held: code.TestStrengthHeld, drop: code.TestStrengthDrop}

var _ = add(check.For(check.Descriptor{
	ID:         "test.pressure",
	Asks:       "Was the line behind the regulator tested before the appliances were joined, as hard, as long and with as little loss as the code asks?",
	Why:        "A joint that was never under more pressure than it works at lets go on some later day, with people inside.",
	NotCovered: "The test with the appliances joined (test.tightness); leaks for which the gauge is too coarse, and warmth that hides one.",
	Word:       report.Notice,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.TestStrengthPressure.Term, code.TestStrengthHeld.Term, code.TestStrengthDrop.Term},
	Reads: []string{"/lines/*/pressureClass", "/tests", "/tests/*/kind", "/tests/*/covers", "/tests/*/on",
		"/tests/*/pressure", "/tests/*/held", "/tests/*/drop"},
}, lines, strengthTest.done))

// done asks that one test of the line keeps all that the code asks of it.
func (p pressureTest) done(s *check.Sheet, line *layout.Line) check.Ruling {
	if check.Read(s, &line.Zone) == layout.PressureZoneHigh {
		return check.NotApplicable(s, "the line is before the regulator, where test.high-side asks")
	}
	var tries []func(*check.Sheet) check.Ruling
	for _, t := range testsOf(s, line.Ref(), p.kind) {
		tries = append(tries, func(s *check.Sheet) check.Ruling { return p.kept(s, line, t) })
	}
	if len(tries) == 0 {
		need := check.Limit(s, "p_need", p.pressure, lineFacts(line))
		return check.Absent(s, "no such test in the file", need).About("%s test of this line", p.kind).Points(line.Spot()).
			Mend("The fitter tests it and writes down pressure, time and loss.")
	}
	return check.Any(s, tries...)
}

func (p pressureTest) kept(s *check.Sheet, line *layout.Line, t *layout.Test) check.Ruling {
	clauses := []func(*check.Sheet) check.Ruling{
		func(s *check.Sheet) check.Ruling {
			need := check.Limit(s, "p_need", p.pressure, lineFacts(line))
			return check.AtLeast(s, check.Measure(s, "p", &t.Pressure), need).About("%s, pressure", t.Label())
		},
		func(s *check.Sheet) check.Ruling {
			need := check.Limit(s, "t_need", p.held, lineFacts(line))
			return check.AtLeast(s, check.Measure(s, "t", &t.Held), need).About("%s, time", t.Label())
		},
		func(s *check.Sheet) check.Ruling {
			most := check.Limit(s, "dp_max", p.drop, lineFacts(line))
			return check.AtMost(s, check.Measure(s, "dp", &t.Drop), most).About("%s, loss", t.Label())
		},
	}
	if p.ceiling.Term != nil {
		clauses = append(clauses, func(s *check.Sheet) check.Ruling {
			most := check.Limit(s, "p_max", p.ceiling, lineFacts(line))
			return check.AtMost(s, check.Measure(s, "p", &t.Pressure), most).About("%s, greatest pressure", t.Label())
		})
	}
	for i, f := range clauses {
		clauses[i] = func(s *check.Sheet) check.Ruling {
			return f(s).Mend("The fitter tests the line again as the code asks; no figure of a test is changed on paper.")
		}
	}
	return check.All(s, clauses...)
}

package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var tightnessTest = pressureTest{kind: layout.TestKindTightness, pressure: code.TestTightnessPressure, ceiling: code.TestTightnessCeiling,
	held: code.TestTightnessHeld, drop: code.TestTightnessDrop}

var _ = add(check.For(check.Descriptor{
	ID:         "test.tightness",
	Asks:       "Was the line behind the regulator tested for leaks, at the pressure, for the time and with no more loss than the code asks?",
	Why:        "A joint that was never tested shows its leak on the first evening, to people who sleep.",
	NotCovered: "Leaks for which the gauge is too coarse, warmth that hides one, and bubbles at each joint, which find what a gauge does not.",
	Word:       report.Notice,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.TestTightnessPressure.Term, code.TestTightnessCeiling.Term, code.TestTightnessHeld.Term, code.TestTightnessDrop.Term},
	Reads: []string{"/lines/*/pressureClass", "/tests", "/tests/*/kind", "/tests/*/covers", "/tests/*/on",
		"/tests/*/pressure", "/tests/*/held", "/tests/*/drop"},
}, lines, tightnessTest.done))

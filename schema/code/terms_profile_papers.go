package code

import "lowvent.example/schema/unit"

// The words for what a sign says, as the layout contract has them.
var signKinds = []string{"cylinder-inside", "no-smoking-or-flame", "main-valve-here", "close-before-driving", "cooking-not-heating",
	"keep-vents-clear", "no-storage", "supply-connection", "leak-what-to-do", "operating-instructions", "ventilate-while-burning"}

// The terms that the code chosen for the dwelling may answer: tests, papers and signs.
var (
	// TestStrengthPressure asks at which pressure a line is tested before the
	// appliances are joined, Pa gauge.
	TestStrengthPressure = least[unit.GaugePressure](BookProfile, "test.strength-pressure",
		"At which pressure must a gas line be tested before the appliances are joined?", FactLinePressure)

	// TestStrengthHeld asks how long that pressure is held, s.
	TestStrengthHeld = least[unit.Duration](BookProfile, "test.strength-held",
		"How long must the pressure be held before the appliances are joined?", FactLinePressure)

	// TestStrengthDrop asks how far that pressure may drop, Pa.
	TestStrengthDrop = most[unit.GaugePressure](BookProfile, "test.strength-drop",
		"How far may the pressure drop before the appliances are joined?", FactLinePressure)

	// TestTightnessPressure asks for the least pressure of the test with the
	// appliances joined, Pa gauge.
	TestTightnessPressure = least[unit.GaugePressure](BookProfile, "test.tightness-pressure",
		"At which pressure at least must a gas line be tested for leaks?", FactLinePressure)

	// TestTightnessCeiling asks for the most that the appliances' valves may be
	// put to in that test, Pa gauge.
	TestTightnessCeiling = most[unit.GaugePressure](BookProfile, "test.tightness-ceiling",
		"At which pressure at most may a gas line with its appliances be tested for leaks?", FactLinePressure)

	// TestTightnessHeld asks how long the pressure of that test is held, s.
	TestTightnessHeld = least[unit.Duration](BookProfile, "test.tightness-held",
		"How long must the pressure be held in the test for leaks?", FactLinePressure)

	// TestTightnessDrop asks how far the pressure of that test may drop, Pa.
	TestTightnessDrop = most[unit.GaugePressure](BookProfile, "test.tightness-drop",
		"How far may the pressure drop in the test for leaks?", FactLinePressure)

	// TestHighSide asks whether the parts at cylinder pressure are tested for
	// leaks at that pressure.
	TestHighSide = duty(BookProfile, "test.high-side",
		"Must the parts at cylinder pressure be tested with leak fluid?")

	// TestPoint asks whether there must be a point for a gauge after a regulator.
	TestPoint = duty(BookProfile, "regulator.test-point",
		"Must there be a test point after each regulator?")

	// InspectionCertificate asks whether the installation must have a paper of
	// somebody who inspected it.
	InspectionCertificate = duty(BookProfile, "inspection.certificate",
		"Must the installation have been inspected and certified as it is now?")

	// InspectionInterval asks how old that paper may be, s.
	InspectionInterval = most[unit.Duration](BookProfile, "inspection.interval",
		"How old may the last inspection be?")

	// SignKinds asks which signs there must be: every one of the words.
	SignKinds = allowed(BookProfile, "sign.kinds",
		"Which signs must there be?", signKinds)
)

package code

import "lowvent.example/schema/unit"

// The terms on gas lines that common practice answers. None has a source.
var (
	// PracticeLineMaterials asks what fixed gas lines are commonly made of.
	PracticeLineMaterials = allowed(BookPractice, "practice.line-materials",
		"What are fixed gas lines in dwellings commonly made of?", lineKinds)

	// PracticeJointKinds asks which joints are commonly trusted with gas.
	PracticeJointKinds = allowed(BookPractice, "practice.joint-kinds",
		"Which joints are commonly trusted with gas?", jointKinds)

	// PracticeDryFlares asks whether the cone of a flare stays dry.
	PracticeDryFlares = duty(BookPractice, "practice.dry-flares",
		"Must a flare be made without tape or paste?")

	// PracticeJointsInSight asks whether joints stay where they can be seen.
	PracticeJointsInSight = duty(BookPractice, "practice.joints-in-sight",
		"Must every joint be where it can be seen and tested?")

	// PracticeStrikePlates asks whether hidden stretches are guarded.
	PracticeStrikePlates = duty(BookPractice, "practice.strike-plates",
		"Must the hidden stretches of a gas line be guarded against nails and screws?")

	// PracticeShutoffAppliance asks whether each appliance has a valve.
	PracticeShutoffAppliance = duty(BookPractice, "practice.shutoff-appliance",
		"Must each appliance have a shut-off valve of its own?")

	// PracticeShutoffReach asks from where the valve of an appliance is worked.
	PracticeShutoffReach = allowed(BookPractice, "practice.shutoff-reach",
		"From where must a hand get to an appliance's shut-off valve?", reaches)

	// PracticeMainReach asks from where the main shut-off is worked.
	PracticeMainReach = allowed(BookPractice, "practice.main-reach",
		"From where must a hand get to the main shut-off?", reaches)

	// PracticeSupportsEvery asks how far apart the supports of a line commonly
	// are at most, m.
	PracticeSupportsEvery = most[unit.Length](BookPractice, "practice.supports-every",
		"How far apart are the supports of a gas line commonly at most?")

	// PracticeSleeves asks what guards a line in a hole.
	PracticeSleeves = allowed(BookPractice, "practice.sleeves",
		"What may guard a gas line where it passes through a wall or floor?", sleeveKinds)

	// PracticeNotUnderExit asks whether lines are kept from under the ways out.
	PracticeNotUnderExit = duty(BookPractice, "practice.not-under-exit",
		"Are gas lines kept from under the ways out?")

	// PracticeLineToWiring asks how far lines are kept from cables, m.
	PracticeLineToWiring = least[unit.Length](BookPractice, "practice.line-to-wiring",
		"How far is a gas line commonly kept from electric cables?")

	// PracticeLineToHeat asks how far lines are kept from hot parts, m.
	PracticeLineToHeat = least[unit.Length](BookPractice, "practice.line-to-heat",
		"How far is a gas line commonly kept from exhausts and other hot parts?")

	// PracticeEngineSpace asks whether lines are kept out of engine spaces.
	PracticeEngineSpace = duty(BookPractice, "practice.not-in-engine-space",
		"Are gas lines kept out of engine spaces?")

	// PracticeBonded asks whether metal lines are bonded.
	PracticeBonded = duty(BookPractice, "practice.bonded",
		"Must metal gas lines be bonded to the chassis or earth?")

	// PracticeSlack asks whether a line to a moving part hangs free.
	PracticeSlack = duty(BookPractice, "practice.slack",
		"Must a gas line to a part that moves hang free over the whole movement?")

	// PracticeMovingKinds asks what a line to a moving part may be.
	PracticeMovingKinds = allowed(BookPractice, "practice.moving-kinds",
		"What may a gas line to a part that moves be made of?", lineKinds)

	// PracticeOutletClosed asks whether an outdoor outlet has a valve and a cap.
	PracticeOutletClosed = duty(BookPractice, "practice.outlet-closed",
		"Must an outlet outside have a valve beside it and a cap?")

	// PracticeOutletToOpening asks how far an outdoor outlet is kept from openings
	// and from the vents of lockers, m.
	PracticeOutletToOpening = least[unit.Length](BookPractice, "practice.outlet-to-opening",
		"How far is an outlet outside commonly kept from openings and from vents of lockers?")

	// PracticeTransitDevices asks what shuts the gas by itself in a crash.
	PracticeTransitDevices = allowed(BookPractice, "practice.transit-devices",
		"What shuts the gas by itself in a crash?", shutoffKinds)

	// PracticeFlamesOut asks whether burners are kept from lighting in transit.
	PracticeFlamesOut = duty(BookPractice, "practice.flames-out",
		"Must every burner be kept from lighting while the dwelling moves or refuels?")
)

// The terms on tests, papers and signs that common practice answers. None has a
// source.
var (
	// PracticeTestBeforeGas asks whether a line is tested before gas is let into it.
	PracticeTestBeforeGas = duty(BookPractice, "practice.test-before-gas",
		"Is a line tested by a licensed fitter before gas is let into it?")

	// PracticeTestHighSide asks whether the parts before the regulator are tested.
	PracticeTestHighSide = duty(BookPractice, "practice.test-high-side",
		"Must the joints before the regulator be tested with leak fluid?")

	// PracticeTestPoint asks whether there is a point for a gauge.
	PracticeTestPoint = duty(BookPractice, "practice.test-point",
		"Must there be a test point after each regulator?")

	// PracticeCertificate asks whether a fitter's paper is in force.
	PracticeCertificate = duty(BookPractice, "practice.certificate",
		"Must a fitter's certificate be in force for the installation as it is now?")

	// PracticeSigns asks which signs there commonly are: every one of the words.
	PracticeSigns = allowed(BookPractice, "practice.signs",
		"Which signs about gas are commonly put up?", signKinds)
)

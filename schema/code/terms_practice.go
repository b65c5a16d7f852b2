package code

import "lowvent.example/schema/unit"

// The terms that common practice answers. None of these has a source; a finding
// on one of them never stands in for a limit of a code.
var (
	// PracticeRegulatorCapacity asks whether a regulator must carry the load.
	PracticeRegulatorCapacity = duty(BookPractice, "practice.regulator-capacity",
		"Must a regulator be rated for at least all that it feeds together?")

	// PracticeTightGlands asks which glands count as tight.
	PracticeTightGlands = allowed(BookPractice, "practice.tight-glands",
		"Which glands count as gas-tight?", []string{"compression", "bulkhead", "welded", "sealant", "grommet", "none"})

	// PracticeOpenEnd asks what may close an end of pipe.
	PracticeOpenEnd = allowed(BookPractice, "practice.open-end",
		"What may close an end of pipe that leads to no appliance?", []string{"cap", "plug", "crimped", "taped", "valve-only", "open"})

	// PracticeVentToOpening asks for the distance from a locker's vent to an
	// opening into the dwelling, m.
	PracticeVentToOpening = least[unit.Length](BookPractice, "practice.vent-to-opening",
		"How far is a locker's vent commonly kept from an opening into the dwelling?")

	// PracticeVentToIgnition asks for the distance from a locker's vent to an
	// ignition source, m.
	PracticeVentToIgnition = least[unit.Length](BookPractice, "practice.vent-to-ignition",
		"How far is a locker's vent commonly kept from an ignition source?")

	// PracticeAlarmGasDuty asks whether a propane alarm belongs in a dwelling.
	PracticeAlarmGasDuty = duty(BookPractice, "practice.alarm-gas",
		"Does a propane alarm belong in every dwelling that burns propane?")

	// PracticeAlarmGasHeight asks how far above the floor a propane alarm may
	// be, m.
	PracticeAlarmGasHeight = most[unit.Length](BookPractice, "practice.alarm-gas-height",
		"How far above the floor is a propane alarm commonly put at most?")

	// PracticeAlarmCODuty asks whether a carbon monoxide alarm belongs in a
	// dwelling.
	PracticeAlarmCODuty = duty(BookPractice, "practice.alarm-co",
		"Does a carbon monoxide alarm belong in every dwelling that burns propane?")

	// PracticePlatePressure asks whether a regulator must suit the plates.
	PracticePlatePressure = duty(BookPractice, "practice.plate-pressure",
		"Must the regulator's outlet lie within the inlet range on each appliance's plate?")

	// PracticeBurnersAddUp asks whether the burners must agree with the plate.
	PracticeBurnersAddUp = duty(BookPractice, "practice.burners-add-up",
		"Must an appliance's burners add up to the input on its plate?")
)

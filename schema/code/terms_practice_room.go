package code

import "lowvent.example/schema/unit"

// The terms that common practice answers: rooms, alarms and ways out. None has a
// source.
var (
	// PracticeRoomVents asks whether a space in which a flame lives on the air must
	// have a low and a high vent that nothing can shut.
	PracticeRoomVents = duty(BookPractice, "practice.room-vents",
		"Must a space in which a flame lives on the air have a low and a high vent that can't be shut?")

	// PracticeAlarmSmokeDuty asks whether a smoke alarm belongs in a dwelling.
	PracticeAlarmSmokeDuty = duty(BookPractice, "practice.alarm-smoke",
		"Does a smoke alarm belong where people live and sleep?", FactSpaceUse)

	// PracticeAlarmSmokeDepth asks how far below the ceiling a smoke alarm may
	// be, m.
	PracticeAlarmSmokeDepth = most[unit.Length](BookPractice, "practice.alarm-smoke-depth",
		"How far below the ceiling is a smoke alarm commonly put at most?")

	// PracticeStoveAlarm asks whether a stove needs a carbon monoxide alarm beside it.
	PracticeStoveAlarm = duty(BookPractice, "practice.stove-alarm",
		"Does a carbon monoxide alarm belong in a space with a stove for solid fuel?")

	// PracticeExtinguisher asks for the filling of a fire extinguisher, kg.
	PracticeExtinguisher = least[unit.Mass](BookPractice, "practice.extinguisher",
		"How much is commonly the least filling of a fire extinguisher for a galley?")

	// PracticeExtinguisherPlace asks whether an extinguisher must be in reach
	// without going past the fire.
	PracticeExtinguisherPlace = duty(BookPractice, "practice.extinguisher-place",
		"Must an extinguisher be in reach without going past the cooker?")

	// PracticeExitClear asks whether a fire must leave a way out.
	PracticeExitClear = duty(BookPractice, "practice.exit-clear",
		"Must a fire at an appliance or a locker leave a way out of the dwelling?")

	// PracticeExitDistance asks from how far off a fire leaves a way out free, m.
	PracticeExitDistance = least[unit.Length](BookPractice, "practice.exit-distance",
		"How far is a way out commonly from a cooker or a locker that may be on fire?")

	// PracticeSpillage asks how far a fan may pull the air of a room down where a
	// flue or a stove draws on it, Pa.
	PracticeSpillage = most[unit.GaugePressure](BookPractice, "practice.spillage",
		"How far may fans pull the pressure of a room down where something burns with an open flue?")

	// PracticeFanInlet asks whether a space with an extract fan has fixed vents.
	PracticeFanInlet = duty(BookPractice, "practice.fan-inlet",
		"Has a space with an extract fan fixed vents for what it draws?")

	// PracticeDraw asks how far a fan may pull the air of a dwelling down at all, Pa.
	PracticeDraw = most[unit.GaugePressure](BookPractice, "practice.draw",
		"How far may fans pull the pressure of a room down at all?")
)

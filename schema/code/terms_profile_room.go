package code

import "lowvent.example/schema/unit"

// The terms that the code chosen for the dwelling may answer: alarms, and the rooms in which people live.
var (
	// AlarmGasDuty asks whether a propane alarm is required.
	AlarmGasDuty = duty(BookProfile, "alarm.gas",
		"Must there be a propane alarm?", FactSpaceUse, FactSpaceFloorArea)

	// AlarmGasHeight asks how far above the floor a propane alarm may be, m.
	AlarmGasHeight = most[unit.Length](BookProfile, "alarm.gas-height",
		"How far above the floor may a propane alarm be?", FactSpaceUse)

	// AlarmCODuty asks whether a carbon monoxide alarm is required.
	AlarmCODuty = duty(BookProfile, "alarm.co",
		"Must there be a carbon monoxide alarm?", FactSpaceUse)
)

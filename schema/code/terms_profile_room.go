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

	// AlarmSmokeDuty asks whether a smoke alarm is required.
	AlarmSmokeDuty = duty(BookProfile, "alarm.smoke",
		"Must there be a smoke alarm?", FactSpaceUse)

	// AlarmSmokeDepth asks how far below the ceiling a smoke alarm may be, m.
	AlarmSmokeDepth = most[unit.Length](BookProfile, "alarm.smoke-depth",
		"How far below the ceiling may a smoke alarm be?", FactSpaceUse)

	// RoomVentLow asks for the free area of a space's fixed low vents together, m2.
	RoomVentLow = least[unit.Area](BookProfile, "room.vent-area-low",
		"How large must the fixed low vents of a space be together?", roomFacts...)

	// RoomVentHigh asks for the free area of a space's fixed high vents together, m2.
	RoomVentHigh = least[unit.Area](BookProfile, "room.vent-area-high",
		"How large must the fixed high vents of a space be together?", roomFacts...)

	// RoomVentAll asks for the free area of all fixed vents of a space together, m2.
	RoomVentAll = least[unit.Area](BookProfile, "room.vent-area-together",
		"How large must all fixed vents of a space be together?", roomFacts...)

	// RoomVentFixed asks whether a space must have a low and a high vent that
	// nothing can shut.
	RoomVentFixed = duty(BookProfile, "room.vent-fixed",
		"Must a space have a low and a high vent that can't be shut?", FactSpaceUse, FactSpaceBurning)

	// RoomVentLowHeight asks how far above the floor a low vent may be, m.
	RoomVentLowHeight = most[unit.Length](BookProfile, "room.vent-low-height",
		"How far above the floor may a low vent of a space be?", FactSpaceUse, FactSpaceBurning)

	// RoomVentHighDepth asks how far below the ceiling a high vent may be, m.
	RoomVentHighDepth = most[unit.Length](BookProfile, "room.vent-high-depth",
		"How far below the ceiling may a high vent of a space be?", FactSpaceUse, FactSpaceBurning)

	// ExitClear asks whether a fire at an appliance must leave a way out.
	ExitClear = duty(BookProfile, "exit.clear",
		"Must a fire at an appliance leave a way out of the dwelling?")
)

// roomFacts are the facts by which codes size the vents of a space.
var roomFacts = []Fact{FactSpaceUse, FactSpaceBurning, FactSpaceFloorArea, FactUnfluedInput, FactOpenFluedInput}

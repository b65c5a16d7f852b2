package code

import "lowvent.example/schema/unit"

// The terms that the code chosen for the dwelling may answer: lockers of cylinders, and distances from them.
var (
	// LockerSealed asks whether a cylinder locker must be tight to the inside.
	LockerSealed = duty(BookProfile, "locker.sealed",
		"Must a cylinder locker be vapour-tight to the inside of the dwelling?")

	// LockerPenetrations asks whether what passes through a locker's inner
	// walls must be sealed.
	LockerPenetrations = duty(BookProfile, "locker.penetrations",
		"Must every hole through a locker's inner walls be vapour-tight?")

	// LockerDoorOpensTo asks where the door of a cylinder locker may open to.
	LockerDoorOpensTo = allowed(BookProfile, "locker.door-opens-to",
		"Where may the door of a cylinder locker open to?", standsIn)

	// LockerLowVentArea asks for the free area of a locker's low vent, m².
	LockerLowVentArea = least[unit.Area](BookProfile, "locker.low-vent-area",
		"How much free area must the low vent of a cylinder locker have?", FactLockerFloorArea)

	// LockerLowVentEdge asks how far the lower edge of the low vent may lie
	// above the locker's floor, m.
	LockerLowVentEdge = most[unit.Length](BookProfile, "locker.low-vent-edge",
		"How far above the locker's floor may the lower edge of the low vent be?")

	// LockerVentUnrestricted asks whether the way from a locker's vents to the
	// outside must be unrestricted.
	LockerVentUnrestricted = duty(BookProfile, "locker.vent-unrestricted",
		"Must the vents of a cylinder locker lead to the outside without restriction?")

	// LockerHighVentArea asks for the free area of a locker's high vent, m².
	LockerHighVentArea = least[unit.Area](BookProfile, "locker.high-vent-area",
		"How much free area must the high vent of a cylinder locker have?", FactLockerFloorArea)

	// LockerHighVentEdge asks how far the lower edge of the high vent may lie
	// below the locker's ceiling, m.
	LockerHighVentEdge = most[unit.Length](BookProfile, "locker.high-vent-edge",
		"How far below the locker's ceiling may the lower edge of the high vent be?")

	// VentToOpening asks for the distance from a locker's vent to an opening
	// into the dwelling, m.
	VentToOpening = least[unit.Length](BookProfile, "locker.vent-to-opening",
		"How far must a locker's vent be from an opening into the dwelling?")

	// VentToIgnition asks for the distance from a locker's vent to an ignition
	// source, m.
	VentToIgnition = least[unit.Length](BookProfile, "locker.vent-to-ignition",
		"How far must a locker's vent be from an ignition source?")
)

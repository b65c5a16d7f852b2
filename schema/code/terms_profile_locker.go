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

	// LockerDoorSill asks how high the sill of a locker's door to the inside must
	// be over the locker's floor, m.
	LockerDoorSill = least[unit.Length](BookProfile, "locker.door-sill",
		"How high must the sill of a locker's door be, where the door opens to the inside?")

	// LockerDoorSeal asks what must close the edge of a locker's door to the
	// inside.
	LockerDoorSeal = allowed(BookProfile, "locker.door-seal",
		"What must seal the edge of a locker's door, where the door opens to the inside?", []string{"gasket", "brush", "none"})

	// LockerLowVentArea asks for the free area of a locker's low vent, m².
	LockerLowVentArea = least[unit.Area](BookProfile, "locker.low-vent-area",
		"How much free area must the low vent of a cylinder locker have?", FactLockerFloorArea, FactLockerGas, FactLockerHighArea, FactLockerHighShare,
		FactLockerLowVents, FactLockerOpensTo)

	// LockerLowVentDuty asks whether a locker must have a low vent at all.
	LockerLowVentDuty = duty(BookProfile, "locker.low-vent",
		"Must a cylinder locker have a vent or drain at its bottom?")

	// LockerHighVentDuty asks whether a locker must have a high vent at all.
	LockerHighVentDuty = duty(BookProfile, "locker.high-vent",
		"Must a cylinder locker have a vent near its top?")

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

	// LockerVentEnds asks what the low vent or drain of a locker may end in.
	LockerVentEnds = allowed(BookProfile, "locker.vent-ends",
		"What may the low vent or drain of a cylinder locker end in?", ventEndings)

	// LockerContents asks what may be kept or fitted in a locker.
	LockerContents = allowed(BookProfile, "locker.contents",
		"What may be kept or fitted in a cylinder locker beside the cylinders?", inALocker)

	// LockerToExhaust asks how far a locker must be from an exhaust pipe, m.
	LockerToExhaust = least[unit.Length](BookProfile, "locker.to-exhaust",
		"How far must a cylinder locker be from an exhaust pipe?", FactLockerShield)

	// LockerDrain asks whether a locker afloat must drain overboard.
	LockerDrain = duty(BookProfile, "locker.drain",
		"Afloat, must a cylinder locker have a drain from its lowest point?")

	// LockerDrainBore asks how wide a locker's drain must be inside at its
	// narrowest, m.
	LockerDrainBore = least[unit.Length](BookProfile, "locker.drain-bore",
		"Afloat, how wide must the drain of a cylinder locker be inside?", FactLockerGas)

	// LockerDrainOverWater asks whether a locker's drain must end above the
	// water.
	LockerDrainOverWater = duty(BookProfile, "locker.drain-over-water",
		"Afloat, must the drain of a cylinder locker end above the waterline?")
)

// The words for what is in a locker: those of its contents in the layout contract,
// a flame for what burns, and electrics told apart by whether their maker marks
// them for explosive air.
var inALocker = []string{"gas-gear", "protected-electrics", "electrics", "battery", "tool", "fuel", "flame", "other"}

// The words for what a vent ends in, as the layout contract has them.
var ventEndings = []string{"open-air", "closed-underfloor", "skirted-bay", "chassis-rail", "double-floor", "wheel-box", "snow-skirt", "overboard", "another-space"}

package code

import "lowvent.example/schema/unit"

// The words for where a thing stands, as references of the layout contract
// begin.
var standsIn = []string{"open-air", "lockers", "spaces"}

// The terms that the code chosen for the dwelling may answer: cylinders and
// their lockers.
var (
	// CylinderInside asks whether cylinders are kept out of the dwelling's inside.
	CylinderInside = duty(BookProfile, "cylinder.not-inside",
		"Must every cylinder be kept out of the inside of the dwelling?", FactCylinderRole, FactCylinderGas, FactWaterCapacity)

	// CylinderPlaces asks where a cylinder may stand.
	CylinderPlaces = allowed(BookProfile, "cylinder.places",
		"Where may a cylinder stand?", standsIn, FactCylinderRole, FactCylinderGas, FactWaterCapacity)

	// CylinderUpright asks whether a cylinder must stand so that its outlet is
	// in the vapour.
	CylinderUpright = duty(BookProfile, "cylinder.upright",
		"Must a cylinder stand so that vapour and not liquid leaves it?", FactCylinderRole, FactCylinderGas)

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

// The terms that the code chosen for the dwelling may answer: supply,
// appliances and alarms.
var (
	// RegulatorBetween asks whether a regulator must stand between cylinder and
	// appliance.
	RegulatorBetween = duty(BookProfile, "regulator.between",
		"Must a regulator stand between every cylinder and every appliance?", FactApplianceKind)

	// HighPressurePlaces asks where parts at cylinder pressure may be.
	HighPressurePlaces = allowed(BookProfile, "regulator.high-pressure-places",
		"Where may parts at cylinder pressure be?", standsIn)

	// RegulatorOutletCeiling asks for the highest pressure that may be
	// delivered to the dwelling's piping, Pa gauge.
	RegulatorOutletCeiling = most[unit.GaugePressure](BookProfile, "regulator.outlet-ceiling",
		"What is the highest pressure that a regulator may deliver to the piping?", FactApplianceKind)

	// ApplianceFlue asks how an appliance must be parted from the air of the
	// space it stands in.
	ApplianceFlue = allowed(BookProfile, "appliance.flue",
		"Which kinds of flue may the appliance have?", []string{"none", "room-sealed", "open-flued"}, FactApplianceKind, FactSpaceUse)

	// ClearanceAbove asks for the height from a cooking surface to what can
	// burn above it, m.
	ClearanceAbove = least[unit.Length](BookProfile, "clearance.above",
		"How far above a cooking surface must combustible material be?", FactApplianceKind)

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

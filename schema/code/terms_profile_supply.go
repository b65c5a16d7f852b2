package code

import "lowvent.example/schema/unit"

// The terms that the code chosen for the dwelling may answer: regulators, lines and hoses.
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
)

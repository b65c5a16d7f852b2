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

	// RegulatorFirstStageCeiling asks for the highest pressure that a regulator
	// may deliver to another one, Pa gauge.
	RegulatorFirstStageCeiling = most[unit.GaugePressure](BookProfile, "regulator.first-stage-ceiling",
		"What is the highest pressure that a regulator may deliver to a further regulator?")

	// RegulatorStages asks in how many stages pressure must be brought down.
	RegulatorStages = least[unit.Count](BookProfile, "regulator.stages",
		"In how many stages must the pressure be brought down?")

	// RegulatorFixed asks whether a user must be unable to set the pressure.
	RegulatorFixed = duty(BookProfile, "regulator.fixed-setting",
		"Must a regulator have a fixed setting?")

	// RegulatorForVehicles asks whether a regulator must be made for vehicles.
	RegulatorForVehicles = duty(BookProfile, "regulator.for-vehicles",
		"Must a regulator be of a kind made for vehicles, caravans or boats?")

	// RegulatorPlaces asks where a regulator may be.
	RegulatorPlaces = allowed(BookProfile, "regulator.places",
		"Where may a regulator be?", standsIn)

	// RegulatorMounted asks to what a regulator may be fixed.
	RegulatorMounted = allowed(BookProfile, "regulator.mounted",
		"What may a regulator be fixed to?", mountings)

	// RegulatorVentFaces asks which way the breather of a regulator may point.
	RegulatorVentFaces = allowed(BookProfile, "regulator.vent-faces",
		"Which way may a regulator's breather point?", facings)

	// RegulatorCovered asks whether a regulator must be kept from rain, spray and
	// ice.
	RegulatorCovered = duty(BookProfile, "regulator.covered",
		"Must a regulator be kept from rain, spray and ice?")

	// RegulatorAbove asks whether a regulator must be higher than the cylinders.
	RegulatorAbove = duty(BookProfile, "regulator.above-cylinder",
		"Must a regulator be no lower than the top of the cylinders?")

	// RegulatorLife asks how many years after it was made a regulator may serve.
	RegulatorLife = most[unit.Count](BookProfile, "regulator.life",
		"How many years may a regulator serve?")

	// HoseLife asks how many years after it was made a hose may serve.
	HoseLife = most[unit.Count](BookProfile, "hose.life",
		"How many years may a hose serve?")

	// HoseStandards asks to which standards a hose may be made, as words that are
	// printed along it.
	HoseStandards = allowed(BookProfile, "hose.standards",
		"To which standards may a hose be made?", hoseStandards)

	// HoseLength asks how long a hose may be, m.
	HoseLength = most[unit.Length](BookProfile, "hose.length",
		"How long may a hose be?", FactLinePressure, FactLineFeeds)

	// HoseNotThrough asks whether a hose must keep out of walls, floors and
	// partitions.
	HoseNotThrough = duty(BookProfile, "hose.not-through",
		"Must a hose pass through no wall, floor or partition?")

	// HoseVisible asks whether all of a hose must be open to view.
	HoseVisible = duty(BookProfile, "hose.visible",
		"Must all of a hose be visible?")

	// HoseRises asks whether a hose must rise from the cylinder.
	HoseRises = duty(BookProfile, "hose.rises",
		"Must a hose rise all the way from the cylinder?")

	// HoseOnlyToMovable asks whether a hose may lead only to what moves.
	HoseOnlyToMovable = duty(BookProfile, "hose.only-to-movable",
		"May a hose lead only to an appliance that moves in use?")

	// ChangeoverNonReturn asks whether gas must be kept from flowing back where
	// two cylinders are connected.
	ChangeoverNonReturn = duty(BookProfile, "changeover.non-return",
		"Must each of two or more connected cylinders have a valve that lets no gas back?")
)

// mountings are the words of the layout contract for what a regulator is fixed to.
var mountings = []string{"cylinder-valve", "wall", "bracket", "loose"}

// hoseStandards are the standards that the codes name for hoses, each in every spelling
// that is printed on hoses.
var hoseStandards = []string{"BS 3212 type 2", "BS 3212/2", "EN 16436", "EN 1763"}

package code

import "lowvent.example/schema/unit"

// The terms that common practice answers on lockers, their vents and drains, and
// what is kept from gas. None of these has a source.
var (
	// PracticeVentEnds asks what a locker's low vent commonly ends in.
	PracticeVentEnds = allowed(BookPractice, "practice.vent-ends",
		"What does the low vent or drain of a locker commonly end in?", ventEndings)

	// PracticeVentOpenSides asks on how many sides out of four air moves past the
	// end of a low vent.
	PracticeVentOpenSides = allowed(BookPractice, "practice.vent-open-sides",
		"On how many sides out of four must air move freely past the end of a low vent?", []string{"0", "1", "2", "3", "4"})

	// PracticeVentOutOfSpray asks whether a low vent is kept out of wheel spray.
	PracticeVentOutOfSpray = duty(BookPractice, "practice.vent-out-of-spray",
		"Must the end of a low vent lie where no wheel throws water or mud at it?")

	// PracticeVentOutsideSkirt asks whether a low vent must end outside a skirt.
	PracticeVentOutsideSkirt = duty(BookPractice, "practice.vent-outside-skirt",
		"Must a low vent end outside the skirt of a dwelling that is closed off to the ground?")

	// PracticeVentOverSnow asks whether a low vent must end above the snow.
	PracticeVentOverSnow = duty(BookPractice, "practice.vent-over-snow",
		"Must a low vent end above the deepest snow that the dwelling stands in?")

	// PracticeVentToFlue asks for the distance from a locker's vent to a flue
	// terminal, m.
	PracticeVentToFlue = least[unit.Length](BookPractice, "practice.vent-to-flue",
		"How far is a locker's vent commonly kept from a flue terminal or its air inlet?")

	// PracticeLockerContents asks what is commonly kept in a locker.
	PracticeLockerContents = allowed(BookPractice, "practice.locker-contents",
		"What may commonly be kept or fitted in a cylinder locker beside the cylinders?", inALocker)

	// PracticeLockerToHeat asks how far a locker is kept from what gets hot, m.
	PracticeLockerToHeat = least[unit.Length](BookPractice, "practice.locker-to-heat",
		"How far is a cylinder locker commonly kept from exhausts, burners, stoves and heaters?")

	// PracticeLockerDrain asks whether a locker afloat drains overboard.
	PracticeLockerDrain = duty(BookPractice, "practice.locker-drain",
		"Afloat, does a cylinder locker drain from its lowest point?")

	// PracticeDrainFalls asks whether a drain must fall all the way.
	PracticeDrainFalls = duty(BookPractice, "practice.drain-falls",
		"Must a locker's drain fall to the outside over its whole length?")

	// PracticeDrainOverWater asks whether a drain ends above the water.
	PracticeDrainOverWater = duty(BookPractice, "practice.drain-over-water",
		"Afloat, does a locker's drain end above the waterline?")

	// PracticeCylinderToOpening asks for the distance from a cylinder in the open
	// air to an opening into the dwelling, m.
	PracticeCylinderToOpening = least[unit.Length](BookPractice, "practice.cylinder-to-opening",
		"How far is a cylinder in the open air commonly kept from an opening into the dwelling?")

	// PracticeFillPointPlaces asks where a fill point may be.
	PracticeFillPointPlaces = allowed(BookPractice, "practice.fill-point-places",
		"Where may a point be at which a cylinder is filled in place?", standsIn)

	// PracticeFillPointGuards asks for the guards of a fill point.
	PracticeFillPointGuards = duty(BookPractice, "practice.fill-point-guards",
		"Must a fill point have a cap, a check valve and a stop at 80 % full?")

	// PracticeFillPointToOpening asks for the distance from a fill point to an
	// opening into the dwelling, m.
	PracticeFillPointToOpening = least[unit.Length](BookPractice, "practice.fill-point-to-opening",
		"How far is a fill point commonly kept from an opening into the dwelling?")

	// PracticeFillPointToIgnition asks for the distance from a fill point to an
	// ignition source or an air intake, m.
	PracticeFillPointToIgnition = least[unit.Length](BookPractice, "practice.fill-point-to-ignition",
		"How far is a fill point commonly kept from an ignition source or an air intake?")

	// PracticeGeneratorPlaces asks in which spaces a generator may stand.
	PracticeGeneratorPlaces = allowed(BookPractice, "practice.generator-places",
		"In which spaces may a generator stand, where it does not stand in the open air?", FactSpaceUse.Words())

	// PracticeExhaustJoints asks whether the joints of an exhaust stay outside.
	PracticeExhaustJoints = duty(BookPractice, "practice.exhaust-joints",
		"Must every joint of an exhaust lie outside the spaces where people live or sleep?")

	// PracticeExhaustToOpening asks for the distance from the end of an exhaust to
	// an opening of a space that people use, m.
	PracticeExhaustToOpening = least[unit.Length](BookPractice, "practice.exhaust-to-opening",
		"How far is the end of an exhaust commonly kept from an opening of a space that people use?")

	// PracticeFuelFillerToFlame asks for the distance from a fuel filler to a
	// flame, m.
	PracticeFuelFillerToFlame = least[unit.Length](BookPractice, "practice.fuel-filler-to-flame",
		"How far is a fuel filler commonly kept from flue terminals and burners?")

	// PracticeLowOpening asks whether a low space that gas can reach needs a low
	// opening.
	PracticeLowOpening = duty(BookPractice, "practice.low-opening",
		"Must a low space that gas can run into, and that holds something to light it, have an opening at its bottom?")

	// PracticeFlammablesApart asks whether what gives off vapour is kept apart
	// from what lights it.
	PracticeFlammablesApart = duty(BookPractice, "practice.flammables-apart",
		"Must fuel, paint, solvents, sprays and cartridges be kept out of lockers and of every space with a flame or spark?")

	// PracticeStoredToBurner asks how far what burns easily is kept from burners,
	// m.
	PracticeStoredToBurner = least[unit.Length](BookPractice, "practice.stored-to-burner",
		"How far is what burns easily commonly kept from a burner or stove?")
)

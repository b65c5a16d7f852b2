package code

import "lowvent.example/schema/unit"

// The terms that common practice answers where the chosen code has no text, or where
// none was chosen: what no fitter would leave as it is, whatever law holds. A practice
// that is broken is a finding; one that is kept says nothing.
var (
	// PracticeCylinderInside asks whether cylinders are kept out of the dwelling's
	// inside.
	PracticeCylinderInside = duty(BookPractice, "practice.cylinder-not-inside",
		"Is every cylinder commonly kept out of the inside of a dwelling?", FactCylinderRole, FactCylinderGas, FactWaterCapacity)

	// PracticeCylinderPlaces asks where a cylinder commonly stands.
	PracticeCylinderPlaces = allowed(BookPractice, "practice.cylinder-places",
		"Where does a cylinder commonly stand?", standsIn, FactCylinderRole, FactCylinderGas, FactWaterCapacity)

	// PracticeCylinderUpright asks whether a cylinder stands so that its outlet is
	// in the vapour.
	PracticeCylinderUpright = duty(BookPractice, "practice.cylinder-upright",
		"Does a cylinder commonly stand so that vapour and not liquid leaves it?", FactCylinderRole, FactCylinderGas)

	// PracticeLockerSealed asks whether a cylinder locker is tight to the inside.
	PracticeLockerSealed = duty(BookPractice, "practice.locker-sealed",
		"Is a cylinder locker commonly vapour-tight to the inside of the dwelling?")

	// PracticeLockerPenetrations asks whether what passes through a locker's inner
	// walls is sealed.
	PracticeLockerPenetrations = duty(BookPractice, "practice.locker-penetrations",
		"Is every hole through a locker's inner walls commonly vapour-tight?")

	// PracticeLockerDoorOpensTo asks where the door of a cylinder locker opens to.
	PracticeLockerDoorOpensTo = allowed(BookPractice, "practice.locker-door-opens-to",
		"Where does the door of a cylinder locker commonly open to?", standsIn)

	// PracticeLockerLowVent asks whether a cylinder locker has an opening low down.
	PracticeLockerLowVent = duty(BookPractice, "practice.locker-low-vent",
		"Does a cylinder locker commonly have an opening to the outside at its lowest point?")

	// PracticeLowVentEdge asks how far the lower edge of the low vent lies above the
	// locker's floor, m.
	PracticeLowVentEdge = most[unit.Length](BookPractice, "practice.low-vent-edge",
		"How far above the locker's floor does the lower edge of the low vent commonly lie at most?")

	// PracticeLockerVentUnrestricted asks whether the way from a locker's vents to
	// the outside is unrestricted.
	PracticeLockerVentUnrestricted = duty(BookPractice, "practice.locker-vent-unrestricted",
		"Do the vents of a cylinder locker commonly lead to the outside without restriction?")

	// PracticeRegulatorBetween asks whether a regulator stands between cylinder and
	// appliance.
	PracticeRegulatorBetween = duty(BookPractice, "practice.regulator-between",
		"Does a regulator commonly stand between every cylinder and every appliance?", FactApplianceKind)

	// PracticeHighPressurePlaces asks where parts at cylinder pressure are.
	PracticeHighPressurePlaces = allowed(BookPractice, "practice.high-pressure-places",
		"Where are parts at cylinder pressure commonly kept?", standsIn)

	// PracticeApplianceFlue asks how an appliance is parted from the air of the
	// space it stands in.
	PracticeApplianceFlue = allowed(BookPractice, "practice.appliance-flue",
		"Which kinds of flue does the appliance commonly have?", []string{"none", "room-sealed", "open-flued"}, FactApplianceKind, FactSpaceUse)

	// PracticeClearanceAbove asks for the height from a cooking surface to what can
	// burn above it, m.
	PracticeClearanceAbove = least[unit.Length](BookPractice, "practice.clearance-above",
		"How far above a cooking surface is combustible material commonly kept?", FactApplianceKind)
)

package code

// The words for where a thing stands, as references of the layout contract
// begin.
var standsIn = []string{"open-air", "lockers", "spaces"}

// The terms that the code chosen for the dwelling may answer: cylinders.
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
)

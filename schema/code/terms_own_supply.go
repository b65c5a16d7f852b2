package code

// The terms that this program answers itself: cylinders and regulators.
var (
	// OwnGas asks for which gas everything from cylinder to burner must be.
	OwnGas = allowed(BookOwn, "own.gas",
		"For which gas must cylinder, regulator and appliance be?", []string{"propane", "butane", "mix", "natural-gas"})

	// OwnCylinderFits asks whether a cylinder must fit its locker.
	OwnCylinderFits = duty(BookOwn, "own.cylinder-fits",
		"Must a cylinder fit into its locker and through the door of it?")
)

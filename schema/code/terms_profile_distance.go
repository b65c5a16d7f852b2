package code

import "lowvent.example/schema/unit"

// The terms that the code chosen for the dwelling may answer: distances from what can let gas out.
var (
	// VentToOpening asks for the distance from a locker's vent to an opening
	// into the dwelling, m.
	VentToOpening = least[unit.Length](BookProfile, "locker.vent-to-opening",
		"How far must a locker's vent be from an opening into the dwelling?")

	// VentToIgnition asks for the distance from a locker's vent to an ignition
	// source, m.
	VentToIgnition = least[unit.Length](BookProfile, "locker.vent-to-ignition",
		"How far must a locker's vent be from an ignition source?")

	// CylinderToOpening asks for the distance from a cylinder in the open air to
	// an opening into the dwelling, m.
	CylinderToOpening = least[unit.Length](BookProfile, "cylinder.to-opening",
		"How far must a cylinder in the open air be from an opening into the dwelling?", FactCylinderPlace)

	// CylinderToIgnition asks for the distance from a cylinder to an ignition
	// source, m.
	CylinderToIgnition = least[unit.Length](BookProfile, "cylinder.to-ignition",
		"How far must a cylinder be from an ignition source?", FactCylinderPlace)

	// FuelFillerToFlue asks for the distance from the filler of a vehicle's or
	// boat's own fuel to a flue terminal or its air inlet, m.
	FuelFillerToFlue = least[unit.Length](BookProfile, "fuel-filler.to-flue",
		"How far must a flue terminal or its air inlet be from a fuel filler?")

	// FillPointToIntake asks for the distance from the point where a cylinder is
	// filled in place to a fan's or a burner's air intake, m.
	FillPointToIntake = least[unit.Length](BookProfile, "fill-point.to-intake",
		"How far must a fill point for gas be from an air intake with a fan or a burner behind it?")

	// FillPointToIgnition asks for the distance from the point where a cylinder
	// is filled in place to an ignition source, m.
	FillPointToIgnition = least[unit.Length](BookProfile, "fill-point.to-ignition",
		"How far must a fill point for gas be from an ignition source?")
)

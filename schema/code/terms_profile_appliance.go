package code

import "lowvent.example/schema/unit"

// The terms that the code chosen for the dwelling may answer: appliances, flues and clearances.
var (
	// ApplianceFlue asks how an appliance must be parted from the air of the
	// space it stands in.
	ApplianceFlue = allowed(BookProfile, "appliance.flue",
		"Which kinds of flue may the appliance have?", []string{"none", "room-sealed", "open-flued"}, FactApplianceKind, FactSpaceUse)

	// ClearanceAbove asks for the height from a cooking surface to what can
	// burn above it, m.
	ClearanceAbove = least[unit.Length](BookProfile, "clearance.above",
		"How far above a cooking surface must combustible material be?", FactApplianceKind)
)

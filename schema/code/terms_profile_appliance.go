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

	// ApplianceFlueByRoom asks how an appliance in a washroom or in a space where
	// people sleep must be parted from the air there.
	ApplianceFlueByRoom = allowed(BookProfile, "appliance.flue-by-room",
		"Which kinds of flue may an appliance have in a washroom or where people sleep?", []string{"none", "room-sealed", "open-flued"}, FactApplianceKind, FactSpaceUse)

	// ApplianceFlameGuard asks whether the gas of every burner and pilot must stop
	// by itself when its flame is out.
	ApplianceFlameGuard = duty(BookProfile, "appliance.flame-guard",
		"Must the gas of every burner stop by itself when the flame goes out?", FactApplianceKind, FactSpaceUse)

	// AppliancePilot asks how an appliance may be lit.
	AppliancePilot = allowed(BookProfile, "appliance.pilot",
		"Which ways of lighting may the appliance have?", []string{"none", "continuous-pilot", "electronic", "manual"}, FactApplianceKind, FactSpaceUse)

	// AppliancePortable asks whether appliances that have no fixed place are kept
	// out of the dwelling.
	AppliancePortable = duty(BookProfile, "appliance.portable",
		"Must an appliance that can be carried about be kept out of the dwelling?", FactApplianceKind)

	// CookingNotForHeat asks whether a cooking appliance must not warm the room.
	CookingNotForHeat = duty(BookProfile, "appliance.cooking-not-heating",
		"Is a cooking appliance barred from warming the room?")

	// ApplianceListed asks whether an appliance must be approved for the dwelling
	// that it is in.
	ApplianceListed = duty(BookProfile, "appliance.listed",
		"Must the appliance be approved for dwellings of this kind?", FactApplianceKind)

	// ApplianceService asks whether a fitter must be able to reach an appliance.
	ApplianceService = duty(BookProfile, "appliance.service",
		"Must the appliance be within reach for service, and its burner be seen?", FactApplianceKind)
)

package code

import "lowvent.example/schema/unit"

// The terms that common practice answers: appliances, flues and clearances. None
// has a source.
var (
	// PracticeFlueByRoom asks how an appliance in a washroom or in a space where
	// people sleep is parted from the air there.
	PracticeFlueByRoom = allowed(BookPractice, "practice.flue-by-room",
		"Which kinds of flue may an appliance have in a washroom or where people sleep?", []string{"none", "room-sealed", "open-flued"}, FactApplianceKind, FactSpaceUse)

	// PracticeFlameGuard asks whether the gas of every burner must stop by itself.
	PracticeFlameGuard = duty(BookPractice, "practice.flame-guard",
		"Must the gas of every burner stop by itself when the flame goes out?")

	// PracticeOutdoorOnly asks whether what is made for outdoors stays there.
	PracticeOutdoorOnly = duty(BookPractice, "practice.outdoor-only",
		"Must an appliance that is made for outdoor use only stay out of the dwelling?")

	// PracticePortable asks whether what can be carried about stays outdoors.
	PracticePortable = duty(BookPractice, "practice.portable",
		"Must an appliance that can be carried about be kept out of the dwelling?")

	// PracticeCookingNotForHeat asks whether a cooker must not warm the room.
	PracticeCookingNotForHeat = duty(BookPractice, "practice.cooking-not-heating",
		"Is a cooking appliance barred from warming the room?")

	// PracticeListed asks whether an appliance must be approved for the dwelling
	// that it is in.
	PracticeListed = duty(BookPractice, "practice.listed",
		"Must the appliance be approved for dwellings of this kind?")

	// PracticeService asks whether a fitter must be able to reach an appliance.
	PracticeService = duty(BookPractice, "practice.service",
		"Must the appliance be within reach for service, and its burner be seen?")

	// PracticePlateClearances asks whether the distances that a plate or manual
	// states must be kept.
	PracticePlateClearances = duty(BookPractice, "practice.plate-clearances",
		"Must the distances that the plate or manual states be kept?")

	// PracticeClearanceSide asks for the distance from a cooking surface to what
	// can burn beside it, m.
	PracticeClearanceSide = least[unit.Length](BookPractice, "practice.clearance-side",
		"How far beside a cooking surface is combustible material commonly kept?")

	// PracticeClearanceNear asks for the distance from a cooking surface to what
	// can swing, slide or blow towards it, m.
	PracticeClearanceNear = least[unit.Length](BookPractice, "practice.clearance-near",
		"How far from a cooking surface is a curtain or another thing that moves commonly kept?")

	// PracticeFridgeSealed asks whether the burner of a refrigerator must be shut
	// off from the room and from joints in wiring.
	PracticeFridgeSealed = duty(BookPractice, "practice.fridge-sealed",
		"Must the space behind a gas refrigerator be shut off from the room, with no joint of wiring in it?")

	// PracticeFridgeVent asks for the free area of each of the two vents behind a
	// refrigerator, m2.
	PracticeFridgeVent = least[unit.Area](BookPractice, "practice.fridge-vent",
		"How large is each of the two vents behind a gas refrigerator commonly?")

	// PracticeFlueTight asks whether every joint of a flue indoors must be tight.
	PracticeFlueTight = duty(BookPractice, "practice.flue-tight",
		"Must every joint of a flue inside the dwelling be gas-tight?")

	// PracticeFlueDrains asks whether a flue must drain and not sag.
	PracticeFlueDrains = duty(BookPractice, "practice.flue-drains",
		"Must water run out of a flue, with no dip where it can stand?")

	// PracticeFlueNotBoxedIn asks whether a flue must keep out of beds and seats.
	PracticeFlueNotBoxedIn = duty(BookPractice, "practice.flue-not-boxed-in",
		"Must a flue keep out of bed boxes, seat boxes and wardrobes?")

	// PracticeFlueToCombustible asks for the distance from a flue to what can burn, m.
	PracticeFlueToCombustible = least[unit.Length](BookPractice, "practice.flue-to-combustible",
		"How far is a flue commonly kept from what can burn?", FactFlueKind)

	// PracticeTerminalNotUnder asks whether a flue must not end below the dwelling.
	PracticeTerminalNotUnder = duty(BookPractice, "practice.terminal-not-under",
		"Must the flue end elsewhere than below the dwelling?")

	// PracticeTerminalToOpening asks for the distance from a flue's outer end to an
	// opening into the dwelling, m.
	PracticeTerminalToOpening = least[unit.Length](BookPractice, "practice.terminal-to-opening",
		"How far is a flue's outer end commonly kept from an opening into the dwelling?")

	// PracticeTerminalToFuel asks for the distance from a flue's outer end to where
	// fuel or its vapour comes out, m.
	PracticeTerminalToFuel = least[unit.Length](BookPractice, "practice.terminal-to-fuel",
		"How far is a flue's outer end commonly kept from a fuel filler or a locker's vent?")
)

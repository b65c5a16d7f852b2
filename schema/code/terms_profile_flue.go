package code

import "lowvent.example/schema/unit"

// The terms that the code chosen for the dwelling may answer: flues and their outer ends.
var (
	// FlueTight asks whether fumes must be led outside with no way back in.
	FlueTight = duty(BookProfile, "flue.tight",
		"Must the fumes be led to the outside, with no way back in?", FactApplianceKind, FactFlueKind)

	// TerminalNotUnder asks whether a flue must not end below the dwelling.
	TerminalNotUnder = duty(BookProfile, "flue.terminal-not-under",
		"Must the flue end elsewhere than below the dwelling?", FactFlueKind)

	// TerminalToOpening asks for the distance from a flue's outer end to an opening
	// into the dwelling, m.
	TerminalToOpening = least[unit.Length](BookProfile, "flue.terminal-to-opening",
		"How far must the flue's outer end be from an opening into the dwelling?", FactFlueKind, FactFlueWall, FactApplianceInput)

	// TerminalToFuel asks for the distance from a flue's outer end to where fuel or
	// its vapour comes out, m.
	TerminalToFuel = least[unit.Length](BookProfile, "flue.terminal-to-fuel",
		"How far must the flue's outer end be from a fuel filler or a locker's vent?", FactFlueKind)

	// TerminalIntakeReach asks from how far off a flue's outer end may be lower
	// than TerminalOverIntake tells beside an air intake with a fan, m.
	TerminalIntakeReach = least[unit.Length](BookProfile, "flue.terminal-intake-reach",
		"From how far off may the flue end at any height beside an air intake with a fan?", FactFlueKind)

	// TerminalOverIntake asks how far above an air intake with a fan a flue must
	// end that is nearer than TerminalIntakeReach tells, m.
	TerminalOverIntake = least[unit.Length](BookProfile, "flue.terminal-over-intake",
		"How far above a nearby air intake with a fan must the flue end?", FactFlueKind)
)

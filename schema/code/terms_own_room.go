package code

import "lowvent.example/schema/unit"

// The terms that this program answers itself: rooms.
var (
	// OwnStoveIsASpark asks whether a stove must stand among the ignition sources.
	OwnStoveIsASpark = duty(BookOwn, "own.stove-is-a-spark",
		"Must a stove for solid fuel be listed among the ignition sources of its space?")

	// OwnCarbonDioxide asks how much carbon dioxide the air of a room may hold, by
	// volume.
	OwnCarbonDioxide = most[unit.Ratio](BookOwn, "own.carbon-dioxide",
		"How much carbon dioxide may the air of a room hold at its worst?")

	// OwnOxygen asks how much oxygen the air of a room must hold, by volume.
	OwnOxygen = least[unit.Ratio](BookOwn, "own.oxygen",
		"How much oxygen must the air of a room hold at its worst?")

	// OwnDryGlass asks whether the coldest glass must stay dry.
	OwnDryGlass = duty(BookOwn, "own.dry-glass",
		"Must the coldest glass of a room stay dry?")

	// OwnGuardBeforePool asks whether a flame guard must shut before gas has pooled
	// up to something that lights it.
	OwnGuardBeforePool = duty(BookOwn, "own.guard-before-pool",
		"Must a flame guard shut before the gas has pooled up to something that lights it?")
)

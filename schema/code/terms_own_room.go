package code

// The terms that this program answers itself: rooms.
var (
	// OwnStoveIsASpark asks whether a stove must stand among the ignition sources.
	OwnStoveIsASpark = duty(BookOwn, "own.stove-is-a-spark",
		"Must a stove for solid fuel be listed among the ignition sources of its space?")
)

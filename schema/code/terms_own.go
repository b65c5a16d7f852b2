package code

import "lowvent.example/schema/unit"

// The terms that this program answers itself: what a file must be like to be
// judged at all, and what its owner asked for.
var (
	// OwnSurveyComplete asks whether lists must be stated complete.
	OwnSurveyComplete = duty(BookOwn, "own.survey-complete",
		"Must every list that a check ranges over be stated complete?")

	// OwnConsistent asks whether a file must agree with itself.
	OwnConsistent = duty(BookOwn, "own.consistent",
		"Must what the file says of one thing agree with what it says of the others?")

	// OwnTapeAgreement asks how far a tape measure may be from what the
	// coordinates give, m.
	OwnTapeAgreement = most[unit.Length](BookOwn, "own.tape-agreement",
		"How far apart may a tape measure and the coordinates be?")

	// OwnRunTime asks whether the gas must last as long as the owner wants.
	OwnRunTime = duty(BookOwn, "own.run-time",
		"Must the gas last as long as the owner asked for?")
)

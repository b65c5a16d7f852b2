package code

import "lowvent.example/schema/unit"

// The terms that common practice answers: cylinders, regulators, lines and hoses.
var (
	// PracticePressureDrop asks how much pressure is lost on the way to an
	// appliance with everything burning, Pa.
	PracticePressureDrop = most[unit.GaugePressure](BookPractice, "practice.pressure-drop",
		"How much pressure is commonly lost between the regulator and an appliance, at most?")

	// PracticePlateRunning asks whether each appliance keeps the least pressure of
	// its plate with everything burning.
	PracticePlateRunning = duty(BookPractice, "practice.plate-running",
		"Does each appliance keep the least pressure of its plate while everything burns?")

	// PracticeColdInlet asks whether a cylinder keeps the regulator's least inlet
	// pressure in the cold.
	PracticeColdInlet = duty(BookPractice, "practice.cold-inlet",
		"Does the cylinder keep the pressure that its regulator needs in the coldest air?")

	// PracticeColdDraw asks whether a cylinder a quarter full makes the vapour that
	// is burned in the cold.
	PracticeColdDraw = duty(BookPractice, "practice.cold-draw",
		"Does a cylinder a quarter full make the vapour that is burned in the coldest air?")

	// PracticeColdHeating asks whether a cylinder a quarter full feeds everything
	// that heats, at full flame, in the cold.
	PracticeColdHeating = duty(BookPractice, "practice.cold-heating",
		"Does a cylinder a quarter full feed everything that heats, at full flame, in the coldest air?")

	// PracticeHotRating asks whether regulator and hoses bear the pressure of the
	// hottest day.
	PracticeHotRating = duty(BookPractice, "practice.hot-rating",
		"Do regulator and hoses bear the cylinder's pressure on the hottest day?")

	// PracticeJetMost asks what share of a burner's rating its jet passes at most.
	PracticeJetMost = most[unit.Ratio](BookPractice, "practice.jet-most",
		"What share of a burner's rated input does its jet pass at most, by the table of jets?")

	// PracticeJetLeast asks what share of a burner's rating its jet passes at least.
	PracticeJetLeast = least[unit.Ratio](BookPractice, "practice.jet-least",
		"What share of a burner's rated input does its jet pass at least, by the table of jets?")

	// PracticeCylinderHeld asks how a cylinder is held.
	PracticeCylinderHeld = least[unit.Count](BookPractice, "practice.cylinder-held",
		"At how many points is a cylinder commonly held?")

	// PracticeCylinderDamage asks with which damage a cylinder is used on.
	PracticeCylinderDamage = allowed(BookPractice, "practice.cylinder-damage",
		"With which damage is a cylinder still filled and used?", damages)

	// PracticeTareLoss asks what share of its stamped tare a cylinder may have
	// lost.
	PracticeTareLoss = most[unit.Ratio](BookPractice, "practice.tare-loss",
		"What share of its stamped tare may a cylinder have lost before it is set aside?")

	// PracticeLabelDate asks whether the date on a cylinder is heeded.
	PracticeLabelDate = duty(BookPractice, "practice.label-date",
		"Is a cylinder examined again by the date on its collar or label?")

	// PracticeReliefValve asks whether a cylinder has a safety relief.
	PracticeReliefValve = duty(BookPractice, "practice.relief-valve",
		"Does a cylinder have a safety relief?", FactSpecification)

	// PracticeOverfillDevice asks whether a cylinder has a device against
	// overfilling.
	PracticeOverfillDevice = duty(BookPractice, "practice.overfill-device",
		"Does a cylinder have a device that stops its filling?", FactSpecification)

	// PracticeOutletPlugged asks whether a cylinder that is not connected carries
	// its plug.
	PracticeOutletPlugged = duty(BookPractice, "practice.outlet-plugged",
		"Does a cylinder that is not connected carry the plug of its outlet?")

	// PracticeCylinderGas asks which gas is put into the cylinders.
	PracticeCylinderGas = allowed(BookPractice, "practice.cylinder-gas",
		"Which gas is in cylinders that are used in frost?", []string{"propane", "butane", "mix", "natural-gas"})

	// PracticePropaneShare asks how much of the gas is propane.
	PracticePropaneShare = least[unit.Ratio](BookPractice, "practice.propane-share",
		"What share of gas sold as propane is propane?")

	// PracticeReliefFaces asks which way a cylinder's safety relief points.
	PracticeReliefFaces = allowed(BookPractice, "practice.relief-faces",
		"Which way does the safety relief of a cylinder point?", facings)

	// PracticeReliefToOpening asks how far a cylinder in the open is kept from an
	// opening below its safety relief, m.
	PracticeReliefToOpening = least[unit.Length](BookPractice, "practice.relief-to-opening",
		"How far is a cylinder in the open commonly kept from an opening below its relief?")

	// PracticeBehindBumper asks whether cylinders lie within the bumper and behind
	// the front axle.
	PracticeBehindBumper = duty(BookPractice, "practice.within-bumpers",
		"Does a cylinder on a vehicle lie behind the front axle and ahead of the rear bumper?")

	// PracticeFixedSetting asks whether a user can set the regulator.
	PracticeFixedSetting = duty(BookPractice, "practice.fixed-setting",
		"Is a regulator of fixed setting, so that nobody sets its pressure by hand?")

	// PracticeRegulatorPlaces asks where a regulator is.
	PracticeRegulatorPlaces = allowed(BookPractice, "practice.regulator-places",
		"Where is a regulator commonly put?", standsIn)

	// PracticeRegulatorMounted asks what a regulator is fixed to.
	PracticeRegulatorMounted = allowed(BookPractice, "practice.regulator-mounted",
		"What is a regulator commonly fixed to?", mountings)

	// PracticeRegulatorVentFaces asks which way a regulator's breather points.
	PracticeRegulatorVentFaces = allowed(BookPractice, "practice.regulator-vent-faces",
		"Which way does a regulator's breather commonly point?", facings)

	// PracticeRegulatorCovered asks whether a regulator is kept dry.
	PracticeRegulatorCovered = duty(BookPractice, "practice.regulator-covered",
		"Is a regulator kept from rain, spray and ice?")

	// PracticeRegulatorLife asks how many years a regulator serves.
	PracticeRegulatorLife = most[unit.Count](BookPractice, "practice.regulator-life",
		"How many years does a regulator commonly serve?")

	// PracticeHoseLife asks how many years a hose serves.
	PracticeHoseLife = most[unit.Count](BookPractice, "practice.hose-life",
		"How many years does a hose commonly serve?")

	// PracticeHoseLength asks how long a hose is, m.
	PracticeHoseLength = most[unit.Length](BookPractice, "practice.hose-length",
		"How long is a hose commonly at most?")

	// PracticeHoseNotThrough asks whether hoses keep out of walls.
	PracticeHoseNotThrough = duty(BookPractice, "practice.hose-not-through",
		"Does a hose keep out of walls, floors and partitions?")

	// PracticeHoseMadeFor asks what a hose must be made for.
	PracticeHoseMadeFor = allowed(BookPractice, "practice.hose-made-for",
		"What must a hose be made for?", hosePurposes)

	// PracticeHoseVisible asks whether hoses are open to view.
	PracticeHoseVisible = duty(BookPractice, "practice.hose-visible",
		"Is all of a hose open to view?")

	// PracticeHoseRises asks whether a hose rises from its cylinder.
	PracticeHoseRises = duty(BookPractice, "practice.hose-rises",
		"Does the hose on a cylinder rise all the way from it?")

	// PracticeNonReturn asks whether a cylinder can be taken away without gas
	// coming out of the other's connection.
	PracticeNonReturn = duty(BookPractice, "practice.non-return",
		"Does each of two or more connected cylinders have a valve that lets no gas back?")

	// PracticeFreeTail asks whether a free tail is plugged.
	PracticeFreeTail = duty(BookPractice, "practice.free-tail-plugged",
		"Is a tail without its cylinder closed with a plug?")
)

// hosePurposes are the words of the layout contract for what a hose is made for.
var hosePurposes = []string{"lp-gas", "natural-gas", "fuel", "air", "water", "not-printed"}

package code

import "lowvent.example/schema/unit"

// The words for where a thing stands, as references of the layout contract
// begin.
var standsIn = []string{"open-air", "lockers", "spaces"}

// The terms that the code chosen for the dwelling may answer: cylinders.
var (
	// CylinderInside asks whether cylinders are kept out of the dwelling's inside.
	CylinderInside = duty(BookProfile, "cylinder.not-inside",
		"Must every cylinder be kept out of the inside of the dwelling?", FactCylinderRole, FactCylinderGas, FactWaterCapacity)

	// CylinderPlaces asks where a cylinder may stand.
	CylinderPlaces = allowed(BookProfile, "cylinder.places",
		"Where may a cylinder stand?", standsIn, FactCylinderRole, FactCylinderGas, FactWaterCapacity)

	// CylinderUpright asks whether a cylinder must stand so that its outlet is
	// in the vapour.
	CylinderUpright = duty(BookProfile, "cylinder.upright",
		"Must a cylinder stand so that vapour and not liquid leaves it?", FactCylinderRole, FactCylinderGas)

	// CylinderLimited asks what a code limits about cylinders, so that what it
	// does not limit is not asked.
	CylinderLimited = allowed(BookProfile, "cylinder.limited",
		"What does the code limit about the cylinders of a dwelling?", []string{"in-service", "aboard", "water-capacity", "propane", "least-propane"})

	// CylinderCountInService asks how many cylinders may be in service at once.
	CylinderCountInService = most[unit.Count](BookProfile, "cylinder.count-in-service",
		"How many cylinders may be in service at once?")

	// CylinderCountAboard asks how many cylinders there may be, spare and empty
	// ones included.
	CylinderCountAboard = most[unit.Count](BookProfile, "cylinder.count-aboard",
		"How many cylinders may there be, spare and empty ones included?")

	// CylinderLargestWater asks how much water a cylinder may hold, kg.
	CylinderLargestWater = most[unit.WaterMass](BookProfile, "cylinder.largest-water-capacity",
		"How large may a cylinder be, by the water that would fill it?")

	// CylinderLargestPropane asks how much propane a full cylinder may hold, kg,
	// for the size of the cylinder and not for how far it may be filled.
	CylinderLargestPropane = most[unit.PropaneMass](BookProfile, "cylinder.largest-propane",
		"How large may a cylinder be, by the propane that it holds when full?")

	// CylinderSmallestPropane asks how much propane a full cylinder must hold at
	// least, kg.
	CylinderSmallestPropane = least[unit.PropaneMass](BookProfile, "cylinder.smallest-propane",
		"How small may a cylinder be, by the propane that it holds when full?")

	// CylinderRestraint asks what a code wants of what holds a cylinder; a
	// cylinder that nothing holds is "loose", which no code allows.
	CylinderRestraint = allowed(BookProfile, "cylinder.restraint",
		"How must a cylinder be held?", []string{"held", "load", "points", "by-hand", "metal"})

	// CylinderRestraintLoad asks whether the restraint must bear a multiple of
	// the weight of the full cylinder, and CylinderRestraintTimes which.
	CylinderRestraintLoad = duty(BookProfile, "cylinder.restraint-load",
		"Must a cylinder's restraint bear a multiple of the weight of the full cylinder?")

	// CylinderRestraintTimes asks how many times the weight of the full cylinder
	// its restraint must bear.
	CylinderRestraintTimes = least[unit.Count](BookProfile, "cylinder.restraint-times",
		"How many times the weight of the full cylinder must its restraint bear?")

	// CylinderRestraintPoints asks at how many heights or points a cylinder must
	// be held.
	CylinderRestraintPoints = least[unit.Count](BookProfile, "cylinder.restraint-points",
		"At how many points must a cylinder be held?")

	// CylinderRestraintByHand asks whether a cylinder must come free without
	// tools.
	CylinderRestraintByHand = duty(BookProfile, "cylinder.restraint-by-hand",
		"Must a cylinder come free of its restraint without tools?")

	// CylinderRestraintMetal asks whether the restraint must be of metal.
	CylinderRestraintMetal = duty(BookProfile, "cylinder.restraint-metal",
		"Must a cylinder's restraint be of metal?")

	// CylinderDamage asks with which damage a cylinder may still be used.
	CylinderDamage = allowed(BookProfile, "cylinder.damage",
		"With which damage may a cylinder still be used?", damages)

	// CylinderTareLoss asks what share of its stamped tare a cylinder may have
	// lost.
	CylinderTareLoss = most[unit.Ratio](BookProfile, "cylinder.tare-loss",
		"What share of its stamped tare may a cylinder have lost?")

	// CylinderTestAge asks how many years after its last test or examination a
	// cylinder may be used.
	CylinderTestAge = most[unit.Count](BookProfile, "cylinder.test-age",
		"How many years after its last test may a cylinder be used?")

	// CylinderOverfillDevice asks whether a cylinder must have a device against
	// overfilling.
	CylinderOverfillDevice = duty(BookProfile, "cylinder.overfill-device",
		"Must a cylinder have a device that stops its filling?", FactSpecification)

	// CylinderReliefFaces asks which way a cylinder's safety relief may point.
	CylinderReliefFaces = allowed(BookProfile, "cylinder.relief-faces",
		"Which way may the safety relief of a cylinder point?", facings)

	// CylinderReliefToOpening asks how far a cylinder's safety relief must be, in
	// plan, from an opening into the dwelling below it, m.
	CylinderReliefToOpening = least[unit.Length](BookProfile, "cylinder.relief-to-opening",
		"How far must a cylinder's safety relief be from an opening below it?")
)

// damages are the words of the layout contract for damage seen on a cylinder.
var damages = []string{"none", "rust-pitted", "dented", "burnt", "bent-collar", "missing-foot-ring", "leaking"}

// facings are the words of the layout contract for where an outlet points.
var facings = []string{"up", "down", "outside", "inside", "left", "right", "front", "rear"}

package code

import "lowvent.example/schema/unit"

// The words for what gas lines are joined, guarded and shut off by, as the layout
// contract has them.
var (
	jointKinds   = []string{"flare-45", "flare-37", "double-ring", "compression", "ball-sleeve", "brazed", "soldered", "threaded", "pressed", "crimped", "welded", "quick-coupling", "maker-fitting"}
	lineKinds    = []string{"copper", "steel-pipe", "steel-tube", "stainless-tube", "corrugated-stainless", "polyethylene", "aluminium", "hose", "direct"}
	reaches      = []string{"outside", "inside", "inside-beside-appliance", "tool-needed", "blocked"}
	shutoffKinds = []string{"manual-valve", "cylinder-valve", "solenoid", "excess-flow", "hose-rupture-valve", "crash-sensor", "gas-alarm-valve"}
	sleeveKinds  = []string{"grommet", "bulkhead-fitting", "sleeve", "sealed-sleeve", "none"}
)

// The terms that the code chosen for the dwelling may answer: gas lines and what is in them.
var (
	// LineMaterials asks what a fixed gas line may be made of.
	LineMaterials = allowed(BookProfile, "line.materials",
		"What may a fixed gas line be made of?", lineKinds, FactLineKind, FactLinePressure)

	// LineWall asks how thick the wall of a fixed gas line must be, m.
	LineWall = least[unit.Length](BookProfile, "line.wall",
		"How thick must the wall of a fixed gas line be?", FactLineKind, FactLinePressure, FactLineOutside)

	// LineMeltsAt asks at which temperature the material of a fixed gas line may
	// melt at the earliest, K.
	LineMeltsAt = least[unit.Temperature](BookProfile, "line.melts-at",
		"Up to which temperature must the material of a fixed gas line not melt?", FactLineKind)

	// JointKinds asks how a joint in a gas line may be made.
	JointKinds = allowed(BookProfile, "line.joint-kinds",
		"How may a joint in a gas line be made?", jointKinds, FactLineKind, FactJointKind)

	// JointsAccessible asks whether each joint must be where it can be seen and
	// reached.
	JointsAccessible = duty(BookProfile, "line.joints-accessible",
		"Must every joint in a gas line be where it can be seen and reached?")

	// LineInSight asks whether a line must not be concealed.
	LineInSight = duty(BookProfile, "line.in-sight",
		"Must the gas line not be concealed?", FactLineKind)

	// LineStrikePlates asks whether the hidden stretches of a line must be guarded
	// against nails and screws.
	LineStrikePlates = duty(BookProfile, "line.strike-plates",
		"Must steel plates guard the hidden stretches of a gas line?", FactLineKind)

	// LineSupportsEvery asks how far apart the supports of a line may be, m.
	LineSupportsEvery = most[unit.Length](BookProfile, "line.supports-every",
		"How far apart may the supports of a gas line be?", FactLineKind)

	// LineSleeves asks what must guard a line where it passes through a wall or
	// floor.
	LineSleeves = allowed(BookProfile, "line.sleeves",
		"What must guard a gas line where it passes through a wall, floor or bulkhead?", sleeveKinds)

	// LineNotUnderExit asks whether lines are kept from under the ways out.
	LineNotUnderExit = duty(BookProfile, "line.not-under-exit",
		"Must gas lines be kept from under the ways out?")

	// LineToWiring asks for the distance from a line to electric cables, m.
	LineToWiring = least[unit.Length](BookProfile, "line.to-wiring",
		"How far must a gas line be from electric cables?")

	// LineToHeat asks for the distance from a line to exhausts and other hot
	// parts, m.
	LineToHeat = least[unit.Length](BookProfile, "line.to-heat",
		"How far must a gas line be from exhausts and other hot parts?")

	// LineNotInEngineSpace asks whether lines are kept out of engine spaces.
	LineNotInEngineSpace = duty(BookProfile, "line.not-in-engine-space",
		"Must gas lines be kept out of engine spaces?")

	// JunctionPlaces asks where a tee or manifold may be.
	JunctionPlaces = allowed(BookProfile, "line.junction-places",
		"Where may a tee or a manifold be?", standsIn)

	// ShutoffAppliance asks whether each appliance must have a shut-off valve.
	ShutoffAppliance = duty(BookProfile, "shutoff.appliance",
		"Must each appliance have a shut-off valve of its own?", FactApplianceKind)

	// ShutoffToAppliance asks how far from the appliance that valve may be, m.
	ShutoffToAppliance = most[unit.Length](BookProfile, "shutoff.to-appliance",
		"How far from the appliance may its shut-off valve be?", FactApplianceKind)

	// ShutoffMainReach asks from where the main shut-off must be worked.
	ShutoffMainReach = allowed(BookProfile, "shutoff.main-reach",
		"From where must the main shut-off be reached?", reaches)

	// TransitDevices asks what must shut the gas by itself where it stays on while
	// the dwelling is driven.
	TransitDevices = allowed(BookProfile, "transit.devices",
		"What must shut the gas by itself in a crash, where it stays on while driving?", shutoffKinds)

	// LinePressureDrop asks how much pressure may be lost between the regulator
	// and an appliance with everything burning, Pa.
	LinePressureDrop = most[unit.GaugePressure](BookProfile, "line.pressure-drop",
		"How much pressure may be lost between the regulator and an appliance, with everything burning?")

	// LineCapacity asks how much heat a line may carry by the code's own table of
	// sizes, W gross.
	LineCapacity = most[unit.GrossPower](BookProfile, "line.capacity",
		"How much heat may a line of this size carry over that length?", FactLineKind, FactLineOutside, FactLineRun)
)

package layout

import "lowvent.example/schema/unit"

// Space is a room, a cab, a bay or any other enclosed part of the dwelling.
type Space struct {
	Thing
	Use      Given[SpaceUse]      `json:"use"`
	Box      Box                  `json:"box"`
	OpenTo   Section[Doorway]     `json:"openTo"`
	Lowest   Measure[unit.Length] `json:"lowestPoint"`
	Surveyed Survey               `json:"surveyed"`
}

// Doorway is a way from one space to the next; its id is the other space's.
type Doorway struct {
	Thing
	Sill   Measure[unit.Length] `json:"sill" rule:"nonNegative"`
	Width  Measure[unit.Length] `json:"width" rule:"positive"`
	Height Measure[unit.Length] `json:"height" rule:"positive"`
	Door   Given[DoorFit]       `json:"door"`
}

// Locker is an enclosure made for cylinders.
type Locker struct {
	Thing
	Box          Box                    `json:"box"`
	Liner        Liner                  `json:"liner"`
	SealedFrom   Section[Seal]          `json:"sealedFrom"`
	Door         LockerDoor             `json:"door"`
	Penetrations Section[Penetration]   `json:"penetrations"`
	Vents        Section[LockerVent]    `json:"vents"`
	LowestPoint  Measure[unit.Length]   `json:"lowestPoint"`
	FalseFloor   Given[bool]            `json:"falseFloor"`
	Sunlit       Given[bool]            `json:"sunlit"`
	HeatShield   Given[bool]            `json:"heatShield"`
	ToExhaust    Measure[unit.Length]   `json:"leastToExhaust" rule:"nonNegative"`
	FireRating   Measure[unit.Duration] `json:"fireRating" rule:"nonNegative"`
	AboveWater   Given[bool]            `json:"aboveWaterline"`
	Surveyed     Survey                 `json:"surveyed"`
	Contents     Section[Content]       `json:"contents"`
}

// Liner is what the locker's walls and floor are made of.
type Liner struct {
	Object
	Material  Given[string]        `json:"material"`
	Thickness Measure[unit.Length] `json:"thickness" rule:"positive"`
	Joints    Given[LinerJoint]    `json:"joints"`
}

// Seal says how the locker is sealed from the space that is its id.
type Seal struct {
	Thing
	Kind   Given[SealKind]      `json:"seal"`
	Height Measure[unit.Length] `json:"sealedToHeight" rule:"nonNegative"`
}

// LockerDoor is the only way to reach into the locker.
type LockerDoor struct {
	Object
	OpensTo    Given[Ref]           `json:"opensTo" ref:"open-air,spaces"`
	Wall       Given[Wall]          `json:"wall"`
	Seal       Given[DoorSeal]      `json:"seal"`
	Sill       Measure[unit.Length] `json:"sill" rule:"nonNegative"`
	ToolNeeded Given[bool]          `json:"toolNeeded"`
	Locked     Given[bool]          `json:"locked"`
	Width      Measure[unit.Length] `json:"width" rule:"positive"`
	Height     Measure[unit.Length] `json:"height" rule:"positive"`
}

// Penetration is one pipe, cable or bolt through an inner wall of the locker.
type Penetration struct {
	Thing
	Of    Given[string] `json:"of"`
	Wall  Given[Wall]   `json:"wall"`
	At    Given[Point]  `json:"at"`
	To    Given[Ref]    `json:"to" ref:"open-air,spaces,lockers"`
	Gland Given[Gland]  `json:"gland"`
}

// LockerVent is one opening of the locker to the outside.
type LockerVent struct {
	Thing
	Level      Given[VentLevel]     `json:"level"`
	Wall       Given[Wall]          `json:"wall"`
	At         Given[Point]         `json:"at"`
	Gross      Measure[unit.Area]   `json:"gross" rule:"positive"`
	Cover      Cover                `json:"cover"`
	LowerEdge  Measure[unit.Length] `json:"lowerEdgeOverLowest" rule:"nonNegative"`
	BelowTop   Measure[unit.Length] `json:"lowerEdgeBelowCeiling" rule:"nonNegative"`
	Bore       Measure[unit.Length] `json:"bore" rule:"positive"`
	PipeLength Measure[unit.Length] `json:"pipeLength" rule:"nonNegative"`
	FallsAway  Given[bool]          `json:"fallsOutward"`
	Closable   Given[bool]          `json:"closable"`
	Blockable  Given[bool]          `json:"coveredByCylinder"`
	EndsAt     Given[Point]         `json:"endsAt"`
	EndsIn     VentEnd              `json:"endsIn"`
}

// Cover is what stands over an opening and how much of it is open.
type Cover struct {
	Object
	Kind Given[CoverKind]    `json:"kind"`
	Open Measure[unit.Ratio] `json:"open" rule:"share"`
}

// VentEnd says what the outer end of a vent opens into.
type VentEnd struct {
	Object
	Kind       Given[VentEnding]    `json:"kind"`
	OpenSides  Given[int]           `json:"openSides"`
	Spray      Given[bool]          `json:"inWheelSpray"`
	OverWater  Measure[unit.Length] `json:"overWaterline"`
	OverGround Measure[unit.Length] `json:"overGround" rule:"nonNegative"`
}

// Content is one thing kept in a locker beside the gas gear.
type Content struct {
	Thing
	Kind Given[ContentKind] `json:"kind"`
}

// Opening is a way by which gas, fumes or fuel vapour get in or out.
type Opening struct {
	Thing
	Position
	Kind Given[OpeningKind] `json:"kind"`
	Of   Given[Ref]         `json:"of" ref:"spaces,lockers,open-air"`
	Exit Given[bool]        `json:"wayOut"`
	Pane Given[Glazing]     `json:"glazing"`
}

// FixedVent is an opening of a space that lets air in or out.
type FixedVent struct {
	Thing
	Of       Given[Ref]         `json:"of" ref:"spaces"`
	At       Given[Point]       `json:"at"`
	Level    Given[VentLevel]   `json:"level"`
	Gross    Measure[unit.Area] `json:"gross" rule:"positive"`
	Cover    Cover              `json:"cover"`
	Closable Given[bool]        `json:"closable"`
	EndsIn   VentEnd            `json:"endsIn"`
}

// Fan moves air into or out of a space.
type Fan struct {
	Thing
	Position
	In        Given[Ref]               `json:"in" ref:"spaces,lockers"`
	Direction Given[FanDirection]      `json:"direction"`
	Flow      Measure[unit.VolumeFlow] `json:"flow" rule:"positive"`
	Use       Given[string]            `json:"use"`
}

// IgnitionSource is anything that sparks, glows or burns and is not a gas appliance.
type IgnitionSource struct {
	Thing
	Position
	Kind      Given[IgnitionKind] `json:"kind"`
	In        Given[Ref]          `json:"in" ref:"spaces,lockers,open-air"`
	Protected Given[Protection]   `json:"protection"`
}

// Combustible is anything near a burner that can catch fire.
type Combustible struct {
	Thing
	Position
	Kind      Given[CombustibleKind] `json:"kind"`
	In        Given[Ref]             `json:"in" ref:"spaces,lockers"`
	Surface   Given[Surface]         `json:"surface"`
	Protected Given[string]          `json:"protection"`
	Moves     Given[bool]            `json:"moves"`
}

// Stored is something kept aboard that burns, crushes or gives off vapour.
type Stored struct {
	Thing
	Position
	Kind Given[StoredKind] `json:"kind"`
	In   Given[Ref]        `json:"in" ref:"spaces,lockers,open-air"`
}

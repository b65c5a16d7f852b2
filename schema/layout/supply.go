package layout

import "lowvent.example/schema/unit"

// Cylinder is one propane cylinder, connected, spare or empty.
type Cylinder struct {
	Thing
	Position
	In             Given[Ref]                `json:"in" ref:"lockers,spaces,open-air"`
	Role           Given[CylinderRole]       `json:"role"`
	Gas            Given[GasKind]            `json:"gas"`
	WaterCapacity  Measure[unit.WaterMass]   `json:"waterCapacity" rule:"positive"`
	Propane        Measure[unit.PropaneMass] `json:"propane" rule:"nonNegative"`
	SleeveMass     Measure[unit.PropaneMass] `json:"netMassOnSleeve" rule:"positive"`
	Tare           Measure[unit.Mass]        `json:"tare" rule:"positive"`
	WeighedTare    Measure[unit.Mass]        `json:"weighedEmpty" rule:"positive"`
	Diameter       Measure[unit.Length]      `json:"diameter" rule:"positive"`
	Height         Measure[unit.Length]      `json:"height" rule:"positive"`
	Material       Given[CylinderMaterial]   `json:"material"`
	Upright        Given[bool]               `json:"upright"`
	ReliefValve    Given[bool]               `json:"reliefValve"`
	ReliefFaces    Given[Facing]             `json:"reliefFaces"`
	OverfillDevice Given[bool]               `json:"overfillDevice"`
	ValveOutlet    Given[string]             `json:"valveOutlet"`
	OutletPlugged  Given[bool]               `json:"outletPlugged"`
	Restraint      Restraint                 `json:"restraint"`
	RequalifiedBy  Given[Date]               `json:"requalifiedBy"`
	LastQualified  Given[Date]               `json:"lastQualified"`
	Qualification  Given[Qualification]      `json:"qualification"`
	Specification  Given[string]             `json:"specification"`
	Condition      Words[Damage]             `json:"damage"`
	FilledOn       Given[Date]               `json:"filledOn"`
	FilledBy       Given[FilledBy]           `json:"filledBy"`
	FilledTo       Measure[unit.Ratio]       `json:"gaugeAfterFill" rule:"share"`
}

// Restraint is what holds a cylinder in a crash, a corner or a sea.
type Restraint struct {
	Object
	Points   Given[int]          `json:"points"`
	Rated    Measure[unit.Force] `json:"rated" rule:"positive"`
	NoTools  Given[bool]         `json:"releasedWithoutTools"`
	Metallic Given[bool]         `json:"metallic"`
}

// Changeover joins two or more cylinders to one supply.
type Changeover struct {
	Thing
	Position
	In        Given[Ref]  `json:"in" ref:"lockers,spaces,open-air"`
	Connects  Words[Ref]  `json:"connects" ref:"cylinders"`
	NonReturn Given[bool] `json:"nonReturn"`
	Automatic Given[bool] `json:"automatic"`
	FreeTail  Given[bool] `json:"freeTailPlugged"`
}

// Regulator brings cylinder pressure down to what the appliances take.
type Regulator struct {
	Thing
	Position
	In          Given[Ref]                  `json:"in" ref:"lockers,spaces,open-air"`
	Gas         Given[GasKind]              `json:"gas"`
	Stages      Given[int]                  `json:"stages"`
	Fixed       Given[bool]                 `json:"fixedSetting"`
	Outlet      Measure[unit.GaugePressure] `json:"outlet" rule:"positive"`
	Capacity    Measure[unit.Power]         `json:"capacity" rule:"positive"`
	CapacityGas Measure[unit.MassFlow]      `json:"capacityByMass" rule:"positive"`
	LeastInlet  Measure[unit.GaugePressure] `json:"leastInlet" rule:"nonNegative"`
	InletRating Measure[unit.GaugePressure] `json:"inletRating" rule:"positive"`
	Relief      Measure[unit.GaugePressure] `json:"relief" rule:"positive"`
	LockUp      Measure[unit.GaugePressure] `json:"lockUp" rule:"positive"`
	VentFaces   Given[Facing]               `json:"ventFaces"`
	Covered     Given[bool]                 `json:"covered"`
	Mounted     Given[Mounting]             `json:"mounted"`
	Made        Given[Date]                 `json:"made"`
	Standard    Given[string]               `json:"standard"`
	Serial      Given[string]               `json:"serial"`
	TestPoint   Given[bool]                 `json:"testPoint"`
	ForVehicles Given[bool]                 `json:"forVehicles"`
}

// Junction is a tee, a manifold or a valve block where lines meet.
type Junction struct {
	Thing
	Position
	Kind Given[JunctionKind] `json:"kind"`
	In   Given[Ref]          `json:"in" ref:"lockers,spaces,open-air"`
}

// Line is one run of pipe, tube or hose from one thing to the next, in the
// direction in which the gas flows.
type Line struct {
	Thing
	From          Given[Ref]                  `json:"from" ref:"cylinders,changeovers,regulators,junctions" must:"true"`
	To            Given[Ref]                  `json:"to" ref:"changeovers,regulators,junctions,appliances,openEnds,outdoorOutlets" must:"true"`
	Kind          Given[LineKind]             `json:"kind"`
	Standard      Given[string]               `json:"standard"`
	MadeFor       Given[HosePurpose]          `json:"madeFor"`
	Zone          Given[PressureZone]         `json:"pressureClass"`
	Outside       Measure[unit.Length]        `json:"outside" rule:"positive"`
	Wall          Measure[unit.Length]        `json:"wall" rule:"positive"`
	Nominal       Given[string]               `json:"nominal"`
	Length        Measure[unit.Length]        `json:"length" rule:"positive"`
	Fittings      Fittings                    `json:"fittings"`
	Route         Given[[]Point]              `json:"route"`
	Through       Section[Passage]            `json:"through"`
	SupportsEvery Measure[unit.Length]        `json:"supportsEvery" rule:"positive"`
	Joints        Section[Joint]              `json:"joints"`
	Shutoffs      Section[Shutoff]            `json:"shutoffs"`
	Visible       Given[bool]                 `json:"visible"`
	Lining        Given[string]               `json:"behind"`
	StrikePlates  Given[bool]                 `json:"strikePlates"`
	Bonded        Given[bool]                 `json:"bonded"`
	ToWiring      Measure[unit.Length]        `json:"leastToWiring" rule:"nonNegative"`
	ToHeat        Measure[unit.Length]        `json:"leastToHeat" rule:"nonNegative"`
	UnderExit     Given[bool]                 `json:"underExit"`
	Moves         Given[bool]                 `json:"partsMove"`
	Slack         Given[bool]                 `json:"slackOverTravel"`
	RisesFromTank Given[bool]                 `json:"risesFromCylinder"`
	Dated         Given[Date]                 `json:"dated"`
	MeltsAt       Measure[unit.Temperature]   `json:"meltsAt"`
	RatedPressure Measure[unit.GaugePressure] `json:"ratedPressure" rule:"positive"`
	Carries       Measure[unit.Power]         `json:"carries" rule:"positive"`
	LosesThen     Measure[unit.GaugePressure] `json:"losesThen" rule:"positive"`
}

// Fittings counts the fittings in a line.
type Fittings struct {
	Object
	Elbow90  Given[int] `json:"elbow90"`
	Elbow45  Given[int] `json:"elbow45"`
	TeeRun   Given[int] `json:"teeThrough"`
	TeeSide  Given[int] `json:"teeBranch"`
	Valve    Given[int] `json:"valve"`
	Coupling Given[int] `json:"coupling"`
	Bend     Given[int] `json:"bend"`
}

// Passage is where a line goes through a wall, a floor or a bulkhead.
type Passage struct {
	Thing
	Wall   Given[string]     `json:"of"`
	At     Given[Point]      `json:"at"`
	Sleeve Given[SleeveKind] `json:"sleeve"`
}

// Joint is one joint in a line.
type Joint struct {
	Thing
	Kind    Given[JointKind] `json:"kind"`
	At      Given[Point]     `json:"at"`
	In      Given[Ref]       `json:"in" ref:"lockers,spaces,open-air"`
	Visible Given[bool]      `json:"visible"`
	Sealant Given[string]    `json:"sealant"`
}

// Shutoff is a valve or an automatic device that can stop the gas in a line.
type Shutoff struct {
	Thing
	Kind        Given[ShutoffKind]   `json:"kind"`
	At          Given[Point]         `json:"at"`
	ToAppliance Measure[unit.Length] `json:"toAppliance" rule:"nonNegative"`
	Reach       Given[Reach]         `json:"reachedFrom"`
}

// OpenEnd is an end of pipe or hose with no appliance on it.
type OpenEnd struct {
	Thing
	Position
	In  Given[Ref]    `json:"in" ref:"lockers,spaces,open-air"`
	End Given[EndFit] `json:"end"`
}

// Outlet is a gas outlet on the outside of the dwelling.
type Outlet struct {
	Thing
	Position
	Shutoff  Given[bool]                 `json:"shutoff"`
	Capped   Given[bool]                 `json:"capped"`
	Pressure Measure[unit.GaugePressure] `json:"pressure" rule:"positive"`
}

// FillPoint is a fixed point through which a cylinder or tank is filled in place.
type FillPoint struct {
	Thing
	Position
	In        Given[Ref]  `json:"in" ref:"lockers,spaces,open-air"`
	Capped    Given[bool] `json:"capped"`
	NonReturn Given[bool] `json:"nonReturn"`
	StopAt80  Given[bool] `json:"overfillStop"`
}

package layout

import "lowvent.example/schema/unit"

// Appliance is one thing that burns propane.
type Appliance struct {
	Thing
	Position
	Kind        Given[ApplianceKind]   `json:"kind"`
	In          Given[Ref]             `json:"in" ref:"spaces,lockers,open-air"`
	Plate       Plate                  `json:"plate"`
	Flue        Given[FlueKind]        `json:"flue"`
	Burners     Section[Burner]        `json:"burners"`
	FlameGuard  Given[FlameGuard]      `json:"flameGuard"`
	DropOut     Measure[unit.Duration] `json:"dropOut" rule:"nonNegative"`
	Pilot       Given[PilotKind]       `json:"pilot"`
	Portable    Given[bool]            `json:"portable"`
	OutdoorOnly Given[bool]            `json:"outdoorOnly"`
	ForHeat     Given[bool]            `json:"usedForHeating"`
	OwnStage    Given[bool]            `json:"ownRegulator"`
	Clearances  Clearances             `json:"clearances"`
	Access      Given[bool]            `json:"serviceAccess"`
	Faces       Given[Wall]            `json:"faces"`
	LockedOff   Given[bool]            `json:"offWhileDriving"`
	RearSealed  Given[bool]            `json:"rearSealedFromRoom"`
	LowVent     Measure[unit.Area]     `json:"compartmentLowVent" rule:"positive"`
	HighVent    Measure[unit.Area]     `json:"compartmentHighVent" rule:"positive"`
	Splices     Given[bool]            `json:"wiringSplicesBehind"`
	Use         Section[Use]           `json:"use"`
}

// Plate is what the appliance's rating plate says, copied by the owner.
type Plate struct {
	Object
	Gas         Given[GasKind]              `json:"gas"`
	Convertible Given[bool]                 `json:"convertible"`
	JetsFor     Given[GasKind]              `json:"jetsFittedFor"`
	ConvertedBy Given[ConvertedBy]          `json:"convertedBy"`
	Inlet       Measure[unit.GaugePressure] `json:"inlet" rule:"positive"`
	LeastInlet  Measure[unit.GaugePressure] `json:"leastInlet" rule:"positive"`
	MostInlet   Measure[unit.GaugePressure] `json:"mostInlet" rule:"positive"`
	Manifold    Measure[unit.GaugePressure] `json:"manifold" rule:"positive"`
	Input       Measure[unit.Power]         `json:"input" rule:"positive"`
	Consumption Measure[unit.MassFlow]      `json:"consumption" rule:"positive"`
	Basis       Given[HeatBasis]            `json:"basis"`
	ListedFor   Given[string]               `json:"listedFor"`
	ApprovedFor Words[DwellingKind]         `json:"approvedFor"`
	Maker       Given[string]               `json:"maker"`
	Model       Given[string]               `json:"model"`
	Serial      Given[string]               `json:"serial"`
	Manual      Given[string]               `json:"manual"`
}

// Burner is one burner of an appliance.
type Burner struct {
	Thing
	Input   Measure[unit.Power]  `json:"input" rule:"positive"`
	Guarded Given[bool]          `json:"flameGuard"`
	Orifice Measure[unit.Length] `json:"orifice" rule:"positive"`
}

// Clearances are the distances to combustibles that the plate or manual asks for.
type Clearances struct {
	Object
	Above Measure[unit.Length] `json:"above" rule:"nonNegative"`
	Sides Measure[unit.Length] `json:"sides" rule:"nonNegative"`
	Rear  Measure[unit.Length] `json:"rear" rule:"nonNegative"`
	Front Measure[unit.Length] `json:"front" rule:"nonNegative"`
	Below Measure[unit.Length] `json:"below" rule:"nonNegative"`
	Page  Given[string]        `json:"page"`
}

// Use is one spell of use on an ordinary day.
type Use struct {
	Thing
	At     Given[unit.ClockTime]  `json:"at"`
	For    Measure[unit.Duration] `json:"for" rule:"positive"`
	Share  Measure[unit.Ratio]    `json:"share" rule:"share"`
	Season Given[Season]          `json:"season"`
}

// Flue is the way of the products from an appliance or stove to the outside.
type Flue struct {
	Thing
	Of            Given[Ref]           `json:"of" ref:"appliances,stoves,exhausts"`
	Kind          Given[FlueKind]      `json:"kind"`
	Length        Measure[unit.Length] `json:"length" rule:"positive"`
	Joints        Section[FlueJoint]   `json:"joints"`
	FallsOut      Given[bool]          `json:"fallsOutward"`
	Sags          Given[bool]          `json:"sags"`
	ToCombustible Measure[unit.Length] `json:"leastToCombustible" rule:"nonNegative"`
	ThroughBed    Given[bool]          `json:"throughBedOrSeat"`
	Terminal      Terminal             `json:"terminal"`
	Intake        Terminal             `json:"intake"`
}

// FlueJoint is one joint of a flue or exhaust.
type FlueJoint struct {
	Thing
	Kind Given[string] `json:"kind"`
	In   Given[Ref]    `json:"in" ref:"spaces,lockers,open-air"`
	Gas  Given[bool]   `json:"gasTight"`
}

// Terminal is the outer end of a flue or an air intake.
type Terminal struct {
	Object
	At        Given[Point] `json:"at"`
	Wall      Given[Wall]  `json:"wall"`
	Underside Given[bool]  `json:"underDwelling"`
	Powered   Given[bool]  `json:"fanAssisted"`
	Guarded   Given[bool]  `json:"guarded"`
}

// Stove burns wood, coal or another solid fuel.
type Stove struct {
	Thing
	Position
	In     Given[Ref]          `json:"in" ref:"spaces"`
	Fuel   Given[StoveFuel]    `json:"fuel"`
	Output Measure[unit.Power] `json:"output" rule:"positive"`
}

// Exhaust is an engine, generator or liquid-fuel heater that gives off fumes.
type Exhaust struct {
	Thing
	Position
	Kind         Given[ExhaustKind] `json:"kind"`
	In           Given[Ref]         `json:"in" ref:"spaces,lockers,open-air"`
	JointsInside Given[bool]        `json:"jointsInside"`
	Outlet       Given[Point]       `json:"outlet"`
}

// Alarm is one gas, carbon monoxide or smoke alarm.
type Alarm struct {
	Thing
	Position
	Kind      Given[AlarmKind] `json:"kind"`
	Standard  Given[string]    `json:"standard"`
	In        Given[Ref]       `json:"in" ref:"spaces"`
	ReplaceBy Given[Date]      `json:"replaceBy"`
	Power     Given[PowerKind] `json:"power"`
	Live      Given[bool]      `json:"liveWhenIsolated"`
	Tested    Given[AlarmTest] `json:"testedWith"`
	TestedOn  Given[Date]      `json:"testedOn"`
	Shutoff   Given[bool]      `json:"closesTheGas"`
	Linked    Given[bool]      `json:"interconnected"`
}

// Extinguisher is one fire extinguisher.
type Extinguisher struct {
	Thing
	Position
	In    Given[Ref]         `json:"in" ref:"spaces,open-air"`
	Class Given[string]      `json:"class"`
	Mass  Measure[unit.Mass] `json:"mass" rule:"positive"`
	DueBy Given[Date]        `json:"serviceBy"`
}

// Sign is a notice fixed in or on the dwelling.
type Sign struct {
	Thing
	Says Given[SignKind] `json:"says"`
	On   Given[string]   `json:"on"`
}

// Test is one test that a licensed fitter did, as the fitter's paper states it.
type Test struct {
	Thing
	Kind     Given[TestKind]             `json:"kind"`
	On       Given[Date]                 `json:"on"`
	By       Given[string]               `json:"by"`
	Licence  Given[string]               `json:"licence"`
	Pressure Measure[unit.GaugePressure] `json:"pressure" rule:"positive"`
	Held     Measure[unit.Duration]      `json:"held" rule:"positive"`
	Drop     Measure[unit.GaugePressure] `json:"drop" rule:"nonNegative"`
	Covers   Words[Ref]                  `json:"covers" ref:"lines,lockers,appliances,alarms,regulators,flues,cylinders"`
}

// Certificate is a paper that a licensed fitter signed.
type Certificate struct {
	Thing
	By      Given[string] `json:"by"`
	Licence Given[string] `json:"licence"`
	Class   Given[string] `json:"licenceCovers"`
	On      Given[Date]   `json:"on"`
	Expires Given[Date]   `json:"expires"`
	Changed Given[bool]   `json:"changedSince"`
}

// TapeMeasure is a distance taken with a tape. It overrules what the
// coordinates of the two things give.
type TapeMeasure struct {
	Thing
	From Given[Ref]           `json:"from" ref:"*" must:"true"`
	To   Given[Ref]           `json:"to" ref:"*" must:"true"`
	Is   Measure[unit.Length] `json:"is" rule:"nonNegative" must:"true"`
}

// Waiver sets a finding aside for a time; it never changes what was found.
type Waiver struct {
	Thing
	Check     Given[string] `json:"check" must:"true"`
	Subject   Given[Ref]    `json:"subject" ref:"*"`
	Reason    Given[string] `json:"reason" must:"true"`
	DecidedBy Given[string] `json:"decidedBy" must:"true"`
	Until     Given[Date]   `json:"until" must:"true"`
}

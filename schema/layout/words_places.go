package layout

// SurveyList is a list that can be stated complete for one space or locker.
type SurveyList string

// The words for SurveyList; the schema tells what each means.
const (
	SurveyListIgnitionSources SurveyList = "ignitionSources"
	SurveyListOpenings        SurveyList = "openings"
	SurveyListPenetrations    SurveyList = "penetrations"
	SurveyListCombustibles    SurveyList = "combustibles"
	SurveyListContents        SurveyList = "contents"
	SurveyListFans            SurveyList = "fans"
	SurveyListFixedVents      SurveyList = "fixedVents"
)

// Choices lists every word for SurveyList.
func (SurveyList) Choices() []string {
	return []string{"ignitionSources", "openings", "penetrations", "combustibles", "contents", "fans", "fixedVents"}
}

// SpaceUse is what a space is used for.
type SpaceUse string

// The words for SpaceUse; the schema tells what each means.
const (
	SpaceUseLiving     SpaceUse = "living"
	SpaceUseSleeping   SpaceUse = "sleeping"
	SpaceUseKitchen    SpaceUse = "kitchen"
	SpaceUseWashroom   SpaceUse = "washroom"
	SpaceUseCab        SpaceUse = "cab"
	SpaceUseEngine     SpaceUse = "engine"
	SpaceUseUnderfloor SpaceUse = "underfloor"
	SpaceUseGarage     SpaceUse = "garage"
	SpaceUseStorage    SpaceUse = "storage"
	SpaceUseHullVoid   SpaceUse = "hull-void"
	SpaceUseTechnical  SpaceUse = "technical"
)

// Choices lists every word for SpaceUse.
func (SpaceUse) Choices() []string {
	return []string{"living", "sleeping", "kitchen", "washroom", "cab", "engine", "underfloor", "garage", "storage", "hull-void", "technical"}
}

// DoorFit is what closes a way between two spaces.
type DoorFit string

// The words for DoorFit; the schema tells what each means.
const (
	DoorFitNone      DoorFit = "none"
	DoorFitCurtain   DoorFit = "curtain"
	DoorFitDoor      DoorFit = "door"
	DoorFitTightDoor DoorFit = "tight-door"
)

// Choices lists every word for DoorFit.
func (DoorFit) Choices() []string {
	return []string{"none", "curtain", "door", "tight-door"}
}

// Glazing is the glass of an opening.
type Glazing string

// The words for Glazing; the schema tells what each means.
const (
	GlazingNone   Glazing = "none"
	GlazingSingle Glazing = "single"
	GlazingDouble Glazing = "double"
)

// Choices lists every word for Glazing.
func (Glazing) Choices() []string { return []string{"none", "single", "double"} }

// OpeningKind is an opening of the dwelling or vehicle.
type OpeningKind string

// The words for OpeningKind; the schema tells what each means.
const (
	OpeningKindDoor                OpeningKind = "door"
	OpeningKindWindow              OpeningKind = "window"
	OpeningKindHatch               OpeningKind = "hatch"
	OpeningKindRoofVent            OpeningKind = "roof-vent"
	OpeningKindFloorDrain          OpeningKind = "floor-drain"
	OpeningKindMechanicalIntake    OpeningKind = "mechanical-intake"
	OpeningKindVehicleFuelFiller   OpeningKind = "vehicle-fuel-filler"
	OpeningKindEngineExhaustOutlet OpeningKind = "engine-exhaust-outlet"
	OpeningKindEngineAirIntake     OpeningKind = "engine-air-intake"
	OpeningKindCableEntry          OpeningKind = "cable-entry"
)

// Choices lists every word for OpeningKind.
func (OpeningKind) Choices() []string {
	return []string{"door", "window", "hatch", "roof-vent", "floor-drain", "mechanical-intake", "vehicle-fuel-filler", "engine-exhaust-outlet", "engine-air-intake", "cable-entry"}
}

// FanDirection is which way a fan moves air.
type FanDirection string

// The words for FanDirection; the schema tells what each means.
const (
	FanDirectionExtract FanDirection = "extract"
	FanDirectionSupply  FanDirection = "supply"
	FanDirectionBoth    FanDirection = "both"
)

// Choices lists every word for FanDirection.
func (FanDirection) Choices() []string {
	return []string{"extract", "supply", "both"}
}

// VentLevel is whether a vent is low or high in its space.
type VentLevel string

// The words for VentLevel; the schema tells what each means.
const (
	VentLevelLow  VentLevel = "low"
	VentLevelHigh VentLevel = "high"
)

// Choices lists every word for VentLevel.
func (VentLevel) Choices() []string {
	return []string{"low", "high"}
}

// CoverKind is what stands over an opening.
type CoverKind string

// The words for CoverKind; the schema tells what each means.
const (
	CoverKindNone       CoverKind = "none"
	CoverKindMesh       CoverKind = "mesh"
	CoverKindLouvre     CoverKind = "louvre"
	CoverKindMushroom   CoverKind = "mushroom"
	CoverKindHood       CoverKind = "hood"
	CoverKindPerforated CoverKind = "perforated"
)

// Choices lists every word for CoverKind.
func (CoverKind) Choices() []string {
	return []string{"none", "mesh", "louvre", "mushroom", "hood", "perforated"}
}

// VentEnding is what the outer end of a vent opens into.
type VentEnding string

// The words for VentEnding; the schema tells what each means.
const (
	VentEndingOpenAir          VentEnding = "open-air"
	VentEndingClosedUnderfloor VentEnding = "closed-underfloor"
	VentEndingSkirtedBay       VentEnding = "skirted-bay"
	VentEndingChassisRail      VentEnding = "chassis-rail"
	VentEndingDoubleFloor      VentEnding = "double-floor"
	VentEndingWheelBox         VentEnding = "wheel-box"
	VentEndingSnowSkirt        VentEnding = "snow-skirt"
	VentEndingOverboard        VentEnding = "overboard"
	VentEndingAnotherSpace     VentEnding = "another-space"
)

// Choices lists every word for VentEnding.
func (VentEnding) Choices() []string {
	return []string{"open-air", "closed-underfloor", "skirted-bay", "chassis-rail", "double-floor", "wheel-box", "snow-skirt", "overboard", "another-space"}
}

// Wall is a wall of a box, seen facing the front.
type Wall string

// The words for Wall; the schema tells what each means.
const (
	WallLeft    Wall = "left"
	WallRight   Wall = "right"
	WallFront   Wall = "front"
	WallRear    Wall = "rear"
	WallFloor   Wall = "floor"
	WallCeiling Wall = "ceiling"
)

// Choices lists every word for Wall.
func (Wall) Choices() []string {
	return []string{"left", "right", "front", "rear", "floor", "ceiling"}
}

package layout

// JunctionKind is what joins lines.
type JunctionKind string

// The words for JunctionKind; the schema tells what each means.
const (
	JunctionKindTee        JunctionKind = "tee"
	JunctionKindManifold   JunctionKind = "manifold"
	JunctionKindValveBlock JunctionKind = "valve-block"
)

// Choices lists every word for JunctionKind.
func (JunctionKind) Choices() []string {
	return []string{"tee", "manifold", "valve-block"}
}

// LineKind is what a line is made of.
type LineKind string

// The words for LineKind; the schema tells what each means.
const (
	LineKindCopper              LineKind = "copper"
	LineKindSteelPipe           LineKind = "steel-pipe"
	LineKindSteelTube           LineKind = "steel-tube"
	LineKindStainlessTube       LineKind = "stainless-tube"
	LineKindCorrugatedStainless LineKind = "corrugated-stainless"
	LineKindPolyethylene        LineKind = "polyethylene"
	LineKindAluminium           LineKind = "aluminium"
	LineKindHose                LineKind = "hose"
	LineKindDirect              LineKind = "direct"
)

// Choices lists every word for LineKind.
func (LineKind) Choices() []string {
	return []string{"copper", "steel-pipe", "steel-tube", "stainless-tube", "corrugated-stainless", "polyethylene", "aluminium", "hose", "direct"}
}

// PressureZone is the pressure in a line.
type PressureZone string

// The words for PressureZone; the schema tells what each means.
const (
	PressureZoneHigh   PressureZone = "high"
	PressureZoneMiddle PressureZone = "middle"
	PressureZoneLow    PressureZone = "low"
)

// Choices lists every word for PressureZone.
func (PressureZone) Choices() []string {
	return []string{"high", "middle", "low"}
}

// SleeveKind is what guards a line where it passes through.
type SleeveKind string

// The words for SleeveKind; the schema tells what each means.
const (
	SleeveKindGrommet         SleeveKind = "grommet"
	SleeveKindBulkheadFitting SleeveKind = "bulkhead-fitting"
	SleeveKindSleeve          SleeveKind = "sleeve"
	SleeveKindSealedSleeve    SleeveKind = "sealed-sleeve"
	SleeveKindNone            SleeveKind = "none"
)

// Choices lists every word for SleeveKind.
func (SleeveKind) Choices() []string {
	return []string{"grommet", "bulkhead-fitting", "sleeve", "sealed-sleeve", "none"}
}

// HosePurpose is what the print along a hose says that it is made for.
type HosePurpose string

// The words for HosePurpose; the schema tells what each means.
const (
	HosePurposeLPGas      HosePurpose = "lp-gas"
	HosePurposeNaturalGas HosePurpose = "natural-gas"
	HosePurposeFuel       HosePurpose = "fuel"
	HosePurposeAir        HosePurpose = "air"
	HosePurposeWater      HosePurpose = "water"
	HosePurposeNotPrinted HosePurpose = "not-printed"
)

// Choices lists every word for HosePurpose.
func (HosePurpose) Choices() []string {
	return []string{"lp-gas", "natural-gas", "fuel", "air", "water", "not-printed"}
}

// JointKind is how a joint is made.
type JointKind string

// The words for JointKind; the schema tells what each means.
const (
	JointKindFlare45       JointKind = "flare-45"
	JointKindFlare37       JointKind = "flare-37"
	JointKindDoubleRing    JointKind = "double-ring"
	JointKindCompression   JointKind = "compression"
	JointKindBallSleeve    JointKind = "ball-sleeve"
	JointKindBrazed        JointKind = "brazed"
	JointKindSoldered      JointKind = "soldered"
	JointKindThreaded      JointKind = "threaded"
	JointKindPressed       JointKind = "pressed"
	JointKindCrimped       JointKind = "crimped"
	JointKindWelded        JointKind = "welded"
	JointKindQuickCoupling JointKind = "quick-coupling"
	JointKindMakerFitting  JointKind = "maker-fitting"
)

// Choices lists every word for JointKind.
func (JointKind) Choices() []string {
	return []string{"flare-45", "flare-37", "double-ring", "compression", "ball-sleeve", "brazed", "soldered", "threaded", "pressed", "crimped", "welded", "quick-coupling", "maker-fitting"}
}

// ShutoffKind is what stops the gas.
type ShutoffKind string

// The words for ShutoffKind; the schema tells what each means.
const (
	ShutoffKindManualValve      ShutoffKind = "manual-valve"
	ShutoffKindCylinderValve    ShutoffKind = "cylinder-valve"
	ShutoffKindSolenoid         ShutoffKind = "solenoid"
	ShutoffKindExcessFlow       ShutoffKind = "excess-flow"
	ShutoffKindHoseRuptureValve ShutoffKind = "hose-rupture-valve"
	ShutoffKindCrashSensor      ShutoffKind = "crash-sensor"
	ShutoffKindGasAlarmValve    ShutoffKind = "gas-alarm-valve"
)

// Choices lists every word for ShutoffKind.
func (ShutoffKind) Choices() []string {
	return []string{"manual-valve", "cylinder-valve", "solenoid", "excess-flow", "hose-rupture-valve", "crash-sensor", "gas-alarm-valve"}
}

// Reach is from where a shut-off can be worked.
type Reach string

// The words for Reach; the schema tells what each means.
const (
	ReachOutside               Reach = "outside"
	ReachInside                Reach = "inside"
	ReachInsideBesideAppliance Reach = "inside-beside-appliance"
	ReachToolNeeded            Reach = "tool-needed"
	ReachBlocked               Reach = "blocked"
)

// Choices lists every word for Reach.
func (Reach) Choices() []string {
	return []string{"outside", "inside", "inside-beside-appliance", "tool-needed", "blocked"}
}

// EndFit is what closes an open end.
type EndFit string

// The words for EndFit; the schema tells what each means.
const (
	EndFitCap       EndFit = "cap"
	EndFitPlug      EndFit = "plug"
	EndFitCrimped   EndFit = "crimped"
	EndFitTaped     EndFit = "taped"
	EndFitValveOnly EndFit = "valve-only"
	EndFitOpen      EndFit = "open"
)

// Choices lists every word for EndFit.
func (EndFit) Choices() []string {
	return []string{"cap", "plug", "crimped", "taped", "valve-only", "open"}
}

package layout

// IgnitionKind is a thing that can light gas.
type IgnitionKind string

// The words for IgnitionKind; the schema tells what each means.
const (
	IgnitionKindBattery           IgnitionKind = "battery"
	IgnitionKindSocket            IgnitionKind = "socket"
	IgnitionKindSwitch            IgnitionKind = "switch"
	IgnitionKindFusePanel         IgnitionKind = "fuse-panel"
	IgnitionKindInverter          IgnitionKind = "inverter"
	IgnitionKindCharger           IgnitionKind = "charger"
	IgnitionKindMotor             IgnitionKind = "motor"
	IgnitionKindPump              IgnitionKind = "pump"
	IgnitionKindLamp              IgnitionKind = "lamp"
	IgnitionKindSolidFuelStove    IgnitionKind = "solid-fuel-stove"
	IgnitionKindHeater            IgnitionKind = "heater"
	IgnitionKindEngine            IgnitionKind = "engine"
	IgnitionKindGenerator         IgnitionKind = "generator"
	IgnitionKindElectricAppliance IgnitionKind = "electric-appliance"
	IgnitionKindOpenFlame         IgnitionKind = "open-flame"
	IgnitionKindConnector         IgnitionKind = "connector"
	IgnitionKindOther             IgnitionKind = "other"
)

// Choices lists every word for IgnitionKind.
func (IgnitionKind) Choices() []string {
	return []string{"battery", "socket", "switch", "fuse-panel", "inverter", "charger", "motor", "pump", "lamp", "solid-fuel-stove", "heater", "engine", "generator", "electric-appliance", "open-flame", "connector", "other"}
}

// Protection is how an ignition source is protected.
type Protection string

// The words for Protection; the schema tells what each means.
const (
	ProtectionNone              Protection = "none"
	ProtectionSealed            Protection = "sealed"
	ProtectionIgnitionProtected Protection = "ignition-protected"
)

// Choices lists every word for Protection.
func (Protection) Choices() []string {
	return []string{"none", "sealed", "ignition-protected"}
}

// CombustibleKind is a thing that can catch fire.
type CombustibleKind string

// The words for CombustibleKind; the schema tells what each means.
const (
	CombustibleKindCabinet CombustibleKind = "cabinet"
	CombustibleKindWall    CombustibleKind = "wall"
	CombustibleKindCeiling CombustibleKind = "ceiling"
	CombustibleKindCurtain CombustibleKind = "curtain"
	CombustibleKindBedding CombustibleKind = "bedding"
	CombustibleKindShelf   CombustibleKind = "shelf"
	CombustibleKindWorktop CombustibleKind = "worktop"
	CombustibleKindBlind   CombustibleKind = "blind"
	CombustibleKindOther   CombustibleKind = "other"
)

// Choices lists every word for CombustibleKind.
func (CombustibleKind) Choices() []string {
	return []string{"cabinet", "wall", "ceiling", "curtain", "bedding", "shelf", "worktop", "blind", "other"}
}

// Surface is what a surface is made of.
type Surface string

// The words for Surface; the schema tells what each means.
const (
	SurfaceWood    Surface = "wood"
	SurfacePlywood Surface = "plywood"
	SurfacePlastic Surface = "plastic"
	SurfaceFabric  Surface = "fabric"
	SurfaceMetal   Surface = "metal"
	SurfaceStone   Surface = "stone"
	SurfaceGypsum  Surface = "gypsum"
	SurfaceGlass   Surface = "glass"
	SurfacePaper   Surface = "paper"
	SurfaceOther   Surface = "other"
)

// Choices lists every word for Surface.
func (Surface) Choices() []string {
	return []string{"wood", "plywood", "plastic", "fabric", "metal", "stone", "gypsum", "glass", "paper", "other"}
}

// StoredKind is a thing kept aboard.
type StoredKind string

// The words for StoredKind; the schema tells what each means.
const (
	StoredKindPetrol       StoredKind = "petrol"
	StoredKindDiesel       StoredKind = "diesel"
	StoredKindPaint        StoredKind = "paint"
	StoredKindAerosol      StoredKind = "aerosol"
	StoredKindSolvent      StoredKind = "solvent"
	StoredKindCharcoal     StoredKind = "charcoal"
	StoredKindBedding      StoredKind = "bedding"
	StoredKindGasCartridge StoredKind = "gas-cartridge"
	StoredKindOther        StoredKind = "other"
)

// Choices lists every word for StoredKind.
func (StoredKind) Choices() []string {
	return []string{"petrol", "diesel", "paint", "aerosol", "solvent", "charcoal", "bedding", "gas-cartridge", "other"}
}

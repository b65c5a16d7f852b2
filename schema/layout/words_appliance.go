package layout

// ApplianceKind is what an appliance does.
type ApplianceKind string

// The words for ApplianceKind; the schema tells what each means.
const (
	ApplianceKindCooktop      ApplianceKind = "cooktop"
	ApplianceKindOven         ApplianceKind = "oven"
	ApplianceKindRange        ApplianceKind = "range"
	ApplianceKindWaterHeater  ApplianceKind = "water-heater"
	ApplianceKindSpaceHeater  ApplianceKind = "space-heater"
	ApplianceKindRefrigerator ApplianceKind = "refrigerator"
	ApplianceKindLamp         ApplianceKind = "lamp"
	ApplianceKindGenerator    ApplianceKind = "generator"
	ApplianceKindDryer        ApplianceKind = "dryer"
	ApplianceKindBarbecue     ApplianceKind = "barbecue"
	ApplianceKindFireplace    ApplianceKind = "fireplace"
)

// Choices lists every word for ApplianceKind.
func (ApplianceKind) Choices() []string {
	return []string{"cooktop", "oven", "range", "water-heater", "space-heater", "refrigerator", "lamp", "generator", "dryer", "barbecue", "fireplace"}
}

// FlueKind is where the products of burning go.
type FlueKind string

// The words for FlueKind; the schema tells what each means.
const (
	FlueKindNone       FlueKind = "none"
	FlueKindRoomSealed FlueKind = "room-sealed"
	FlueKindOpenFlued  FlueKind = "open-flued"
)

// Choices lists every word for FlueKind.
func (FlueKind) Choices() []string {
	return []string{"none", "room-sealed", "open-flued"}
}

// FlameGuard is which burners stop their gas when the flame goes out.
type FlameGuard string

// The words for FlameGuard; the schema tells what each means.
const (
	FlameGuardEveryBurner FlameGuard = "every-burner"
	FlameGuardSomeBurners FlameGuard = "some-burners"
	FlameGuardNone        FlameGuard = "none"
)

// Choices lists every word for FlameGuard.
func (FlameGuard) Choices() []string {
	return []string{"every-burner", "some-burners", "none"}
}

// PilotKind is how a burner is lit.
type PilotKind string

// The words for PilotKind; the schema tells what each means.
const (
	PilotKindNone            PilotKind = "none"
	PilotKindContinuousPilot PilotKind = "continuous-pilot"
	PilotKindElectronic      PilotKind = "electronic"
	PilotKindManual          PilotKind = "manual"
)

// Choices lists every word for PilotKind.
func (PilotKind) Choices() []string {
	return []string{"none", "continuous-pilot", "electronic", "manual"}
}

// ConvertedBy is who fitted the jets for this gas.
type ConvertedBy string

// The words for ConvertedBy; the schema tells what each means.
const (
	ConvertedByMaker          ConvertedBy = "maker"
	ConvertedByLicensedFitter ConvertedBy = "licensed-fitter"
	ConvertedByOwner          ConvertedBy = "owner"
)

// Choices lists every word for ConvertedBy.
func (ConvertedBy) Choices() []string {
	return []string{"maker", "licensed-fitter", "owner"}
}

// HeatBasis is whether a heat input counts the heat in the water vapour.
type HeatBasis string

// The words for HeatBasis; the schema tells what each means.
const (
	HeatBasisGross HeatBasis = "gross"
	HeatBasisNet   HeatBasis = "net"
)

// Choices lists every word for HeatBasis.
func (HeatBasis) Choices() []string {
	return []string{"gross", "net"}
}

// StoveFuel is what a stove burns.
type StoveFuel string

// The words for StoveFuel; the schema tells what each means.
const (
	StoveFuelWood    StoveFuel = "wood"
	StoveFuelCoal    StoveFuel = "coal"
	StoveFuelPellets StoveFuel = "pellets"
)

// Choices lists every word for StoveFuel.
func (StoveFuel) Choices() []string {
	return []string{"wood", "coal", "pellets"}
}

// ExhaustKind is a thing with an exhaust.
type ExhaustKind string

// The words for ExhaustKind; the schema tells what each means.
const (
	ExhaustKindEngine       ExhaustKind = "engine"
	ExhaustKindGenerator    ExhaustKind = "generator"
	ExhaustKindDieselHeater ExhaustKind = "diesel-heater"
	ExhaustKindPetrolHeater ExhaustKind = "petrol-heater"
)

// Choices lists every word for ExhaustKind.
func (ExhaustKind) Choices() []string {
	return []string{"engine", "generator", "diesel-heater", "petrol-heater"}
}

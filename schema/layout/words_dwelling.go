package layout

// FormatWord is the version of the layout contract.
type FormatWord string

// Choices lists the versions that this program reads.
func (FormatWord) Choices() []string { return []string{Format} }

// Surveyor is who measured.
type Surveyor string

// The words for Surveyor; the schema tells what each means.
const (
	SurveyorOwner  Surveyor = "owner"
	SurveyorFitter Surveyor = "fitter"
	SurveyorOther  Surveyor = "other"
)

// Choices lists every word for Surveyor.
func (Surveyor) Choices() []string {
	return []string{"owner", "fitter", "other"}
}

// InventoryList is a list of the whole file that can be stated complete.
type InventoryList string

// The words for InventoryList; the schema tells what each means.
const (
	InventoryListCylinders   InventoryList = "cylinders"
	InventoryListAppliances  InventoryList = "appliances"
	InventoryListLines       InventoryList = "lines"
	InventoryListOpenEnds    InventoryList = "openEnds"
	InventoryListRegulators  InventoryList = "regulators"
	InventoryListFlues       InventoryList = "flues"
	InventoryListStoves      InventoryList = "stoves"
	InventoryListExhausts    InventoryList = "exhausts"
	InventoryListFans        InventoryList = "fans"
	InventoryListAlarms      InventoryList = "alarms"
	InventoryListStoredGoods InventoryList = "storedGoods"
)

// Choices lists every word for InventoryList.
func (InventoryList) Choices() []string {
	return []string{"cylinders", "appliances", "lines", "openEnds", "regulators", "flues", "stoves", "exhausts", "fans", "alarms", "storedGoods"}
}

// WorkDone is gas work done before this check.
type WorkDone string

// The words for WorkDone; the schema tells what each means.
const (
	WorkDoneNone             WorkDone = "none"
	WorkDoneByOwner          WorkDone = "by-owner"
	WorkDoneByLicensedFitter WorkDone = "by-licensed-fitter"
)

// Choices lists every word for WorkDone.
func (WorkDone) Choices() []string {
	return []string{"none", "by-owner", "by-licensed-fitter"}
}

// DwellingKind is the kind of dwelling.
type DwellingKind string

// The words for DwellingKind; the schema tells what each means.
const (
	DwellingKindRoadVehicle       DwellingKind = "road-vehicle"
	DwellingKindTrailer           DwellingKind = "trailer"
	DwellingKindManufacturedHome  DwellingKind = "manufactured-home"
	DwellingKindBoat              DwellingKind = "boat"
	DwellingKindInspectedVessel   DwellingKind = "inspected-vessel"
	DwellingKindInlandVessel      DwellingKind = "inland-vessel"
	DwellingKindCabin             DwellingKind = "cabin"
	DwellingKindTinyHouseOnWheels DwellingKind = "tiny-house-on-wheels"
	DwellingKindTinyHouseFixed    DwellingKind = "tiny-house-fixed"
)

// Choices lists every word for DwellingKind.
func (DwellingKind) Choices() []string {
	return []string{"road-vehicle", "trailer", "manufactured-home", "boat", "inspected-vessel", "inland-vessel", "cabin", "tiny-house-on-wheels", "tiny-house-fixed"}
}

// GasKind is what a cylinder holds, or what a part is made for.
type GasKind string

// The words for GasKind; the schema tells what each means.
const (
	GasKindPropane    GasKind = "propane"
	GasKindButane     GasKind = "butane"
	GasKindMix        GasKind = "mix"
	GasKindNaturalGas GasKind = "natural-gas"
)

// Choices lists every word for GasKind.
func (GasKind) Choices() []string {
	return []string{"propane", "butane", "mix", "natural-gas"}
}

// Season is when in the year.
type Season string

// The words for Season; the schema tells what each means.
const (
	SeasonAllYear Season = "all-year"
	SeasonWinter  Season = "winter"
	SeasonSummer  Season = "summer"
)

// Choices lists every word for Season.
func (Season) Choices() []string {
	return []string{"all-year", "winter", "summer"}
}

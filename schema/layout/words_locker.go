package layout

// LinerJoint is how a locker's liner is joined.
type LinerJoint string

// The words for LinerJoint; the schema tells what each means.
const (
	LinerJointWelded   LinerJoint = "welded"
	LinerJointBrazed   LinerJoint = "brazed"
	LinerJointSoldered LinerJoint = "soldered"
	LinerJointBonded   LinerJoint = "bonded"
	LinerJointSealant  LinerJoint = "sealant"
	LinerJointTaped    LinerJoint = "taped"
	LinerJointNone     LinerJoint = "none"
)

// Choices lists every word for LinerJoint.
func (LinerJoint) Choices() []string {
	return []string{"welded", "brazed", "soldered", "bonded", "sealant", "taped", "none"}
}

// SealKind is how a locker is sealed from a space.
type SealKind string

// The words for SealKind; the schema tells what each means.
const (
	SealKindGasTight  SealKind = "gas-tight"
	SealKindNotSealed SealKind = "not-sealed"
)

// Choices lists every word for SealKind.
func (SealKind) Choices() []string {
	return []string{"gas-tight", "not-sealed"}
}

// DoorSeal is what seals a locker's door.
type DoorSeal string

// The words for DoorSeal; the schema tells what each means.
const (
	DoorSealGasket DoorSeal = "gasket"
	DoorSealBrush  DoorSeal = "brush"
	DoorSealNone   DoorSeal = "none"
)

// Choices lists every word for DoorSeal.
func (DoorSeal) Choices() []string {
	return []string{"gasket", "brush", "none"}
}

// Gland is what seals a pipe, cable or bolt where it goes through a wall.
type Gland string

// The words for Gland; the schema tells what each means.
const (
	GlandCompression Gland = "compression"
	GlandBulkhead    Gland = "bulkhead"
	GlandWelded      Gland = "welded"
	GlandSealant     Gland = "sealant"
	GlandGrommet     Gland = "grommet"
	GlandNone        Gland = "none"
)

// Choices lists every word for Gland.
func (Gland) Choices() []string {
	return []string{"compression", "bulkhead", "welded", "sealant", "grommet", "none"}
}

// ContentKind is a thing kept in a locker.
type ContentKind string

// The words for ContentKind; the schema tells what each means.
const (
	ContentKindGasGear   ContentKind = "gas-gear"
	ContentKindElectrics ContentKind = "electrics"
	ContentKindBattery   ContentKind = "battery"
	ContentKindTool      ContentKind = "tool"
	ContentKindFuel      ContentKind = "fuel"
	ContentKindOther     ContentKind = "other"
)

// Choices lists every word for ContentKind.
func (ContentKind) Choices() []string {
	return []string{"gas-gear", "electrics", "battery", "tool", "fuel", "other"}
}

package layout

// CylinderRole is what a cylinder is doing.
type CylinderRole string

// The words for CylinderRole; the schema tells what each means.
const (
	CylinderRoleInService CylinderRole = "in-service"
	CylinderRoleSpare     CylinderRole = "spare"
	CylinderRoleEmpty     CylinderRole = "empty"
)

// Choices lists every word for CylinderRole.
func (CylinderRole) Choices() []string {
	return []string{"in-service", "spare", "empty"}
}

// CylinderMaterial is what a cylinder is made of.
type CylinderMaterial string

// The words for CylinderMaterial; the schema tells what each means.
const (
	CylinderMaterialSteel     CylinderMaterial = "steel"
	CylinderMaterialAluminium CylinderMaterial = "aluminium"
	CylinderMaterialComposite CylinderMaterial = "composite"
)

// Choices lists every word for CylinderMaterial.
func (CylinderMaterial) Choices() []string {
	return []string{"steel", "aluminium", "composite"}
}

// Facing is which way an outlet points.
type Facing string

// The words for Facing; the schema tells what each means.
const (
	FacingUp      Facing = "up"
	FacingDown    Facing = "down"
	FacingOutside Facing = "outside"
	FacingInside  Facing = "inside"
	FacingLeft    Facing = "left"
	FacingRight   Facing = "right"
	FacingFront   Facing = "front"
	FacingRear    Facing = "rear"
)

// Choices lists every word for Facing.
func (Facing) Choices() []string {
	return []string{"up", "down", "outside", "inside", "left", "right", "front", "rear"}
}

// Qualification is how a cylinder was last qualified.
type Qualification string

// The words for Qualification; the schema tells what each means.
const (
	QualificationNew            Qualification = "new"
	QualificationExpansionTest  Qualification = "expansion-test"
	QualificationProofTest      Qualification = "proof-test"
	QualificationExternalVisual Qualification = "external-visual"
)

// Choices lists every word for Qualification.
func (Qualification) Choices() []string {
	return []string{"new", "expansion-test", "proof-test", "external-visual"}
}

// Damage is damage seen on a cylinder.
type Damage string

// The words for Damage; the schema tells what each means.
const (
	DamageNone            Damage = "none"
	DamageRustPitted      Damage = "rust-pitted"
	DamageDented          Damage = "dented"
	DamageBurnt           Damage = "burnt"
	DamageBentCollar      Damage = "bent-collar"
	DamageMissingFootRing Damage = "missing-foot-ring"
	DamageLeaking         Damage = "leaking"
)

// Choices lists every word for Damage.
func (Damage) Choices() []string {
	return []string{"none", "rust-pitted", "dented", "burnt", "bent-collar", "missing-foot-ring", "leaking"}
}

// FilledBy is who filled a cylinder.
type FilledBy string

// The words for FilledBy; the schema tells what each means.
const (
	FilledByExchange    FilledBy = "exchange"
	FilledByFillStation FilledBy = "fill-station"
	FilledByOwner       FilledBy = "owner"
	FilledByUnknown     FilledBy = "unknown"
)

// Choices lists every word for FilledBy.
func (FilledBy) Choices() []string {
	return []string{"exchange", "fill-station", "owner", "unknown"}
}

// Mounting is what a regulator is fixed to.
type Mounting string

// The words for Mounting; the schema tells what each means.
const (
	MountingCylinderValve Mounting = "cylinder-valve"
	MountingWall          Mounting = "wall"
	MountingBracket       Mounting = "bracket"
	MountingLoose         Mounting = "loose"
)

// Choices lists every word for Mounting.
func (Mounting) Choices() []string {
	return []string{"cylinder-valve", "wall", "bracket", "loose"}
}

package pipe

import (
	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

// Material is what a run is made of, as far as its flow depends on it.
type Material string

// The materials. Those of copper differ in the wall for the same outside diameter:
// K is the thickest, ACR coil is soft tube for refrigeration.
const (
	SteelPipe     Material = "Schedule 40 steel pipe"
	CopperK       Material = "copper tube type K"
	CopperL       Material = "copper tube type L"
	CopperACR     Material = "copper tube type ACR, annealed coil"
	Polyethylene  Material = "polyethylene pipe"
	SteelTube     Material = "steel tube"
	StainlessTube Material = "stainless steel tube"
	AluminiumTube Material = "aluminium tube"
	Corrugated    Material = "corrugated stainless steel tubing"
	Hose          Material = "hose"
)

// Roughness is the height of the unevenness of a wall that friction is reckoned
// with, and where the figure stands.
type Roughness struct {
	Height unit.Length // m
	Source string
}

const (
	binder   = "Binder 1973, new pipe, as reprinted at www.efunda.com/formulae/fluids/roughness.cfm (read)"
	handbook = "table of absolute roughness at caetool.com/tag/surface-roughness (read)"
)

// RoughnessOf returns the roughness of a material's wall, and false for one whose
// friction does not follow from a roughness (corrugated tube, hose) or that is not
// listed. The figures are for new, clean pipe; where sources differ the greater
// one is taken. An old wall is rougher: with the 0.25 mm of rusted steel (read, table
// of pipe roughness at myengineeringtools.com) the drop in ½ in pipe at 20 to 80 kW is
// 25 to 50 % higher, so that the figure errs low for old steel.
//
// Source: named in each figure.
func RoughnessOf(m Material) (Roughness, bool) {
	switch m {
	case CopperK, CopperL, CopperACR:
		return Roughness{1.5e-6, "drawn copper, " + binder}, true
	case SteelPipe, SteelTube:
		return Roughness{45e-6, "commercial steel, " + binder}, true
	case Polyethylene:
		return Roughness{7e-6, "plastic pipe 0.0015 to 0.007 mm, " + handbook}, true
	case StainlessTube:
		return Roughness{15e-6, "stretched steel, " + handbook}, true
	case AluminiumTube:
		return Roughness{2e-6, "new aluminium 0.001 to 0.002 mm, " + handbook}, true
	}
	return Roughness{}, false
}

// BoreFormula is [BoreOf] as text: D the bore, D_o the outside diameter and t the
// wall, in m.
const BoreFormula = "D = D_o - 2*t"

// BoreOf returns the inside diameter of a tube, in m:
//
//	D = D_o − 2·t
//
// D_o the outside diameter and t the wall in m. Valid for a bore of 1 mm to 1 m,
// else *[propane.RangeError]. Error size: by the standards for copper an outside
// diameter is true within 0.05 mm and a wall within 0.1 mm, so that a bore is
// within 0.25 mm: on ⅜ in tube 3 %, on the drop of its line 15 %, to either side.
//
// Source: geometry; tolerances ASTM B88 (table read).
func BoreOf(outside, wall unit.Length) (unit.Length, error) {
	if err := propane.Within("wall", float64(wall), 0, mostBore, "m"); err != nil {
		return 0, err
	}
	D := float64(outside) - 2*float64(wall)
	if err := propane.Within("bore", D, leastBore, mostBore, "m"); err != nil {
		return 0, err
	}
	return unit.Length(D), nil
}

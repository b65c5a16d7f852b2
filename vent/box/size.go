package box

import (
	"math"

	"lowvent.example/schema/unit"
)

// The formulas of this file as texts: L_x, L_y and L_z are lengths along the
// axes in m, of one box or of what two boxes have in common.
const (
	FloorAreaFormula = "A = L_x * L_y"
	VolumeFormula    = "V = L_x * L_y * L_z"
)

// Height returns how high a box is, in m. Error size: 1 nm and the bands.
func Height(b Box) unit.Value[unit.Length] { return value[unit.Length](b.spans()[2].length()) }

// FloorArea returns the area that a box covers in plan, in m²:
//
//	A = Lx · Ly
//
// Valid for all boxes. Error size: 1 µm² and the bands of the coordinates. A
// room that is not a box, or has things standing in it, has less free floor: the
// area errs high, the cautious side where a vent is sized by the floor.
func FloorArea(b Box) unit.Value[unit.Area] {
	s := b.spans()
	return value[unit.Area](times(s[0].length(), s[1].length()))
}

// Volume returns the volume of a box in m³:
//
//	V = Lx · Ly · Lz
//
// Valid for all boxes. Error size: 1 mm³ and the bands of the coordinates.
// Furniture and curved walls make the air space less: the volume errs high, the
// wrong side for how soon a leak or a flame spoils the air.
func Volume(b Box) unit.Value[unit.Volume] {
	s := b.spans()
	return value[unit.Volume](times(times(s[0].length(), s[1].length()), s[2].length()))
}

// PlanOverlap returns the area in m² over which one box lies over the other,
// seen from above; 0 when they only touch.
func PlanOverlap(a, b Box) unit.Value[unit.Area] {
	s, t := a.spans(), b.spans()
	return value[unit.Area](times(common(s[0], t[0]), common(s[1], t[1])))
}

// Overlap returns the volume in m³ that two boxes have in common; 0 when they
// only touch. Error size as [Volume].
func Overlap(a, b Box) unit.Value[unit.Volume] {
	s, t := a.spans(), b.spans()
	return value[unit.Volume](times(times(common(s[0], t[0]), common(s[1], t[1])), common(s[2], t[2])))
}

// times multiplies two lengths, areas or sizes of 0 or more and rounds to 1e-12,
// far below what lengths to the nanometre can tell, so that 0.3 m × 0.2 m is
// 0.06 m² and not a hair more.
func times(a, b band) band {
	product := func(x, y float64) float64 { return math.Round(x*y*1e12) / 1e12 }
	return band{product(a.low, b.low), product(a.nominal, b.nominal), product(a.high, b.high)}
}

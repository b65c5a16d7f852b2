package flow

import (
	"math"

	"lowvent.example/schema/unit"
)

// Discharge coefficients of a plain opening with sharp edges.
//
// Coefficient is the usual figure. Source: EnergyPlus Engineering Reference quoting
// ASHRAE Fundamentals 2009 ch. 16 eq. 38 and 39; default of a building library
// quoting Brown and Solvason 1962 (both read). The vents of an emptying box have
// 0.6 to 0.7, less as the contrast of density grows (read).
//
// CoefficientOneHole is for the decay of a mixture through a single small hole:
// the measured means of the helium box (NIST 2009) fall as with 0.45 to 0.49;
// 0.65 leaves 7 to 12 % too little gas after four more hours. It is the least
// of them.
const (
	Coefficient        unit.Ratio = 0.65
	CoefficientOneHole unit.Ratio = 0.45
)

// Face is where in the shell an opening is.
type Face uint8

// The faces: a hole in a wall passes both ways over its height; one in the floor
// or the ceiling only where the heavier side is above.
const (
	Wall Face = iota
	Floor
	Ceiling
)

// Opening is a hole between inside and outside.
type Opening struct {
	Area        unit.Area          // free area; 0 is shut
	Coefficient unit.Ratio         // discharge coefficient, above 0, at most 1
	Middle      unit.Length        // height of its middle over the datum that all share
	Extent      unit.Length        // its own height from edge to edge, in a wall; elsewhere unused
	Face        Face               // wall, floor or ceiling
	Wind        unit.GaugePressure // pressure of the wind outside it

	// A pipe behind the opening: 0 where there is none. Its bore is the inside
	// diameter. What the drop of a pipe adds to the head is left out.
	PipeLength, PipeBore unit.Length
}

// Bottom is the height of the lower edge.
func (o Opening) Bottom() unit.Length { return o.Middle - o.half() }

// Top is the height of the upper edge.
func (o Opening) Top() unit.Length { return o.Middle + o.half() }

func (o Opening) half() unit.Length {
	if o.Face != Wall {
		return 0
	}
	return unit.Length(float64(o.Extent) / 2)
}

// Covered returns the opening behind a cover that passes the factor of what the
// plain opening would, above 0 and at most 1: the coefficient is multiplied. Take
// the factor from a [Cover]. A factor outside gives an opening that [Balance]
// refuses.
func (o Opening) Covered(factor unit.Ratio) Opening {
	if !(factor > 0 && factor <= unit.Ratio(1)) {
		factor = unit.Ratio(math.NaN())
	}
	o.Coefficient = unit.Ratio(float64(o.Coefficient) * float64(factor))
	return o
}

// Blocked returns the opening with a share of 0 to 1 of it stopped up: 0 leaves it,
// 1 shuts it. What stops it up is taken to lie from below and above, so that the
// height shrinks with the area: two-way flow through what is left errs low, the
// side of more gas held. A share outside gives an opening that [Balance] refuses.
func (o Opening) Blocked(share unit.Ratio) Opening {
	if !(share >= 0 && share <= unit.Ratio(1)) {
		share = unit.Ratio(math.NaN())
	}
	left := 1 - float64(share)
	o.Area = unit.Area(float64(o.Area) * left)
	o.Extent = unit.Length(float64(o.Extent) * left)
	return o
}

// Cover is one source's statement of how much of the flow, or of the area, a cover
// leaves.
type Cover struct {
	Name   string
	Factor unit.Ratio // of the plain opening
	Source string
	Read   bool // false: from memory, nobody read it
}

// Covers returns the covers, the most open first. A maker's stated free area goes
// before a share of the face; a screen takes its factor beside it.
func Covers() []Cover {
	const nfpa54 = "NFPA 54 (ANSI Z223.1), combustion air, louvres and grilles of unknown free area"
	return []Cover{
		{"metal louvre or grille", 0.75, nfpa54, false},
		{"insect screen", 0.69, "VentilationOpening of a building-energy schema: discharge coefficient 0.45 with, 0.65 without", true},
		{"wooden louvre", 0.25, nfpa54, false},
	}
}

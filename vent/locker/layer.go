package locker

import (
	"math"

	"lowvent.example/gas/propane"
	"lowvent.example/gas/solve"
	"lowvent.example/schema/unit"
)

// The published entrainment constants of a plume, top-hat: 0.10 (Linden, Lane-Serff
// and Smerdon 1990, from memory) and 0.127 (EnergyPlus Engineering Reference citing
// Linden 1990 and Morton 1956, read). They move the vent area for one height of layer
// by 1.6. Both are shown; the lower leaves the richer layer.
const (
	EntrainmentLow  unit.Ratio = 0.10
	EntrainmentHigh unit.Ratio = 0.127
)

// The formulas of layers as texts: alpha the entrainment constant, C_plume and xi
// without a unit, B in m⁴/s³, lengths in m, S in m², q and Q in m³/s, t in s.
const (
	PlumeFormula        = "C_plume = pow(0.9*alpha, 1.0/3) * 1.2*alpha * pow(3.141592653589793, 2.0/3)"
	DisplacementFormula = "A_eff = pow(H, 2) * pow(C_plume, 1.5) * sqrt(pow(xi, 5)/(1 - xi))"
	LayerShareFormula   = "C_layer = min(1, q / (C_plume * pow(q * 9.80665*(rho_gas - rho_air)/rho_air, 1.0/3) * pow(xi*H, 5.0/3)))"
	FrontFormula        = "t = S * 1.5/C_plume * (pow(h, -2.0/3) - pow(H, -2.0/3)) / pow(q * 9.80665*(rho_gas - rho_air)/rho_air, 1.0/3)"
)

// gravity is in m/s².
const gravity = 9.80665

// PlumeConstant returns C of a plume's flow V = C·B^(1/3)·z^(5/3) from its
// entrainment constant α:
//
//	C = (6α/5)·(9α/10)^(1/3)·π^(2/3)
//
// 0.1154 at 0.10, 0.1586 at 0.127. Valid for α above 0 up to 0.5, else
// *[propane.RangeError]. Source: EnergyPlus Engineering Reference (read).
func PlumeConstant(alpha unit.Ratio) (unit.Ratio, error) {
	if err := propane.Above("entrainment constant", float64(alpha), 0, 0.5, "1"); err != nil {
		return 0, err
	}
	return unit.Ratio(plume(float64(alpha))), nil
}

func plume(alpha float64) float64 {
	return 1.2 * alpha * math.Cbrt(0.9*alpha) * math.Pow(math.Pi, 2./3)
}

// Layer is the layer that two openings leave where the gas collects.
type Layer struct {
	Clear unit.Length // from the source to the layer, along the plume
	Share unit.Ratio  // of gas in the layer, at most 1
}

// Displacement returns the layer of a leak that falls (or rises) as a plume through
// clean air into what has collected, which leaves through one opening while air
// enters at the other:
//
//	A*/H² = C^(3/2)·√(ξ⁵/(1−ξ)),  share = q/(C·B^(1/3)·(ξ·H)^(5/3)),  B = q·g·|ρ_gas−ρ_air|/ρ_air
//
// A* is [flow.EffectiveArea] in m², H in m from the source to the opening where the
// gas leaves, q in m³/s, ξ·H the clear height. The layer's height does not depend on
// the leak. A small vent lets the layer rise to the source, where the plume has mixed
// in little air and the share comes out above 1: it is cut off there.
//
// Valid for A* above 0 up to 100 m², H above 0 up to 100 m, leaks above 0 up to
// 100 m³/s, densities of 0.05 to 10 kg/m³, else *[propane.RangeError].
//
// Error size: against the one pair of helium runs the layer is 1.3 to 1.7 times
// richer than the richest sensor, the cautious side; there was no sharp layer.
//
// Source: Linden, Lane-Serff and Smerdon, J. Fluid Mech. 212 (1990) 309 (from memory).
func Displacement(effective unit.Area, height unit.Length, leak unit.VolumeFlow, gas, air unit.Density, alpha unit.Ratio) (Layer, error) {
	if err := validPlume(height, leak, gas, air, alpha, propane.Above("effective area", float64(effective), 0, 100, "m²")); err != nil {
		return Layer{}, err
	}
	c, H := plume(float64(alpha)), float64(height)
	want := math.Pow(float64(effective)/(H*H), 2) / (c * c * c)
	xi, err := solve.Root(func(x float64) float64 { return math.Pow(x, 5) - want*(1-x) }, 0, 1, 1e-14)
	if err != nil {
		return Layer{}, err
	}
	q := float64(leak)
	share := q / (c * math.Cbrt(buoyancy(q, gas, air)) * math.Pow(xi*H, 5./3))
	return Layer{Clear: unit.Length(xi * H), Share: unit.Ratio(min(1, share))}, nil
}

// Front returns when the front of a leak in a closed box, in s, has come back from
// the surface where the gas collects to within h of the source:
//
//	t = 1.5·S/(C·B^(1/3))·(h^(−2/3) − H^(−2/3))
//
// S the floor area in m², H from the source to that surface in m. Valid for S above 0
// up to 1000 m² and h above 0 up to H, the rest as [Displacement], else
// *[propane.RangeError].
//
// Error size: with α of 0.127 the measured front of helium comes 0.5 to 1.5 times as
// late as this while h is at least 0.25 m, after 0.3 to 0.6 of it closer to the
// source, and passes beyond the source where this says never. It errs late, the
// wrong side for a warning: nobody's time may be judged by it alone.
//
// Source: filling box of Baines and Turner 1969 (from memory).
func Front(floor unit.Area, height, toSource unit.Length, leak unit.VolumeFlow, gas, air unit.Density, alpha unit.Ratio) (unit.Duration, error) {
	err := validPlume(height, leak, gas, air, alpha, first(
		propane.Above("floor area", float64(floor), 0, 1000, "m²"),
		propane.Above("distance of the front from the source", float64(toSource), 0, float64(height), "m")))
	if err != nil {
		return 0, err
	}
	span := math.Pow(float64(toSource), -2./3) - math.Pow(float64(height), -2./3)
	return unit.Duration(1.5 * float64(floor) * span / (plume(float64(alpha)) * math.Cbrt(buoyancy(float64(leak), gas, air)))), nil
}

// buoyancy is B in m⁴/s³.
func buoyancy(q float64, gas, air unit.Density) float64 {
	return q * gravity * math.Abs(float64(gas-air)) / float64(air)
}

func validPlume(height unit.Length, leak unit.VolumeFlow, gas, air unit.Density, alpha unit.Ratio, more error) error {
	return first(more,
		propane.Above("height of the plume", float64(height), 0, 100, "m"),
		propane.Above("leak", float64(leak), 0, 100, "m³/s"),
		propane.Within("density of the gas", float64(gas), 0.05, 10, "kg/m³"),
		propane.Within("density of the air", float64(air), 0.05, 10, "kg/m³"),
		propane.Above("entrainment constant", float64(alpha), 0, 0.5, "1"))
}

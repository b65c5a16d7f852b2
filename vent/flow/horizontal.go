package flow

import (
	"math"

	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

// HorizontalExchange returns what passes each way, in m³/s, through a round hole of
// area A in a floor or ceiling that has the heavier side above, while a pressure dp
// presses across it:
//
//	V = 0.055·√(g·(Δρ/ρ)·D⁵)·(1 − dp/dp_flood),  dp_flood = 0.754²·g·Δρ·D⁵/(2·A²)
//
// D = √(4A/π) in m, Δρ between the sides, ρ their mean, kg/m³, dp in Pa; nothing over
// dp_flood, which comes to 0.4608·g·Δρ·D.
//
// The constant is the lower of two that stand 34 % apart: 0.055 by Epstein 1988
// (from memory); 0.10·√(g·Δρ·A^2.5/ρ), which is 0.0739·√(g′·D⁵), by Cooper 1989. The
// shape factor 0.754 is that of a round hole, the lower. So it errs low, the side
// of more gas held. Valid for areas up to 100 m², densities of 0.05 to 10 kg/m³ and
// pressures from 0, else *[propane.RangeError].
//
// Source: NIST CFAST Technical Reference Guide, vents (Cooper 1989), read.
func HorizontalExchange(area unit.Area, above, below unit.Density, pressure unit.GaugePressure) (unit.VolumeFlow, error) {
	err := first(
		propane.Within("free area of an opening", float64(area), 0, mostArea, "m²"),
		propane.Within("density above", float64(above), leastRho, mostRho, "kg/m³"),
		propane.Within("density below", float64(below), leastRho, mostRho, "kg/m³"),
		propane.Within("pressure across", float64(pressure), 0, math.MaxFloat64, "Pa"))
	if err != nil || above <= below || area == 0 {
		return 0, err
	}
	return unit.VolumeFlow(horizontalExchange(float64(area), float64(above-below), float64(above+below)/2, float64(pressure))), nil
}

func horizontalExchange(area, contrast, mean, dp float64) float64 {
	d := math.Sqrt(4 * area / math.Pi)
	left := 1 - dp/(0.4608*gravity*contrast*d)
	if left <= 0 {
		return 0
	}
	return 0.055 * math.Sqrt(gravity*contrast/mean) * math.Pow(d, 2.5) * left
}

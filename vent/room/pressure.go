package room

import (
	"math"

	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

// The formulas of this file as texts: q flows in m³/s, A areas in m², rho in
// kg/m³, dp in Pa, C_d a discharge coefficient.
const (
	DepressurisationFormula = "dp = pow(q/(C_d*A), 2) * rho/2"
	CrackFormula            = "q_crack = C_d * A * sqrt(2*dp/rho)"
	LeakageFormula          = "q = q_50 / 20"
)

// Depressurisation returns by how much the pressure of a room falls below that
// outside, in Pa, when q m³/s is drawn out of it against openings of the free area
// A:
//
//	Δp = (q/(C·A))²·ρ/2
//
// C the discharge coefficient, ρ the density of the air that comes in, kg/m³. The
// openings are all at one height and the air outside is still: with openings low
// and high, or a stack of warm air, [Vented] gives the flow and the pressure.
//
// Valid for 0 to 50 m³/s, 1e-6 to 100 m², C above 0 up to 1 and 0.5 to 2 kg/m³,
// else *[propane.RangeError]. Error size: twice that of the area and the
// coefficient. Cracks that nobody counted let the true figure be lower; an
// opening half blocked makes it four times as high.
//
// Source: orifice flow, BS 5925:1991 amendment 1 eq. 2 (read), solved for Δp.
func Depressurisation(drawn unit.VolumeFlow, openings unit.Area, coefficient unit.Ratio, density unit.Density) (unit.GaugePressure, error) {
	q, A, C, rho := float64(drawn), float64(openings), float64(coefficient), float64(density)
	err := firstOf(
		propane.Within("flow drawn out", q, 0, 50, "m³/s"),
		propane.Within("free area of the openings", A, 1e-6, 100, "m²"),
		validOpening(C, rho),
	)
	if err != nil {
		return 0, err
	}
	v := q / (C * A)
	return unit.GaugePressure(v * v * rho / 2), nil
}

// Crack returns what a difference of pressure Δp in Pa draws through a crack of
// the area A, in m³/s:
//
//	q = C·A·√(2·Δp/ρ)
//
// 10 Pa draw 0.9 m³/h through each cm². What lies behind the crack comes in: air, or
// what a locker or an undercroft holds.
//
// Valid for 0 to 2000 Pa, 0 to 100 m², C and ρ as [Depressurisation], else
// *[propane.RangeError]. Error size: that of the area; a long narrow crack passes
// less: it errs high, the cautious side.
//
// Source: as [Depressurisation].
func Crack(pressure unit.GaugePressure, area unit.Area, coefficient unit.Ratio, density unit.Density) (unit.VolumeFlow, error) {
	dp, A, C, rho := float64(pressure), float64(area), float64(coefficient), float64(density)
	err := firstOf(
		propane.Within("difference of pressure", dp, 0, 2000, "Pa"),
		propane.Within("area of the crack", A, 0, 100, "m²"),
		validOpening(C, rho),
	)
	if err != nil {
		return 0, err
	}
	return unit.VolumeFlow(C * A * math.Sqrt(2*dp/rho)), nil
}

func validOpening(coefficient, density float64) error {
	return firstOf(
		propane.Within("discharge coefficient", coefficient, 1e-3, 1, "1"),
		propane.Within("density of the air", density, 0.5, 2, "kg/m³"),
	)
}

// Leakage returns what leaks in by itself on the average of a year, in m³/s, of a
// building that passes q₅₀ m³/s at 50 Pa:
//
//	q = q₅₀/20
//
// A rule of thumb for houses. In still mild weather next to nothing leaks in: it is
// told for comparison and never counted as fresh air. Valid for 0 to 1000 m³/s,
// else *[propane.RangeError]. Error size: a factor of two to either side (from memory).
//
// Source: Kiwa report on ventilation in dwellings, abstract, whose two figures are
// its tests here.
func Leakage(at50Pa unit.VolumeFlow) (unit.VolumeFlow, error) {
	if err := propane.Within("flow at 50 Pa", float64(at50Pa), 0, 1000, "m³/s"); err != nil {
		return 0, err
	}
	return unit.VolumeFlow(float64(at50Pa) / 20), nil
}

package flow

import (
	"math"

	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

// pipeViscosity is that of air at 20 °C in Pa s. Propane has less than half of it,
// so that friction errs high.
const pipeViscosity = 1.82e-5

// PipeSpeed returns the mean speed, in m/s, that a pressure dp drives through an
// opening with the discharge coefficient C and a pipe of length L and bore D behind
// it, from
//
//	dp = ρ·v²/2·(1/C² + 0.04·L/D) + 32·μ·L·v/D²
//
// μ = 1.82e-5 Pa s, that of air. The friction factor is that of laminar flow plus
// 0.04, over that of any smooth or slightly rough pipe at every speed (the factor
// of 0.04 is common practice, no source). It errs low on the flow, by up to a third
// of the friction's part: the side of more gas held.
//
// Valid for dp from 0, densities of 0.05 to 10 kg/m³, lengths up to 100 m and bores
// of 1e-4 to 10 m, else *[propane.RangeError].
//
// Source: Darcy and Weisbach; Hagen and Poiseuille.
func PipeSpeed(pressure unit.GaugePressure, density unit.Density, coefficient unit.Ratio, length, bore unit.Length) (unit.Speed, error) {
	err := first(
		propane.Within("pressure", float64(pressure), 0, 1e5, "Pa"),
		propane.Within("density", float64(density), leastRho, mostRho, "kg/m³"),
		propane.Above("discharge coefficient", float64(coefficient), 0, 1, "1"),
		propane.Within("length of a drain pipe", float64(length), 0, mostHeight, "m"),
		propane.Within("bore of a drain pipe", float64(bore), 1e-4, 10, "m"))
	if err != nil {
		return 0, err
	}
	return unit.Speed(pipeSpeed(float64(pressure), float64(density), float64(coefficient), float64(length), float64(bore))), nil
}

func pipeSpeed(dp, rho, coefficient, length, bore float64) float64 {
	a := rho * (1/(coefficient*coefficient) + 0.04*length/bore)
	b := 32 * pipeViscosity * length / (bore * bore)
	if dp == 0 {
		return 0
	}
	return 2 * dp / (b + math.Sqrt(b*b+2*a*dp))
}

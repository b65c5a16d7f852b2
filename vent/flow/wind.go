package flow

import (
	"math"

	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

// Head returns the pressure, in Pa, with which a difference of density Δρ stands
// over a height H: Δρ·g·H. Valid for densities of 0.05 to 10 kg/m³ and heights of 0
// to 100 m, else *[propane.RangeError]. Exact.
func Head(inside, outside unit.Density, height unit.Length) (unit.GaugePressure, error) {
	err := first(
		propane.Within("density inside", float64(inside), leastRho, mostRho, "kg/m³"),
		propane.Within("density outside", float64(outside), leastRho, mostRho, "kg/m³"),
		propane.Within("height", float64(height), 0, mostHeight, "m"))
	if err != nil {
		return 0, err
	}
	return unit.GaugePressure(math.Abs(float64(inside-outside)) * gravity * float64(height)), nil
}

// WindPressure returns the pressure, in Pa, of wind of the speed U m/s on an opening
// whose pressure coefficient, or on two whose difference of coefficients, is C_p:
// C_p·ρ·U²/2. A C_p of 1 is the full stagnation pressure, that of an opening facing
// the wind; between one in the wind and one in the lee it can reach about 1.5 (from
// memory). Valid for C_p within ±3, densities of 0.05 to 10 kg/m³ and 0 to 60 m/s,
// else *[propane.RangeError].
//
// Source: Bernoulli.
func WindPressure(coefficient unit.Ratio, outside unit.Density, speed unit.Speed) (unit.GaugePressure, error) {
	err := first(
		propane.Within("wind pressure coefficient", float64(coefficient), -3, 3, "1"),
		propane.Within("density outside", float64(outside), leastRho, mostRho, "kg/m³"),
		propane.Within("wind speed", float64(speed), 0, 60, "m/s"))
	if err != nil {
		return 0, err
	}
	return unit.GaugePressure(float64(coefficient) * float64(outside) * float64(speed) * float64(speed) / 2), nil
}

// WindSpeed returns the wind, in m/s, whose pressure equals a head: the wind that
// can stop what the head drives when it presses on the opening where the gas would
// leave,
//
//	U = √(2·p/(C_p·ρ))
//
// Valid for heads of 0 to 2000 Pa, C_p above 0 up to 3 and densities of 0.05 to
// 10 kg/m³, else *[propane.RangeError]. It is the inverse of [WindPressure].
func WindSpeed(head unit.GaugePressure, coefficient unit.Ratio, outside unit.Density) (unit.Speed, error) {
	err := first(
		propane.Within("head", float64(head), 0, mostWind, "Pa"),
		propane.Above("wind pressure coefficient", float64(coefficient), 0, 3, "1"),
		propane.Within("density outside", float64(outside), leastRho, mostRho, "kg/m³"))
	if err != nil {
		return 0, err
	}
	return unit.Speed(math.Sqrt(2 * float64(head) / (float64(coefficient) * float64(outside)))), nil
}

package propane

import (
	"math"

	"lowvent.example/schema/unit"
)

// ButanePressureFormula is [ButanePressure] as a text: p_butane in Pa absolute,
// T the temperature in K.
const ButanePressureFormula = "p_butane = 3.796e6 * exp(425.125/T * (" +
	"0.069864828805*pow(1 - T/425.125, 0.743) - 6.6890913264*pow(1 - T/425.125, 0.984)" +
	" + 4.7748745672*pow(1 - T/425.125, 1.886) - 5.7054710939*pow(1 - T/425.125, 2.16)" +
	" + 1.8437119134*pow(1 - T/425.125, 3.286) - 3.7353722183*pow(1 - T/425.125, 4.231)))"

// ButanePressure returns the pressure over liquid n-butane at temperature T:
//
//	p = pc · exp[(Tc/T) · Σ nᵢ θ^tᵢ],  θ = 1 − T/Tc
//
// p in Pa absolute, T in K, pc = 3.796 MPa, Tc = 425.125 K. It boils under
// 101 325 Pa at −0.5 °C.
//
// Valid from −45 to +70 °C, else *[RangeError].
//
// Error size: within 0.024 % of the full equation of state for pure n-butane.
// Isobutane, which is sold with it, has 1.3 to 1.7 times the pressure (from
// memory): for a blend of the two the figure errs low.
//
// Source: ancillary vapour-pressure equation to Bücker and Wagner, J. Phys.
// Chem. Ref. Data 35 (2006) 929, as published in the fluid file of the
// general-purpose property library CoolProp.
func ButanePressure(temperature unit.Temperature) (unit.AbsolutePressure, error) {
	T, err := valid(temperature)
	if err != nil {
		return 0, err
	}
	return unit.AbsolutePressure(butanePressure(T)), nil
}

func butanePressure(T float64) float64 {
	const critical = 425.125 // K
	theta, sum := 1-T/critical, 0.0
	for _, k := range [6]term{
		{0.069864828805, 0.743}, {-6.6890913264, 0.984}, {4.7748745672, 1.886},
		{-5.7054710939, 2.16}, {1.8437119134, 3.286}, {-3.7353722183, 4.231},
	} {
		sum += k.n * math.Pow(theta, k.t)
	}
	return 3.796e6 * math.Exp(critical/T*sum)
}

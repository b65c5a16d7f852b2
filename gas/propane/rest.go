package propane

import (
	"math"

	"lowvent.example/gas/solve"
	"lowvent.example/schema/unit"
)

// RestFormula is what [ShareLeft] solves, as a text: x_0 the share of propane that was
// filled in, x the one that is left, alpha the ratio of the pressures over pure propane
// and pure butane, F the share of the filling that is left, by moles.
const RestFormula = "F = pow(x/x_0, 1/(alpha - 1)) * pow((1 - x_0)/(1 - x), alpha/(alpha - 1))"

// Volatility returns the ratio of the pressures over pure propane and pure butane at
// temperature T: how many times as readily propane boils off. It is about 4 at 20 °C
// and 5 at −10 °C. Valid from −45 to +70 °C, else *[RangeError].
//
// Error size: that of Raoult's law, by which it is the ratio of the shares in vapour and
// liquid: 5 to 10 %, to either side (from memory).
//
// Source: Raoult's law; [SaturationPressure], [ButanePressure].
func Volatility(temperature unit.Temperature) (unit.Ratio, error) {
	T, err := valid(temperature)
	if err != nil {
		return 0, err
	}
	return unit.Ratio(saturationPressure(T) / butanePressure(T)), nil
}

// ShareLeft returns the share of propane, by moles, in the liquid that is left of a
// filling with n-butane when vapour has been drawn off: x in
//
//	F = (x/x₀)^(1/(α−1)) · ((1−x₀)/(1−x))^(α/(α−1))
//
// where x₀ is the share that was filled in, F the share of the filling that is left
// and α the [Volatility] at temperature T. The propane boils off first, so that
// x ≤ x₀; pure liquids stay what they are.
//
// Valid from −45 to +70 °C, for x₀ from 0 to 1 and F above 0 up to 1, else
// *[RangeError].
//
// Error size: one α is taken for all of the time. It is larger in the cold and the
// rest then poorer, so that the coldest temperature met is the cautious choice. By
// moles, mass and volume of liquid F differs by a few per cent. The vapour that fills
// the room of the liquid is left out, which makes the rest a little richer than it is:
// 1 or 2 per cent of the filling. Fillings on top of a rest gather butane: the wrong side.
//
// Source: Lord Rayleigh, Phil. Mag. 4 (1902) 521, simple distillation (from memory; it
// follows from the balance of propane, dn·(y − x) = n·dx, which the tests integrate).
func ShareLeft(temperature unit.Temperature, filled, left unit.Ratio) (unit.Ratio, error) {
	alpha, err := Volatility(temperature)
	if err == nil {
		err = validShare(filled)
	}
	if err == nil {
		err = Within("share of the filling that is left", float64(left), leastLeft, 1, "mol/mol")
	}
	x0, a, F := float64(filled), float64(alpha), float64(left)
	if err != nil || x0 == 0 || x0 == 1 || F == 1 {
		return filled, err
	}
	target := math.Log(F)
	lack := func(x float64) float64 {
		return (math.Log(x/x0)+a*math.Log((1-x0)/(1-x)))/(a-1) - target
	}
	x, err := solve.Root(lack, math.SmallestNonzeroFloat64, x0, 1e-12)
	return unit.Ratio(x), err
}

// leastLeft is the least share of a filling that is asked for: the last thousandth.
const leastLeft = 1e-3

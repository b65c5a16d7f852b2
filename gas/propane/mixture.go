package propane

import (
	"lowvent.example/gas/solve"
	"lowvent.example/schema/unit"
)

// The formulas of this file as texts: x is the mole share of propane, p and
// p_butane are the pressures of the pure liquids, p_mix and p_ceiling the results,
// all in Pa absolute.
const (
	MixturePressureFormula = "p_mix = (x*p + (1 - x)*p_butane) * (1 - x*(1 - x)/4)"
	CeilingPressureFormula = "p_ceiling = p * 1.181"
)

// MixturePressure returns a pressure, in Pa absolute, that liquid propane and
// n-butane together hold at temperature T in K when freshly filled: Raoult's law
// less an allowance for what it overstates,
//
//	p = [x·p₁ + (1 − x)·p₂] · [1 − x(1 − x)/4]
//
// with p₁ of [SaturationPressure], p₂ of [ButanePressure] and x the share of
// propane.
//
// The share is read as that of the moles. Suppliers state shares by mass, by
// volume of liquid or not at all how; since a mole of propane is lighter and
// smaller than one of butane, the same number by mass or by volume stands for
// more moles of propane and for more pressure (at half and half 8 or 4 % more),
// so that the reading by moles gives the lowest of the three.
//
// Valid from −45 to +70 °C and for shares of 0 to 1, else *[RangeError].
//
// Error size: Raoult's law alone errs high, the wrong side in the cold: by 0.6 to
// 4.5 % against measured pressures at 50 °C, by 2.4 to 4.8 % from 5 to 54 °C
// against a table made with the Peng–Robinson equation, by 3.7 % at most against
// a published chart. The allowance, at most 6.25 %, brings the figure 0 to 3 %
// below the measured ones and the table and 1 to 8 % below the chart. At −10 °C
// it is about 4 % below the likely truth. It errs low: whoever judges delivery in
// the cold is on the cautious side by up to 1.5 K. It is not for heat: see
// [CeilingPressure].
//
// A cylinder from which vapour is drawn boils off propane first: at 20 °C the
// vapour over half and half holds four moles of propane to one of butane. What is
// left is poorer in propane day by day, and the pressure falls below this one at
// the same temperature. Judge the end of a cylinder by the [ShareLeft].
//
// Source: Raoult's law (any textbook of physical chemistry); that the mixture
// lies slightly below it: J. Chem. Eng. Data 53 (2008) 2783, abstract. The form
// and the size of the allowance are our own, a bound on the published figures in
// the tests.
func MixturePressure(temperature unit.Temperature, share unit.Ratio) (unit.AbsolutePressure, error) {
	T, err := valid(temperature)
	if err == nil {
		err = validShare(share)
	}
	if err != nil {
		return 0, err
	}
	return unit.AbsolutePressure(mixturePressure(T, float64(share))), nil
}

func mixturePressure(T, x float64) float64 {
	raoult := x*saturationPressure(T) + (1-x)*butanePressure(T)
	return raoult * (1 - x*(1-x)/4)
}

func validShare(share unit.Ratio) error {
	return Within("share of propane", float64(share), 0, 1, "mol/mol")
}

// MixtureTemperature returns the temperature, in K, at which the mixture has the
// pressure p in Pa absolute: the inverse of [MixturePressure]. Below it the
// mixture cannot feed a regulator that needs p.
//
// Valid for shares of 0 to 1 and for the pressures that the mixture has from −45
// to +70 °C, else *[RangeError].
//
// Error size: high by up to 1.5 K for a fresh filling, the cautious side, plus
// 1e-6 K of the search. A cylinder that has given off vapour needs more than
// this: see [MixturePressure].
//
// Source: as [MixturePressure], inverted with [solve.Root].
func MixtureTemperature(p unit.AbsolutePressure, share unit.Ratio) (unit.Temperature, error) {
	if err := validShare(share); err != nil {
		return 0, err
	}
	x, target := float64(share), float64(p)
	low, high := float64(LeastTemperature), float64(GreatestTemperature)
	err := Within("pressure", target, mixturePressure(low, x), mixturePressure(high, x), "Pa")
	if err != nil {
		return 0, err
	}
	T, err := solve.Root(func(T float64) float64 { return mixturePressure(T, x) - target }, low, high, 1e-6)
	return unit.Temperature(T), err
}

// ceilingRatio is the specification's ceiling of 208 psig at 100 °F over the
// pressure of pure propane there, both absolute: 1.1807, rounded up.
const ceilingRatio = 1.181

// CeilingPressure returns the highest pressure of what is sold as commercial
// propane at temperature T, in Pa absolute: 1.181 times that of pure propane.
//
// The ratio is that of the highest pressure which the specification of commercial
// propane in the United States allows at 100 °F, 208 psig. That it holds at other
// temperatures is an assumption: the lighter hydrocarbons that raise the pressure
// weigh more in the cold and less in heat.
//
// Valid from −45 to +70 °C, else *[RangeError].
//
// Error size: over every published pressure of commercial propane from 0 to
// 130 °F, by 0 to 9 % (0 °F: even, within the rounding of 31 psig). It errs high
// when hot, the cautious side for relief valves and inlet ratings, and may err
// low below 0 °F, where nobody needs it. A specification elsewhere may allow
// more: 1550 kPa gauge at 40 °C in the United Kingdom (from memory) is 2 % over
// it.
//
// Source: vapour pressure of commercial propane in the specification of GPA
// Standard 2140 and ASTM D1835, as reported in a public answer on chemistry (B.
// Hamilton); the standards were not read.
func CeilingPressure(temperature unit.Temperature) (unit.AbsolutePressure, error) {
	T, err := valid(temperature)
	if err != nil {
		return 0, err
	}
	return unit.AbsolutePressure(ceilingRatio * saturationPressure(T)), nil
}

// PressureBand returns the pressures, in Pa absolute, that a cylinder at
// temperature T may have when all that is known is the share of propane, with its
// tolerance: Low is [MixturePressure] at the least share, Nominal that at the
// nominal share, High is [CeilingPressure] whatever the share. Delivery in the
// cold is judged by Low, heat by High.
//
// Valid from −45 to +70 °C and for shares of 0 to 1, else *[RangeError].
//
// Error size: outward on both sides, as the functions named; but Low is that of a
// fresh filling, and falls as the cylinder empties.
func PressureBand(temperature unit.Temperature, share unit.Value[unit.Ratio]) (unit.Value[unit.AbsolutePressure], error) {
	high, err := CeilingPressure(temperature)
	for _, x := range [3]unit.Ratio{share.Low, share.Nominal, share.High} {
		if err == nil {
			err = validShare(x)
		}
	}
	if err != nil {
		return unit.Value[unit.AbsolutePressure]{}, err
	}
	at := func(x unit.Ratio) unit.AbsolutePressure {
		return unit.AbsolutePressure(mixturePressure(float64(temperature), float64(x)))
	}
	return unit.Value[unit.AbsolutePressure]{Low: at(share.Low), Nominal: at(share.Nominal), High: high}, nil
}

package room

import (
	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

// The formulas of this file as texts: x_water, x_dry and x_wet shares by volume,
// RH a relative humidity, p_sat and p pressures in Pa absolute; x_O2 the share of
// oxygen, x_level the share that has its partial pressure at the level of the sea.
const (
	OutsideWaterFormula   = "x_water = RH * p_sat / p"
	DryFormula            = "x_dry = x_wet / (1 - x_water)"
	SeaLevelOxygenFormula = "x_level = x_O2 * p / 101325"
)

// OxygenOutside is the share of oxygen in dry outside air, by volume.
//
// Source: NIST and NOAA figure of 20.946 % (from memory), rounded up by 0.02 % of
// itself; a fall of the oxygen is counted from there.
const OxygenOutside unit.Ratio = 0.2095

// CarbonDioxideOutside is a share of carbon dioxide in outside air, by volume,
// for whoever has none of his own: 420 ppm.
//
// Source: yearly mean at Mauna Loa about 2022 (from memory). It rises by 2 to 3
// ppm a year and is tens of ppm higher in a town: against a limit of 5000 ppm
// both are small.
const CarbonDioxideOutside unit.Ratio = 420e-6

// Air is what air is made of, as shares by volume of the whole, its water vapour
// counted. What is missing to 1 is nitrogen and argon.
type Air struct {
	Oxygen        unit.Ratio
	CarbonDioxide unit.Ratio
	Water         unit.Ratio
}

// Dry returns the air with its water taken away:
//
//	x_dry = x / (1 − x_water)
//
// Gas analysers that dry their sample tell these shares. Carbon dioxide is judged
// by the dry share, which is the higher one, oxygen by the share in the air as it
// is, the lower one. Valid for water below 1; air of nothing but water comes back
// as it was.
//
// Source: definition.
func (a Air) Dry() Air {
	rest := 1 - float64(a.Water)
	if !(rest > 0) {
		return a
	}
	return Air{
		Oxygen:        unit.Ratio(float64(a.Oxygen) / rest),
		CarbonDioxide: unit.Ratio(float64(a.CarbonDioxide) / rest),
	}
}

func (a Air) valid(what string) error {
	sum := float64(a.Oxygen) + float64(a.CarbonDioxide) + float64(a.Water)
	return firstOf(
		propane.Within("oxygen "+what, float64(a.Oxygen), 0, 1, "m³/m³"),
		propane.Within("carbon dioxide "+what, float64(a.CarbonDioxide), 0, 1, "m³/m³"),
		propane.Within("water vapour "+what, float64(a.Water), 0, 0.9, "m³/m³"),
		propane.Within("oxygen, carbon dioxide and water "+what, sum, 0, 1, "m³/m³"),
	)
}

// Outside returns the outside air at temperature T in K, relative humidity RH and
// pressure p in Pa absolute: [OxygenOutside] and the given carbon dioxide in its
// dry part, and water
//
//	x_water = RH · p_sat / p
//
// with p_sat of [SaturationPressure], also below freezing, as stations tell it.
// Where the humidity is not known it is 1: saturated air errs to the damp side.
//
// Valid from −45 to +60 °C, 40 to 120 kPa, a humidity of 0 to 1 and carbon
// dioxide of 0 to 1 %, else *[propane.RangeError]. Error size: that of the
// humidity.
//
// Source: Dalton's law; [SaturationPressure].
func Outside(carbonDioxide unit.Ratio, temperature unit.Temperature, humidity unit.Ratio, p unit.AbsolutePressure) (Air, error) {
	saturated, err := SaturationPressure(temperature)
	err = firstOf(err,
		propane.Within("carbon dioxide of the outside air", float64(carbonDioxide), 0, 0.01, "m³/m³"),
		propane.Within("relative humidity", float64(humidity), 0, 1, "1"),
		validPressure(p),
	)
	if err != nil {
		return Air{}, err
	}
	water := float64(humidity) * float64(saturated) / float64(p)
	return Air{
		Oxygen:        unit.Ratio(float64(OxygenOutside) * (1 - water)),
		CarbonDioxide: unit.Ratio(float64(carbonDioxide) * (1 - water)),
		Water:         unit.Ratio(water),
	}, nil
}

// SeaLevelOxygen returns the share of oxygen that air at the level of the sea
// would have with the same partial pressure as this share at pressure p in Pa
// absolute:
//
//	x_level = x · p / 101 325 Pa
//
// At a height the share of oxygen in outside air is what it is at the sea, but
// each breath holds less: 20.95 % at 1600 m is worth 17.3 %. The limits of law go
// by the share; this figure is told beside it. Valid for 40 to 120 kPa and
// shares of 0 to 1, else *[propane.RangeError].
//
// Source: Dalton's law; the pressure from gas/air.
func SeaLevelOxygen(oxygen unit.Ratio, p unit.AbsolutePressure) (unit.Ratio, error) {
	if err := firstOf(propane.Within("oxygen", float64(oxygen), 0, 1, "m³/m³"), validPressure(p)); err != nil {
		return 0, err
	}
	return unit.Ratio(float64(oxygen) * float64(p) / standardPressure), nil
}

func validPressure(p unit.AbsolutePressure) error {
	return propane.Within("pressure of the air", float64(p), 40e3, 120e3, "Pa")
}

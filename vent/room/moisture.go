package room

import (
	"math"

	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

// The formulas of this file as texts: pressures in Pa absolute, temperatures in K,
// U and h_in in W/(m² K).
const (
	SaturationFormula     = "p_sat = exp(17.62*(T - 273.15)/(T - 30.03)) * 611.2"
	FrostFormula          = "p_frost = exp(22.46*(T - 273.15)/(T - 0.53)) * 611.2"
	DewPointFormula       = "T_dew = log(p_water/611.2) * 243.12/(17.62 - log(p_water/611.2)) + 273.15"
	FrostPointFormula     = "T_frost = log(p_water/611.2) * 272.62/(22.46 - log(p_water/611.2)) + 273.15"
	VapourPressureFormula = "p_water = x_water * p"
	SurfaceFormula        = "T_surface = T_in - U/h_in*(T_in - T_out)"
)

// magnus is a formula of the form p = 611.2 Pa · exp[a·t/(b + t)], t in °C, with
// the range in which it is used in K.
type magnus struct {
	a, b, least, most float64
	what              string
}

func overWater() magnus {
	return magnus{17.62, 243.12, 228.15, 333.15, "temperature of air over water"}
}

func overIce() magnus {
	return magnus{22.46, 272.62, 208.15, 273.15, "temperature of air over ice"}
}

const (
	triplePressure = 611.2 // Pa
	freezing       = 273.15
)

func (m magnus) pressure(T float64) float64 {
	t := T - freezing
	return triplePressure * math.Exp(m.a*t/(m.b+t))
}

func (m magnus) temperature(p float64) float64 {
	l := math.Log(p / triplePressure)
	return freezing + m.b*l/(m.a-l)
}

func (m magnus) saturation(T unit.Temperature) (unit.AbsolutePressure, error) {
	if err := propane.Within(m.what, float64(T), m.least, m.most, "K"); err != nil {
		return 0, err
	}
	return unit.AbsolutePressure(m.pressure(float64(T))), nil
}

func (m magnus) point(p unit.AbsolutePressure) (unit.Temperature, error) {
	low, high := m.pressure(m.least), m.pressure(m.most)
	if err := propane.Within("pressure of water vapour", float64(p), low, high, "Pa"); err != nil {
		return 0, err
	}
	return unit.Temperature(m.temperature(float64(p))), nil
}

// SaturationPressure returns the most pressure that water vapour has over liquid
// water at temperature T:
//
//	p = 611.2 Pa · exp[17.62·t/(243.12 °C + t)]
//
// t in °C. Valid from −45 to +60 °C, else *[propane.RangeError].
//
// Error size: within 0.4 % from 0 to 50 °C against ASHRAE's table and a handbook's,
// and mostly low, so that water settles a little too soon; air lets it rise 0.4 %
// over that of vapour alone (from memory), the same side.
//
// Source: Magnus formula with the coefficients of Sonntag 1990, recommended by
// the World Meteorological Organization 2008 p. 1.4-29, as quoted in the manual of
// a library of ecology (read).
func SaturationPressure(temperature unit.Temperature) (unit.AbsolutePressure, error) {
	return overWater().saturation(temperature)
}

// FrostPressure returns the most pressure that water vapour has over ice:
//
//	p = 611.2 Pa · exp[22.46·t/(272.62 °C + t)]
//
// t in °C. Valid from −65 to 0 °C, else *[propane.RangeError]. Error size: within
// 0.1 % of ASHRAE's table at −20 and −5 °C, up to 0.8 % below a handbook's, which is
// rounded as much.
//
// Source: as [SaturationPressure]; the two coefficients from memory, proved by the
// published rows in the tests.
func FrostPressure(temperature unit.Temperature) (unit.AbsolutePressure, error) {
	return overIce().saturation(temperature)
}

// DewPoint returns the temperature, in K, on whose surfaces water of the vapour
// pressure p in Pa begins to settle as dew, the inverse of [SaturationPressure]:
//
//	t = 243.12 °C · L/(17.62 − L),  L = ln(p/611.2 Pa)
//
// Valid for the pressures of −45 to +60 °C, else *[propane.RangeError]. Error
// size: high by up to 0.1 K against ASHRAE's table and a handbook's from 0 to 50 °C, the
// damp side.
//
// Source: as [SaturationPressure].
func DewPoint(p unit.AbsolutePressure) (unit.Temperature, error) { return overWater().point(p) }

// FrostPoint returns the temperature, in K, on whose surfaces hoar begins to
// settle, the inverse of [FrostPressure]. Below freezing it lies over the dew point
// by about a tenth of the degrees under zero: frost comes first.
//
// Valid for the pressures of −65 to 0 °C, else *[propane.RangeError].
//
// Source: as [FrostPressure].
func FrostPoint(p unit.AbsolutePressure) (unit.Temperature, error) { return overIce().point(p) }

// VapourPressure returns the pressure of the water vapour, in Pa, in air of a
// pressure p in Pa absolute: its share times p.
//
// Source: Dalton's law.
func VapourPressure(a Air, p unit.AbsolutePressure) (unit.AbsolutePressure, error) {
	if err := firstOf(a.valid("in the air"), validPressure(p)); err != nil {
		return 0, err
	}
	return unit.AbsolutePressure(float64(a.Water) * float64(p)), nil
}

// Surface is what stands between inside and outside: the coldest place of the
// shell decides where water settles.
type Surface struct {
	U    unit.HeatTransfer // through all of it, W/(m² K)
	Film unit.HeatTransfer // from the air to its inner face, W/(m² K), at least U
}

// SingleGlazing returns a pane of glass: U of 6 W/(m² K), and 1/0.13 m² K/W inside.
// A bare metal wall is as cold or colder.
//
// Error size: a published chart has such a pane sweat 1.2 K warmer outside than
// these two say at 18.3 °C and 50 %: they err to the dry side. In a corner, behind a
// curtain or on a frame it is colder still.
//
// Source: U: engineering page on condensation on windows,
// engineeringtoolbox.com/condensation-glass-surfaces-d_1580.html (read); film:
// EN ISO 6946 figure as a maker of elements states it,
// www.lignatur.ch/en/product/heat-insulation/thermal-transmittance (read).
func SingleGlazing() Surface { return Surface{U: 6, Film: 1 / 0.13} }

// Temperature returns the temperature of the inner face, in K:
//
//	T_s = T_in − U/h·(T_in − T_out)
//
// Valid for U above 0 and not over the film h, both up to 100 W/(m² K), and from
// −50 to +70 °C, else *[propane.RangeError]. Error size: that of U and h, some
// tenths of the difference.
//
// Source: steady conduction through layers.
func (s Surface) Temperature(inside, outside unit.Temperature) (unit.Temperature, error) {
	U, h := float64(s.U), float64(s.Film)
	err := firstOf(
		propane.Within("heat transfer to the inner face", h, 1e-3, 100, "W/(m² K)"),
		propane.Within("heat transfer through the shell", U, 1e-6, h, "W/(m² K)"),
		propane.Within("temperature inside", float64(inside), 223.15, 343.15, "K"),
		propane.Within("temperature outside", float64(outside), 223.15, 343.15, "K"),
	)
	if err != nil {
		return 0, err
	}
	T := float64(inside)
	return unit.Temperature(T - U/h*(T-float64(outside))), nil
}

// Settling is where the water of a room goes.
type Settling struct {
	Point   unit.Temperature           // dew point, below freezing frost point, K
	Surface unit.Temperature           // of the inner face, K
	Margin  unit.TemperatureDifference // by which the face is warmer; below 0 water settles
}

// Settle tells whether water settles on a surface of a room with the given air:
// it does where the face is no warmer than the dew point, or below freezing the
// frost point. A dew point over the room's own temperature means fog and water
// everywhere: the balance takes nothing off for what has settled.
//
// Valid for vapour pressures of −65 to +60 °C and as [Surface.Temperature], else
// *[propane.RangeError]. Error size: that of the surface, kelvins; of the water,
// high, since walls and cloth take some up.
//
// Source: [DewPoint], [FrostPoint], [Surface.Temperature].
func Settle(r Room, a Air, s Surface) (Settling, error) {
	p, err := VapourPressure(a, r.Pressure)
	if err != nil {
		return Settling{}, err
	}
	face, err := s.Temperature(r.Inside, r.Outside)
	if err != nil {
		return Settling{}, err
	}
	point := DewPoint
	if float64(p) < triplePressure {
		point = FrostPoint
	}
	at, err := point(p)
	if err != nil {
		return Settling{}, err
	}
	return Settling{Point: at, Surface: face, Margin: unit.TemperatureDifference(float64(face) - float64(at))}, nil
}

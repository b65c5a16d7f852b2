// Package cylinder computes how full a propane cylinder is, how fast it can make
// gas, and how long it feeds a pattern of use.
//
// How full: the mass that a filling density allows, the share of its volume that
// the liquid takes up, and the temperature at which the liquid leaves no room.
//
// A filling limit by mass and a stop at 80 % by gauge are two limits, not one.
// 42 % by mass is 80 % full at about 2.5 °C and 90 % full at 41 °C; 80 % by
// gauge at −20 °C is 44.3 % by mass. A liquid-full cylinder has no vapour to
// cushion it: each further kelvin raises its pressure by several bar (from
// memory) until the relief valve opens. So the mass judges, and the liquid-full
// temperature is held against the hottest place.
package cylinder

import (
	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

// waterDensity is the density of the water, in kg/m³, by which a water capacity
// stands for a volume: water at 60 °F, the figure that unit.WaterMass uses.
const waterDensity = 999.0

// What a cylinder can hold, in kg: far outside any real one to either side, so
// that only a figure that is no figure is refused.
const (
	least = 1e-3
	most  = 1e6
)

// The formulas as texts, symbols in SI units: m_water the water capacity in kg,
// F the filling density (0.42 for 42 %), m a mass of propane in kg, V a volume
// in m³, rho_liquid the density of the liquid in kg/m³.
const (
	FillFormula        = "m_max = F * m_water"
	VolumeFormula      = "V = m_water / 999"
	FilledShareFormula = "x = m / (rho_liquid * (m_water / 999))"
	LiquidFullFormula  = "rho_liquid = m / (m_water / 999)"
)

// LegalFill returns the greatest mass of propane that a filling density allows:
//
//	m_max = F · m_water
//
// m in kg, F the filling density as a ratio, m_water the water capacity in kg.
// Valid for any stamped water capacity. It is the definition and has no error
// of its own; a capacity taken from a nominal name instead of the stamp can be
// 5 % out to either side.
//
// Source: 49 CFR 173.304a(d)(1), "filling density": percent ratio of the weight
// of gas to the weight of water that the cylinder holds. F itself is a limit of
// a code and comes from there.
func LegalFill(waterCapacity unit.WaterMass, fillingDensity unit.Ratio) unit.PropaneMass {
	F, water := float64(fillingDensity), float64(waterCapacity)
	return unit.PropaneMass(F * water)
}

// Volume returns the inside volume of a cylinder from its water capacity:
//
//	V = m_water / ρ_water,  ρ_water = 999 kg/m³
//
// V in m³, m_water in kg. Error size: 0.1 % (a stamp that meant 1 kg to the
// litre gives a volume 0.1 % smaller, a share 0.1 % greater); the stretch of
// the steel with heat and pressure, up to 0.3 % at 60 °C, is left out, which
// calls the cylinder smaller than it is: the cautious side.
//
// Source: definition of water capacity; density of water at 60 °F, 999.0 kg/m³
// (Kell's equation gives 999.1 at 15 °C; from memory).
func Volume(waterCapacity unit.WaterMass) unit.Volume {
	return unit.Volume(float64(waterCapacity) / waterDensity)
}

// FilledShare returns the share of the cylinder's volume that the propane takes
// up if all of it is liquid at the given temperature:
//
//	x = m / (ρ′(T) · V)
//
// x a ratio, m in kg, ρ′ the density of saturated liquid in kg/m³, V in m³. A
// share over 1 says that it does not fit. Valid from −45 to +70 °C, for a mass
// of 0 or more and a water capacity above 0, else [*propane.RangeError].
//
// Error size: the vapour above the liquid is counted as liquid, which overstates
// the share: by less than 0.008 for a legal fill, by up to 0.06 in a nearly
// empty cylinder at 40 °C. That is the cautious side for a fill, and the
// convention of the trade's figures (80 % at 2.5 °C, 82.9 % at 60 °F). The
// density's own error is within 0.2 %, low in share when hot. The level in a
// cylinder of a quarter or less is better told by weighing.
//
// Source: definition; [propane.LiquidDensity].
func FilledShare(m unit.PropaneMass, waterCapacity unit.WaterMass, temperature unit.Temperature) (unit.Ratio, error) {
	density, err := propane.LiquidDensity(temperature)
	if err != nil {
		return 0, err
	}
	perVolume, err := massPerVolume(m, waterCapacity)
	if err != nil {
		return 0, err
	}
	return unit.Ratio(perVolume / float64(density)), nil
}

// LiquidFullTemperature returns the temperature at which the propane, warmed in
// the closed cylinder, has grown to fill it: where
//
//	ρ′(T) = m / V
//
// T in K, ρ′ the density of saturated liquid in kg/m³, m in kg, V in m³.
//
// Valid for m/V from 404.4 to 583.9 kg/m³, that is for fills of 40.5 to 58.4 %
// by mass, which turn liquid-full between +70 and −45 °C. Otherwise
// [*propane.RangeError]: when its Value is below its Low the cylinder still has
// room at +70 °C, when above its High it is full already at −45 °C. A mass below
// 0 and a water capacity not above 0 are refused in the same way.
//
// Error size: the density errs high when hot, by 0.18 % at 60 °C, which puts
// the temperature up to 0.4 K too high; counting the steel as stiff and cold
// puts it up to 0.5 K too low. The two nearly cancel: within 0.5 K to either
// side for pure propane in steel. Lighter hydrocarbons bring the true
// temperature down, and it is met sooner: so the figure may err high, and a
// fill is never judged by it alone.
//
// Source: definition; [propane.LiquidTemperature].
func LiquidFullTemperature(m unit.PropaneMass, waterCapacity unit.WaterMass) (unit.Temperature, error) {
	perVolume, err := massPerVolume(m, waterCapacity)
	if err != nil {
		return 0, err
	}
	return propane.LiquidTemperature(unit.Density(perVolume))
}

// massPerVolume is m/V in kg/m³, or the reason why there is none.
func massPerVolume(m unit.PropaneMass, waterCapacity unit.WaterMass) (float64, error) {
	mass, water := float64(m), float64(waterCapacity)
	if !(mass >= 0 && mass <= most) {
		return 0, &propane.RangeError{Quantity: "mass of propane", Value: mass, Low: 0, High: most, Unit: "kg"}
	}
	if !(water >= least && water <= most) {
		return 0, &propane.RangeError{Quantity: "water capacity", Value: water, Low: least, High: most, Unit: "kg"}
	}
	return mass / float64(Volume(waterCapacity)), nil
}

// Package air holds what the other physics packages need to know of the air
// around a dwelling: its pressure at a height above the sea, its density and its
// viscosity.
//
// It is dry air of a standard atmosphere. Left out are the weather, which moves
// the pressure at one place by 3 to 5 % to either side over a year (from memory),
// and the water vapour, which makes warm air up to 3 % lighter than is said here.
// Both matter less than the height itself, which is why height is asked for and
// the barometer is not.
package air

import (
	"fmt"
	"math"

	"lowvent.example/schema/unit"
)

// The constants of the standard atmosphere, and the range in which this package
// answers.
const (
	gravity       = 9.80665   // m/s²
	molarMass     = 0.0289644 // kg/mol, dry air
	gasConstant   = 8.31432   // J/(mol K), as the standard has it
	lapse         = 0.0065    // K/m
	seaLevel      = 288.15    // K
	exponent      = gravity * molarMass / (gasConstant * lapse)
	lowest        = -430.0 // m, the shore of the Dead Sea
	highest       = 5000.0 // m
	leastPressure = 40e3   // Pa
	mostPressure  = 120e3  // Pa
	coldest       = 223.15 // K
	hottest       = 343.15 // K
)

// StandardPressure is the pressure of the standard atmosphere at the level of the
// sea, in Pa.
//
// Source: U.S. Standard Atmosphere 1976; ICAO Doc 7488.
const StandardPressure unit.AbsolutePressure = 101325

// The formulas as texts: h the height above the sea in m, p in Pa absolute, T in
// K, rho in kg/m³, mu in Pa s.
const (
	PressureFormula  = "p = pow(1 - 0.0065*h/288.15, 9.80665*0.0289644/(8.31432*0.0065)) * 101325"
	DensityFormula   = "rho = p * 0.0289644 / (8.31432*T)"
	ViscosityFormula = "mu = 1.458e-6 * pow(T, 1.5) / (T + 110.4)"
)

// RangeError says that a formula of this package was asked outside the range in
// which it is valid. Nothing is extrapolated.
type RangeError struct {
	Quantity         string  // what was out of range, such as "height above the sea"
	Value, Low, High float64 // in the SI unit named by Unit
	Unit             string
}

// Error tells the value and the range.
func (e *RangeError) Error() string {
	return fmt.Sprintf("%s of %.6g %s lies outside the range %.6g to %.6g %s in which the formula is valid",
		e.Quantity, e.Value, e.Unit, e.Low, e.High, e.Unit)
}

// Pressure returns the pressure of the air at a height above the sea:
//
//	p = 101 325 Pa · (1 − L·h/T₀)^(g·M/(R·L))
//
// p in Pa absolute, h in m, T₀ = 288.15 K, L = 0.0065 K/m, g = 9.80665 m/s²,
// M = 0.0289644 kg/mol, R = 8.31432 J/(mol K). Valid from −430 m, the shore of
// the Dead Sea, to 5000 m, else *[RangeError].
//
// Error size: as the standard itself, within 0.1 % (height on a map is taken for
// geopotential height); the weather moves the true pressure by 3 to 5 % to either
// side (from memory). A gauge pressure worked out from it moves the other way by
// as much, 3 to 5 kPa.
//
// Source: U.S. Standard Atmosphere 1976, the layer up to 11 km.
func Pressure(elevation unit.Length) (unit.AbsolutePressure, error) {
	h := float64(elevation)
	if err := within("height above the sea", h, lowest, highest, "m"); err != nil {
		return 0, err
	}
	return unit.AbsolutePressure(float64(StandardPressure) * math.Pow(1-lapse*h/seaLevel, exponent)), nil
}

// Density returns the density of dry air:
//
//	ρ = p·M / (R·T)
//
// ρ in kg/m³, p in Pa absolute, T in K, M = 0.0289644 kg/mol,
// R = 8.31432 J/(mol K). Valid for 40 to 120 kPa and −50 to +70 °C, else
// *[RangeError].
//
// Error size: 0.1 % for dry air. Damp air is lighter: by 0.6 % at 15 °C, 3 % at
// 41 °C, when saturated. So the figure errs high, which makes propane seem to
// sink a little less than it does in damp air.
//
// Source: ideal gas law; constants of the U.S. Standard Atmosphere 1976.
func Density(p unit.AbsolutePressure, temperature unit.Temperature) (unit.Density, error) {
	pressure, T := float64(p), float64(temperature)
	if err := within("pressure of the air", pressure, leastPressure, mostPressure, "Pa"); err != nil {
		return 0, err
	}
	if err := within("temperature of the air", T, coldest, hottest, "K"); err != nil {
		return 0, err
	}
	return unit.Density(pressure * molarMass / (gasConstant * T)), nil
}

// Viscosity returns the dynamic viscosity of air:
//
//	μ = 1.458e-6 · T^1.5 / (T + 110.4 K)
//
// μ in Pa s, T in K. It does not depend on the pressure here. Valid from −50 to
// +70 °C, else *[RangeError]. Error size: 1 % to either side (from memory).
//
// Source: Sutherland's law with the constants of the U.S. Standard Atmosphere
// 1976 (from memory).
func Viscosity(temperature unit.Temperature) (unit.Viscosity, error) {
	T := float64(temperature)
	if err := within("temperature of the air", T, coldest, hottest, "K"); err != nil {
		return 0, err
	}
	return unit.Viscosity(1.458e-6 * math.Pow(T, 1.5) / (T + 110.4)), nil
}

// within reports a RangeError unless low ≤ value ≤ high; a value that is not a
// number is never within.
func within(quantity string, value, low, high float64, unit string) error {
	if value >= low && value <= high {
		return nil
	}
	return &RangeError{Quantity: quantity, Value: value, Low: low, High: high, Unit: unit}
}

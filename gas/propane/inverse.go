package propane

import (
	"lowvent.example/gas/solve"
	"lowvent.example/schema/unit"
)

// SaturationTemperature returns the temperature at which propane has the
// saturation pressure p: the inverse of [SaturationPressure], in K for p in Pa
// absolute. The sustained draw of a cylinder ends where this meets the least
// inlet pressure of its regulator.
//
// Valid for the pressures from −45 °C (89.06 kPa) to +70 °C (2.587 MPa), else
// *[RangeError].
//
// Error size: that of the pressure, below 0.01 K, plus 1e-6 K of the search.
// For commercial propane under a hot limit it errs high: the limit is reached
// at a lower temperature.
//
// Source: as [SaturationPressure], inverted with [solve.Root].
func SaturationTemperature(p unit.AbsolutePressure) (unit.Temperature, error) {
	low, high := float64(LeastTemperature), float64(GreatestTemperature)
	target := float64(p)
	err := Within("pressure", target, saturationPressure(low), saturationPressure(high), "Pa")
	if err != nil {
		return 0, err
	}
	T, err := solve.Root(func(T float64) float64 { return saturationPressure(T) - target }, low, high, 1e-6)
	return unit.Temperature(T), err
}

// LiquidTemperature returns the temperature at which liquid propane, in balance
// with its vapour, has the given density: the inverse of [LiquidDensity], in K
// for ρ′ in kg/m³.
//
// Valid for the densities from +70 °C (404.4 kg/m³) to −45 °C (583.9 kg/m³),
// else *[RangeError].
//
// Error size: that of the density, up to 0.4 K too high at 60 °C, plus 1e-6 K
// of the search.
//
// Source: as [SaturationPressure], inverted with [solve.Root].
func LiquidTemperature(density unit.Density) (unit.Temperature, error) {
	low, high := float64(LeastTemperature), float64(GreatestTemperature)
	target := float64(density)
	err := Within("liquid density", target, liquidDensity(high), liquidDensity(low), "kg/m³")
	if err != nil {
		return 0, err
	}
	T, err := solve.Root(func(T float64) float64 { return liquidDensity(T) - target }, low, high, 1e-6)
	return unit.Temperature(T), err
}

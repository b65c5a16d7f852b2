package leak

import (
	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

// valid reports what is wrong with an opening or with the air outside it.
func valid(opening unit.Area, coefficient unit.Ratio, air unit.AbsolutePressure) error {
	if err := propane.Within("area of the opening", float64(opening), leastArea, mostArea, "m²"); err != nil {
		return err
	}
	if err := propane.Above("discharge coefficient", float64(coefficient), 0, 1, "1"); err != nil {
		return err
	}
	return propane.Within("pressure of the air", float64(air), leastPressure, mostPressure, "Pa")
}

// valid reports what is wrong with a gas.
func (g Gas) valid() error {
	if err := propane.Above("pressure of the gas", float64(g.Pressure), 0, mostGauge+mostPressure, "Pa"); err != nil {
		return err
	}
	if err := propane.Within("density of the gas", float64(g.Density), leastGasLeft, mostGasDensity, "kg/m³"); err != nil {
		return err
	}
	return propane.Within("ratio of heat capacities", float64(g.Ratio), leastExponent, mostExponent, "1")
}

package leak

import (
	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

// within reports a propane.RangeError unless low ≤ value ≤ high; a value that is
// not a number is never within.
func within(quantity string, value, low, high float64, unit string) error {
	if value >= low && value <= high {
		return nil
	}
	return &propane.RangeError{Quantity: quantity, Value: value, Low: low, High: high, Unit: unit}
}

// above is within for a range that does not hold its lower end.
func above(quantity string, value, low, high float64, unit string) error {
	if value > low && value <= high {
		return nil
	}
	return &propane.RangeError{Quantity: quantity, Value: value, Low: low, High: high, Unit: unit}
}

// valid reports what is wrong with an opening or with the air outside it.
func valid(opening unit.Area, coefficient unit.Ratio, air unit.AbsolutePressure) error {
	if err := within("area of the opening", float64(opening), leastArea, mostArea, "m²"); err != nil {
		return err
	}
	if err := above("discharge coefficient", float64(coefficient), 0, 1, "1"); err != nil {
		return err
	}
	return within("pressure of the air", float64(air), leastPressure, mostPressure, "Pa")
}

// valid reports what is wrong with a gas.
func (g Gas) valid() error {
	if err := above("pressure of the gas", float64(g.Pressure), 0, mostGauge+mostPressure, "Pa"); err != nil {
		return err
	}
	if err := within("density of the gas", float64(g.Density), leastGasLeft, mostGasDensity, "kg/m³"); err != nil {
		return err
	}
	return within("ratio of heat capacities", float64(g.Ratio), leastExponent, mostExponent, "1")
}

package propane

import "fmt"

// RangeError says that a formula was asked outside the range for which it is
// valid. Nothing is extrapolated: outside the range the answer is not known.
type RangeError struct {
	Quantity         string  // what was out of range, such as "temperature"
	Value, Low, High float64 // in the SI unit named by Unit
	Unit             string
}

// Error tells the value and the range.
func (e *RangeError) Error() string {
	return fmt.Sprintf("%s of %.6g %s lies outside the range %.6g to %.6g %s in which the formula is valid",
		e.Quantity, e.Value, e.Unit, e.Low, e.High, e.Unit)
}

// Within reports a *[RangeError] unless low ≤ value ≤ high; a value that is not a number
// is never within. The numbers are in the SI unit that is named.
func Within(quantity string, value, low, high float64, unit string) error {
	if value >= low && value <= high {
		return nil
	}
	return &RangeError{Quantity: quantity, Value: value, Low: low, High: high, Unit: unit}
}

// Above is [Within] for a range that does not hold its lower end.
func Above(quantity string, value, low, high float64, unit string) error {
	if value > low && value <= high {
		return nil
	}
	return &RangeError{Quantity: quantity, Value: value, Low: low, High: high, Unit: unit}
}

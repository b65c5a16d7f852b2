package flow

import "lowvent.example/gas/propane"

// The ranges in which this package answers, in SI units.
const (
	leastArea, mostArea   = 1e-9, 100.0
	mostHeight            = 100.0
	mostWind              = 2000.0
	leastRho, mostRho     = 0.05, 10.0
	leastSwell, mostSwell = 0.2, 5.0
	mostSource            = 100.0
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

// first returns the first of several findings that is one.
func first(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

func (o Opening) valid() error {
	if o.Area != 0 {
		if err := within("free area of an opening", float64(o.Area), leastArea, mostArea, "m²"); err != nil {
			return err
		}
	}
	return first(
		above("discharge coefficient", float64(o.Coefficient), 0, 1, "1"),
		within("height of an opening", float64(o.Middle), -mostHeight, mostHeight, "m"),
		within("vertical extent of an opening", float64(o.Extent), 0, mostHeight, "m"),
		within("wind pressure on an opening", float64(o.Wind), -mostWind, mostWind, "Pa"),
		within("length of a drain pipe", float64(o.PipeLength), 0, mostHeight, "m"),
		o.validPipe(),
		within("face of an opening", float64(o.Face), float64(Wall), float64(Ceiling), "1"),
	)
}

func (o Opening) validPipe() error {
	if o.PipeLength == 0 {
		return nil
	}
	return within("bore of a drain pipe", float64(o.PipeBore), 1e-4, 10, "m")
}

func (s Sides) valid() error {
	return first(
		within("density inside", float64(s.Inside), leastRho, mostRho, "kg/m³"),
		within("density outside", float64(s.Outside), leastRho, mostRho, "kg/m³"),
		within("expansion of the air that comes in", float64(s.Expansion), leastSwell, mostSwell, "1"),
	)
}

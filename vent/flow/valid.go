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
		if err := propane.Within("free area of an opening", float64(o.Area), leastArea, mostArea, "m²"); err != nil {
			return err
		}
	}
	return first(
		propane.Above("discharge coefficient", float64(o.Coefficient), 0, 1, "1"),
		propane.Within("height of an opening", float64(o.Middle), -mostHeight, mostHeight, "m"),
		propane.Within("vertical extent of an opening", float64(o.Extent), 0, mostHeight, "m"),
		propane.Within("wind pressure on an opening", float64(o.Wind), -mostWind, mostWind, "Pa"),
		propane.Within("length of a drain pipe", float64(o.PipeLength), 0, mostHeight, "m"),
		o.validPipe(),
		propane.Within("face of an opening", float64(o.Face), float64(Wall), float64(Ceiling), "1"),
	)
}

func (o Opening) validPipe() error {
	if o.PipeLength == 0 {
		return nil
	}
	return propane.Within("bore of a drain pipe", float64(o.PipeBore), 1e-4, 10, "m")
}

func (s Sides) valid() error {
	return first(
		propane.Within("density inside", float64(s.Inside), leastRho, mostRho, "kg/m³"),
		propane.Within("density outside", float64(s.Outside), leastRho, mostRho, "kg/m³"),
		propane.Within("expansion of the air that comes in", float64(s.Expansion), leastSwell, mostSwell, "1"),
	)
}

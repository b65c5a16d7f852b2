package pool

import (
	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

// The ranges within which an answer is given, far wider than any dwelling, so that
// only a figure that is no figure is refused.
const (
	mostArea    = 1e5   // m²
	mostVolume  = 1e6   // m³
	mostLength  = 1e3   // m, of a height, a width or a run
	leastFlow   = 1e-12 // m³/s of gas, 4 µL/h
	mostFlow    = 1e3   // m³/s
	leastShare  = 1e-6  // by volume
	mostDensity = 1e2   // kg/m³
	mostMass    = 1e6   // kg
	mostTime    = 1e12  // s
	least       = 1e-9  // of a width, an area or a volume, SI
)

func validArea(a unit.Area) error {
	return propane.Within("floor area", float64(a), least, mostArea, "m²")
}

func validVolume(v unit.Volume) error {
	return propane.Within("volume of the space", float64(v), least, mostVolume, "m³")
}

func validGas(q unit.VolumeFlow) error {
	return propane.Within("flow of gas", float64(q), leastFlow, mostFlow, "m³/s")
}

func validShare(x unit.Ratio) error {
	return propane.Within("share of gas by volume", float64(x), leastShare, 1, "m³/m³")
}

func validHeight(z unit.Length) error {
	return propane.Within("height over the floor", float64(z), 0, mostLength, "m")
}

func validWidth(w unit.Length) error {
	return propane.Within("width", float64(w), least, mostLength, "m")
}

// first returns the first of the errors that is one.
func first(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

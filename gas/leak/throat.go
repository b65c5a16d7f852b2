package leak

import "lowvent.example/schema/unit"

// Throat returns the pressure in the throat of an opening over that inside, as
// [Release] takes it: that of the air, but not below the choked value, and 1 where
// nothing flows. Valid for what [Release] is valid for; outside of that it has no meaning.
//
// Source: as [Release].
func Throat(inside Gas, air unit.AbsolutePressure) unit.Ratio {
	return unit.Ratio(throat(float64(inside.Pressure), float64(air), float64(inside.Ratio)))
}

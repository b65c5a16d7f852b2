package pool

import "lowvent.example/schema/unit"

// LayerFormula is [LayerTime] as a text: t in s, A the floor area in m², z the height
// in m, x the share of gas in the layer by volume, q the flow of gas in m³/s.
const LayerFormula = "t = A * z * x / q"

// LayerTime returns how long a leak of q of gas takes to lie z high over a floor of
// area A, as a layer that holds a share x of gas throughout:
//
//	t = A·z·x / q
//
// t in s, A in m², z in m, q in m³/s. With x the lower flammable limit it is how soon
// a flammable layer can stand at z; with x = 1 how late a layer of pure gas does.
//
// Valid for A up to 1e5 m², z from 0 to 1000 m, x from 1e-6 to 1, q from 1e-12 to
// 1000 m³/s, else [*propane.RangeError].
//
// Error: none of arithmetic. For ignition it errs early in that no gas is lost, late
// where furniture takes up floor (A is the free area below z), where the floor is out
// of level (the low side fills first) and where z lies within the depth of the stream
// that runs along the floor, see [Stream].
//
// Source: balance of volume.
func LayerTime(area unit.Area, height unit.Length, share unit.Ratio, gas unit.VolumeFlow) (unit.Duration, error) {
	err := first(validArea(area), validHeight(height), validShare(share), validGas(gas))
	if err != nil {
		return 0, err
	}
	return unit.Duration(layerTime(float64(area), float64(height), float64(share), float64(gas))), nil
}

func layerTime(area, height, share, gas float64) float64 { return area * height * share / gas }

// Soonest returns how soon gas can be flammable at height z over the floor of one
// room, its doors shut: [LayerTime] at the lower flammable limit. If the leak lies at
// z or above it is at once, since the gas falls past z on its way down and is flammable
// near its stream; whether the stream meets just that place is not known, so that the
// answer errs early.
//
// Valid as [LayerTime], the height of the leak as z, else [*propane.RangeError]. A
// leak below z under pressure is a jet that reaches upward: too late then. Heights
// within the depth of the stream are reached within its run, see [Stream.Reach].
//
// Source: balance of volume.
func Soonest(area unit.Area, leak, height unit.Length, limit unit.Ratio, gas unit.VolumeFlow) (unit.Duration, error) {
	t, err := LayerTime(area, height, limit, gas)
	if err == nil {
		err = validHeight(leak)
	}
	if err != nil || leak >= height {
		return 0, err
	}
	return t, nil
}

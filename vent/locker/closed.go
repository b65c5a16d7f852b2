package locker

import (
	"math"

	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
	"lowvent.example/vent/flow"
)

// The formulas of a mixed box with a constant flow, as texts: V in m³, q and Q in
// m³/s, t in s, shares by volume.
const (
	FillFormula     = "t = V * C / q"
	DilutionFormula = "C = q / Q * (1 - exp(-Q*t/V))"
	PurgeFormula    = "t = V / Q * log(C_start/C_end)"
	RichestFormula  = "C_rich = min(1, C*factor)"
)

// FillTime returns when a leak of q m³/s into a closed volume V has brought in a
// share C of it, mixed: t = V·C/q in s. The layer where it collects is there far
// sooner: this is never a time of warning. Valid for volumes and leaks above 0 and
// shares of 0 to 1, else *[propane.RangeError]. Exact as long as none goes out.
func FillTime(volume unit.Volume, share unit.Ratio, leak unit.VolumeFlow) (unit.Duration, error) {
	if err := validMixed(volume, leak, share); err != nil {
		return 0, err
	}
	return unit.Duration(float64(volume) * float64(share) / float64(leak)), nil
}

// Dilution returns the share of gas in a mixed volume V after t s of a leak q, while
// Q m³/s of mixture leave: q/Q·(1 − exp(−Q·t/V)). Valid for all above 0, t from 0, and
// q not over Q, else *[propane.RangeError]. [Model.After] has it as its limit where
// the flow does not depend on the gas.
//
// Source: balance of volume; US Bureau of Reclamation HVAC guide, p. 106 (read).
func Dilution(volume unit.Volume, leak, through unit.VolumeFlow, time unit.Duration) (unit.Ratio, error) {
	err := first(validMixed(volume, leak, 0), propane.Within("flow through", float64(through), float64(leak), 1e4, "m³/s"), validTime(time))
	if err != nil {
		return 0, err
	}
	q, Q := float64(leak), float64(through)
	return unit.Ratio(-q / Q * math.Expm1(-Q*float64(time)/float64(volume))), nil
}

// PurgeTime returns how long a constant flow of Q m³/s of clean air takes to thin a
// mixed volume V from one share to another: V/Q·ln(C₀/C₁) in s. Valid for all above
// 0, shares up to 1 and the end not above the start, else *[propane.RangeError].
//
// Source: balance of volume; Electrical Installations in Hazardous Areas, ch. 4
// example 6 (read).
func PurgeTime(volume unit.Volume, through unit.VolumeFlow, start, end unit.Ratio) (unit.Duration, error) {
	err := first(validMixed(volume, through, start), propane.Above("share aimed at", float64(end), 0, float64(start), "m³/m³"))
	if err != nil {
		return 0, err
	}
	return unit.Duration(float64(volume) / float64(through) * math.Log(float64(start)/float64(end))), nil
}

func validMixed(volume unit.Volume, through unit.VolumeFlow, share unit.Ratio) error {
	return first(
		propane.Above("volume", float64(volume), 0, 1e6, "m³"),
		propane.Above("flow", float64(through), 0, 1e4, "m³/s"),
		validShare("share", share))
}

// Pool is what lies where no opening reaches.
type Pool struct {
	Depth  unit.Length // behind the sill
	Volume unit.Volume
}

// Trapped returns what a gas that sinks fills for ever below the lowest edge of the
// lowest free opening: depth times floor area. With no free opening it is the whole
// height. A hole in the floor traps nothing. Valid for floor areas above 0 up to
// 1000 m² and heights above 0 up to 100 m, else *[propane.RangeError].
//
// Diffusion empties a pool in days, more slowly the deeper it is; it is not counted.
func Trapped(openings []flow.Opening, floor unit.Area, height unit.Length) (Pool, error) {
	err := first(propane.Above("floor area", float64(floor), 0, 1000, "m²"), propane.Above("height of a locker", float64(height), 0, 100, "m"))
	depth := height
	for _, o := range openings {
		if o.Area > 0 {
			depth = min(depth, o.Bottom())
		}
		err = first(err, propane.Within("height of an opening", float64(o.Bottom()), -100, 100, "m"))
	}
	if err != nil {
		return Pool{}, err
	}
	depth = max(depth, 0)
	return Pool{depth, unit.Volume(float64(depth) * float64(floor))}, nil
}

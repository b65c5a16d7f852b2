package pool

import (
	"math"

	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

// The formulas of a mixed space as texts: V its volume in m³, q the flow of gas and Q
// that of fresh air in m³/s, x the share of gas by volume, x_0 that at the start, t in
// s, f how many times slower than a mixed space it clears.
const (
	ConcentrationFormula = "x = q/(Q + q) * (1 - exp(-(Q + q)*t/V))"
	MixedFormula         = "t = V/(Q + q) * log(q/(q - x*(Q + q)))"
	PurgeFormula         = "t = f * V/Q * log(x_0/x)"
)

// Concentration returns the share of gas in a space that is mixed throughout, t after
// a leak q began, with fresh air Q let in and as much mixture pushed out as comes in:
//
//	x = q/(Q+q) · (1 − e^(−(Q+q)·t/V))
//
// q and Q in m³/s, V in m³, t in s. Without air x = 1 − e^(−q·t/V), about q·t/V as
// long as it is small.
//
// Valid for V up to 1e6 m³, q from 1e-12 and Q from 0 to 1000 m³/s, t from 0 to
// 1e12 s, else [*propane.RangeError].
//
// Error: a real space is layered. Low for a heavy gas near the floor, and nobody knows
// by how much: helium under the ceiling of a box stood at up to 1.4 times the mixed
// figure after an hour, and at far more in the first minutes. High for the mean of that
// box, by 0 to 38 %, since its sensors did not see the richest part. Never a ground to
// call a space free of danger.
//
// Source: balance of volume in one well-mixed zone (textbook, from memory).
func Concentration(volume unit.Volume, gas, air unit.VolumeFlow, after unit.Duration) (unit.Ratio, error) {
	err := first(validMix(volume, gas, air), propane.Within("time", float64(after), 0, mostTime, "s"))
	if err != nil {
		return 0, err
	}
	V, q, Q := float64(volume), float64(gas), float64(air)
	return unit.Ratio(-q / (Q + q) * math.Expm1(-(Q+q)*float64(after)/V)), nil
}

// Mixed returns when a space that is mixed throughout holds a share x of gas:
//
//	t = V/(Q+q) · ln(q/(q − x·(Q+q)))
//
// with the symbols of [Concentration]; V·x/q without air, longer by half of x. It
// never does where q/(Q+q), which it nears, is not above x.
//
// Valid as [Concentration], x from 1e-6 to 1, else [*propane.RangeError].
//
// Error: late for what lies near the floor. Gas is flammable there long before: the
// time between two mixed figures is no time of warning. Early for an alarm that hangs
// high in a space that does not mix.
//
// Source: [Concentration], solved for t.
func Mixed(volume unit.Volume, gas, air unit.VolumeFlow, share unit.Ratio) (Moment, error) {
	if err := first(validMix(volume, gas, air), validShare(share)); err != nil {
		return Moment{}, err
	}
	V, q, Q := float64(volume), float64(gas), float64(air)
	gone := float64(share) * (Q + q) / q
	if !(gone < 1) {
		return Moment{Never: true}, nil
	}
	return Moment{After: unit.Duration(-V / (Q + q) * math.Log1p(-gone))}, nil
}

// Purge returns how long fresh air Q takes to thin a mixed space from a share x₀ of
// gas to x once nothing leaks any more:
//
//	t = f·V/Q · ln(x₀/x)
//
// V in m³, Q in m³/s; f, 1 to 5, says how many times slower than a mixed space this
// one clears: 1 for free flow through the whole of it, 5 for corners that air passes by.
//
// Valid for V up to 1e6 m³, Q from 1e-12 to 1000 m³/s, shares from 1e-6 to 1, f from
// 1 to 5, else [*propane.RangeError]; 0 where x₀ is at or below x.
//
// Error: a layer of heavy gas below the way out, in a sunk bay or behind a sill, does
// not clear in any such time. It may not clear by itself at all.
//
// Source: IEC 60079-10:2002 annex B, persistence time with its factor f (from memory);
// BS EN 60079-10:1996 by a handbook's example, read, with f = 1.
func Purge(volume unit.Volume, air unit.VolumeFlow, from, to unit.Ratio, slower unit.Ratio) (unit.Duration, error) {
	err := first(validVolume(volume), propane.Within("flow of fresh air", float64(air), leastFlow, mostFlow, "m³/s"),
		validShare(from), validShare(to), propane.Within("factor of imperfect mixing", float64(slower), 1, mostSlower, "1"))
	if err != nil {
		return 0, err
	}
	ln := max(0, math.Log(float64(from)/float64(to)))
	return unit.Duration(float64(slower) * float64(volume) / float64(air) * ln), nil
}

// mostSlower is the greatest factor of imperfect mixing that the standard has.
const mostSlower = 5.0

func validMix(volume unit.Volume, gas, air unit.VolumeFlow) error {
	return first(validVolume(volume), validGas(gas), propane.Within("flow of fresh air", float64(air), 0, mostFlow, "m³/s"))
}

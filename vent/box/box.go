// Package box holds the geometry of the dwelling: boxes along three axes,
// measured with a tape, and what can be told about two of them.
//
// # Axes
//
// x runs from front to rear, y from left to right as seen facing the front, z up
// from the floor. All are in metres from one origin that the layout chooses, so
// that any coordinate may be negative. Walls are named as seen facing the front:
// the left wall is the face at the least y, the front wall the face at the least
// x, the floor the face at the least z.
//
// # Tolerances
//
// Each coordinate has a band. A distance, height or size comes back as a band
// that holds every case inside the coordinates' bands, by interval arithmetic:
// whoever needs at least a distance judges by Low, whoever needs at most one by
// High. A question comes back as Yes only if it holds for every case, as No only
// if it holds for none, and as Unsure otherwise. The bands take each coordinate
// by itself: two things measured from one wrong mark look less certain than they
// are, never more.
//
// # Rounding
//
// Distances are rounded to the nearest nanometre. In float64 arithmetic
// 1.6096 − 1 is 0.6095999999999999, a hair under the 24 in that the tape says;
// rounded it is 0.6096 exactly, and a limit of 24 in is met when it is met. No
// tape and no spelling of a length reaches a nanometre.
//
// # What is not known
//
// A coordinate that is not a number may be anywhere within 1000 km, which is
// also where greater ones are put. No result is ever NaN or infinite.
package box

import (
	"fmt"
	"math"
	"strings"

	"lowvent.example/schema/unit"
)

// Point is a place in the dwelling, each coordinate in m with its band.
type Point struct {
	X unit.Value[unit.Length] // from front to rear
	Y unit.Value[unit.Length] // from left to right, seen facing the front
	Z unit.Value[unit.Length] // up from the floor
}

// Box is the space between two opposite corners, sides along the axes. A box
// may be flat, a line or a point: From and To then share coordinates. Every
// function takes the corners in either order; [NewBox] tells when they are
// crossed, which is more often a slip of the pen than an intention.
type Box struct {
	From Point // front, left, lowest
	To   Point // rear, right, highest
}

// At returns the box that is one point.
func At(p Point) Box { return Box{From: p, To: p} }

// axes names the coordinates in the order in which they are stored.
const axes = "xyz"

// CornerError says what is wrong with the corners of a box, axis by axis.
type CornerError struct {
	Inverted  string // the axes along which From lies beyond To, such as "xz"
	Undefined string // the axes with a coordinate that is no place in a dwelling
}

// Error tells the axes and what was expected.
func (e *CornerError) Error() string {
	var faults []string
	if e.Undefined != "" {
		faults = append(faults, fmt.Sprintf("no usable coordinate along %s: expected numbers within 1000 km, low ≤ nominal ≤ high", e.Undefined))
	}
	if e.Inverted != "" {
		faults = append(faults, fmt.Sprintf("corners exchanged along %s: expected From to be the front, left, lowest corner and To the rear, right, highest", e.Inverted))
	}
	return strings.Join(faults, "; ")
}

// NewBox returns the box between two opposite corners, with the coordinates put
// in order along each axis. Along with the box comes a [*CornerError] if the
// nominal corners were exchanged along an axis or if a coordinate is no number
// within 1000 km. Bands that overlap are no fault: a shelf 18 mm thick may be
// measured to a centimetre.
func NewBox(from, to Point) (Box, error) {
	a, b := from.coordinates(), to.coordinates()
	var fault CornerError
	for i, axis := range axes {
		if !usable(*a[i]) || !usable(*b[i]) {
			fault.Undefined += string(axis)
		}
		if a[i].Nominal > b[i].Nominal {
			*a[i], *b[i] = *b[i], *a[i]
			fault.Inverted += string(axis)
		}
	}
	if fault != (CornerError{}) {
		return Box{From: from, To: to}, &fault
	}
	return Box{From: from, To: to}, nil
}

// coordinates gives the three of p to read or write.
func (p *Point) coordinates() [3]*unit.Value[unit.Length] {
	return [3]*unit.Value[unit.Length]{&p.X, &p.Y, &p.Z}
}

// usable tells whether v is an ordered band of numbers within reach.
func usable(v unit.Value[unit.Length]) bool {
	low, high := float64(v.Low), float64(v.High)
	return v.Low <= v.Nominal && v.Nominal <= v.High && low >= -farthest && high <= farthest
}

// farthest bounds every coordinate, in m.
const farthest = 1e6

// band is a number with its bounds, low ≤ nominal ≤ high, all finite.
type band struct{ low, nominal, high float64 }

// bandOf takes a coordinate as it is, or as anywhere within reach when it is not
// a number.
func bandOf(v unit.Value[unit.Length]) band {
	low, nominal, high := float64(v.Low), float64(v.Nominal), float64(v.High)
	if math.IsNaN(low + nominal + high) {
		return band{-farthest, 0, farthest}
	}
	reach := func(x float64) float64 { return max(-farthest, min(x, farthest)) }
	return band{reach(min(low, nominal, high)), reach(nominal), reach(max(low, nominal, high))}
}

// minus is a − b, each end to the nanometre.
func (a band) minus(b band) band {
	return band{snap(a.low - b.high), snap(a.nominal - b.nominal), snap(a.high - b.low)}
}

// least and most work end by end.
func least(a, b band) band {
	return band{min(a.low, b.low), min(a.nominal, b.nominal), min(a.high, b.high)}
}

func most(a, b band) band {
	return band{max(a.low, b.low), max(a.nominal, b.nominal), max(a.high, b.high)}
}

// snap rounds a length to the nearest nanometre; adding 0 turns −0 into 0.
func snap(x float64) float64 { return math.Round(x*1e9)/1e9 + 0 }

// span is the extent of a box along one axis.
type span struct{ from, to band }

// spans gives the extent along x, y and z with the corners in order.
func (b Box) spans() (s [3]span) {
	from, to := b.From.coordinates(), b.To.coordinates()
	for i := range s {
		p, q := bandOf(*from[i]), bandOf(*to[i])
		s[i] = span{least(p, q), most(p, q)}
	}
	return s
}

// length is how long the span is.
func (s span) length() band { return most(s.to.minus(s.from), band{}) }

// apart is the free distance between two spans, 0 when they touch or overlap.
func apart(a, b span) band {
	return most(most(b.from.minus(a.to), a.from.minus(b.to)), band{})
}

// common is the length that two spans share.
func common(a, b span) band { return span{most(a.from, b.from), least(a.to, b.to)}.length() }

// value gives the band as a quantity.
func value[Q unit.Quantity](b band) unit.Value[Q] {
	return unit.Value[Q]{Nominal: Q(b.nominal), Low: Q(b.low), High: Q(b.high)}
}

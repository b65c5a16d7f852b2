// Package solve finds roots of functions of one variable and follows small systems
// of ordinary differential equations. It is pure arithmetic on float64: no quantity
// types, no I/O, no state shared between runs.
package solve

import (
	"fmt"
	"math"
)

// evaluations bounds how often [Root] calls its function: bisection alone
// would need about 60 calls to narrow any bracket by a factor of 1e18, so a
// search that needs more is not converging on a root anyone can use.
const evaluations = 250

// BracketError says that the two ends handed to [Root] do not enclose a root:
// the function has the same sign at both, or an end or a value is not a number.
type BracketError struct {
	A, B   float64 // the ends as they were given
	FA, FB float64 // the values of the function there
}

// Error tells the ends and the values found there.
func (e *BracketError) Error() string {
	return fmt.Sprintf("no root is bracketed: f(%g) = %g and f(%g) = %g; expected finite ends and values of opposite sign", e.A, e.FA, e.B, e.FB)
}

// ConvergenceError says that [Root] stopped before the bracket was as narrow
// as asked, either because it ran out of evaluations or because the function
// stopped being a number inside the bracket.
type ConvergenceError struct {
	X, F float64 // where it stopped and the value there
}

// Error tells where the search stopped.
func (e *ConvergenceError) Error() string {
	return fmt.Sprintf("root search stopped at f(%g) = %g after at most %d evaluations; expected a function that changes sign once and a tolerance it can reach", e.X, e.F, evaluations)
}

// Root returns an x between a and b, given in either order, at which f changes
// sign. The ends must be finite and f must differ in sign there (or be zero at
// one of them).
//
// Method: Brent's combination of bisection, secant and inverse quadratic
// interpolation, which never leaves the bracket.
//
// Error size: a change of sign of f lies within tolerance + 4·2⁻⁵²·|x| of x.
// A negative or undefined tolerance counts as zero.
//
// It fails with [*BracketError] when there is no change of sign to find, and
// with [*ConvergenceError] after 250 evaluations or when f yields NaN inside
// the bracket; the number beside an error has no meaning.
//
// Source: R. P. Brent, Algorithms for Minimization without Derivatives,
// Prentice-Hall 1973, chapter 4 (method recalled from memory and proved here
// by property tests).
func Root(f func(float64) float64, a, b, tolerance float64) (float64, error) {
	s := search{previous: a, fPrevious: f(a), best: b, fBest: f(b), tolerance: max(0, tolerance)}
	if math.IsNaN(tolerance) {
		s.tolerance = 0
	}
	if !s.bracketed() {
		return 0, &BracketError{A: a, B: b, FA: s.fPrevious, FB: s.fBest}
	}
	s.enclose()
	for range evaluations - 2 {
		if s.done() {
			return s.best, nil
		}
		s.advance(f)
		if math.IsNaN(s.fBest) {
			break
		}
		s.order()
	}
	return 0, &ConvergenceError{X: s.best, F: s.fBest}
}

// search is the state of one run: the best point so far, the one before it and
// the opposite end of the bracket, each with its value, and the last two steps.
type search struct {
	best, fBest         float64
	previous, fPrevious float64
	opposite, fOpposite float64
	step, lastStep      float64
	tolerance           float64
}

// bracketed reports whether both ends are finite and the values differ in sign
// or touch zero; every comparison with NaN is false.
func (s *search) bracketed() bool {
	finite := s.best-s.best == 0 && s.previous-s.previous == 0
	return finite && (s.fBest <= 0 && s.fPrevious >= 0 || s.fBest >= 0 && s.fPrevious <= 0)
}

// enclose makes the previous point the opposite end and forgets the steps, as
// after a bisection, then puts the better end first.
func (s *search) enclose() {
	s.opposite, s.fOpposite = s.previous, s.fPrevious
	s.step = s.best - s.previous
	s.lastStep = s.step
	s.swap()
}

// order restores the bracket after a step: best and opposite differ in sign,
// and best is the end nearer to zero in value.
func (s *search) order() {
	if (s.fBest > 0) == (s.fOpposite > 0) && s.fBest != 0 {
		s.enclose()
		return
	}
	s.swap()
}

func (s *search) swap() {
	if math.Abs(s.fOpposite) < math.Abs(s.fBest) {
		s.previous, s.fPrevious = s.best, s.fBest
		s.best, s.opposite = s.opposite, s.best
		s.fBest, s.fOpposite = s.fOpposite, s.fBest
	}
}

// reach is the least step worth taking at the best point.
func (s *search) reach() float64 {
	return 2*0x1p-52*math.Abs(s.best) + s.tolerance/2
}

// half is the signed half width of the bracket, taken end by end so that ends
// near the largest float do not overflow.
func (s *search) half() float64 { return s.opposite/2 - s.best/2 }

func (s *search) done() bool {
	return s.fBest == 0 || math.Abs(s.half()) <= s.reach()
}

// advance takes one step from the best point into the bracket.
func (s *search) advance(f func(float64) float64) {
	half, reach := s.half(), s.reach()
	step, interpolated := s.interpolate(half, reach)
	if !interpolated {
		step, s.lastStep = half, half
	} else {
		s.lastStep = s.step
	}
	s.step = step
	s.previous, s.fPrevious = s.best, s.fBest
	if math.Abs(step) < reach {
		step = math.Copysign(reach, half)
	}
	s.best += step
	s.fBest = f(s.best)
}

// interpolate proposes a step by inverse quadratic (three points) or secant
// (two points) interpolation. It refuses when the step would not stay well
// inside the bracket or would not beat half of the step before last.
func (s *search) interpolate(half, reach float64) (step float64, ok bool) {
	if math.Abs(s.lastStep) < reach || math.Abs(s.fPrevious) <= math.Abs(s.fBest) {
		return 0, false
	}
	p, q := 2*half*(s.fBest/s.fPrevious), 1-s.fBest/s.fPrevious
	if s.previous != s.opposite {
		u, v, w := s.fPrevious/s.fOpposite, s.fBest/s.fOpposite, s.fBest/s.fPrevious
		p = w * (2*half*u*(u-v) - (s.best-s.previous)*(v-1))
		q = (u - 1) * (v - 1) * (w - 1)
	}
	if p > 0 {
		q = -q
	}
	p = math.Abs(p)
	if 2*p < min(3*half*q-math.Abs(reach*q), math.Abs(s.lastStep*q)) {
		return p / q, true
	}
	return 0, false
}

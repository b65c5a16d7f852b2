package solve

import (
	"fmt"
	"math"
)

// Slope writes the derivatives of y at t into slope, which has the length of y.
// It must not change or keep y.
type Slope func(t float64, y, slope []float64)

// Watch looks on while [Integrator.Advance] runs. Either part may be nil.
type Watch struct {
	// Event ends the run where it falls to zero or below.
	Event func(t float64, y []float64) float64
	// Step is called after each accepted step; y must not be changed or kept.
	Step func(t float64, y []float64)
}

// StepError says that [Integrator.Advance] stopped before its end.
type StepError struct {
	T      float64 // where it stopped
	Reason string  // what was found there, and what was expected
}

// Error tells where the integration stopped and why.
func (e *StepError) Error() string {
	return fmt.Sprintf("integration stopped at t = %g: %s", e.T, e.Reason)
}

// Integrator follows a small system of ordinary differential equations with
// steps that it fits to an error tolerance. It holds all the room it needs, so
// that a run of any number of steps allocates nothing. One is for one goroutine;
// it remembers its step from one [Integrator.Advance] to the next.
type Integrator struct {
	relative float64
	absolute []float64
	longest  float64
	most     int

	step           float64 // proposed next
	start, width   float64 // the last step taken
	k              [stages][]float64
	before, after  []float64
	trial, between []float64
}

// NewIntegrator makes an integrator for as many equations as absolute has
// entries. One step may be wrong by absolute[i] + relative·|y[i]| in each
// component, is never longer than longest, and one call of Advance takes at most
// most of them, refused ones counted. All must be above zero and finite;
// relative is at least 1e-14, below which rounding governs. Otherwise it fails
// with [*StepError].
func NewIntegrator(relative float64, absolute []float64, longest float64, most int) (*Integrator, error) {
	n := len(absolute)
	good := n > 0 && most > 0 && positive(longest) && positive(relative) && relative >= 1e-14
	for _, a := range absolute {
		good = good && positive(a)
	}
	if !good {
		return nil, &StepError{Reason: "expected tolerances, a longest step and a number of steps that are finite and above zero, and a relative tolerance of 1e-14 or more"}
	}
	room := make([]float64, n*(stages+5))
	take := func() []float64 {
		part := room[:n:n]
		room = room[n:]
		return part
	}
	in := &Integrator{relative: relative, absolute: take(), longest: longest, most: most, step: longest}
	copy(in.absolute, absolute)
	for i := range in.k {
		in.k[i] = take()
	}
	in.before, in.after, in.trial, in.between = take(), take(), take(), take()
	return in, nil
}

func positive(x float64) bool { return x > 0 && x <= math.MaxFloat64 }

// Advance follows dy/dt = f from t to end, not before t, and leaves the values
// there in y. It returns end, or, stopped, the earliest t found at which
// watch.Event has fallen to zero or below, with y as it is there; an Event that is so
// already at t stops it at once.
//
// Error size: each step within the tolerance, the sum within about the tolerance
// times the number of steps where neighbouring solutions do not run apart. An
// event lies within 1e-12 of the step's length and the error of the fourth-order
// interpolation inside a step; one that comes and goes within one step is missed: the
// longest step is the guard against that.
//
// It fails with [*StepError] when a value or slope is not finite, when the step
// falls below the rounding of t, or when the steps run out; y then has no
// meaning.
//
// Method: explicit Runge–Kutta pair of orders 5 and 4 of J. R. Dormand and
// P. J. Prince, J. Comput. Appl. Math. 6 (1980) 19, interpolation as in Hairer,
// Nørsett and Wanner, Solving Ordinary Differential Equations I, II.6
// (coefficients from memory, proved here by tests of their order).
func (in *Integrator) Advance(f Slope, t, end float64, y []float64, watch Watch) (reached float64, stopped bool, err error) {
	if err := in.begin(f, t, end, y); err != nil {
		return t, false, err
	}
	if watch.Event != nil && watch.Event(t, y) <= 0 {
		return t, true, nil
	}
	for range in.most {
		if t >= end {
			return end, false, nil
		}
		width := min(in.step, in.longest, end-t)
		if t+width == t {
			return t, false, &StepError{T: t, Reason: "the step has shrunk below the rounding of t; expected a system that is smooth between its events"}
		}
		if !in.attempt(f, t, width) {
			continue
		}
		next := t + width
		if width == end-t {
			next = end
		}
		if watch.Event != nil {
			if last := watch.Event(next, in.after); last <= 0 {
				next, err = in.settle(f, watch.Event, last)
				stopped = true
			}
		}
		if err != nil {
			return t, false, err
		}
		t = next
		copy(y, in.after)
		if watch.Step != nil {
			watch.Step(t, y)
		}
		if stopped {
			return t, true, nil
		}
		in.onward()
	}
	if t >= end {
		return end, false, nil
	}
	return t, false, &StepError{T: t, Reason: fmt.Sprintf("%d steps did not reach t = %g; expected a system without fast transients or a wider tolerance", in.most, end)}
}

// begin takes over the start and its slope.
func (in *Integrator) begin(f Slope, t, end float64, y []float64) error {
	if len(y) != len(in.before) {
		return &StepError{T: t, Reason: fmt.Sprintf("%d values for %d equations", len(y), len(in.before))}
	}
	if !(end >= t) || t-t != 0 || end-end != 0 {
		return &StepError{T: t, Reason: fmt.Sprintf("the end is %g; expected finite times, the end not before the start", end)}
	}
	copy(in.before, y)
	f(t, in.before, in.k[0])
	if !finite(in.before) || !finite(in.k[0]) {
		return &StepError{T: t, Reason: "a value or a slope at the start is not finite"}
	}
	return nil
}

// settle finds where in the step just taken the event falls to zero, and takes
// the step anew to there, which is more exact than the interpolation. The event
// is above zero at the start of the step and at last, not above zero, at its end.
func (in *Integrator) settle(f Slope, event func(float64, []float64) float64, last float64) (float64, error) {
	start, width := in.start, in.width
	share, err := Root(func(s float64) float64 {
		if s == 1 {
			return last
		}
		in.Interpolate(start+s*width, in.between)
		return event(start+s*width, in.between)
	}, 0, 1, 1e-12)
	if err != nil {
		return start, &StepError{T: start, Reason: "the event has no place in the step: " + err.Error()}
	}
	at := start + share*width
	in.walk(f, start, share*width)
	f(at, in.after, in.k[stages-1])
	if !finite(in.after) || !finite(in.k[stages-1]) {
		return start, &StepError{T: start, Reason: "a value at the event is not finite"}
	}
	return at, nil
}

func finite(values []float64) bool {
	for _, v := range values {
		if v-v != 0 {
			return false
		}
	}
	return true
}

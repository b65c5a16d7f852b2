package locker

import (
	"math"
	"slices"

	"lowvent.example/gas/propane"
	"lowvent.example/gas/solve"
	"lowvent.example/schema/unit"
	"lowvent.example/vent/flow"
)

// After returns the share of gas, by volume, after a time in s of the leak from a
// share at its start:
//
//	dC/dt = (q − C·V_out(C)) / V
//
// Valid for shares of 0 to 1 and times up to 300 days, else *[propane.RangeError].
//
// Error size: the integration 1e-5, within which of a steady share it counts as
// reached; the model as [Model.Steady].
func (m *Model) After(start unit.Ratio, time unit.Duration) (unit.Ratio, error) {
	if err := first(validShare("share at the start", start), validTime(time)); err != nil {
		return 0, err
	}
	end, err := m.advance(m.open, m.leak, float64(start), float64(time), nowhere)
	return unit.Ratio(end.share), err
}

// Rest returns the share of gas after a time in s without the leak, from a share at
// its stop. Valid and wrong as [Model.After]. Against the helium box an hour later
// it is within 6 % with one vent; with two the box has less: the model is 1.3 to 1.7
// times over it (tests), since the richest gas leaves first. What lies behind a sill
// stays: see [Trapped].
func (m *Model) Rest(start unit.Ratio, time unit.Duration) (unit.Ratio, error) {
	if err := first(validShare("share at the start", start), validTime(time)); err != nil {
		return 0, err
	}
	end, err := m.advance(m.slow, 0, float64(start), float64(time), nowhere)
	return unit.Ratio(end.share), err
}

// Arrival is how long something takes, or that it never comes.
type Arrival struct {
	Time  unit.Duration // meaningless where Never
	Never bool          // not within 30 days
}

// Reaches returns when the leak brings the mixed locker from clean air to a share
// above 0 up to 1, else *[propane.RangeError].
func (m *Model) Reaches(share unit.Ratio) (Arrival, error) {
	if err := propane.Above("share", float64(share), 0, 1, "m³/m³"); err != nil {
		return Arrival{}, err
	}
	return m.until(m.open, m.leak, 0, float64(share))
}

// Clears returns when a mixed locker with a share of gas at the start has thinned
// out to a target by itself, without a leak and in the air that the model has:
// never, if somewhere between the two the exchange would take more than 30 days.
// Valid for a start of 0 to 1 and a target above 0 up to 1, else
// *[propane.RangeError]. What lies behind a sill never clears and is not counted
// here: see [Trapped].
func (m *Model) Clears(start, target unit.Ratio) (Arrival, error) {
	err := first(validShare("share at the start", start), propane.Above("share aimed at", float64(target), 0, 1, "m³/m³"))
	if err != nil || start <= target {
		return Arrival{}, err
	}
	return m.until(m.slow, 0, float64(start), float64(target))
}

func (m *Model) until(openings []flow.Opening, q, start, target float64) (Arrival, error) {
	end, err := m.advance(openings, q, start, forever, target)
	if err != nil || !end.there {
		return Arrival{Never: err == nil}, err
	}
	return Arrival{Time: unit.Duration(end.time)}, nil
}

// nowhere is a share that is never reached.
const nowhere = -1

// halt is where a run stops, and whether its target is there.
type halt struct {
	time, share float64
	there       bool
}

// advance follows the share of gas from the start to the end, to the target, or to
// where it settles, whichever is first.
func (m *Model) advance(openings []flow.Opening, q, start, end, target float64) (halt, error) {
	goal, err := m.goal(openings, q, start)
	if err != nil {
		return halt{}, err
	}
	sign := math.Copysign(1, goal-start)
	stop := goal - sign*(1e-5*goal+1e-9)
	aims := target != nowhere && sign*(stop-target) > 0
	if aims {
		stop = target
	}
	if sign*(stop-start) <= 0 {
		return halt{share: start}, nil
	}
	in, err := solve.NewIntegrator(1e-7, []float64{1e-9}, max(1, end/20), 100000)
	if err != nil {
		return halt{}, err
	}
	y := []float64{start}
	reached, stopped, err := in.Advance(func(_ float64, y, slope []float64) {
		slope[0] = (q - y[0]*m.out(openings, y[0], q)) / m.volume
	}, 0, end, y, solve.Watch{Event: func(_ float64, y []float64) float64 { return sign * (stop - y[0]) }})
	share := stop // a step may land a little beyond it
	if sign*(stop-y[0]) > 0 {
		share = y[0]
	}
	return halt{reached, max(0, min(1, share)), stopped && aims}, err
}

// goal is the share that a run from the start settles at.
func (m *Model) goal(openings []flow.Opening, q, start float64) (float64, error) {
	if q == 0 {
		return m.stalled(0, start)
	}
	low, high := 0.0, start
	rises := q >= start*m.out(openings, start, q)
	if rises {
		low, high = start, 1
	}
	points, err := m.scan(openings, q, low, high)
	if err != nil {
		return 0, err
	}
	if !rises {
		slices.Reverse(points)
	}
	return m.crossing(points)
}

package locker

import (
	"cmp"
	"math"
	"slices"

	"lowvent.example/gas/solve"
	"lowvent.example/schema/unit"
	"lowvent.example/vent/flow"
)

// States are the shares of gas, by volume, that a mixed locker settles at while the
// leak goes on. Where two states are stable, Lean is the one reached from clean air
// and Full the one reached from full of gas; else they are the same.
type States struct {
	Lean, Full unit.Ratio
	Two        bool
}

// Steady returns where the locker settles: the shares C at which as much gas leaves
// as leaks in,
//
//	q = C·V_out(C)
//
// with V_out of [flow.Balance] at the density of the mixture. A leak so strong that
// no air comes in leaves pure gas in the end: C = 1. Two states are stable where the
// locker is warmer than the air (for a gas that sinks; colder for one that rises)
// and the leak is small: warm air rises out of the lean one, heavy gas sinks out of
// the rich one, and between them lies the share at which nothing moves. Wind against
// the gas does the same.
//
// Without a leak Lean is 0 and Full the richest share, if any, at which the exchange
// would take more than 30 days.
//
// Error size: as [flow.Balance]; against the helium box at the end of a leak the
// mean is met within 4 % with one vent, and lies 12 to 52 % below the model with two,
// whose richest place is 0.97 to 1.13 of it (tests).
func (m *Model) Steady() (States, error) {
	openings := m.open
	if m.leak == 0 {
		full, err := m.stalled(0, 1)
		return States{Full: unit.Ratio(full), Two: full > 0}, err
	}
	points, err := m.scan(openings, m.leak, 0, 1)
	if err != nil {
		return States{}, err
	}
	lean, err := m.crossing(points)
	if err != nil {
		return States{}, err
	}
	slices.Reverse(points)
	full, err := m.crossing(points)
	two := math.Abs(full-lean) > 1e-9*full
	return States{unit.Ratio(lean), unit.Ratio(full), two}, err
}

// point is a share and the mixture that leaves at it.
type point struct{ share, out float64 }

// crossing walks along the points and returns where the gain of gas first changes
// its sign, or the end at which it is nothing.
func (m *Model) crossing(points []point) (float64, error) {
	gain := func(p point) float64 { return m.leak - p.share*p.out }
	for i := range points {
		if i > 0 && gain(points[i])*gain(points[i-1]) < 0 {
			return m.root(points[i-1].share, points[i].share)
		}
		if math.Abs(gain(points[i])) <= 1e-9*m.leak {
			return points[i].share, nil
		}
	}
	return points[len(points)-1].share, nil
}

func (m *Model) root(a, b float64) (float64, error) {
	return solve.Root(func(c float64) float64 { return m.leak - c*m.out(m.open, c, m.leak) }, a, b, 1e-13)
}

// scan returns points from low to high, close enough that no valley of the outflow
// is missed: the places where it is least are worked out and put among them.
func (m *Model) scan(openings []flow.Opening, q, low, high float64) ([]point, error) {
	at := func(c float64) point { return point{c, m.out(openings, c, q)} }
	var points []point
	for _, c := range m.shares(low, high) {
		points = append(points, at(c))
	}
	found := points
	for i := 1; i+1 < len(points); i++ {
		if a := points[i].out; a < points[i-1].out && a <= points[i+1].out && a > q+m.volume/forever/100 {
			found = append(found, valley(at, points[i-1].share, points[i+1].share))
		}
	}
	slices.SortFunc(found, func(a, b point) int { return cmp.Compare(a.share, b.share) })
	for _, p := range found {
		if math.IsNaN(p.out) {
			return nil, &solve.ConvergenceError{X: p.share, F: p.out}
		}
	}
	return found, nil
}

// shares are the places that scan begins with.
func (m *Model) shares(low, high float64) []float64 {
	const even, fine = 40, 48
	all := []float64{low, high}
	for i := 1; i < even; i++ {
		all = append(all, low+(high-low)*float64(i)/even)
	}
	for i := range fine { // from a millionth upwards, seven decades
		all = append(all, high*math.Pow(10, -6*float64(i+1)/fine))
	}
	all = append(all, m.balancedShare)
	all = slices.DeleteFunc(all, func(c float64) bool { return !(c >= low && c <= high) })
	slices.Sort(all)
	return slices.Compact(all)
}

// valley finds the least outflow between two shares by thirds.
func valley(at func(float64) point, a, b float64) point {
	for range 60 {
		x, y := a+(b-a)/3, b-(b-a)/3
		if at(x).out < at(y).out {
			b = y
		} else {
			a = x
		}
	}
	return at((a + b) / 2)
}

// stalled returns the richest share from low to high at which, without a leak, the
// exchange takes more than 30 days; 0 if there is none.
func (m *Model) stalled(low, high float64) (float64, error) {
	points, err := m.scan(m.slow, 0, low, high)
	if err != nil {
		return 0, err
	}
	for i := len(points) - 1; i >= 0; i-- {
		if points[i].out*forever < m.volume {
			return points[i].share, nil
		}
	}
	return 0, nil
}

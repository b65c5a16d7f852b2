package locker

import (
	"lowvent.example/gas/propane"
	"lowvent.example/gas/solve"
	"lowvent.example/schema/unit"
)

// Largest is the greatest leak that a locker holds at or under a share.
type Largest struct {
	FromClean unit.MassFlow // that started in clean air
	FromFull  unit.MassFlow // that started full of gas: never more
}

// LargestLeak returns the greatest leak, in kg/s, that keeps the mixed share at or
// under a limit above 0 and below 1, else *[propane.RangeError]. Each share C is
// steady for one leak q(C) = C·V_out(C): from clean air the leak may be as great as
// the highest q up to the limit, from full of gas only as great as the lowest q
// beyond it, which is 0 where the exchange stalls. The leak of the model itself does
// not matter. Error size: as [Model.Steady].
func (m *Model) LargestLeak(limit unit.Ratio) (Largest, error) {
	err := first(propane.Above("limit", float64(limit), 0, 1, "m³/m³"), propane.Within("limit", float64(limit), 0, 0.999999, "m³/m³"))
	if err != nil || !m.free {
		return Largest{}, err
	}
	at := float64(limit)
	most, err := m.extreme(0, at, func(a, b float64) bool { return a > b })
	if err != nil {
		return Largest{}, err
	}
	least, err := m.extreme(at, 1, func(a, b float64) bool { return a < b })
	return Largest{unit.MassFlow(most * m.gas), unit.MassFlow(min(least, most) * m.gas)}, err
}

// extreme is the leak, in m³/s, of the share from low to high that is steady for the
// best one. Which share that is, the flow without a leak tells.
func (m *Model) extreme(low, high float64, better func(a, b float64) bool) (float64, error) {
	points, err := m.scan(m.open, 0, low, high)
	if err != nil {
		return 0, err
	}
	best := points[len(points)-1]
	for _, p := range points {
		if p.share > 0 && better(p.share*p.out, best.share*best.out) {
			best = p
		}
	}
	return m.leakFor(min(best.share, 1-1e-6))
}

// leakFor is the leak, in m³/s, for which a share below 1 is steady.
func (m *Model) leakFor(share float64) (float64, error) {
	surplus := func(q float64) float64 { return q - share*m.out(m.open, share, q) }
	high := 1e-9
	for surplus(high) < 0 && high < 10 {
		high *= 4
	}
	return solve.Root(surplus, 0, high, 1e-9*high)
}

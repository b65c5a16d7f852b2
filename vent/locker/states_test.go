package locker

import (
	"math"
	"testing"

	"lowvent.example/schema/unit"
	"lowvent.example/vent/flow"
	"pgregory.net/rapid"
)

// Theory of thin gas: with k the weight of the gas over air and τ the relative warmth
// inside, two openings give C²·|k·C − τ| = s², s = q/(A*·√(g·H)). Warm air leaves a
// lean state as long as s² is under the peak of its side, 4τ³/(27k²), and a full one
// always: two states are stable then, and one beyond. The model has a wall opening,
// real densities and a leak that takes room, so that the limit itself is met to 10 %.
func TestTwoStatesWhereTheoryHasThem(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		c := van(0)
		for i := range c.Openings {
			c.Openings[i].Extent = 0
		}
		c.Difference = unit.TemperatureDifference(rapid.Float64Range(0.5, 10).Draw(rt, "difference"))
		c.Leak = 1e-9
		m := model(t, c)
		k := m.gas/m.air - 1
		tau := m.outside/m.air - 1
		effective := got[unit.Area](t)(flow.EffectiveArea(40e-4, 40e-4, flow.Coefficient))
		critical := float64(effective) * math.Sqrt(gravity*0.4*4*tau*tau*tau/27) / k // m³/s
		try := func(share float64) States {
			c.Leak = unit.MassFlow(critical * share * m.gas)
			return got[States](t)(model(t, c).Steady())
		}
		inside, outside := try(rapid.Float64Range(0.01, 0.9).Draw(rt, "below")), try(rapid.Float64Range(1.1, 5).Draw(rt, "over"))
		if !inside.Two || float64(inside.Lean) > m.balancedShare || float64(inside.Full) < m.balancedShare {
			rt.Fatalf("below the limit %+v, alike at %g", inside, m.balancedShare)
		}
		if outside.Two {
			rt.Fatalf("beyond the limit %+v", outside)
		}
		s := critical / 2 / (float64(effective) * math.Sqrt(gravity*0.4))
		for _, share := range []float64{float64(try(0.5).Lean), float64(try(0.5).Full)} {
			near(t, "C²|kC − τ|", share*share*math.Abs(k*share-tau), s*s, 0.12)
		}
	})
}

// As the difference goes to nothing the states go to the one of equal warmth.
func TestEqualWarmthIsTheLimit(t *testing.T) {
	c := van(2e-4)
	even := got[States](t)(model(t, c).Steady())
	if even.Two {
		t.Fatalf("two states in equal warmth: %+v", even)
	}
	last := math.Inf(1)
	for _, difference := range []float64{5, 1, 0.1, 0.01, 1e-3} {
		c.Difference = unit.TemperatureDifference(difference)
		off := math.Abs(float64(got[States](t)(model(t, c).Steady()).Full - even.Full))
		if off > last {
			t.Errorf("at %g K the state is %g away, farther than before", difference, off)
		}
		last = off
	}
	if last > 1e-5 {
		t.Errorf("the limit is missed by %g", last)
	}
}

// A locker of propane warmer than the air never clears by itself from full; as warm
// as it or colder it does, in the time that an independent quadrature gives.
func TestClearing(t *testing.T) {
	const target = 0.003
	for _, k := range []struct {
		difference float64
		never      bool
	}{{10, true}, {2, true}, {0, false}, {-2, false}} {
		c := van(0)
		c.Difference = unit.TemperatureDifference(k.difference)
		m := model(t, c)
		a := got[Arrival](t)(m.Clears(1, target))
		if a.Never != k.never {
			t.Errorf("%g K warmer: %+v", k.difference, a)
		}
		if a.Never {
			if share, ok := m.BalancedShare(); !ok || share < target {
				t.Errorf("%g K: alike at %g, %v", k.difference, share, ok)
			}
			continue
		}
		const n = 20000 // midpoints in ln C
		sum, width := 0.0, math.Log(1/target)/n
		for i := range n {
			share := target * math.Exp((float64(i)+0.5)*width)
			out := m.out(m.slow, share, 0)
			sum += m.volume / out * width
		}
		near(t, "time to clear", float64(a.Time), sum, 1e-4)
		near(t, "share then", float64(got[unit.Ratio](t)(m.Rest(1, a.Time))), target, 1e-4)
	}
}

// Wind on the low vent, as strong as the head, stops what would clear through two
// slots; vents with a height of their own still pass both ways, but take longer. Much
// more wind blows the locker out. Helium is stopped by wind on the high vent.
func TestWindStallsClearing(t *testing.T) {
	const limit = 0.00425
	clears := func(gas flow.Gas, extent unit.Length, low, high float64) Arrival {
		c := van(0)
		c.Gas = gas
		m := model(t, c)
		head := got[unit.GaugePressure](t)(flow.Head(unit.Density(m.air+0.02*(m.gas-m.air)), unit.Density(m.air), 0.4))
		for i := range c.Openings {
			c.Openings[i].Extent = extent
		}
		c.Openings[0].Wind = unit.GaugePressure(low * float64(head))
		c.Openings[1].Wind = unit.GaugePressure(high * float64(head))
		return got[Arrival](t)(model(t, c).Clears(1, limit))
	}
	still, stopped, blown := clears(flow.Propane(), 0, 0, 0), clears(flow.Propane(), 0, 1, 0), clears(flow.Propane(), 0, 100, 0)
	if still.Never || !stopped.Never || blown.Never || blown.Time > still.Time {
		t.Errorf("slots: still %+v, stopped %+v, blown out %+v", still, stopped, blown)
	}
	if a, b := clears(flow.Propane(), 0.04, 0, 0), clears(flow.Propane(), 0.04, 1, 0); a.Never || b.Never || b.Time < unit.Duration(1.2*float64(a.Time)) {
		t.Errorf("tall vents: still %+v, in the wind %+v", a, b)
	}
	if a, b := clears(flow.Helium(), 0, 0, 1), clears(flow.Helium(), 0, 0, 0); !a.Never || b.Never {
		t.Errorf("helium: in the wind %+v, still %+v", a, b)
	}
}

// Without an opening the gas only gathers: the share is 1 − exp(−qt/V), and it never
// clears.
func TestSealedLocker(t *testing.T) {
	c := van(1e-4)
	c.Openings = []flow.Opening{c.Openings[0].Blocked(1), c.Openings[1].Blocked(1)}
	m := model(t, c)
	q := float64(m.LeakVolume())
	share := float64(got[unit.Ratio](t)(m.After(0, 600)))
	near(t, "after ten minutes", share, -math.Expm1(-q*600/0.12), 1e-5)
	states := got[States](t)(m.Steady())
	clears := got[Arrival](t)(m.Clears(0.5, 0.01))
	largest := got[Largest](t)(m.LargestLeak(0.01))
	if states.Full != 1 || states.Lean != 1 || !clears.Never || largest != (Largest{}) {
		t.Errorf("%+v %+v %+v", states, clears, largest)
	}
	near(t, "one hundredth", float64(got[Arrival](t)(m.Reaches(0.01)).Time),
		float64(got[unit.Duration](t)(FillTime(0.12, 0.01, m.LeakVolume()))), 0.006)
}

// A leak that lets no air in fills the locker with gas.
func TestFloodedLocker(t *testing.T) {
	c := van(0.1)
	c.Openings = c.Openings[:1]
	states := got[States](t)(model(t, c).Steady())
	if states.Lean < unit.Ratio(1-1e-9) || states.Full < unit.Ratio(1-1e-9) || states.Two {
		t.Errorf("%+v", states)
	}
}

// No leak, no gas.
func TestNoLeak(t *testing.T) {
	m := model(t, van(0))
	if s := got[States](t)(m.Steady()); s != (States{}) {
		t.Errorf("%+v", s)
	}
	if share := got[unit.Ratio](t)(m.After(0, 1e5)); share != 0 {
		t.Errorf("%g of gas out of nothing", share)
	}
	if a := got[Arrival](t)(m.Reaches(0.01)); !a.Never {
		t.Errorf("reached: %+v", a)
	}
	if a := got[Arrival](t)(m.Clears(0.01, 0.01)); a != (Arrival{}) {
		t.Errorf("clear already: %+v", a)
	}
	warm := van(0)
	warm.Difference = 10
	s := got[States](t)(model(t, warm).Steady())
	if share, ok := model(t, warm).BalancedShare(); !ok || !s.Two || math.Abs(float64(s.Full-share)) > 1e-9 {
		t.Errorf("warm and without a leak: %+v, alike at %g", s, share)
	}
	if _, ok := model(t, Conditions{Volume: 1, Gas: flow.Propane(), Outside: 288, Difference: -5, Pressure: sea}).BalancedShare(); ok {
		t.Error("cold propane weighs as much as air")
	}
}

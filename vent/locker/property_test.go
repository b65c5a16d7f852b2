package locker

import (
	"math"
	"testing"

	"lowvent.example/schema/unit"
	"lowvent.example/vent/flow"
	"pgregory.net/rapid"
)

// drawn is a locker of propane for properties.
func drawn(rt *rapid.T) Conditions {
	c := Conditions{
		Volume: unit.Volume(rapid.Float64Range(0.03, 2).Draw(rt, "volume")), Gas: flow.Propane(),
		Leak:    unit.MassFlow(rapid.SampledFrom([]float64{1e-6, 1e-5, 1e-4, 5e-4, 2e-3}).Draw(rt, "leak")),
		Outside: unit.Temperature(rapid.Float64Range(263, 305).Draw(rt, "outside")), Pressure: sea,
	}
	for range rapid.IntRange(1, 3).Draw(rt, "openings") {
		c.Openings = append(c.Openings, flow.Opening{
			Area:        unit.Area(rapid.Float64Range(1e-4, 0.02).Draw(rt, "area")),
			Coefficient: flow.Coefficient,
			Middle:      unit.Length(rapid.Float64Range(0.02, 0.6).Draw(rt, "middle")),
			Extent:      unit.Length(rapid.Float64Range(0.01, 0.05).Draw(rt, "extent")),
		})
	}
	return c
}

func drawDifference(rt *rapid.T) unit.TemperatureDifference {
	return unit.TemperatureDifference(rapid.SampledFrom([]float64{0, -2, 3, 10}).Draw(rt, "difference"))
}

// What came in is inside or has gone out: an independent integral in many small
// steps of the classical fourth order gives the same share and the same mass.
func TestGasIsConserved(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		c := drawn(rt)
		c.Difference = drawDifference(rt)
		m := model(t, c)
		const steps = 3000
		time := float64(m.volume) / m.leak * rapid.Float64Range(0.05, 0.6).Draw(rt, "time")
		share := float64(got[unit.Ratio](t)(m.After(0, unit.Duration(time))))
		slope := func(y float64) (float64, float64) {
			out := m.out(m.open, y, m.leak)
			return (m.leak - y*out) / m.volume, y * out
		}
		y, gone, dt := 0.0, 0.0, time/steps
		for range steps {
			k1, g1 := slope(y)
			k2, g2 := slope(y + k1*dt/2)
			k3, g3 := slope(y + k2*dt/2)
			k4, g4 := slope(y + k3*dt)
			y += dt * (k1 + 2*k2 + 2*k3 + k4) / 6
			gone += dt * (g1 + 2*g2 + 2*g3 + g4) / 6
		}
		if math.Abs(y-share) > 1e-4*(y+0.001) {
			rt.Fatalf("share %.8g, independently %.8g", share, y)
		}
		in := m.leak * time
		if off := share*m.volume + gone - in; math.Abs(off) > 2e-4*in {
			rt.Fatalf("of %g m³ that came in %g are missing", in, off)
		}
	})
}

// More vent area, less leak, or a later time of a decay is never worse.
func TestNeverWorse(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		c := drawn(rt)
		c.Difference = drawDifference(rt)
		base := model(t, c)
		states := got[States](t)(base.Steady())
		if states.Lean > states.Full+unit.Ratio(1e-9) || states.Lean < 0 || states.Full > unit.Ratio(1+1e-9) {
			rt.Fatalf("states %+v", states)
		}
		wide := c
		wide.Openings = append([]flow.Opening{}, c.Openings...)
		for i := range wide.Openings {
			wide.Openings[i].Area = unit.Area(1.5 * float64(c.Openings[i].Area))
		}
		small := c
		small.Leak = unit.MassFlow(0.7 * float64(c.Leak))
		const slack = 1 + 3e-5 // thrice the integration
		for name, other := range map[string]Conditions{"wider vents": wide, "a smaller leak": small} {
			better := got[States](t)(model(t, other).Steady())
			if float64(better.Full) > slack*float64(states.Full) || float64(better.Lean) > slack*float64(states.Lean) {
				rt.Fatalf("%s: %+v after %+v", name, better, states)
			}
		}
		last := 1.0
		for _, hours := range []float64{0, 0.01, 0.1, 0.5, 2, 12, 100} {
			share := float64(got[unit.Ratio](t)(base.Rest(1, unit.Duration(3600*hours))))
			if share > last*slack+1e-9 {
				rt.Fatalf("after %g h %g, before %g", hours, share, last)
			}
			last = share
		}
	})
}

// A run that starts between the states goes to one of them; from clean air to the
// lean one, from full to the full one.
func TestRunsSettle(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		c := drawn(rt)
		c.Difference = drawDifference(rt)
		m := model(t, c)
		states := got[States](t)(m.Steady())
		long := unit.Duration(min(200*m.volume/m.leak, 10*forever))
		clean := got[unit.Ratio](t)(m.After(0, long))
		full := got[unit.Ratio](t)(m.After(1, long))
		if math.Abs(float64(clean-states.Lean)) > 1e-4 || math.Abs(float64(full-states.Full)) > 1e-4 {
			rt.Fatalf("states %+v, runs settle at %g from clean air and %g from full", states, clean, full)
		}
	})
}

// The greatest leak held keeps the share, a little more does not.
func TestLargestLeakIsLargest(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		c := drawn(rt)
		c.Difference = drawDifference(rt)
		limit := unit.Ratio(rapid.SampledFrom([]float64{0.004, 0.017, 0.1}).Draw(rt, "limit"))
		largest := got[Largest](t)(model(t, c).LargestLeak(limit))
		if largest.FromFull > largest.FromClean || largest.FromClean < 0 {
			rt.Fatalf("%+v", largest)
		}
		try := func(leak, factor float64) States {
			c.Leak = unit.MassFlow(leak * factor)
			return got[States](t)(model(t, c).Steady())
		}
		clean, full := float64(largest.FromClean), float64(largest.FromFull)
		if clean > 1e-8 && clean < 0.9 {
			if s := try(clean, 0.97); s.Lean > limit {
				rt.Fatalf("%g kg/s held at %g: %+v", clean, limit, s)
			}
			if s := try(clean, 1.03); s.Lean <= limit {
				rt.Fatalf("over %g kg/s still held at %g: %+v", clean, limit, s)
			}
		}
		if full > 1e-8 && full < 0.9 {
			if s := try(full, 0.97); s.Full > limit {
				rt.Fatalf("from full %g kg/s held at %g: %+v", full, limit, s)
			}
		}
		if s := try(max(full, 1e-8), 1.05); s.Full <= limit {
			rt.Fatalf("from full over %g kg/s still held at %g: %+v", full, limit, s)
		}
	})
}

// A box of slightly heavy gas is one of slightly light gas upside down.
func TestMirroredBox(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		const contrast = 0.002
		gas := func(sign float64) flow.Gas {
			return got[flow.Gas](t)(flow.IdealGas("near air", unit.Mass(28.9644e-3*8.314472/8.31432*(1+sign*contrast))))
		}
		heavy := drawn(rt)
		heavy.Gas = gas(1)
		light := heavy
		light.Gas = gas(-1)
		light.Openings = append([]flow.Opening{}, heavy.Openings...)
		for i := range light.Openings {
			light.Openings[i].Middle = -light.Openings[i].Middle
		}
		a, b := model(t, heavy), model(t, light)
		near(t, "steady", float64(got[States](t)(a.Steady()).Full), float64(got[States](t)(b.Steady()).Full), 0.01)
		near(t, "after 1000 s", float64(got[unit.Ratio](t)(a.After(0, 1000))), float64(got[unit.Ratio](t)(b.After(0, 1000))), 0.01)
	})
}

// Length and datum do not matter: the locker in other units, with its heights over
// the ground, is the same locker.
func TestUnitTwins(t *testing.T) {
	parse := func(kind unit.Kind, text string) float64 {
		return got[unit.Reading](t)(unit.ParseKind(kind, text)).Nominal
	}
	c := van(1e-4)
	twin := c
	twin.Volume = unit.Volume(parse(unit.KindVolume, "120 L"))
	twin.Outside = unit.Temperature(parse(unit.KindTemperature, "59 degF"))
	twin.Openings = append([]flow.Opening{}, c.Openings...)
	for i := range twin.Openings {
		twin.Openings[i].Area = unit.Area(parse(unit.KindArea, "4000 mm2"))
		twin.Openings[i].Middle += unit.Length(1.25)
	}
	a, b := got[States](t)(model(t, c).Steady()), got[States](t)(model(t, twin).Steady())
	near(t, "steady", float64(a.Full), float64(b.Full), 1e-6)
	near(t, "after a minute", float64(got[unit.Ratio](t)(model(t, c).After(0, 60))), float64(got[unit.Ratio](t)(model(t, twin).After(0, 60))), 1e-6)
}

package cylinder

import (
	"math"
	"testing"

	"lowvent.example/schema/unit"
	"pgregory.net/rapid"
)

func held(t tester, d Draw) Hold {
	t.Helper()
	h, err := Holds(d)
	if err != nil {
		t.Fatal(err)
	}
	return h
}

func TestHolds(t *testing.T) {
	v := twentyPound()
	base := Draw{From: v, Wall: 5, Air: 268.15, Start: 268.15, Least: 243.15}
	sustained := unit.MassFlow(value[unit.MassFlow](t)(Sustained(v.Vessel, v.Propane, 5, 268.15, 243.15)))
	for _, c := range []struct {
		name     string
		flow     unit.MassFlow
		end      End
		from, to float64 // h
	}{
		{"nothing", 0, Fed, 0, 0},
		{"next to nothing", 0.01 * gram, Fed, 3660 * 24, 3660 * 24},
		{"a pilot", 5 * gram, Emptied, 1770, 1790},
		{"a twentieth of what is sustained", sustained / 20, Emptied, 400, 1000},
		{"what is sustained full", sustained, Chilled, 8, 12},
		{"a third more", sustained * 4 / 3, Chilled, 4, 8},
		{"three times that", sustained * 3, Chilled, 1, 4},
		{"ten times that", sustained * 10, Chilled, 0.3, 1},
	} {
		d := base
		d.Flow = c.flow
		h := held(t, d)
		hours := float64(h.Time) / hour
		if h.End != c.end || hours < c.from || hours > c.to {
			t.Errorf("%s, %.0f g/h: %v after %.2f h", c.name, float64(c.flow/gram), h.End, hours)
		}
		if math.Abs(float64(h.Used+h.Left-v.Propane)) > 1e-9 {
			t.Errorf("%s: %g kg used and %g left", c.name, float64(h.Used), float64(h.Left))
		}
	}
}

// A draw far above what the wall gives is held by liquid and metal alone, by
// hand: both cool by 25 K while each kilogram drawn takes about 394 kJ.
func TestHoldsByItsOwnHeat(t *testing.T) {
	v := twentyPound()
	h := held(t, Draw{From: v, Wall: 0, Air: 268.15, Start: 268.15, Least: 243.15, Flow: 3000 * gram})
	// m·c·dT = −λ·dm with c = 2.39 kJ/(kg K) about −17 °C, metal 3.65 kJ/K, λ = 398 kJ/kg
	drawn, m, metal := 0.0, float64(v.Propane), 18*lb*447
	for range 2500 {
		dm := (m*2.39e3 + metal) * 0.01 / 402e3
		drawn, m = drawn+dm, m-dm
	}
	if math.Abs(float64(h.Used)/drawn-1) > 0.03 {
		t.Errorf("%.3f kg drawn, want %.3f by hand", float64(h.Used), drawn)
	}
	if math.Abs(float64(h.Time)-float64(h.Used)/float64(3000*gram)) > 1e-3 {
		t.Errorf("%g kg in %g s", float64(h.Used), float64(h.Time))
	}
}

// lasting is the time held, for good longer than any. An emptied vessel leaves its
// vapour, the less the colder it is: counted as drawn in what is compared with, so
// that this gain of the cold, a few per cent of a full vessel at most, does not
// stand against the rest.
func (h Hold) lasting(vapour unit.MassFlow) float64 {
	switch {
	case h.End == Fed:
		return math.Inf(1)
	case h.End == Emptied && vapour > 0:
		return float64(h.Used+h.Left) / float64(vapour)
	}
	return float64(h.Time)
}

// Colder air, less propane, a poorer wall, a larger draw, a higher least
// temperature, a colder start: never longer, in air no colder than the start.
// (A vessel put warm into cold air is the exception: what insulates it, keeps it warm.)
func TestHoldsIsMonotone(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		v := anyVessel(rt)
		air := rapid.Float64Range(232, 310).Draw(rt, "air")
		d := Draw{
			From: Filled{v, unit.PropaneMass(rapid.Float64Range(0.005, 0.4).Draw(rt, "share") * float64(v.Water))},
			Wall: unit.HeatTransfer(rapid.Float64Range(0, 20).Draw(rt, "wall")), Air: unit.Temperature(air),
			Start: unit.Temperature(air - rapid.Float64Range(0, 3).Draw(rt, "colder")),
			Least: unit.Temperature(rapid.Float64Range(228.15, 260).Draw(rt, "least")),
			Flow:  unit.MassFlow(rapid.Float64Range(0.01, 3).Draw(rt, "kg/h") / hour),
		}
		base := held(rt, d).lasting(d.Flow) * (1 + 1e-9)
		for name, change := range map[string]func(*Draw){
			"less propane":   func(d *Draw) { d.From.Propane *= 0.9 },
			"poorer wall":    func(d *Draw) { d.Wall *= 0.9 },
			"larger draw":    func(d *Draw) { d.Flow *= 1.1 },
			"higher least":   func(d *Draw) { d.Least += 1 },
			"colder start":   func(d *Draw) { d.Start = max(d.Start-1, 228.15) },
			"colder all":     func(d *Draw) { d.Air, d.Start = d.Air-1, d.Start-1 },
			"less metal":     func(d *Draw) { d.From.Metal *= 0.9 },
			"metal unlisted": func(d *Draw) { d.From.Material = MaterialNotKnown },
		} {
			worse := d
			change(&worse)
			if worse.Start < 228.15 {
				continue
			}
			if got := held(rt, worse).lasting(0); got > base+1e-3 {
				rt.Fatalf("%s: %g s, before %g s", name, got, base)
			}
		}
	})
}

func TestHoldsRefuses(t *testing.T) {
	v, nan, inf := twentyPound(), math.NaN(), math.Inf(1)
	for _, c := range []struct {
		name, quantity string
		change         func(*Draw)
	}{
		{"negative draw", "draw", func(d *Draw) { d.Flow = -1 }},
		{"undefined draw", "draw", func(d *Draw) { d.Flow = unit.MassFlow(nan) }},
		{"endless draw", "draw", func(d *Draw) { d.Flow = unit.MassFlow(inf) }},
		{"undefined wall", "wall coefficient", func(d *Draw) { d.Wall = unit.HeatTransfer(nan) }},
		{"undefined air", "coldest air temperature", func(d *Draw) { d.Air = unit.Temperature(nan) }},
		{"air too cold", "coldest air temperature", func(d *Draw) { d.Air = 220 }},
		{"undefined start", "temperature at the start", func(d *Draw) { d.Start = unit.Temperature(nan) }},
		{"undefined least", "least temperature", func(d *Draw) { d.Least = unit.Temperature(nan) }},
		{"too much propane", "mass of propane", func(d *Draw) { d.From.Propane = 12 }},
		{"undefined propane", "mass of propane", func(d *Draw) { d.From.Propane = unit.PropaneMass(nan) }},
		{"no vessel", "water capacity", func(d *Draw) { d.From = Filled{} }},
	} {
		d := Draw{From: v, Wall: 5, Air: 268.15, Start: 268.15, Least: 243.15, Flow: 100 * gram}
		c.change(&d)
		h, err := Holds(d)
		refused(t, c.name, err, c.quantity)
		if h != (Hold{}) {
			t.Errorf("%s: %+v beside an error", c.name, h)
		}
	}
}

func BenchmarkHolds(b *testing.B) {
	d := Draw{From: twentyPound(), Wall: 5, Air: 268.15, Start: 268.15, Least: 243.15, Flow: 100 * gram}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Holds(d); err != nil {
			b.Fatal(err)
		}
	}
}

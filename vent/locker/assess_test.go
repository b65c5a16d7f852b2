package locker

import (
	"math"
	"testing"

	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
	"lowvent.example/vent/flow"
	"pgregory.net/rapid"
)

// pinhole is a hole of 0.25 mm² on the cylinder's side at 20 °C: a quarter over 0.7854
// of the 5.582 kg/h of a hole of 1 mm across (ventilation_examples.csv, computed).
const pinhole = unit.MassFlow(5.582 / 3600 * 0.25 / 0.7854)

func assess(t testing.TB, c Conditions, blocked unit.Ratio) Assessment {
	t.Helper()
	return got[Assessment](t)(Assess(c, propaneMeasure(), blocked))
}

// Vents alone do not make a leak on the cylinder's side harmless: for a pinhole two
// vents of 40 cm² hold over nine times the lower limit, mixed and as warm inside as
// outside, two of 200 cm² over three times.
func TestVentsAloneDoNotMakeAHighSideLeakHarmless(t *testing.T) {
	for area, times := range map[unit.Area]float64{40e-4: 9, 200e-4: 3} {
		c := van(pinhole)
		for i := range c.Openings {
			c.Openings[i].Area = area
		}
		a := assess(t, c, 0)
		if float64(a.Even.States.Full) < times*0.017 || a.Worst.Percent < a.Even.Percent || a.Even.Percent < unit.Ratio(times) {
			t.Errorf("two vents of %g m²: %+v", area, a)
		}
	}
}

// Stopping up the vents never helps; shut they hold everything.
func TestBlockedVents(t *testing.T) {
	var before Assessment
	for i, blocked := range []unit.Ratio{0, 0.5, 1} {
		a := assess(t, van(pinhole), blocked)
		if a.Blocked != blocked {
			t.Errorf("blocked %g, want %g", a.Blocked, blocked)
		}
		if i > 0 && (a.Worst.Richest < before.Worst.Richest || a.Even.Richest < before.Even.Richest ||
			a.Even.Largest.FromClean > before.Even.Largest.FromClean || a.Flame.Never || float64(a.Flame.Time) > 1.001*float64(before.Flame.Time)) {
			t.Errorf("%g blocked: %+v after %+v", blocked, a, before)
		}
		before = a
	}
	if before.Even.Richest != 1 || !before.Even.FromFull.Never || before.Even.Largest != (Largest{}) || before.Wind != 0 {
		t.Errorf("shut: %+v", before)
	}
}

// The worst of the band: warmer inside, with two states, never clear; nothing is held
// at a quarter of the limit from full.
func TestTheBandFindsTheRichState(t *testing.T) {
	a := assess(t, van(1e-6), 0)
	if a.Worst.Difference != 10 || !a.Two || !a.Worst.FromFull.Never || a.Worst.Largest.FromFull > unit.MassFlow(1e-9) {
		t.Errorf("worst of the band: %+v", a.Worst)
	}
	if a.Even.States.Two || a.Even.FromFull.Never || a.Even.Largest.FromFull != a.Even.Largest.FromClean || a.Even.Difference != 0 {
		t.Errorf("equal warmth: %+v", a.Even)
	}
	near(t, "limit", float64(a.Limit), 0.25*0.017/1.4, 1e-12)
	near(t, "percent", float64(a.Even.Percent), float64(a.Even.States.Full)*1.4/0.017, 1e-9)
}

// At 25 % of the lower limit the head over 0.64 m is about 0.018 Pa, which a breeze of
// 0.17 m/s stops.
func TestTheHeadIsSmall(t *testing.T) {
	c := van(1e-6)
	c.Openings[0].Middle, c.Openings[1].Middle = 0.03, 0.67
	by := propaneMeasure()
	by.Factor = 1
	a := got[Assessment](t)(Assess(c, by, 0))
	near(t, "head in Pa", float64(a.Head), 0.018, 0.08)
	near(t, "wind in m/s", float64(a.Wind), 0.17, 0.04)
	c.Openings = c.Openings[:1]
	a = got[Assessment](t)(Assess(c, by, 0))
	near(t, "head over the height of the only vent", float64(a.Head), 0.018*0.04/0.64, 0.08)
}

// The layers stand in the assessment by both constants, richer than mixed; helium from
// below has them under the ceiling; a leak under the low vent has none.
func TestLayersInTheAssessment(t *testing.T) {
	c := van(1e-5)
	c.Source = 0.4
	a := assess(t, c, 0)
	effective := got[unit.Area](t)(flow.EffectiveArea(40e-4, 40e-4, flow.Coefficient))
	m := model(t, c)
	for i, alpha := range []unit.Ratio{EntrainmentLow, EntrainmentHigh} {
		want := got[Layer](t)(Displacement(effective, 0.35, m.LeakVolume(), unit.Density(m.gas), unit.Density(m.air), alpha))
		near(t, "layer's share", float64(a.Layers[i].Share), float64(want.Share), 1e-9)
		near(t, "clear height", float64(a.Layers[i].Clear), float64(want.Clear), 1e-9)
	}
	if !a.HasLayers || a.Layers[0].Share < a.Even.States.Full {
		t.Errorf("%+v", a)
	}
	c.Source = 0.1
	helium := c
	helium.Gas = flow.Helium()
	if b := assess(t, helium, 0); !b.HasLayers || math.Abs(float64(b.Layers[0].Clear)/0.35-float64(a.Layers[0].Clear)/0.35) > 1e-9 {
		t.Errorf("helium: %+v", b.Layers)
	}
	c.Source = 0.02
	if b := assess(t, c, 0); b.HasLayers || b.Layers != [2]Layer{} {
		t.Errorf("a leak under the low vent: %+v", b.Layers)
	}
}

// The whole assessment is ordered as it must be, whatever the locker.
func TestAssessmentHoldsTogether(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		a := assess(t, drawn(rt), unit.Ratio(rapid.SampledFrom([]float64{0, 0.5, 1}).Draw(rt, "blocked")))
		for _, h := range []Held{a.Even, a.Worst} {
			if h.Richest < h.States.Full || h.Richest > 1 || h.States.Lean > h.States.Full+unit.Ratio(1e-9) {
				rt.Fatalf("%+v", h)
			}
			if h.Emptying.Never && !h.FromFull.Never || h.Emptying.Time > h.FromFull.Time+unit.Duration(1) && !h.FromFull.Never {
				rt.Fatalf("the state clears later than a full locker: %+v", h)
			}
		}
		if a.Worst.Richest < a.Even.Richest || math.IsNaN(float64(a.Wind)) {
			rt.Fatalf("%+v", a)
		}
	})
}

func TestTrapped(t *testing.T) {
	vents := van(0).Openings // edges at 3 and 7 cm, 43 and 47 cm
	floor := flow.Opening{Area: 1e-4, Coefficient: 0.65, Face: flow.Floor, PipeLength: 0.5, PipeBore: 0.02}
	for name, k := range map[string]struct {
		openings []flow.Opening
		depth    float64
	}{
		"two vents": {vents, 0.03},
		"high only": {vents[1:], 0.43},
		"a drain":   {append([]flow.Opening{floor}, vents...), 0},
		"no vent":   {nil, 0.5},
		"shut":      {[]flow.Opening{vents[0].Blocked(1), vents[1]}, 0.43},
		"below":     {[]flow.Opening{{Area: 1e-4, Coefficient: 0.65, Middle: -0.1}}, 0},
	} {
		pool := got[Pool](t)(Trapped(k.openings, 0.24, 0.5))
		if math.Abs(float64(pool.Depth)-k.depth) > 1e-12 || math.Abs(float64(pool.Volume)-0.24*k.depth) > 1e-12 {
			t.Errorf("%s: %+v, want %g m", name, pool, k.depth)
		}
	}
}

func TestRefusals(t *testing.T) {
	m := model(t, van(1e-4))
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), -1e9, 1e9} {
		r, d, A, V, L, q, rho := unit.Ratio(x), unit.Duration(x), unit.Area(x), unit.Volume(x), unit.Length(x), unit.VolumeFlow(x), unit.Density(x)
		change := func(do func(*Conditions)) error {
			c := van(1e-4)
			do(&c)
			_, err := New(c)
			if _, also := Assess(c, propaneMeasure(), 0); also == nil && err != nil && c.Difference == 0 {
				t.Errorf("%g: assessed what New refuses", x)
			}
			return err
		}
		for i, err := range []error{
			change(func(c *Conditions) { c.Volume = V }),
			change(func(c *Conditions) { c.Leak = unit.MassFlow(x) }),
			change(func(c *Conditions) { c.Outside = unit.Temperature(x) }),
			change(func(c *Conditions) { c.Difference = unit.TemperatureDifference(x) }),
			change(func(c *Conditions) { c.Pressure = unit.AbsolutePressure(x) }),
			change(func(c *Conditions) { c.Openings[1].Middle = L }),
			change(func(c *Conditions) { c.Source = L }),
			second(m.After(r, 1)), second(m.After(0, d)), second(m.Rest(r, 1)), second(m.Rest(0, d)),
			second(m.Reaches(r)), second(m.Clears(r, 0.1)), second(m.Clears(1, r)), second(m.LargestLeak(r)),
			second(PlumeConstant(r)), second(Displacement(A, 1, 1, 1.8, 1.2, 0.1)), second(Displacement(1, L, 1, 1.8, 1.2, 0.1)),
			second(Displacement(1, 1, q, 1.8, 1.2, 0.1)), second(Displacement(1, 1, 1, rho, 1.2, 0.1)),
			second(Displacement(1, 1, 1, 1.8, rho, 0.1)), second(Displacement(1, 1, 1, 1.8, 1.2, r)),
			second(Front(A, 1, 0.5, 1, 1.8, 1.2, 0.1)), second(Front(1, L, 0.5, 1, 1.8, 1.2, 0.1)), second(Front(1, 1, L, 1, 1.8, 1.2, 0.1)),
			second(FillTime(V, 0.1, 1)), second(FillTime(1, r, 1)), second(FillTime(1, 0.1, q)),
			second(Dilution(V, 0.1, 1, 1)), second(Dilution(1, q, 1, 1)), second(Dilution(1, 0.1, q, 1)), second(Dilution(1, 0.1, 1, d)),
			second(PurgeTime(V, 1, 1, 0.1)), second(PurgeTime(1, q, 1, 0.1)), second(PurgeTime(1, 1, r, 0.1)), second(PurgeTime(1, 1, 1, r)),
			second(Trapped(nil, A, 1)), second(Trapped(nil, 1, L)), second(Trapped([]flow.Opening{{Middle: L}}, 1, 1)),
			second(Assess(van(1e-4), Measure{r, 0.25, 1.4}, 0)), second(Assess(van(1e-4), Measure{0.017, r, 1.4}, 0)),
			second(Assess(van(1e-4), Measure{0.017, 0.25, r}, 0)), second(Assess(van(1e-4), propaneMeasure(), r)),
		} {
			if err == nil {
				t.Errorf("%g: refusal %d is missing", x, i)
				continue
			}
			refused(t, "refusal", err)
		}
	}
	if _, err := m.Clears(1, 0); err == nil {
		t.Error("a target of nothing was accepted")
	}
	if _, err := New(Conditions{Volume: 1, Outside: 288, Pressure: sea}); err == nil {
		t.Error("a gas without a density was accepted")
	}
	if v := m.LeakVolume(); v <= 0 {
		t.Errorf("leak of %g m³/s", v)
	}
}

// The factor holds for the widest range only if it is the one read from there.
func TestMeasure(t *testing.T) {
	by := propaneMeasure()
	if by.Lower != propane.WidestRange().Lower || Richest(0.9, Near) != 1 || Richest(0.1, Near) != unit.Ratio(0.1*float64(Near)) {
		t.Errorf("%+v", by)
	}
	if zero := false; len(Band()) >= 5 {
		for i, d := range Band() {
			zero = zero || d == 0
			if i > 0 && d <= Band()[i-1] {
				t.Error("the band does not rise")
			}
		}
		if !zero || Band()[0] > unit.TemperatureDifference(-2) || Band()[len(Band())-1] < unit.TemperatureDifference(10) {
			t.Errorf("band %v", Band())
		}
	} else {
		t.Errorf("band %v", Band())
	}
}

func BenchmarkTransient(b *testing.B) {
	m := model(b, van(1e-4))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := m.After(0, 3600); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkClears(b *testing.B) {
	m := model(b, van(0))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := m.Clears(1, 0.004); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkAssess(b *testing.B) {
	c := van(1e-4)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Assess(c, propaneMeasure(), 0); err != nil {
			b.Fatal(err)
		}
	}
}

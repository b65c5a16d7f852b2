package flow

import (
	"errors"
	"math"
	"testing"

	"lowvent.example/schema/unit"
	"pgregory.net/rapid"
)

// drawn is a scene for properties: some openings, two densities, a source.
func drawn(rt *rapid.T) ([]Opening, Sides, float64) {
	n := rapid.IntRange(1, 4).Draw(rt, "openings")
	var openings []Opening
	for range n {
		o := Opening{
			Area:        unit.Area(rapid.Float64Range(1e-6, 0.1).Draw(rt, "area")),
			Coefficient: unit.Ratio(rapid.Float64Range(0.2, 1).Draw(rt, "C")),
			Middle:      unit.Length(rapid.Float64Range(-2, 3).Draw(rt, "middle")),
			Extent:      unit.Length(rapid.Float64Range(0, 1).Draw(rt, "extent")),
			Wind:        unit.GaugePressure(rapid.SampledFrom([]float64{0, 0, 0.1, -3}).Draw(rt, "wind")),
		}
		if rapid.IntRange(0, 3).Draw(rt, "pipe") == 0 {
			o.PipeLength, o.PipeBore = 0.7, 0.02
		}
		openings = append(openings, o)
	}
	density := rapid.Float64Range(0.2, 2)
	sides := Sides{unit.Density(density.Draw(rt, "inside")), unit.Density(density.Draw(rt, "outside")), 1}
	return openings, sides, rapid.SampledFrom([]float64{0, 1e-6, 1e-4, 0.01, -1e-4}).Draw(rt, "source")
}

// The volumes balance, and what passes is the sum over the openings.
func TestVolumesBalance(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		openings, sides, source := drawn(rt)
		sides.Expansion = unit.Ratio(rapid.SampledFrom([]float64{1, 1.05, 0.9}).Draw(rt, "e"))
		face := rapid.SampledFrom([]Face{Wall, Floor, Ceiling}).Draw(rt, "face")
		openings[0].Face = face
		e := balance(t, openings, sides, source)
		in, out := 0.0, 0.0
		for _, o := range openings {
			through, err := o.At(sides, e.Pressure)
			if err != nil || through.In < 0 || through.Out < 0 {
				rt.Fatalf("%+v, %v", through, err)
			}
			in, out = in+float64(through.In), out+float64(through.Out)
		}
		scale := out + in + math.Abs(source)
		if math.Abs(in-float64(e.In))+math.Abs(out-float64(e.Out)) > 1e-12*scale {
			rt.Fatalf("openings pass %g and %g, in all %+v", in, out, e)
		}
		if off := out - float64(sides.Expansion)*in - source; math.Abs(off) > 1e-6*scale+3e-8 {
			rt.Fatalf("off balance by %g of %g", off, scale)
		}
	})
}

// Where the datum lies, what all winds have in common, and which side is called
// the inside change nothing.
func TestTwins(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		openings, sides, source := drawn(rt)
		same := func(what string, a, b, c, d unit.VolumeFlow) {
			scale := float64(a+b+c+d) + math.Abs(source)
			if math.Abs(float64(a-c))+math.Abs(float64(b-d)) > 1e-5*scale+3e-8 {
				rt.Fatalf("%s: %g and %g, %g and %g", what, a, b, c, d)
			}
		}
		e := balance(t, openings, sides, source)
		shifted := append([]Opening{}, openings...)
		for i := range shifted {
			shifted[i].Middle += unit.Length(5)
			shifted[i].Wind += unit.GaugePressure(2)
		}
		f := balance(t, shifted, sides, source)
		same("datum", e.In, e.Out, f.In, f.Out)
		if e.HasLevel != f.HasLevel {
			rt.Fatal("the neutral level came or went")
		}
		swapped := append([]Opening{}, openings...)
		for i := range swapped {
			swapped[i].Wind = -swapped[i].Wind
		}
		g := balance(t, swapped, Sides{sides.Outside, sides.Inside, 1}, -source)
		same("sides", e.In, e.Out, g.Out, g.In)
	})
}

// More area never lets less pass in still air; more source never lets more in.
func TestMoreOpeningMoreFlow(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		openings, sides, source := drawn(rt)
		for i := range openings {
			openings[i].Wind, openings[i].PipeLength = 0, 0
			openings[i].Extent = 0
			openings[i].Middle = unit.Length(float64(i % 2))
		}
		e := balance(t, openings, sides, 0)
		wider := append([]Opening{}, openings...)
		wider[0].Area = unit.Area(2 * float64(wider[0].Area))
		if f := balance(t, wider, sides, 0); float64(f.Out) < float64(e.Out)*(1-1e-6)-1e-15 {
			rt.Fatalf("wider lets %g out, narrower %g", f.Out, e.Out)
		}
		pushed := balance(t, openings, sides, math.Abs(source))
		if float64(pushed.In) > float64(e.In)*(1+1e-6)+1e-15 || float64(pushed.Out) < float64(e.Out)*(1-1e-6)-1e-15 {
			rt.Fatalf("with a source %+v, without %+v", pushed, e)
		}
	})
}

func TestAStrongSourceLetsNothingIn(t *testing.T) {
	openings := []Opening{{Area: 5.76e-4, Coefficient: Coefficient, Middle: 0.375, Extent: 0.024}}
	sides := Sides{0.8, 1.2, 1}
	still := balance(t, openings, sides, 0)
	if still.In != still.Out && math.Abs(float64(still.In/still.Out))-1 > 1e-9 || still.In <= 0 || !still.HasLevel {
		t.Errorf("still: %+v", still)
	}
	if still.Level < openings[0].Bottom() || still.Level > openings[0].Top() {
		t.Errorf("the neutral level %g is not in the only opening", still.Level)
	}
	weak := balance(t, openings, sides, float64(still.In)/2)
	if weak.In <= 0 || weak.In >= still.In || weak.Level > still.Level {
		t.Errorf("weak source: %+v after %+v", weak, still)
	}
	strong := balance(t, openings, sides, 10*float64(still.In))
	if strong.In != 0 {
		t.Errorf("strong source: %+v", strong)
	}
	near(t, "out of the only opening", float64(strong.Out), 10*float64(still.In), 1e-9)
}

// The weak limits: the closed forms.
func TestBalanceMeetsTheClosedForms(t *testing.T) {
	const air, gas = 1.2, 1.2012
	openings := []Opening{{Area: 2e-4, Coefficient: 0.6, Middle: 0.1}, {Area: 3e-4, Coefficient: 0.6, Middle: 0.8}}
	effective := got[unit.Area](t)(EffectiveArea(3e-4, 2e-4, 0.6))
	e := balance(t, openings, Sides{gas, air, 1}, 0)
	near(t, "two openings", float64(e.Out), effective*math.Sqrt(gravity*0.7*(gas-air)/air), 1e-3)
	one := []Opening{{Area: 2e-3, Coefficient: 0.65, Middle: 0.4, Extent: 0.05}}
	e = balance(t, one, Sides{gas, air, 1}, 0)
	near(t, "one opening", float64(e.Out), got[unit.VolumeFlow](t)(OneOpening(0.65, 2e-3, 0.05, gas, air)), 1e-3)
	one[0].Face = Floor
	e = balance(t, one, Sides{gas, air, 1}, 0)
	near(t, "hole in the floor", float64(e.Out), got[unit.VolumeFlow](t)(HorizontalExchange(2e-3, gas, air, 0)), 1e-3)
	if e = balance(t, one, Sides{air, gas, 1}, 0); e.Out > unit.VolumeFlow(1e-12) {
		t.Errorf("light gas leaves through the floor: %+v", e)
	}
	one[0].Face = Ceiling
	if e = balance(t, one, Sides{air, gas, 1}, 0); e.Out <= unit.VolumeFlow(1e-6) {
		t.Errorf("light gas stays under an open ceiling: %+v", e)
	}
	one[0].PipeLength, one[0].PipeBore = 1, 0.02
	if e = balance(t, one, Sides{air, gas, 1}, 0); e.Out > unit.VolumeFlow(1e-12) {
		t.Errorf("a single pipe exchanges: %+v", e)
	}
}

// A box of heavy gas is a box of light gas upside down.
func TestUpsideDown(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		contrast := rapid.Float64Range(1e-5, 1e-3).Draw(rt, "contrast")
		source := rapid.SampledFrom([]float64{0, 1e-6, 1e-5}).Draw(rt, "source")
		heavy := []Opening{
			{Area: 5e-4, Coefficient: 0.65, Middle: unit.Length(rapid.Float64Range(0, 0.5).Draw(rt, "low")), Extent: 0.03},
			{Area: 3e-4, Coefficient: 0.65, Middle: unit.Length(rapid.Float64Range(0.5, 1).Draw(rt, "high")), Extent: 0.02},
			{Area: 1e-4, Coefficient: 0.65, Middle: 0, Face: Floor},
		}
		light := append([]Opening{}, heavy...)
		for i := range light {
			light[i].Middle = -light[i].Middle
		}
		light[2].Face = Ceiling
		a := balance(t, heavy, Sides{unit.Density(1.2 * (1 + contrast)), 1.2, 1}, source)
		b := balance(t, light, Sides{unit.Density(1.2 * (1 - contrast)), 1.2, 1}, source)
		near(t, "out", float64(a.Out), float64(b.Out), 3*contrast+1e-6)
		near(t, "in", float64(a.In)+1e-7, float64(b.In)+1e-7, 0.02)
	})
}

// With one density on both sides nothing moves, and there is no neutral level.
func TestNoContrastNoFlow(t *testing.T) {
	e := balance(t, pair(1e-3, 0.1, 0.8), Sides{1.2, 1.2, 1}, 0)
	if e.In > unit.VolumeFlow(1e-9) || e.Out > unit.VolumeFlow(1e-9) || e.HasLevel {
		t.Errorf("%+v", e)
	}
}

// Wind on the opening where the gas leaves, as strong as the head, stops it.
func TestWindAgainstTheHead(t *testing.T) {
	openings := pair(1e-3, 0.1, 0.74)
	sides := Sides{1.2 + 0.0028, 1.2, 1}
	head := got[unit.GaugePressure](t)(Head(sides.Inside, sides.Outside, 0.64))
	speed := got[unit.Speed](t)(WindSpeed(unit.GaugePressure(head), 1, 1.2))
	if speed < 0.15 || speed > 0.19 {
		t.Errorf("wind against a head of %g Pa: %g m/s", head, speed)
	}
	still := balance(t, openings, sides, 0)
	openings[0].Wind = unit.GaugePressure(got[unit.GaugePressure](t)(WindPressure(1, 1.2, unit.Speed(speed))))
	stalled := balance(t, openings, sides, 0)
	if float64(stalled.Out) > 1e-6*float64(still.Out) {
		t.Errorf("still %+v, stalled %+v", still, stalled)
	}
}

func TestOpeningsThatAreNone(t *testing.T) {
	var none *NoOpeningError
	for _, openings := range [][]Opening{nil, {{Coefficient: 0.65}}, {Opening{Area: 1e-3, Coefficient: 0.65}.Blocked(1)}} {
		if _, err := Balance(openings, Sides{1.2, 1.3, 1}, 0); !errors.As(err, &none) || none.Error() == "" {
			t.Errorf("%v: %v", openings, err)
		}
	}
}

func TestBalanceRefuses(t *testing.T) {
	good := Opening{Area: 1e-3, Coefficient: 0.65, Middle: 0.5, Extent: 0.1, PipeLength: 1, PipeBore: 0.02}
	sides := Sides{1.3, 1.2, 1}
	try := func(what string, o Opening, s Sides, source float64) {
		t.Helper()
		e, err := Balance([]Opening{good, o}, s, unit.VolumeFlow(source))
		refused(t, what, err)
		if e != (Exchange{}) {
			t.Errorf("%s: %+v beside an error", what, e)
		}
		if _, err := o.At(s, 0); what != "source" {
			refused(t, what+" at", err)
		}
	}
	for _, x := range bad() {
		for what, change := range map[string]func(*Opening, *Sides){
			"area":        func(o *Opening, _ *Sides) { o.Area = unit.Area(x) },
			"coefficient": func(o *Opening, _ *Sides) { o.Coefficient = unit.Ratio(x) },
			"middle":      func(o *Opening, _ *Sides) { o.Middle = unit.Length(x) },
			"extent":      func(o *Opening, _ *Sides) { o.Extent = unit.Length(x) },
			"wind":        func(o *Opening, _ *Sides) { o.Wind = unit.GaugePressure(x) },
			"pipe":        func(o *Opening, _ *Sides) { o.PipeLength = unit.Length(x) },
			"bore":        func(o *Opening, _ *Sides) { o.PipeBore = unit.Length(x) },
			"inside":      func(_ *Opening, s *Sides) { s.Inside = unit.Density(x) },
			"outside":     func(_ *Opening, s *Sides) { s.Outside = unit.Density(x) },
			"expansion":   func(_ *Opening, s *Sides) { s.Expansion = unit.Ratio(x) },
			"covered":     func(o *Opening, _ *Sides) { *o = o.Covered(unit.Ratio(x)) },
			"blocked":     func(o *Opening, _ *Sides) { *o = o.Blocked(unit.Ratio(x)) },
		} {
			o, s := good, sides
			change(&o, &s)
			try(what, o, s, 0)
		}
		try("source", good, sides, x)
	}
	try("face", Opening{Area: 1e-3, Coefficient: 0.65, Face: 3}, sides, 0)
	if _, err := good.At(sides, unit.GaugePressure(math.NaN())); err == nil {
		t.Error("a pressure that is no number passed")
	}
}

func TestBlockedAndCovered(t *testing.T) {
	o := Opening{Area: 1e-3, Coefficient: 0.65, Middle: 0.5, Extent: 0.1}
	half := o.Blocked(0.5)
	if half.Area != 5e-4 || half.Extent != 0.05 || half.Middle != o.Middle || o.Blocked(0) != o {
		t.Errorf("half blocked: %+v", half)
	}
	near(t, "screened", float64(o.Covered(0.69).Coefficient), 0.65*0.69, 1e-12)
	near(t, "bottom", float64(o.Bottom()), 0.45, 1e-12)
	near(t, "top", float64(o.Top()), 0.55, 1e-12)
	o.Face = Ceiling
	if o.Bottom() != o.Top() {
		t.Error("a hole in a ceiling has a height")
	}
	last := unit.Ratio(1)
	for _, c := range Covers() {
		if c.Name == "" || c.Source == "" || c.Factor <= 0 || c.Factor >= last {
			t.Errorf("%+v", c)
		}
		last = c.Factor
	}
}

func BenchmarkBalance(b *testing.B) {
	openings := pair(4.6e-4, 0.036, 0.714)
	sides := Sides{1.3, 1.2, 1.01}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Balance(openings, sides, 1e-5); err != nil {
			b.Fatal(err)
		}
	}
}

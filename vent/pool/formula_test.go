package pool

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"lowvent.example/schema/unit"
)

// TestTexts proves every formula text to be its function.
func TestTexts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
		A, V, z := draw("A", 0.1, 100), draw("V", 0.1, 500), draw("z", 0.001, 3)
		q, Q, x, after := draw("q", 1e-7, 0.1), draw("Q", 1e-4, 1), draw("x", 0.01, 1), draw("t", 1, 1e6)
		rho, rhoAir, Fr, w := draw("rho", 1.4, 3), draw("rho_air", 0.7, 1.3), draw("Fr", 0.1, 2), draw("w", 0.5, 5)
		f, x0, held := draw("f", 1, 5), draw("x_0", 1e-3, 1), draw("m_held", 0.1, 50)
		in := map[string]float64{"A": A, "V": V, "z": z, "h": z, "q": q, "Q": Q, "x": x, "t": after,
			"rho": rho, "rho_air": rhoAir, "Fr": Fr, "w": w, "f": f, "x_0": x0, "m_held": held}
		d := Densities{unit.Density(rho), unit.Density(rhoAir)}
		gas, fresh, share := unit.VolumeFlow(q), unit.VolumeFlow(Q), unit.Ratio(x)

		near(t, "layer", float64(must[unit.Duration](t)(LayerTime(unit.Area(A), unit.Length(z), share, gas))), text(t, LayerFormula, "t", in), 1e-12)
		near(t, "concentration", float64(must[unit.Ratio](t)(Concentration(unit.Volume(V), gas, fresh, unit.Duration(after)))), text(t, ConcentrationFormula, "x", in), 1e-6)
		if m := must[Moment](t)(Mixed(unit.Volume(V), gas, fresh, share)); !m.Never {
			near(t, "mixed", float64(m.After), text(t, MixedFormula, "t", in), 1e-6)
		} else if !(x*(Q+q) >= q) {
			t.Fatalf("never, though %v is below %v", x, q/(Q+q))
		}
		if x0 >= x {
			near(t, "purge", float64(must[unit.Duration](t)(Purge(unit.Volume(V), fresh, unit.Ratio(x0), share, unit.Ratio(f)))), text(t, PurgeFormula, "t", in), 1e-9)
		}
		whole := must[Whole](t)(Flammable(unit.Volume(V), share, unit.Density(rho), unit.PropaneMass(held)))
		near(t, "flammable", float64(whole.Mass), text(t, FlammableFormula, "m", in), 1e-12)
		in["m"] = float64(whole.Mass)
		near(t, "times", float64(whole.Times), text(t, TimesFormula, "n", in), 1e-12)
		near(t, "share is one over times", float64(whole.Share)*float64(whole.Times), 1, 1e-12)

		near(t, "front", float64(must[unit.Speed](t)(FrontSpeed(d, unit.Ratio(Fr), share, unit.Length(z)))), text(t, FrontFormula, "u", in), 1e-12)
		s := must[Stream](t)(StreamOf(d, unit.Ratio(Fr), share, gas, unit.Length(w)))
		near(t, "stream", float64(s.Speed), text(t, StreamFormula, "u", in), 1e-9)
		in["u"] = float64(s.Speed)
		near(t, "depth", float64(s.Depth), text(t, DepthFormula, "h", in), 1e-12)
		near(t, "the stream is a front of its depth", float64(must[unit.Speed](t)(FrontSpeed(d, unit.Ratio(Fr), share, s.Depth))), float64(s.Speed), 1e-9)
		near(t, "spill", float64(must[unit.Length](t)(SpillDepth(d, share, gas, unit.Length(w)))), text(t, SpillFormula, "s", in), 1e-9)
	})
}

// TestMixedGoesThereAndBack: Mixed is the inverse of Concentration, near V·x/q without
// air, and never where the space nears less.
func TestMixedGoesThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		V := unit.Volume(rapid.Float64Range(0.1, 500).Draw(t, "V"))
		q := unit.VolumeFlow(rapid.Float64Range(1e-7, 0.1).Draw(t, "q"))
		Q := unit.VolumeFlow(rapid.Float64Range(0, 1).Draw(t, "Q"))
		x := unit.Ratio(rapid.Float64Range(1e-5, 0.99).Draw(t, "x"))
		m := must[Moment](t)(Mixed(V, q, Q, x))
		if end := float64(q) / float64(q+Q); m.Never != (float64(x) >= end) {
			t.Fatalf("%+v for %v of an end of %v", m, x, end)
		}
		if !m.Never && m.After < 1e12 && float64(x) < 0.999*float64(q)/float64(q+Q) {
			near(t, "back", float64(must[unit.Ratio](t)(Concentration(V, q, Q, m.After))), float64(x), 1e-9)
		}
		still := float64(must[Moment](t)(Mixed(V, q, 0, x)).After)
		linear := float64(V) * float64(x) / float64(q)
		if still < linear || still > linear*(1+float64(x)/2/(1-float64(x))) {
			t.Fatalf("without air %v s, V·x/q %v s", still, linear)
		}
		if air := must[Moment](t)(Mixed(V, q, Q, x)); Sooner(air, Moment{After: unit.Duration(still * (1 - 1e-9))}) == air && Q > 0 {
			t.Fatalf("fresh air made it sooner: %+v against %v s", air, still)
		}
	})
}

// TestMixedNeverComesToItsEnd: what the space nears it does not reach.
func TestMixedNeverComesToItsEnd(t *testing.T) {
	for _, c := range []struct{ q, Q, x float64 }{{1, 1, 0.5}, {1, 3, 0.25}, {1, 0, 1}} {
		if m := must[Moment](t)(Mixed(10, unit.VolumeFlow(c.q), unit.VolumeFlow(c.Q), unit.Ratio(c.x))); m != (Moment{Never: true}) {
			t.Errorf("%+v: %+v", c, m)
		}
	}
}

// TestPurgeTakesStages: thinning in two stages takes as long as in one, and undoes
// what stays below.
func TestPurgeTakesStages(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		share := func(name string) unit.Ratio { return unit.Ratio(rapid.Float64Range(1e-4, 1).Draw(t, name)) }
		a, b, c := share("a"), share("b"), share("c")
		a, b, c = max(a, b, c), min(max(a, b), max(b, c), max(a, c)), min(a, b, c)
		purge := func(from, to unit.Ratio) float64 {
			return float64(must[unit.Duration](t)(Purge(30, 0.01, from, to, 1)))
		}
		if got := purge(a, b) + purge(b, c); math.Abs(got-purge(a, c)) > 1e-6 || purge(c, a) != 0 {
			t.Fatalf("%v, %v, %v: %v s in stages, %v s in one, %v s upward", a, b, c, got, purge(a, c), purge(c, a))
		}
	})
}

// TestSooner: at once before a time before never, whichever comes first.
func TestSoonerAndLater(t *testing.T) {
	order := []Moment{{}, {After: 1}, {After: 2}, {Never: true}}
	for i, a := range order {
		for j, b := range order {
			if Sooner(a, b) != order[min(i, j)] || Later(a, b) != order[max(i, j)] {
				t.Errorf("%+v and %+v: sooner %+v, later %+v", a, b, Sooner(a, b), Later(a, b))
			}
		}
	}
}

// TestHowFastGasRuns: undiluted propane a centimetre deep, and the stream of a torn
// hose, run through a van in seconds; a small burner's takes minutes.
func TestHowFastGasRuns(t *testing.T) {
	d := propaneAt(t, 293.15)
	u := must[unit.Speed](t)(FrontSpeed(d, FrontFastest, 1, 0.01))
	near(t, "centimetre of propane, m/s", float64(u), math.Sqrt(2*9.80665*(1.8650/1.2041-1)*0.01), 0.02)
	if slow := must[unit.Speed](t)(FrontSpeed(d, FrontMeasured, 1, 0.01)); slow >= u {
		t.Errorf("measured %v, without loss %v", slow, u)
	}
	hose := must[Stream](t)(StreamOf(d, FrontFastest, 0.017, 2e-3, 2.25))
	if run := must[Moment](t)(hose.Reach(6.9, 0.02)); run.Never || run.After > 60 || run.After < 5 {
		t.Errorf("stream %+v runs 6.9 m in %+v", hose, run)
	}
	if just := must[Moment](t)(hose.Reach(6.9, hose.Depth)); just.Never {
		t.Errorf("just as high as the stream is deep: %+v", just)
	}
	if high := must[Moment](t)(hose.Reach(6.9, hose.Depth+0.001)); !high.Never {
		t.Errorf("over the stream: %+v", high)
	}
}

// TestAlarmIsHeardLater: a smaller leak, a larger floor, a higher sensor and more air
// are never heard earlier; the latest is one of the two and not before the other.
func TestAlarmIsHeardLater(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		A, q := rapid.Float64Range(0.5, 50).Draw(t, "A"), rapid.Float64Range(1e-7, 1e-2).Draw(t, "q")
		z, Q := rapid.Float64Range(0, 2).Draw(t, "z"), rapid.Float64Range(0, 0.1).Draw(t, "Q")
		k := rapid.Float64Range(0.01, 1).Draw(t, "k")
		latest := func(A, z, q, Q float64) Moment {
			h := must[Hearing](t)(Alarm{unit.Length(z), 0.00425}.Latest(unit.Area(A), unit.Volume(2*A), unit.VolumeFlow(q), unit.VolumeFlow(Q)))
			if (h.Latest != h.Rich && h.Latest != h.Mixed) || Later(h.Rich, h.Latest) != h.Latest || Later(h.Mixed, h.Latest) != h.Latest {
				t.Fatalf("%+v", h)
			}
			return h.Latest
		}
		base := latest(A, z, q, Q)
		for name, m := range map[string]Moment{"smaller leak": latest(A, z, q*k, Q), "larger floor": latest(A/k, z, q, Q), "higher": latest(A, z/k, q, Q), "more air": latest(A, z, q, Q/k)} {
			if !m.Never && (base.Never || float64(m.After) < float64(base.After)*(1-1e-9)) {
				t.Fatalf("%s: %+v before %+v", name, m, base)
			}
		}
	})
}

// TestSoonestIsAtOnceUnderTheLeak and otherwise the layer's.
func TestSoonestIsAtOnceUnderTheLeak(t *testing.T) {
	at := func(leak, z unit.Length) float64 {
		return float64(must[unit.Duration](t)(Soonest(15.5, leak, z, 0.017, 2.5e-5)))
	}
	if at(0.9, 0.05) != 0 || at(0.05, 0.05) != 0 {
		t.Error("gas does not fall past what lies below the leak")
	}
	near(t, "over the leak", at(0.02, 0.05), 15.5*0.05*0.017/2.5e-5, 1e-12)
}

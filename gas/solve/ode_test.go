package solve

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"
)

func integrator(t testing.TB, relative, longest float64, absolute ...float64) *Integrator {
	t.Helper()
	in, err := NewIntegrator(relative, absolute, longest, 100000)
	if err != nil {
		t.Fatal(err)
	}
	return in
}

func decay(_ float64, y, slope []float64) { slope[0] = -y[0] }

// oscillator is y″ = −y: y[0] place, y[1] speed.
func oscillator(_ float64, y, slope []float64) { slope[0], slope[1] = y[1], -y[0] }

func TestAdvanceAgainstClosedForms(t *testing.T) {
	for _, c := range []struct {
		name  string
		f     Slope
		start []float64
		want  func(t float64) float64 // of y[0]
	}{
		{"decay", decay, []float64{1}, func(t float64) float64 { return math.Exp(-t) }},
		{"oscillator", oscillator, []float64{0, 1}, math.Sin},
		{"a clock", func(_ float64, _, slope []float64) { slope[0] = 1 }, []float64{0}, func(t float64) float64 { return t }},
		{"forced", func(t float64, _, slope []float64) { slope[0] = math.Cos(t) }, []float64{0}, math.Sin},
		{"logistic", func(_ float64, y, slope []float64) { slope[0] = y[0] * (1 - y[0]) }, []float64{0.5},
			func(t float64) float64 { return 1 / (1 + math.Exp(-t)) }},
		{"decay in both time and value", func(t float64, y, slope []float64) { slope[0] = -2 * t * y[0] }, []float64{1},
			func(t float64) float64 { return math.Exp(-t * t) }},
		{"nothing changes", func(_ float64, _, slope []float64) { slope[0] = 0 }, []float64{7}, func(float64) float64 { return 7 }},
	} {
		t.Run(c.name, func(t *testing.T) {
			absolute := make([]float64, len(c.start))
			for i := range absolute {
				absolute[i] = 1e-10
			}
			y := append([]float64(nil), c.start...)
			at, stopped, err := integrator(t, 1e-10, 10, absolute...).Advance(c.f, 0, 5, y, Watch{})
			if err != nil || stopped || at != 5 {
				t.Fatalf("at %g, stopped %t, %v", at, stopped, err)
			}
			if off := math.Abs(y[0] - c.want(5)); off > 3e-9 {
				t.Errorf("y = %.12g, want %.12g", y[0], c.want(5))
			}
		})
	}
}

// Fixed steps: halving them divides the error of the fifth-order solution by
// 2⁵, and that of the interpolation by 2⁴ or more.
func TestOrderOfConvergence(t *testing.T) {
	ends := func(steps int) (end, middle float64) {
		in := integrator(t, 1e3, 2/float64(steps), 1e3, 1e3)
		y, between := []float64{0, 1}, []float64{0, 0}
		watch := Watch{Step: func(at float64, _ []float64) {
			half := at - 1/float64(steps)
			in.Interpolate(half, between)
			middle = max(middle, math.Abs(between[0]-math.Sin(half)))
		}}
		if _, _, err := in.Advance(oscillator, 0, 2, y, watch); err != nil {
			t.Fatal(err)
		}
		return math.Abs(y[0] - math.Sin(2)), middle
	}
	for steps := 8; steps <= 32; steps *= 2 {
		end, middle := ends(steps)
		finerEnd, finerMiddle := ends(2 * steps)
		if order := math.Log2(end / finerEnd); order < 4.7 || order > 6.3 {
			t.Errorf("%d steps: order %.2f, want 5", steps, order)
		}
		if order := math.Log2(middle / finerMiddle); order < 3.9 {
			t.Errorf("%d steps: order %.2f of the interpolation, want 4", steps, order)
		}
	}
}

// The rows of the method are consistent: weights sum to their node, and those
// of the difference to nothing.
func TestTableauConditions(t *testing.T) {
	for s, row := range matrix {
		sum := 0.0
		for _, a := range row {
			sum += a
		}
		if math.Abs(sum-nodes[s]) > 1e-14 {
			t.Errorf("stage %d: weights sum to %g, node %g", s, sum, nodes[s])
		}
	}
	for power := range 5 { // Σ b cᵖ = 1/(p+1) of the fifth order, and of the fourth up to p = 3
		fifth, off := 0.0, 0.0
		for j := range stages - 1 {
			fifth += matrix[stages-1][j] * math.Pow(nodes[j], float64(power))
		}
		for j, d := range difference {
			off += d * math.Pow(nodes[j], float64(power))
		}
		if math.Abs(fifth-1/float64(power+1)) > 1e-14 {
			t.Errorf("power %d: %g", power, fifth)
		}
		if (math.Abs(off) < 1e-14) != (power <= 3) {
			t.Errorf("power %d: the orders differ by %g", power, off)
		}
	}
}

func TestOscillatorKeepsItsEnergy(t *testing.T) {
	y := []float64{0, 1}
	in := integrator(t, 1e-10, 1, 1e-10, 1e-10)
	if _, _, err := in.Advance(oscillator, 0, 200*math.Pi, y, Watch{}); err != nil {
		t.Fatal(err)
	}
	if energy := y[0]*y[0] + y[1]*y[1]; math.Abs(energy-1) > 1e-6 {
		t.Errorf("energy %.9g after a hundred turns", energy)
	}
}

// A tighter tolerance takes more steps and leaves less error.
func TestToleranceGovernsError(t *testing.T) {
	steps, off := 0, math.Inf(1)
	for _, tolerance := range []float64{1e-4, 1e-6, 1e-8, 1e-10} {
		y, taken := []float64{1, 0}, 0
		in := integrator(t, tolerance, 100, tolerance, tolerance)
		if _, _, err := in.Advance(oscillator, 0, 20, y, Watch{Step: func(float64, []float64) { taken++ }}); err != nil {
			t.Fatal(err)
		}
		now := math.Abs(y[0] - math.Cos(20))
		if taken <= steps || now >= off || now > 100*tolerance {
			t.Errorf("tolerance %g: %d steps, error %g; the wider one %d, %g", tolerance, taken, now, steps, off)
		}
		steps, off = taken, now
	}
}

func TestEventTimes(t *testing.T) {
	for _, c := range []struct {
		name  string
		f     Slope
		start []float64
		event func(t float64, y []float64) float64
		want  float64
	}{
		{"half life", decay, []float64{1}, func(_ float64, y []float64) float64 { return y[0] - 0.5 }, math.Ln2},
		{"quarter turn", oscillator, []float64{1, 0}, func(_ float64, y []float64) float64 { return y[0] }, math.Pi / 2},
		{"by the clock", decay, []float64{1}, func(t float64, _ []float64) float64 { return 1.25 - t }, 1.25},
		{"a kink", decay, []float64{1}, func(t float64, y []float64) float64 { return min(y[0]-0.1, 2-t) }, 2},
		{"so already at the start", decay, []float64{1}, func(_ float64, y []float64) float64 { return y[0] - 1 }, 0},
		{"past at the start", decay, []float64{1}, func(_ float64, y []float64) float64 { return y[0] - 2 }, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			absolute := []float64{1e-10, 1e-10}[:len(c.start)]
			in, last := integrator(t, 1e-10, 0.7, absolute...), 0.0
			y := append([]float64(nil), c.start...)
			at, stopped, err := in.Advance(c.f, 0, 3, y, Watch{Event: c.event, Step: func(t float64, _ []float64) { last = t }})
			if err != nil || !stopped || math.Abs(at-c.want) > 1e-8 {
				t.Fatalf("at %.12g, stopped %t, %v; want %.12g", at, stopped, err, c.want)
			}
			if last != at {
				t.Errorf("the last step seen ended at %g", last)
			}
			if c.want > 0 && math.Abs(c.event(at, y)) > 1e-8 {
				t.Errorf("the event is %g where it stopped", c.event(at, y))
			}
		})
	}
}

// An event that falls short of zero, or lies behind the end, does not stop.
func TestEventsThatDoNotHappen(t *testing.T) {
	for _, level := range []float64{math.Exp(-3) - 1e-6, 0, -1} {
		y := []float64{1}
		at, stopped, err := integrator(t, 1e-10, 1, 1e-10).Advance(decay, 0, 3, y,
			Watch{Event: func(_ float64, y []float64) float64 { return y[0] - level }})
		if at != 3 || stopped || err != nil {
			t.Errorf("level %g: at %g, stopped %t, %v", level, at, stopped, err)
		}
	}
}

// Every kind of refusal; the reason names it.
func TestNewIntegratorRefuses(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, c := range []struct {
		name              string
		relative, longest float64
		most              int
		absolute          []float64
	}{
		{"no equations", 1e-6, 1, 10, nil},
		{"no tolerance", 0, 1, 10, []float64{1e-6}},
		{"tolerance under rounding", 1e-15, 1, 10, []float64{1e-6}},
		{"undefined tolerance", nan, 1, 10, []float64{1e-6}},
		{"no absolute tolerance", 1e-6, 1, 10, []float64{1e-6, 0}},
		{"undefined absolute tolerance", 1e-6, 1, 10, []float64{nan}},
		{"endless absolute tolerance", 1e-6, 1, 10, []float64{inf}},
		{"no longest step", 1e-6, 0, 10, []float64{1e-6}},
		{"endless longest step", 1e-6, inf, 10, []float64{1e-6}},
		{"no steps", 1e-6, 1, 0, []float64{1e-6}},
	} {
		if in, err := NewIntegrator(c.relative, c.absolute, c.longest, c.most); in != nil || !isStepError(err) {
			t.Errorf("%s: %v", c.name, err)
		}
	}
}

func isStepError(err error) bool {
	var step *StepError
	return errors.As(err, &step) && step.Error() != "" && step.Reason != ""
}

func TestAdvanceRefuses(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	pole := func(t float64, _, slope []float64) { slope[0] = 1 / (1 - t) / (1 - t) }
	for _, c := range []struct {
		name   string
		f      Slope
		t, end float64
		y      []float64
	}{
		{"end before the start", decay, 1, 0, []float64{1}},
		{"undefined start", decay, nan, 1, []float64{1}},
		{"undefined end", decay, 0, nan, []float64{1}},
		{"endless end", decay, 0, inf, []float64{1}},
		{"too many values", decay, 0, 1, []float64{1, 2}},
		{"undefined value", decay, 0, 1, []float64{nan}},
		{"endless value", decay, 0, 1, []float64{inf}},
		{"undefined value beside a slope", func(_ float64, _, s []float64) { s[0] = 1 }, 0, 1, []float64{nan}},
		{"undefined slope at the start", func(_ float64, _, s []float64) { s[0] = nan }, 0, 1, []float64{1}},
		{"undefined slope on the way", func(t float64, _, s []float64) { s[0] = math.Sqrt(0.5 - t) }, 0, 1, []float64{1}},
		{"a pole", pole, 0, 2, []float64{1}},
		{"blows up", func(_ float64, y, s []float64) { s[0] = y[0] * y[0] }, 0, 2, []float64{1}},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, stopped, err := integrator(t, 1e-8, 1, 1e-8).Advance(c.f, c.t, c.end, c.y, Watch{})
			if stopped || !isStepError(err) {
				t.Errorf("stopped %t, %v", stopped, err)
			}
		})
	}
}

func TestStepsRunOut(t *testing.T) {
	in, err := NewIntegrator(1e-8, []float64{1e-8}, 0.01, 50)
	if err != nil {
		t.Fatal(err)
	}
	y := []float64{1}
	if at, _, err := in.Advance(decay, 0, 1, y, Watch{}); !isStepError(err) || at >= 1 {
		t.Errorf("at %g, %v", at, err)
	}
	if _, _, err := in.Advance(decay, 0, 0.499, y, Watch{}); err != nil { // exactly as many as there are
		t.Error(err)
	}
}

// An event whose value is not a number where it should be found is refused.
func TestEventWithoutAPlace(t *testing.T) {
	event := func(t float64, _ []float64) float64 {
		switch {
		case t < 0.25:
			return 1
		case t < 0.9:
			return math.NaN()
		}
		return -1
	}
	y := []float64{1}
	in := integrator(t, 1e-2, 1, 1e-2)
	if _, stopped, err := in.Advance(decay, 0, 1, y, Watch{Event: event}); stopped || !isStepError(err) {
		t.Errorf("stopped %t, %v", stopped, err)
	}
}

// Parts make the whole: stopping on the way and going on changes nothing but
// within the tolerance; and no step is longer than allowed.
func TestAdvanceInParts(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		rate := rapid.Float64Range(-1, 1).Draw(rt, "rate")
		push := rapid.Float64Range(-2, 2).Draw(rt, "push")
		end := rapid.Float64Range(0.1, 6).Draw(rt, "end")
		part := rapid.Float64Range(0, 1).Draw(rt, "part") * end
		longest := rapid.Float64Range(0.05, 3).Draw(rt, "longest")
		f := func(t float64, y, slope []float64) { slope[0] = rate*y[0] + push*math.Sin(t) }
		whole, parts := []float64{1}, []float64{1}
		in, last := integrator(t, 1e-9, longest, 1e-9), 0.0
		watch := Watch{Step: func(at float64, _ []float64) {
			if at <= last || at-last > longest*(1+1e-9) {
				rt.Fatalf("a step from %g to %g, longest %g", last, at, longest)
			}
			last = at
		}}
		_, _, err := in.Advance(f, 0, end, whole, watch)
		last = 0
		_, _, err1 := in.Advance(f, 0, part, parts, watch)
		_, _, err2 := in.Advance(f, part, end, parts, watch)
		if err != nil || err1 != nil || err2 != nil {
			rt.Fatal(err, err1, err2)
		}
		if math.Abs(whole[0]-parts[0]) > 1e-6*(1+math.Abs(whole[0])) {
			rt.Fatalf("whole %.12g, in parts %.12g", whole[0], parts[0])
		}
	})
}

// The event is the first crossing of a falling exponential, whatever its rate.
func TestEventTimeOfAnyDecay(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		rate := rapid.Float64Range(0.01, 20).Draw(rt, "rate")
		level := rapid.Float64Range(0.01, 0.99).Draw(rt, "level")
		f := func(_ float64, y, slope []float64) { slope[0] = -rate * y[0] }
		y := []float64{1}
		at, stopped, err := integrator(t, 1e-10, 10, 1e-12).Advance(f, 0, 1000, y,
			Watch{Event: func(_ float64, y []float64) float64 { return y[0] - level }})
		want := -math.Log(level) / rate
		if err != nil || !stopped || math.Abs(at-want) > 1e-6*want || math.Abs(y[0]-level) > 1e-7 {
			rt.Fatalf("at %.10g with %.10g, stopped %t, %v; want %.10g", at, y[0], stopped, err, want)
		}
	})
}

func TestAdvanceAllocatesNothing(t *testing.T) {
	in, y := integrator(t, 1e-9, 1, 1e-9, 1e-9), []float64{0, 1}
	if n := testing.AllocsPerRun(10, func() {
		y[0], y[1] = 0, 1
		if _, _, err := in.Advance(oscillator, 0, 50, y, Watch{}); err != nil {
			t.Fatal(err)
		}
	}); n != 0 {
		t.Errorf("%g allocations", n)
	}
}

func BenchmarkAdvance(b *testing.B) {
	in, y := integrator(b, 1e-8, 10, 1e-8, 1e-8), make([]float64, 2)
	b.ReportAllocs()
	for b.Loop() {
		y[0], y[1] = 0, 1
		if _, _, err := in.Advance(oscillator, 0, 10, y, Watch{}); err != nil {
			b.Fatal(err)
		}
	}
}

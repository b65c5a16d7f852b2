package box

import (
	"math"
	"testing"

	"lowvent.example/gas/solve/physicstest"
	"lowvent.example/schema/unit"
)

// Worked by hand against a locker of 1 × 2 × 3 m at the origin.
func TestDistances(t *testing.T) {
	locker := boxed(0, 1, 0, 2, 0, 3)
	for _, c := range []struct {
		name                      string
		b                         Box
		gap, plan, vertical, rise float64
	}{
		{"beyond one corner: 3, 4, 12", boxed(4, 5, 6, 7, 15, 16), 13, 5, 12, 12},
		{"before the opposite corner", boxed(-5, -3, -5, -4, -13, -12), 13, 5, 12, -16},
		{"a point beyond two edges: 3, 4", At(point(4, 6, 1)), 5, 5, 0, -2},
		{"ahead: 3 in x", At(point(-3, 1, 1)), 3, 3, 0, -2},
		{"to the right: 0.5 in y", At(point(0.5, 2.5, 1)), 0.5, 0.5, 0, -2},
		{"over it: 2 in z", boxed(0.2, 0.4, 0.5, 1, 5, 6), 2, 0, 2, 2},
		{"under it: 1 in z", boxed(0.2, 0.4, 0.5, 1, -2, -1), 1, 0, 1, -5},
		{"touching a face", boxed(1, 2, 0, 2, 0, 3), 0, 0, 0, -3},
		{"touching an edge", boxed(1, 2, 2, 3, 0, 3), 0, 0, 0, -3},
		{"touching a corner", boxed(1, 2, 2, 3, 3, 4), 0, 0, 0, 0},
		{"inside", boxed(0.1, 0.2, 0.1, 0.2, 0.1, 0.2), 0, 0, 0, -2.9},
		{"around", boxed(-1, 2, -1, 3, -1, 4), 0, 0, 0, -4},
		{"itself", locker, 0, 0, 0, -3},
		{"corners exchanged", Box{point(5, 7, 16), point(4, 6, 15)}, 13, 5, 12, 12},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := [4]float64{float64(Gap(locker, c.b).Nominal), float64(PlanGap(locker, c.b).Nominal),
				float64(VerticalGap(locker, c.b).Nominal), float64(Rise(locker, c.b).Nominal)}
			if want := [4]float64{c.gap, c.plan, c.vertical, c.rise}; got != want {
				t.Errorf("gap, plan, vertical, rise = %v, want %v", got, want)
			}
			for _, v := range []unit.Value[unit.Length]{Gap(locker, c.b), PlanGap(locker, c.b), VerticalGap(locker, c.b), Rise(locker, c.b)} {
				if !v.Exact() {
					t.Errorf("exact boxes, inexact result %v", v)
				}
			}
		})
	}
}

// A separation set out with a tape at the limit itself meets the limit: binary
// fractions of a metre do not take a hair off it.
func TestDistancesAtALimit(t *testing.T) {
	for _, c := range []struct{ from, limit string }{
		{"1 m", "24 in"}, {"0.1 m", "0.2 m"}, {"1.32 m", "18 in"}, {"0.7 m", "0.1 m"},
		{"3 ft 7 in", "36 in"}, {"-0.62 m", "300 mm"}, {"17.3 in", "5/8 in"}, {"12.7 m", "10 ft"},
	} {
		from, limit := unit.MustParse[unit.Length](c.from), unit.MustParse[unit.Length](c.limit)
		a, b := At(Point{X: unit.Exactly(from)}), At(Point{X: unit.Exactly(from + limit)})
		if got := Gap(a, b).Nominal; got != limit {
			t.Errorf("%s from %s: %.17g m, want %.17g", c.limit, c.from, float64(got), float64(limit))
		}
		if got := Gap(b, a).Nominal; got != limit {
			t.Errorf("%s back from %s: %.17g m, want %.17g", c.limit, c.from, float64(got), float64(limit))
		}
	}
}

// A tenth of a nanometre below nothing is nothing, and prints without a minus.
func TestNoNegativeZero(t *testing.T) {
	a := boxed(0, 1, 0, 1, 0, 1)
	if rise := float64(Rise(a, At(point(0, 0, 1-1e-10))).Nominal); rise != 0 || math.Signbit(rise) {
		t.Errorf("rise = %v", rise)
	}
}

// Worked by hand: coordinates to ±10 mm.
func TestDistancesWithTolerance(t *testing.T) {
	a := loose(boxed(0, 1, 0, 1, 0, 1), 0.01)
	for _, c := range []struct {
		name    string
		b       Box
		f       func(a, b Box) unit.Value[unit.Length]
		low, at float64
		high    float64
	}{
		{"gap along x", boxed(2, 3, 0, 1, 0, 1), Gap, 0.99, 1, 1.01},
		{"gap of loose boxes", loose(boxed(2, 3, 0, 1, 0, 1), 0.01), Gap, 0.98, 1, 1.02},
		{"rise", loose(boxed(0, 1, 0, 1, 1.5, 2), 0.005), Rise, 0.485, 0.5, 0.515},
		{"perhaps touching", loose(boxed(1, 2, 0, 1, 0, 1), 0.01), Gap, 0, 0, 0.02},
		{"perhaps overlapping in height", loose(boxed(0, 1, 0, 1, 0.985, 2), 0.01), VerticalGap, 0, 0, 0.005},
		{"negative rise", loose(boxed(0, 1, 0, 1, 0.5, 2), 0.01), Rise, -0.52, -0.5, -0.48},
	} {
		if got, want := three(c.f(a, c.b)), [3]float64{c.low, c.at, c.high}; got != want {
			t.Errorf("%s: %v, want %v", c.name, got, want)
		}
	}
	diagonal := Gap(a, loose(boxed(4, 5, 5, 6, 13, 14), 0.01))
	if want := [3]float64{math.Hypot(math.Hypot(2.98, 3.98), 11.98), 13, math.Hypot(math.Hypot(3.02, 4.02), 12.02)}; math.Abs(float64(diagonal.Low)-want[0]) > 2e-9 ||
		diagonal.Nominal != 13 || math.Abs(float64(diagonal.High)-want[2]) > 2e-9 {
		t.Errorf("diagonal: %v, want %v", diagonal, want)
	}
}

// A shelf of 18 mm taped to a centimetre may have its faces exchanged; a result
// still holds both cases.
func TestBandsThatCross(t *testing.T) {
	shelf := Box{Point{exact(0), exact(0), about(1, 0.01)}, Point{exact(1), exact(1), about(1.008, 0.01)}}
	if got, want := three(Height(shelf)), [3]float64{0, 0.008, 0.028}; got != want {
		t.Errorf("height %v, want %v", got, want)
	}
	if got, want := three(Rise(shelf, At(point(0, 0, 2)))), [3]float64{0.982, 0.992, 1.002}; got != want {
		t.Errorf("rise %v, want %v", got, want)
	}
}

func TestLowestAndHighestPoint(t *testing.T) {
	a, b, c := boxed(0, 1, 0, 1, 0.4, 2), boxed(0, 1, 0, 1, -0.1, 0.3), boxed(0, 1, 0, 1, -0.05, 5)
	if low, ok := LowestPoint(a, b, c); !ok || low.Nominal != -0.1 {
		t.Errorf("lowest %v %v", low, ok)
	}
	if high, ok := HighestPoint(a, b, c); !ok || high.Nominal != 5 {
		t.Errorf("highest %v %v", high, ok)
	}
	if low, _ := LowestPoint(loose(a, 0.6), b); three(low) != [3]float64{-0.2, -0.1, -0.1} {
		t.Errorf("lowest with a loose box %v", low)
	}
	if high, _ := HighestPoint(Box{point(0, 0, 3), point(1, 1, 1)}); high.Nominal != 3 {
		t.Errorf("corners exchanged: highest %v", high)
	}
	if low, ok := LowestPoint(); ok || low != (unit.Value[unit.Length]{}) {
		t.Errorf("lowest of none: %v %v", low, ok)
	}
	if high, ok := HighestPoint(); ok || high != (unit.Value[unit.Length]{}) {
		t.Errorf("highest of none: %v %v", high, ok)
	}
}

func TestFormulaTexts(t *testing.T) {
	a, b := boxed(0, 1, 0, 2, 0, 3), boxed(3.2, 4, 4.7, 5, 8.9, 9)
	symbols := map[string]float64{"d_x": 2.2, "d_y": 2.7, "d_z": 5.9, "z_a": 3, "z_b": 8.9, "L_x": 1, "L_y": 2, "L_z": 3}
	for _, c := range []struct {
		text, symbol string
		want         float64
	}{
		{GapFormula, "d", float64(Gap(a, b).Nominal)},
		{PlanGapFormula, "d_plan", float64(PlanGap(a, b).Nominal)},
		{RiseFormula, "h", float64(Rise(a, b).Nominal)},
		{FloorAreaFormula, "A", float64(FloorArea(a).Nominal)},
		{VolumeFormula, "V", float64(Volume(a).Nominal)},
	} {
		symbol, value, err := physicstest.Evaluate(c.text, symbols)
		if err != nil || symbol != c.symbol || math.Abs(value-c.want) > 1e-9 {
			t.Errorf("%s: %s = %.12g, %v; the function gives %.12g", c.text, symbol, value, err, c.want)
		}
	}
}

func BenchmarkGap(b *testing.B) {
	one, other := loose(boxed(0, 1, 0, 2, 0, 3), 0.01), loose(boxed(4, 5, 6, 7, 15, 16), 0.01)
	for b.Loop() {
		if g := Gap(one, other); g.Nominal != 13 {
			b.Fatal(g)
		}
	}
}

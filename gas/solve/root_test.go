package solve

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestRootFindsKnownRoots(t *testing.T) {
	for _, c := range []struct {
		name string
		f    func(float64) float64
		a, b float64
		want float64
	}{
		{"line", func(x float64) float64 { return 2*x - 3 }, 0, 10, 1.5},
		{"line, ends in the other order", func(x float64) float64 { return 2*x - 3 }, 10, 0, 1.5},
		{"falling line", func(x float64) float64 { return 3 - 2*x }, -7, 4, 1.5},
		{"square root of two", func(x float64) float64 { return x*x - 2 }, 0, 2, math.Sqrt2},
		{"cosine meets its angle", func(x float64) float64 { return math.Cos(x) - x }, 0, 1, 0.7390851332151607},
		{"root at the first end", func(x float64) float64 { return x - 1 }, 1, 5, 1},
		{"root at the second end", func(x float64) float64 { return x - 5 }, 1, 5, 5},
		{"flat triple root", func(x float64) float64 { return (x - 0.3) * (x - 0.3) * (x - 0.3) }, -1, 1, 0.3},
		{"steep: exponential", func(x float64) float64 { return math.Exp(40*x) - 2 }, -5, 5, math.Ln2 / 40},
		{"step without a zero", func(x float64) float64 { return math.Copysign(1, x-0.7) }, 0, 3, 0.7},
		{"infinite at one end", func(x float64) float64 { return 4 - 1/x }, 0, 3, 0.25},
		{"infinite at both ends", func(x float64) float64 { return math.Tan(x*math.Pi/2) * 1e300 }, -1, 1, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := Root(c.f, c.a, c.b, 1e-12)
			if err != nil {
				t.Fatal(err)
			}
			if math.Abs(got-c.want) > 1e-5*boolean(c.name == "flat triple root")+2e-12 {
				t.Errorf("Root = %.17g, want %.17g", got, c.want)
			}
		})
	}
}

// boolean is 1 for true: a triple root is flat within rounding over 1e-5.
func boolean(b bool) float64 {
	if b {
		return 1
	}
	return 0
}

func TestRootRefusesWhatItCannotBracket(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	square := func(x float64) float64 { return x*x + 1 }
	line := func(x float64) float64 { return x - 1 }
	for _, c := range []struct {
		name string
		f    func(float64) float64
		a, b float64
	}{
		{"no change of sign", square, -1, 1},
		{"both negative", func(x float64) float64 { return -square(x) }, -1, 1},
		{"root outside", line, 2, 3},
		{"empty bracket", line, 2, 2},
		{"first end not a number", line, nan, 3},
		{"second end not a number", line, 0, nan},
		{"infinite end", line, 0, inf},
		{"value not a number", func(x float64) float64 { return math.Sqrt(x) - 1 }, -1, 3},
		{"zero beside not a number", func(x float64) float64 { return math.Sqrt(x) }, -1, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := Root(c.f, c.a, c.b, 1e-9)
			var bracket *BracketError
			if !errors.As(err, &bracket) {
				t.Fatalf("error = %v, want a BracketError", err)
			}
			if bracket.Error() == "" {
				t.Error("the error says nothing")
			}
		})
	}
}

func TestRootStopsWhenItCannotConverge(t *testing.T) {
	for _, c := range []struct {
		name string
		f    func(float64) float64
		a, b float64
	}{
		{"hole inside the bracket", func(x float64) float64 {
			if math.Abs(x) < 0.5 {
				return math.NaN()
			}
			return x
		}, -1, 1.25},
		{"step far below any tolerance", func(x float64) float64 { return math.Copysign(1, x-1e-300) }, -1, 1e308},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := Root(c.f, c.a, c.b, 0)
			var stopped *ConvergenceError
			if !errors.As(err, &stopped) {
				t.Fatalf("error = %v, want a ConvergenceError", err)
			}
			if stopped.Error() == "" {
				t.Error("the error says nothing")
			}
		})
	}
}

func TestRootTakesABadToleranceAsZero(t *testing.T) {
	for _, tolerance := range []float64{0, -1, math.NaN(), math.Inf(-1)} {
		got, err := Root(func(x float64) float64 { return x*x - 2 }, 0, 2, tolerance)
		if err != nil || math.Abs(got-math.Sqrt2) > 4*0x1p-52*math.Sqrt2 {
			t.Errorf("tolerance %v: Root = %.17g, %v; want %.17g", tolerance, got, err, math.Sqrt2)
		}
	}
}

// The point of Brent's method is speed on smooth functions: bisection alone would
// take 40 calls and more for each of these.
func TestRootIsQuickOnSmoothFunctions(t *testing.T) {
	for _, c := range []struct {
		name string
		f    func(float64) float64
		a, b float64
		most int
	}{
		{"line", func(x float64) float64 { return 2*x - 3 }, 0, 10, 4},
		{"square", func(x float64) float64 { return x*x - 2 }, 0, 2, 9},
		{"cosine", func(x float64) float64 { return math.Cos(x) - x }, 0, 1, 8},
		{"exponential", func(x float64) float64 { return math.Exp(x) - 5 }, 0, 10, 13},
		{"hyperbola", func(x float64) float64 { return 1/x - 0.31 }, 0.1, 9, 12},
		{"cubic", func(x float64) float64 { return x*x*x - 2*x - 5 }, 2, 3, 8},
	} {
		calls := 0
		_, err := Root(func(x float64) float64 { calls++; return c.f(x) }, c.a, c.b, 1e-12)
		if err != nil || calls > c.most {
			t.Errorf("%s: %d calls, %v; want at most %d", c.name, calls, err, c.most)
		}
	}
}

// On functions that defeat interpolation it stays within three times the 50
// calls of bisection.
func TestRootIsBoundedOnHardFunctions(t *testing.T) {
	for _, c := range []struct {
		name string
		f    func(float64) float64
	}{
		{"flat: 19th power", func(x float64) float64 { return math.Pow(x-0.3, 19) }},
		{"steep: fifth root", func(x float64) float64 { return math.Copysign(math.Pow(math.Abs(x-0.3), 0.2), x-0.3) }},
		{"step", func(x float64) float64 { return math.Copysign(1, x-0.3) }},
		{"uneven step", func(x float64) float64 { return math.Copysign(1, x-0.3) + 0.999 }},
		{"exponential cliff", func(x float64) float64 { return math.Exp(300*(x-0.3)) - 1 }},
		{"flat but for an end", func(x float64) float64 { return math.Pow(x/4, 40) - 1e-20 }},
	} {
		calls := 0
		_, err := Root(func(x float64) float64 { calls++; return c.f(x) }, -1, 4, 1e-14)
		if err != nil || calls > 150 {
			t.Errorf("%s: %d calls, %v; want at most 150", c.name, calls, err)
		}
	}
}

// A search that does not converge uses all the calls it may, and no more.
func TestRootUsesItsAllowance(t *testing.T) {
	calls := 0
	_, err := Root(func(x float64) float64 { calls++; return math.Copysign(1, x-1e-300) }, -1, 1e308, 0)
	if err == nil || calls != evaluations {
		t.Errorf("%d calls, %v; want %d and an error", calls, err, evaluations)
	}
}

// Any rising function is caught: the true root of f(x) = g(x) − g(root) is
// known, however crooked g is.
func TestRootProperties(t *testing.T) {
	shapes := []func(float64) float64{
		func(x float64) float64 { return x },
		func(x float64) float64 { return x * x * x },
		math.Atan,
		math.Expm1,
		func(x float64) float64 { return math.Copysign(math.Pow(math.Abs(x), 0.2), x) },
		func(x float64) float64 { return x + math.Floor(x) },
	}
	rapid.Check(t, func(t *rapid.T) {
		shape := rapid.SampledFrom(shapes).Draw(t, "shape")
		root := rapid.Float64Range(-50, 50).Draw(t, "root")
		a := root - rapid.Float64Range(1e-3, 100).Draw(t, "below")
		b := root + rapid.Float64Range(1e-3, 100).Draw(t, "above")
		sign := rapid.SampledFrom([]float64{-1, 1}).Draw(t, "sign")
		tolerance := math.Pow(10, rapid.Float64Range(-12, -2).Draw(t, "decimals"))
		f := func(x float64) float64 {
			if x < a || x > b {
				t.Fatalf("f was asked at %g, outside [%g, %g]", x, a, b)
			}
			return sign * (shape(x) - shape(root))
		}
		got, err := Root(f, a, b, tolerance)
		if err != nil {
			t.Fatal(err)
		}
		slack := tolerance + 4*0x1p-52*math.Abs(got)
		if got < a || got > b {
			t.Fatalf("%g lies outside [%g, %g]", got, a, b)
		}
		below, above := f(max(a, got-slack)), f(min(b, got+slack))
		if f(got) != 0 && (below > 0) == (above > 0) {
			t.Fatalf("no change of sign within %g of %g: f = %g, %g", slack, got, below, above)
		}
		again, err := Root(f, b, a, tolerance)
		if err != nil || math.Abs(again-got) > 2*slack && f(again) != 0 && f(got) != 0 {
			t.Fatalf("ends swapped: %g, %v instead of %g", again, err, got)
		}
	})
}

// The bound on evaluations holds whatever the function does.
func TestRootAlwaysStops(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		values := rapid.SliceOfN(rapid.Float64(), 1, 40).Draw(t, "values")
		calls := 0
		f := func(float64) float64 {
			calls++
			return values[calls%len(values)]
		}
		x, err := Root(f, rapid.Float64().Draw(t, "a"), rapid.Float64().Draw(t, "b"), rapid.Float64().Draw(t, "tolerance"))
		if calls > evaluations {
			t.Fatalf("%d calls", calls)
		}
		if err == nil && math.IsNaN(x) {
			t.Fatal("root is not a number and no error")
		}
	})
}

func BenchmarkRoot(b *testing.B) {
	f := func(x float64) float64 { return math.Exp(x) - 5 }
	for b.Loop() {
		if _, err := Root(f, 0, 10, 1e-12); err != nil {
			b.Fatal(err)
		}
	}
}

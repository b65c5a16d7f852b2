package pool

import (
	"errors"
	"math"
	"slices"
	"testing"

	"lowvent.example/gas/propane"
	"lowvent.example/gas/solve/physicstest"
	"lowvent.example/schema/unit"
)

// failer is what tests and property tests have in common.
type failer interface {
	Helper()
	Errorf(string, ...any)
	Fatalf(string, ...any)
	Fatal(...any)
}

func near(t failer, what string, got, want, relative float64) {
	t.Helper()
	if !(math.Abs(got-want) <= relative*math.Abs(want)+1e-300) {
		t.Errorf("%s: %.9g, want %.9g within %.1g", what, got, want, relative)
	}
}

// must takes the value of an answer that has to be there.
func must[T any](t failer) func(T, error) T {
	return func(v T, err error) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

// refused holds that an answer is nothing beside a RangeError of the quantity.
func refused[T comparable](t *testing.T, quantity string) func(T, error) {
	return func(v T, err error) {
		t.Helper()
		var out *propane.RangeError
		var nothing T
		if !errors.As(err, &out) || v != nothing || (quantity != "" && out.Quantity != quantity) {
			t.Errorf("%v, %v; want nothing and a RangeError of %q", v, err, quantity)
		}
	}
}

// comparison gathers the relative errors of one set of published figures.
type comparison struct {
	name string
	off  []float64
}

func (c *comparison) add(t testing.TB, what string, got, want, tolerance float64) {
	t.Helper()
	off := math.Abs(got/want - 1)
	c.off = append(c.off, off)
	if !(off <= tolerance) {
		t.Errorf("%s, %s: %.6g, published %.6g, allowed %.2g", c.name, what, got, want, tolerance)
	}
}

func (c *comparison) log(t testing.TB) {
	t.Helper()
	slices.Sort(c.off)
	t.Logf("%s: %d rows, worst %.2f %%, median %.2f %%", c.name, len(c.off), 100*c.off[len(c.off)-1], 100*c.off[len(c.off)/2])
}

// text works out a formula text.
func text(t failer, formula, symbol string, symbols map[string]float64) float64 {
	t.Helper()
	name, value, err := physicstest.Evaluate(formula, symbols)
	if err != nil || name != symbol {
		t.Fatalf("%s: symbol %q, %v", formula, name, err)
	}
	return value
}

var (
	notNumbers = []float64{math.NaN(), math.Inf(1), math.Inf(-1)}
	week       = unit.Duration(7 * 86400)
)

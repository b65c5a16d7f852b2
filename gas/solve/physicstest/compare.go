package physicstest

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"lowvent.example/schema/unit"
)

// Comparison gathers the relative errors of one set of published figures, for the
// table of what was compared.
type Comparison struct {
	Name string
	off  []float64
}

// Add compares a figure with the published one; the test fails where it is further off
// than the tolerance, a share of the published figure.
func (c *Comparison) Add(t testing.TB, what string, got, want, tolerance float64) {
	t.Helper()
	off := math.Abs(got/want - 1)
	c.off = append(c.off, off)
	if !(off <= tolerance) {
		t.Errorf("%s, %s: %.6g, published %.6g, allowed %.2g", c.Name, what, got, want, tolerance)
	}
}

// Rows is how many figures were compared.
func (c *Comparison) Rows() int { return len(c.off) }

// Log writes the rows, the worst and the median error; the test fails if nothing was
// compared.
func (c *Comparison) Log(t testing.TB) {
	t.Helper()
	if len(c.off) == 0 {
		t.Fatalf("%s: nothing was compared", c.Name)
	}
	slices.Sort(c.off)
	t.Logf("%s: %d rows, worst %.2f %%, median %.2f %%", c.Name, len(c.off), 100*c.off[len(c.off)-1], 100*c.off[len(c.off)/2])
}

// Must turns a result that has to succeed into a plain number.
func Must[Q unit.Quantity](t testing.TB) func(Q, error) float64 {
	return func(q Q, err error) float64 {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return float64(q)
	}
}

// Refuses asks a function of one plain number for a good value, its bad ones and what is
// no number at all; the test fails where the good one is refused, or a bad one gives
// anything but 0 and an error of the type E with a range in its words.
func Refuses[E error](t testing.TB, name string, f func(float64) (float64, error), good float64, bad []float64) {
	t.Helper()
	if _, err := f(good); err != nil {
		t.Errorf("%s of %g is refused: %v", name, good, err)
	}
	for _, x := range slices.Concat(bad, []float64{math.NaN(), math.Inf(1), math.Inf(-1)}) {
		y, err := f(x)
		var outside E
		if !errors.As(err, &outside) || y != 0 || !strings.Contains(err.Error(), "lies outside the range") {
			t.Errorf("%s of %g gives %g, %v; want 0 and a %T", name, x, y, err, outside)
		}
	}
}

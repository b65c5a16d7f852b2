package physicstest

import (
	"math"
	"slices"
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

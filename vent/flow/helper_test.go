package flow

import (
	"errors"
	"math"
	"slices"
	"testing"

	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

const (
	celsius = 273.15
	sea     = 101325
	mean29  = 101325 * 0.029 / (8.314472 * 294.15) // density of air of 29 g/mol at 21 °C
)

// comparison gathers the relative errors of one set of published figures.
type comparison struct {
	name string
	off  []float64
}

func (c *comparison) add(t testing.TB, what string, got, want, tolerance float64) {
	t.Helper()
	off := got/want - 1
	c.off = append(c.off, off)
	if !(math.Abs(off) <= tolerance) {
		t.Errorf("%s, %s: %.6g, published %.6g, allowed %.2g", c.name, what, got, want, tolerance)
	}
}

func (c *comparison) log(t testing.TB) {
	t.Helper()
	slices.SortFunc(c.off, func(a, b float64) int {
		switch {
		case math.Abs(a) < math.Abs(b):
			return -1
		case math.Abs(a) > math.Abs(b):
			return 1
		}
		return 0
	})
	if len(c.off) == 0 {
		t.Fatalf("%s: no rows", c.name)
	}
	t.Logf("%s: %d rows, worst %+.2f %%, median %+.2f %%", c.name, len(c.off), 100*c.off[len(c.off)-1], 100*c.off[len(c.off)/2])
}

// got turns a result that must succeed into a plain number.
func got[Q unit.Quantity](t testing.TB) func(Q, error) float64 {
	return func(q Q, err error) float64 {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return float64(q)
	}
}

// near fails unless the two agree within a share.
func near(t testing.TB, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance*math.Abs(want)) {
		t.Errorf("%s: %.9g, want %.9g within %.2g", what, got, want, tolerance)
	}
}

func balance(t testing.TB, openings []Opening, sides Sides, source float64) Exchange {
	t.Helper()
	e, err := Balance(openings, sides, unit.VolumeFlow(source))
	if err != nil {
		t.Fatal(err)
	}
	return e
}

// refused reports a failure unless err is a RangeError that tells its unit.
func refused(t testing.TB, what string, err error) {
	t.Helper()
	var outside *propane.RangeError
	if !errors.As(err, &outside) || outside.Unit == "" || outside.Quantity == "" {
		t.Errorf("%s: %v, want a RangeError", what, err)
	}
}

// bad are the numbers that nothing may take.
func bad() []float64 { return []float64{math.NaN(), math.Inf(1), math.Inf(-1), -1e9, 1e9} }

func pair(area, low, high float64) []Opening {
	return []Opening{
		{Area: unit.Area(area), Coefficient: Coefficient, Middle: unit.Length(low)},
		{Area: unit.Area(area), Coefficient: Coefficient, Middle: unit.Length(high)},
	}
}

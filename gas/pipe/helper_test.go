package pipe

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"testing"

	"lowvent.example/gas/propane"
	"lowvent.example/gas/solve/physicstest"
	"lowvent.example/schema/unit"
)

// near reports an error unless got lies within a share of want.
func near(t *testing.T, what string, got, want, share float64) {
	t.Helper()
	if !(math.Abs(got-want) <= share*math.Abs(want)) {
		t.Errorf("%s = %.10g, want %.10g within %.3g", what, got, want, share)
	}
}

// must fails the test on an error.
func must[V any](t testing.TB) func(V, error) V {
	return func(v V, err error) V {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

// deviations gathers how far a figure lies from the published ones.
type deviations struct{ shares []float64 }

func (d *deviations) add(got, want float64) { d.shares = append(d.shares, got/want-1) }

// log writes the line of the closing table.
func (d *deviations) log(t *testing.T, name string) {
	t.Helper()
	if len(d.shares) == 0 {
		t.Fatalf("%s: nothing was compared", name)
	}
	var sizes []float64
	for _, s := range d.shares {
		sizes = append(sizes, math.Abs(s))
	}
	slices.Sort(sizes)
	t.Logf("%-62s rows %3d  worst %5.2f %%  median %5.2f %%  range %+.2f to %+.2f %%", name, len(sizes),
		100*sizes[len(sizes)-1], 100*sizes[len(sizes)/2], 100*slices.Min(d.shares), 100*slices.Max(d.shares))
}

// natural is natural gas as the examples of the fuel gas code have it: Cr as read,
// Y from memory.
func natural(btuPerCubicFoot float64) CodeGas {
	return CodeGas{Power: unit.GrossPower(btuPerCubicFoot * btuPerHour), Flow: footCubed, Cr: 0.6094, Y: 0.9992}
}

// vapour is propane vapour at a temperature in °C and an absolute pressure in Pa.
func vapour(t testing.TB, celsius, p float64) propane.Vapour {
	t.Helper()
	return must[propane.Vapour](t)(propane.VapourAt(unit.Temperature(celsius+273.15), unit.AbsolutePressure(p)))
}

// airAt20 is the density of air at 20 °C and 101 325 Pa.
const airAt20 = 1.204

// supply is 11 in w.c. at 60 °F, the conditions of the tables.
func supply(t testing.TB) Supply {
	t.Helper()
	outlet := 11 * inchOfWater
	return Supply{
		Outlet: unit.GaugePressure(outlet), Atmosphere: standardAtmosphere,
		Gas: vapour(t, 15.556, standardAtmosphere+outlet), Air: 1.2225, Code: CodePropane(),
	}
}

// firstStage is 10 psi at 60 °F.
func firstStage(t testing.TB) Supply {
	t.Helper()
	s := supply(t)
	s.Outlet = 10 * psi
	s.Gas = vapour(t, 15.556, standardAtmosphere+10*psi)
	return s
}

// inchesOf reads a trade size such as "1-1/4" in inches.
func inchesOf(t *testing.T, name string) float64 {
	t.Helper()
	whole, over, under := 0.0, 0.0, 1.0
	if n, _ := fmt.Sscanf(name, "%f-%f/%f", &whole, &over, &under); n == 3 {
		return whole + over/under
	}
	if n, _ := fmt.Sscanf(name, "%f/%f", &over, &under); n == 2 {
		return over / under
	}
	if n, _ := fmt.Sscanf(name, "%f", &whole); n == 1 {
		return whole
	}
	t.Fatalf("%q is no size", name)
	return 0
}

// evaluate works a formula text out.
func evaluate(t *testing.T, text string, symbols map[string]float64) float64 {
	t.Helper()
	_, v, err := physicstest.Evaluate(text, symbols)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// outOfRange holds that an error is a RangeError that says something.
func outOfRange(t *testing.T, what string, err error) {
	t.Helper()
	var e *propane.RangeError
	if !errors.As(err, &e) || e.Error() == "" {
		t.Errorf("%s: error %v, want a RangeError", what, err)
	}
}

// nonsense are values that no quantity above zero has.
var nonsense = []float64{math.NaN(), math.Inf(1), math.Inf(-1), -1, -1e-9, math.MaxFloat64}

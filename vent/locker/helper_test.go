package locker

import (
	"errors"
	"math"
	"regexp"
	"slices"
	"strconv"
	"testing"

	"lowvent.example/gas/propane"
	"lowvent.example/gas/solve/physicstest"
	"lowvent.example/schema/unit"
	"lowvent.example/vent/flow"
)

const (
	celsius = 273.15
	sea     = 101325
)

// comparison gathers model over measured of one set of published figures.
type comparison struct {
	name string
	off  []float64
}

// add notes one row; it fails unless model/measured lies in the band.
func (c *comparison) add(t testing.TB, what string, got, want, low, high float64) {
	t.Helper()
	c.off = append(c.off, got/want-1)
	if ratio := got / want; !(ratio >= low && ratio <= high) {
		t.Errorf("%s, %s: %.4g, published %.4g: ratio %.3f outside %.3f to %.3f", c.name, what, got, want, ratio, low, high)
	}
}

func (c *comparison) log(t testing.TB) {
	t.Helper()
	if len(c.off) == 0 {
		t.Fatalf("%s: no rows", c.name)
	}
	slices.SortFunc(c.off, func(a, b float64) int {
		if math.Abs(a) < math.Abs(b) {
			return -1
		}
		return 1
	})
	t.Logf("%s: %d rows, worst %+.1f %%, median %+.1f %%", c.name, len(c.off), 100*c.off[len(c.off)-1], 100*c.off[len(c.off)/2])
}

// input reads a figure name=… out of the column of inputs.
func input(t testing.TB, row physicstest.Row, name string) float64 {
	t.Helper()
	found := regexp.MustCompile(`(?:^|[; ])` + name + `=([0-9.eE+-]+)`).FindStringSubmatch(row["inputs"])
	if found == nil {
		t.Fatalf("no %s in %q", name, row["inputs"])
	}
	v, err := strconv.ParseFloat(found[1], 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// topic returns the rows of one topic of the table of experiments.
func topic(t testing.TB, name string) []physicstest.Row {
	t.Helper()
	var rows []physicstest.Row
	for _, row := range physicstest.Published(t, "experiments.csv") {
		if row["topic"] == name {
			rows = append(rows, row)
		}
	}
	if len(rows) == 0 {
		t.Fatalf("no rows of topic %q", name)
	}
	return rows
}

func got[A any](t testing.TB) func(A, error) A {
	return func(a A, err error) A {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return a
	}
}

func near(t testing.TB, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance*math.Abs(want)) {
		t.Errorf("%s: %.9g, want %.9g within %.2g", what, got, want, tolerance)
	}
}

func refused(t testing.TB, what string, err error) {
	t.Helper()
	var outside *propane.RangeError
	if !errors.As(err, &outside) || outside.Unit == "" {
		t.Errorf("%s: %v, want a RangeError", what, err)
	}
}

func second[A any](_ A, err error) error { return err }

// leaking is a leak in m³/s as a mass at 21 °C.
func leaking(t testing.TB, gas flow.Gas, volume float64) unit.MassFlow {
	t.Helper()
	return unit.MassFlow(volume * float64(got[unit.Density](t)(gas.InAir(21+celsius, sea))))
}

// ulv are the two vents of the helium box.
func ulv() []flow.Opening {
	const side, edge, height = 0.0215, 0.025, 0.75
	vent := flow.Opening{Area: side * side, Coefficient: flow.Coefficient, Extent: side}
	low, high := vent, vent
	low.Middle, high.Middle = edge+side/2, height-edge-side/2
	return []flow.Opening{low, high}
}

// ssv is the one vent of the helium box.
func ssv() []flow.Opening {
	return []flow.Opening{{Area: 0.024 * 0.024, Coefficient: flow.Coefficient, Middle: 0.375, Extent: 0.024}}
}

// box is the helium box with a leak in m³/s, as warm inside as outside.
func box(t testing.TB, gas flow.Gas, openings []flow.Opening, leak float64) Conditions {
	t.Helper()
	return Conditions{
		Volume: 1.6875, Openings: openings, Gas: gas, Leak: leaking(t, gas, leak),
		Outside: 21 + celsius, Pressure: sea,
	}
}

func model(t testing.TB, c Conditions) *Model {
	t.Helper()
	return got[*Model](t)(New(c))
}

// van is a small propane locker: 120 litres, two vents of 40 cm², 40 cm apart.
func van(leak unit.MassFlow) Conditions {
	return Conditions{
		Volume: 0.12, Gas: flow.Propane(), Leak: leak, Outside: 15 + celsius, Pressure: sea,
		Openings: []flow.Opening{
			{Area: 40e-4, Coefficient: flow.Coefficient, Middle: 0.05, Extent: 0.04},
			{Area: 40e-4, Coefficient: flow.Coefficient, Middle: 0.45, Extent: 0.04},
		},
	}
}

func propaneMeasure() Measure {
	return Measure{Lower: propane.WidestRange().Lower, Share: Quarter, Factor: Near}
}

package room

import (
	"errors"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
	"pgregory.net/rapid"
)

const (
	celsius = 273.15
	hour    = 3600.0
)

// tally gathers the errors of one comparison with published figures and logs them
// as one line: name, rows, worst and median error.
type tally struct {
	name, unit string
	errors     []float64
}

func newTally(t *testing.T, name, unit string) *tally {
	k := &tally{name: name, unit: unit}
	t.Cleanup(func() {
		if len(k.errors) == 0 {
			t.Errorf("%s: no rows", k.name)
			return
		}
		slices.SortFunc(k.errors, func(a, b float64) int {
			if math.Abs(a) < math.Abs(b) {
				return -1
			}
			return 1
		})
		t.Logf("%s: rows %d, worst %+.3g %s, median %+.3g %s", k.name, len(k.errors),
			k.errors[len(k.errors)-1], k.unit, k.errors[len(k.errors)/2], k.unit)
	})
	return k
}

func (k *tally) add(e float64) { k.errors = append(k.errors, e) }

// reporter is a test or a property.
type reporter interface {
	Helper()
	Errorf(format string, values ...any)
}

// near fails unless got is within a relative tolerance of want.
func near(t reporter, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance*math.Abs(want)) {
		t.Errorf("%s is %.9g, want %.9g within %.3g of it", what, got, want, tolerance)
	}
}

// must returns a value where there may be no error.
func must[T any](value T, err error) T {
	if err != nil {
		panic(err)
	}
	return value
}

// dryAir is outside air without water, with 400 ppm of carbon dioxide.
func dryAir() Air { return Air{Oxygen: OxygenOutside, CarbonDioxide: 400e-6} }

// van is a small closed room at 15 °C inside and out with dry outside air, where a
// standard volume is a volume.
func van() Room {
	return Room{Volume: 10, Inside: 15 + celsius, Outside: 15 + celsius, Pressure: 101325, Air: dryAir()}
}

func perHour(cubicMetres float64) unit.VolumeFlow { return unit.VolumeFlow(cubicMetres / hour) }

// rooms draws a room with fresh air.
func rooms(t *rapid.T) Room {
	outside := rapid.Float64Range(240, 310).Draw(t, "outside")
	p := rapid.Float64Range(60e3, 105e3).Draw(t, "pressure")
	return Room{
		Volume:   unit.Volume(rapid.Float64Range(2, 200).Draw(t, "volume")),
		Inside:   unit.Temperature(outside + rapid.Float64Range(0, 30).Draw(t, "difference")),
		Outside:  unit.Temperature(outside),
		Pressure: unit.AbsolutePressure(p),
		Fresh:    perHour(rapid.Float64Range(5, 500).Draw(t, "fresh")),
		Air: must(Outside(unit.Ratio(rapid.Float64Range(350e-6, 900e-6).Draw(t, "outside carbon dioxide")),
			unit.Temperature(outside), unit.Ratio(rapid.Float64Range(0, 1).Draw(t, "humidity")), unit.AbsolutePressure(p))),
	}
}

// aired is a room and what burns and breathes in it, for which there is oxygen enough.
func aired(t *rapid.T) (Room, Exchange) {
	type both struct {
		room     Room
		exchange Exchange
	}
	drawn := rapid.Custom(func(t *rapid.T) both { return both{rooms(t), exchanges(t)} }).Filter(func(b both) bool {
		_, err := Steady(b.room, b.exchange)
		return err == nil
	}).Draw(t, "with oxygen enough")
	return drawn.room, drawn.exchange
}

// exchanges draws a flame of up to 3 kW with people, which no room of [rooms] is
// too small for in the first minutes.
func exchanges(t *rapid.T) Exchange {
	return Together(
		Propane(unit.GrossPower(rapid.Float64Range(0, 3000).Draw(t, "power"))),
		must(Breathing(Resting, unit.Count(rapid.IntRange(0, 4).Draw(t, "people")))),
	)
}

// refused fails unless err is a RangeError about the quantity.
func refused(t reporter, err error, quantity string) {
	t.Helper()
	var out *propane.RangeError
	if !errors.As(err, &out) || !strings.Contains(out.Quantity, quantity) || out.Unit == "" {
		t.Errorf("got %v, want a refusal of the %s with its range", err, quantity)
	}
}

// input returns one number of the column inputs of the table of experiments.
func input(t testing.TB, inputs, name string) float64 {
	t.Helper()
	for part := range strings.SplitSeq(inputs, ";") {
		if value, found := strings.CutPrefix(part, name+"="); found {
			number, err := strconv.ParseFloat(value, 64)
			if err != nil {
				t.Fatal(err)
			}
			return number
		}
	}
	t.Fatalf("%q does not give %s", inputs, name)
	return 0
}

// nearShare is near for shares by volume, with a floor of 1e-10 under which they are
// alike.
func nearShare(t reporter, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= 1e-10) {
		near(t, what, got, want, tolerance)
	}
}

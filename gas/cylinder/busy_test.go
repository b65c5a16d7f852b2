package cylinder

import (
	"errors"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

func TestBusyTimes(t *testing.T) {
	const h = 3600
	always := Spell{0, 24 * h, 1e-5}
	for _, c := range []struct {
		name   string
		spells []Spell
		want   []BusyTime
	}{
		{"nothing is drawn", nil, nil},
		{"evenly all day", []Spell{always}, nil},
		{"one supper", []Spell{{18 * h, 2 * h, 4e-5}}, []BusyTime{{18 * h, 2 * h, []Spell{{0, 2 * h, 4e-5}}}}},
		{"breakfast and supper over a fridge", []Spell{always, {7 * h, h, 2e-5}, {18 * h, 2 * h, 4e-5}},
			[]BusyTime{{7 * h, h, []Spell{{0, h, 3e-5}}}, {18 * h, 2 * h, []Spell{{0, 2 * h, 5e-5}}}}},
		{"supper while the heater runs", []Spell{{16 * h, 6 * h, 2e-5}, {18 * h, h, 3e-5}},
			[]BusyTime{{16 * h, 6 * h, []Spell{{0, 2 * h, 2e-5}, {2 * h, h, 5e-5}, {3 * h, 3 * h, 2e-5}}}}},
		{"past midnight is one", []Spell{{22 * h, 5 * h, 3e-5}}, []BusyTime{{22 * h, 5 * h, []Spell{{0, 2 * h, 3e-5}, {2 * h, 3 * h, 3e-5}}}}},
	} {
		got, err := BusyTimes(c.spells)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
		}
		near := cmp.Comparer(func(a, b unit.MassFlow) bool { return math.Abs(float64(a-b)) < 1e-15 })
		if diff := cmp.Diff(c.want, got, near); diff != "" {
			t.Errorf("%s:\n%s", c.name, diff)
		}
	}
	var out *propane.RangeError
	if _, err := BusyTimes([]Spell{{-1, 10, 1e-5}}); !errors.As(err, &out) {
		t.Errorf("a spell before midnight: %v", err)
	}
}

// TestBusyTimesHoldTheirShare: they follow each other without a gap, draw more than the
// mean, and what they leave out draws no more than it.
func TestBusyTimesHoldTheirShare(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		spell := rapid.Custom(func(t *rapid.T) Spell {
			return Spell{unit.Duration(60 * rapid.IntRange(0, 1439).Draw(t, "start")), unit.Duration(60 * rapid.IntRange(1, 1440).Draw(t, "lasts")),
				unit.MassFlow(rapid.Float64Range(0, 1e-3).Draw(t, "draw"))}
		})
		spells := rapid.SliceOfN(spell, 0, 6).Draw(t, "spells")
		times, err := BusyTimes(spells)
		if err != nil {
			t.Fatal(err)
		}
		total, busy, length := 0.0, 0.0, 0.0
		for _, s := range spells {
			total += float64(s.Draw) * float64(s.Lasts)
		}
		for _, b := range times {
			at := unit.Duration(0)
			for _, s := range b.Spells {
				if s.Start != at || float64(s.Draw) <= total/day {
					t.Fatalf("%+v in a day of %v kg", b, total)
				}
				at += s.Lasts
				busy += float64(s.Draw) * float64(s.Lasts)
			}
			if at != b.Lasts || at > day {
				t.Fatalf("%+v lasts %v", b, at)
			}
			length += float64(b.Lasts)
		}
		if rest := (total - busy) - total/day*(day-length); rest > 1e-9*(1+total) {
			t.Fatalf("what is left over draws %v more than the mean", rest)
		}
	})
}

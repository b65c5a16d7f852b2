package cylinder

import (
	"errors"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

func TestRunRefuses(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, c := range []struct {
		name, quantity string
		change         func(*Supply)
	}{
		{"no vessel", "number of vessels", func(s *Supply) { s.Vessels = nil }},
		{"seventeen vessels", "number of vessels", func(s *Supply) { s.Vessels = make([]Filled, 17) }},
		{"sixty-five spells", "number of spells", func(s *Supply) { s.Spells = make([]Spell, 65) }},
		{"vessel without figures", "water capacity", func(s *Supply) { s.Vessels[0] = Filled{} }},
		{"overfilled when hot", "mass of propane", func(s *Supply) { s.Vessels[0].Propane, s.Air.Swing = 10.2, 60 }},
		{"negative propane", "mass of propane", func(s *Supply) { s.Vessels[0].Propane = -1 }},
		{"undefined propane", "mass of propane", func(s *Supply) { s.Vessels[0].Propane = unit.PropaneMass(nan) }},
		{"negative wall", "wall coefficient", func(s *Supply) { s.Wall = -1 }},
		{"undefined wall", "wall coefficient", func(s *Supply) { s.Wall = unit.HeatTransfer(nan) }},
		{"undefined start", "temperature at the start", func(s *Supply) { s.Start = unit.Temperature(nan) }},
		{"start in °C", "temperature at the start", func(s *Supply) { s.Start = 20 }},
		{"undefined least", "least temperature", func(s *Supply) { s.Least = unit.Temperature(nan) }},
		{"least too cold", "least temperature", func(s *Supply) { s.Least = 200 }},
		{"air too cold", "coldest air temperature", func(s *Supply) { s.Air.Coldest = 220 }},
		{"undefined air", "coldest air temperature", func(s *Supply) { s.Air.Coldest = unit.Temperature(nan) }},
		{"negative swing", "swing of the air temperature", func(s *Supply) { s.Air.Swing = -1 }},
		{"swing too hot", "swing of the air temperature", func(s *Supply) { s.Air.Swing = 90 }},
		{"undefined swing", "swing of the air temperature", func(s *Supply) { s.Air.Swing = unit.TemperatureDifference(nan) }},
		{"dawn tomorrow", "time of dawn", func(s *Supply) { s.Air.Dawn = day }},
		{"undefined dawn", "time of dawn", func(s *Supply) { s.Air.Dawn = unit.Duration(nan) }},
		{"spell that starts tomorrow", "start of a spell", func(s *Supply) { s.Spells[0].Start = day }},
		{"spell that starts yesterday", "start of a spell", func(s *Supply) { s.Spells[0].Start = -1 }},
		{"undefined start of a spell", "start of a spell", func(s *Supply) { s.Spells[0].Start = unit.Duration(nan) }},
		{"spell without length", "length of a spell", func(s *Supply) { s.Spells[0].Lasts = 0 }},
		{"spell of two days", "length of a spell", func(s *Supply) { s.Spells[0].Lasts = 2 * day }},
		{"undefined length", "length of a spell", func(s *Supply) { s.Spells[0].Lasts = unit.Duration(nan) }},
		{"negative draw", "draw", func(s *Supply) { s.Spells[0].Draw = -1 }},
		{"undefined draw", "draw", func(s *Supply) { s.Spells[0].Draw = unit.MassFlow(nan) }},
		{"endless draw", "draw", func(s *Supply) { s.Spells[0].Draw = unit.MassFlow(inf) }},
		{"all draws together", "draw", func(s *Supply) { s.Spells = []Spell{{0, hour, 0.6}, {5 * hour, hour, 0.6}} }},
		{"no horizon", "horizon", func(s *Supply) { s.Horizon = 0 }},
		{"undefined horizon", "horizon", func(s *Supply) { s.Horizon = unit.Duration(nan) }},
		{"horizon of a century", "horizon", func(s *Supply) { s.Horizon = 36500 * day }},
		{"negative interval", "interval of the series", func(s *Supply) { s.Interval = -1 }},
		{"interval of a second in two weeks", "interval of the series", func(s *Supply) { s.Interval = 1 }},
		{"undefined interval", "interval of the series", func(s *Supply) { s.Interval = unit.Duration(nan) }},
	} {
		s := winter(twentyPound())
		c.change(&s)
		out, err := Run(s)
		refused(t, c.name, err, c.quantity)
		if diff := cmp.Diff(Outcome{}, out); diff != "" {
			t.Errorf("%s: an outcome beside an error: %s", c.name, diff)
		}
	}
}

// The ends of the ranges are in them.
func TestRunAtTheEndsOfItsRanges(t *testing.T) {
	low, high := propane.LeastTemperature, propane.GreatestTemperature
	v := twentyPound()
	v.Propane = 8
	for _, s := range []Supply{
		{Vessels: []Filled{v}, Wall: 0, Start: low, Least: low, Air: Air{Coldest: low}, Horizon: day},
		{Vessels: []Filled{v}, Wall: 1000, Start: high, Least: low, Air: Air{Coldest: low, Swing: 114.9}, Horizon: 2 * day, Interval: hour},
		{Vessels: []Filled{v}, Wall: 1000, Start: low, Least: high, Air: Air{Coldest: high}, Horizon: 2 * day, Interval: hour},
		{Vessels: []Filled{v}, Wall: 5, Start: 300, Least: 250, Air: Air{Coldest: 280}, Spells: []Spell{{0, day, 1}}, Horizon: day},
	} {
		out := ran(t, s)
		if out.Lowest.Temperature < low-1e-6 || out.Used < 0 {
			t.Errorf("%+v", out)
		}
	}
}

// An outcome is the same whenever it is asked for, and the supply is left alone.
func TestRunIsPure(t *testing.T) {
	little := twentyPound()
	little.Propane = 3
	s := winter(twentyPound(), little, twentyPound())
	s.Interval = 2 * hour
	before := winter(twentyPound(), little, twentyPound())
	before.Interval = 2 * hour
	if diff := cmp.Diff(ran(t, s), ran(t, s)); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff(before, s); diff != "" {
		t.Error(diff)
	}
}

func TestEndsInWords(t *testing.T) {
	seen := map[string]bool{}
	for _, e := range []End{Fed, Chilled, Emptied} {
		if seen[e.String()] || e.String() == "" {
			t.Errorf("%d is %q", e, e)
		}
		seen[e.String()] = true
	}
}

func TestAirOfADay(t *testing.T) {
	a := Air{Coldest: 260, Swing: 12, Dawn: 6 * hour}
	for _, c := range []struct{ hours, want float64 }{{6, 260}, {18, 272}, {12, 266}, {0, 266}, {30, 260}, {24 * 9, 266}} {
		if got := float64(a.At(unit.Duration(c.hours * hour))); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("at %g h %g K, want %g", c.hours, got, c.want)
		}
	}
	if got := (Air{Coldest: 250, Dawn: 3}).At(1e5); got != 250 {
		t.Errorf("without a swing %g K", float64(got))
	}
}

func TestStretches(t *testing.T) {
	for _, c := range []struct {
		name   string
		spells []Spell
		want   []stretch
	}{
		{"none", nil, []stretch{{0, day, 0}}},
		{"one", []Spell{{10, 20, 3}}, []stretch{{0, 10, 0}, {10, 30, 3}, {30, day, 0}}},
		{"all day from noon", []Spell{{day / 2, day, 1}}, []stretch{{0, day / 2, 1}, {day / 2, day, 1}}},
		{"over midnight", []Spell{{day - 10, 30, 2}}, []stretch{{0, 20, 2}, {20, day - 10, 0}, {day - 10, day, 2}}},
		{"to midnight", []Spell{{day - 10, 10, 2}}, []stretch{{0, day - 10, 0}, {day - 10, day, 2}}},
		{"overlapping", []Spell{{10, 20, 3}, {20, 20, 4}}, []stretch{{0, 10, 0}, {10, 20, 3}, {20, 30, 7}, {30, 40, 4}, {40, day, 0}}},
		{"one within the other", []Spell{{10, 40, 3}, {20, 10, 4}}, []stretch{{0, 10, 0}, {10, 20, 3}, {20, 30, 7}, {30, 50, 3}, {50, day, 0}}},
		{"end to end", []Spell{{10, 10, 3}, {20, 10, 4}}, []stretch{{0, 10, 0}, {10, 20, 3}, {20, 30, 4}, {30, day, 0}}},
	} {
		if diff := cmp.Diff(c.want, stretches(c.spells), cmp.AllowUnexported(stretch{})); diff != "" {
			t.Errorf("%s: %s", c.name, diff)
		}
	}
}

// A RangeError tells what to mend.
func TestRefusalsSayWhatWasExpected(t *testing.T) {
	s := winter(twentyPound())
	s.Start = 20
	_, err := Run(s)
	var outside *propane.RangeError
	if !errors.As(err, &outside) || outside.Value != 20 || outside.Unit != "K" || outside.Low != 228.15 {
		t.Errorf("%v", err)
	}
}

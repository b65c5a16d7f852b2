package cylinder

import (
	"math"
	"testing"

	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
	"pgregory.net/rapid"
)

// worse are the changes that never make a supply last longer.
func worse() map[string]func(*Supply) {
	return map[string]func(*Supply){
		"colder air":   func(s *Supply) { s.Air.Coldest--; s.Start-- },
		"less propane": func(s *Supply) { s.Vessels[0].Propane *= 0.9 },
		"poorer wall":  func(s *Supply) { s.Wall *= 0.8 },
		"higher least": func(s *Supply) { s.Least++ },
		"larger draw": func(s *Supply) {
			s.Spells = append([]Spell(nil), s.Spells...)
			for i := range s.Spells {
				s.Spells[i].Draw *= 1.2
			}
		},
	}
}

// notLonger compares two ends. An emptied vessel leaves its vapour, the less the
// colder it is: only by having drawn that may the worse one last longer.
func notLonger(rt *rapid.T, name string, base, other Outcome) {
	if base.End == Fed || other.Time <= base.Time+1e-3 {
		return
	}
	if base.End == Emptied && other.Used <= base.Used+base.Left {
		return
	}
	rt.Fatalf("%s: %v after %.6g h, before %v after %.6g h", name, other.End, float64(other.Time)/hour, base.End, float64(base.Time)/hour)
}

// In air of one temperature, from a start no warmer: every change to the worse,
// with spells and pauses, ends no later.
func TestRunIsMonotoneInSteadyAir(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		s := anySupply(rt)
		s.Air.Swing, s.Vessels, s.Changeover = 0, s.Vessels[:1:1], false
		s.Air.Coldest = max(s.Air.Coldest, 235)
		s.Start = s.Air.Coldest
		base := ran(rt, s)
		for name, change := range worse() {
			other := s
			other.Vessels = append([]Filled(nil), s.Vessels...)
			change(&other)
			notLonger(rt, name, base, ran(rt, other))
		}
	})
}

// With a swing of the air: a higher least temperature, and air that is colder all
// day. (A poorer wall keeps the day's warmth into the night, and less propane
// warms sooner in the morning: neither is worse in every hour.)
func TestRunIsMonotoneThroughTheDay(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		s := anySupply(rt)
		base := ran(rt, s)
		for _, name := range []string{"higher least", "colder air"} {
			other := s
			worse()[name](&other)
			got := ran(rt, other)
			if name == "higher least" && got.Time > base.Time+1e-3 {
				rt.Fatalf("higher least: %g s, before %g s", float64(got.Time), float64(base.Time))
			}
			if len(s.Vessels) == 1 {
				notLonger(rt, name, base, got)
			}
		}
	})
}

// drawnTogether is the draw of all spells at a time.
func drawnTogether(s Supply) float64 {
	sum := 0.0
	for _, spell := range s.Spells {
		sum += float64(spell.Draw)
	}
	return sum
}

// Time and size have no unit of their own: a bank of everything eight times as
// large, in vessels twice as long each way, keeps its temperature where the wall is
// twice as good.
func TestRunKnowsNoSize(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		s := rapid.Custom(anySupply).Filter(func(s Supply) bool { return 8*drawnTogether(s) <= greatestDraw }).Draw(rt, "of which eight times as much can be drawn")
		big := s
		big.Wall *= 2
		big.Vessels, big.Spells = nil, nil
		for _, v := range s.Vessels {
			v.Water, v.Propane, v.Metal, v.Diameter, v.Height = 8*v.Water, 8*v.Propane, 8*v.Metal, 2*v.Diameter, 2*v.Height
			big.Vessels = append(big.Vessels, v)
		}
		for _, spell := range s.Spells {
			spell.Draw *= 8
			big.Spells = append(big.Spells, spell)
		}
		a, b := ran(rt, s), ran(rt, big)
		if a.End != b.End || math.Abs(float64(a.Time-b.Time)) > 0.5 || math.Abs(float64(8*a.Used-b.Used)) > 1e-4 ||
			math.Abs(float64(a.Lowest.Temperature-b.Lowest.Temperature)) > 0.01 {
			rt.Fatalf("small %+v, big %+v", a, b)
		}
	})
}

// A mixture is the caller's: the temperature at which it feeds the regulator.
// With more butane that is higher, and the supply ends no later.
func TestLeastTemperatureIsTheCallers(t *testing.T) {
	s := steady(twentyPound(), 263.15, 250*gram, 10)
	before := math.Inf(1)
	for _, p := range []float64{110e3, 130e3, 170e3, 250e3} {
		s.Least = unit.Temperature(value[unit.Temperature](t)(propane.SaturationTemperature(unit.AbsolutePressure(p))))
		out := ran(t, s)
		if float64(out.Time) > before {
			t.Errorf("%g Pa: %g s, with a lower pressure %g s", p, float64(out.Time), before)
		}
		before = float64(out.Time)
		if out.End == Chilled && math.Abs(float64(out.Lowest.Pressure)/p-1) > 1e-5 {
			t.Errorf("ended at %g Pa, want %g", float64(out.Lowest.Pressure), p)
		}
	}
}

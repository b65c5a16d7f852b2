package cylinder

import (
	"math"
	"testing"

	"lowvent.example/schema/unit"
	"pgregory.net/rapid"
)

// anySupply draws a bank, a day and a pattern of use.
func anySupply(rt *rapid.T) Supply {
	s := Supply{
		Changeover: rapid.Bool().Draw(rt, "changeover"),
		Wall:       unit.HeatTransfer(rapid.Float64Range(0, 20).Draw(rt, "wall")),
		Start:      unit.Temperature(rapid.Float64Range(240, 300).Draw(rt, "start")),
		Least:      unit.Temperature(rapid.Float64Range(228.15, 260).Draw(rt, "least")),
		Air: Air{
			Coldest: unit.Temperature(rapid.Float64Range(235, 290).Draw(rt, "coldest")),
			Swing:   unit.TemperatureDifference(rapid.Float64Range(0, 25).Draw(rt, "swing")),
			Dawn:    unit.Duration(rapid.Float64Range(0, day-1).Draw(rt, "dawn")),
		},
		Horizon: unit.Duration(rapid.Float64Range(0.2, 5).Draw(rt, "days") * day),
	}
	for range rapid.IntRange(1, 3).Draw(rt, "vessels") {
		v := anyVessel(rt)
		s.Vessels = append(s.Vessels, Filled{v, unit.PropaneMass(rapid.Float64Range(0, 0.42).Draw(rt, "share") * float64(v.Water))})
	}
	if rapid.Bool().Draw(rt, "twins") {
		s.Vessels = append(s.Vessels, s.Vessels[0])
	}
	for range rapid.IntRange(0, 4).Draw(rt, "spells") {
		s.Spells = append(s.Spells, Spell{
			unit.Duration(rapid.Float64Range(0, day-1).Draw(rt, "from")),
			unit.Duration(rapid.Float64Range(60, day).Draw(rt, "lasts")),
			unit.MassFlow(rapid.Float64Range(0, 1.5).Draw(rt, "kg/h") / hour),
		})
	}
	return s
}

// followed is a run and its ledger.
func followed(t tester, s Supply) *run {
	t.Helper()
	r, err := newRun(s)
	if err != nil {
		t.Fatal(err)
	}
	if err := r.follow(); err != nil {
		t.Fatal(err)
	}
	return r
}

// What was drawn is the integral of the pattern, worked out spell by spell; what
// the vessels hold more or less of energy is the heat taken up less the
// enthalpy carried off. Both to 1e-6.
func TestMassAndEnergyClose(t *testing.T) {
	worstMass, worstEnergy := 0.0, 0.0
	rapid.Check(t, func(rt *rapid.T) {
		s := anySupply(rt)
		r := followed(rt, s)
		drawn := 0.0
		for _, spell := range s.Spells {
			drawn += drawnUntil(spell, r.t)
		}
		out := r.outcome()
		off := math.Abs(float64(out.Used)-drawn) / max(float64(out.Used), 1e-3)
		worstMass = max(worstMass, off)
		if off > 1e-6 {
			rt.Fatalf("used %.9g kg, drawn %.9g kg", float64(out.Used), drawn)
		}
		heat, carried := r.y[len(r.y)-2], r.y[len(r.y)-1]
		gained := r.energy(r.y) - r.energy(r.start)
		scale := max(math.Abs(heat), math.Abs(carried), math.Abs(gained), 1e4)
		off = math.Abs(gained-heat+carried) / scale
		worstEnergy = max(worstEnergy, off)
		if off > 1e-6 {
			rt.Fatalf("gained %.9g J, heat %.9g J, carried off %.9g J", gained, heat, carried)
		}
		kept := 0.0
		for i, k := range r.tanks {
			kept += k.count * r.y[2*i]
			if r.y[2*i] > r.start[2*i]+1e-9 {
				rt.Fatalf("vessel %d took gas up: %.9g to %.9g kg", i, r.start[2*i], r.y[2*i])
			}
		}
		if math.Abs(kept-float64(out.Left)) > 1e-9 || math.Abs(float64(out.Used+out.Left)-r.mass(r.start)) > 1e-9 {
			rt.Fatalf("left %.9g kg, in the vessels %.9g kg", float64(out.Left), kept)
		}
	})
	t.Logf("closure over the drawn cases: mass %.1e, energy %.1e", worstMass, worstEnergy)
}

// What every outcome keeps to, whatever the supply.
func TestOutcomesAreWhole(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		s := anySupply(rt)
		s.Interval = unit.Duration(rapid.Float64Range(600, 20000).Draw(rt, "interval"))
		out := ran(rt, s)
		started := 0
		for _, spell := range s.Spells {
			for at := spell.Start; at < s.Horizon; at += day {
				started++
			}
		}
		coldest := min(float64(s.Start), float64(s.Air.Coldest))
		low := float64(out.Lowest.Temperature)
		switch {
		case out.Time < 0 || out.Time > s.Horizon || (out.End == Fed) != (out.Time == s.Horizon):
			rt.Fatalf("%v at %g of %g s", out.End, float64(out.Time), float64(s.Horizon))
		case out.SpellsFed+out.SpellsNotFed != started:
			rt.Fatalf("%d spells fed, %d not, %d began", out.SpellsFed, out.SpellsNotFed, started)
		case out.Used < 0 || out.Left < 0:
			rt.Fatalf("used %g, left %g", float64(out.Used), float64(out.Left))
		case low < min(coldest, float64(s.Least))-1e-5:
			rt.Fatalf("%g K is colder than start, air and least", low)
		case out.End != Fed && len(out.Changes) != len(s.Vessels):
			rt.Fatalf("ended with changes %v", out.Changes)
		case out.Spare < 0 || out.Days < 0 || float64(out.Days)*day+float64(out.Spare) > float64(out.Time)+1:
			rt.Fatalf("%d days and %g s spare of %g s", out.Days, float64(out.Spare), float64(out.Time))
		}
		for i, p := range out.Series {
			if p.Temperature < out.Lowest.Temperature-0.05 || i > 0 && p.Time <= out.Series[i-1].Time {
				rt.Fatalf("point %d: %+v, lowest %+v", i, p, out.Lowest)
			}
		}
		if n := len(out.Series); n == 0 || out.Series[n-1].Time != out.Time || math.Abs(float64(out.Series[n-1].Propane-out.Left)) > 1e-9 {
			rt.Fatalf("the series does not end at the end: %+v", out.Series)
		}
	})
}

// Two vessels alike, side by side, are one with half the draw; and the same two
// told apart by a breath of propane go on alike. As one after another they differ.
func TestAlikeVesselsStayAlike(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		s := anySupply(rt)
		s.Changeover, s.Vessels = false, s.Vessels[:1]
		s.Interval = 7200
		if s.Vessels[0].Propane < 1 {
			s.Vessels[0].Propane = 0.4 * unit.PropaneMass(s.Vessels[0].Water)
		}
		two, nearly, half := s, s, s
		two.Vessels = []Filled{s.Vessels[0], s.Vessels[0]}
		other := s.Vessels[0]
		other.Propane -= 1e-9
		nearly.Vessels = []Filled{s.Vessels[0], other}
		half.Spells = nil
		for _, spell := range s.Spells {
			half.Spells = append(half.Spells, Spell{spell.Start, spell.Lasts, spell.Draw / 2})
		}
		one := ran(rt, half)
		for name, pair := range map[string]Outcome{"twins": ran(rt, two), "near twins": ran(rt, nearly)} {
			if pair.End != one.End || math.Abs(float64(pair.Time-one.Time)) > 0.5 || pair.SpellsFed != one.SpellsFed ||
				math.Abs(float64(pair.Lowest.Temperature-one.Lowest.Temperature)) > 0.01 || math.Abs(float64(pair.Used-2*one.Used)) > 1e-4 {
				rt.Fatalf("%s: %v at %g s, lowest %.7g K, used %.9g; half the draw: %v at %g s, %.7g K, %.9g", name, pair.End, float64(pair.Time),
					float64(pair.Lowest.Temperature), float64(pair.Used), one.End, float64(one.Time), float64(one.Lowest.Temperature), float64(one.Used))
			}
		}
	})
}

// Spells that overlap add up, and one that crosses midnight is two.
func TestSpellsAddUp(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		s := anySupply(rt)
		split := s
		split.Spells = nil
		for _, spell := range s.Spells {
			end := spell.Start + spell.Lasts
			if end > day {
				split.Spells = append(split.Spells, Spell{spell.Start, day - spell.Start, spell.Draw}, Spell{0, end - day, spell.Draw})
				continue
			}
			split.Spells = append(split.Spells, Spell{spell.Start, spell.Lasts, spell.Draw / 3}, Spell{spell.Start, spell.Lasts, spell.Draw * 2 / 3})
		}
		a, b := ran(rt, s), ran(rt, split)
		if a.End != b.End || math.Abs(float64(a.Time-b.Time)) > 1 || math.Abs(float64(a.Used-b.Used)) > 1e-5 ||
			math.Abs(float64(a.Lowest.Temperature-b.Lowest.Temperature)) > 0.01 {
			rt.Fatalf("whole %+v, in parts %+v", a, b)
		}
	})
}

// Nothing drawn never ends, wherever it starts.
func TestZeroDrawNeverEnds(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		s := anySupply(rt)
		for i := range s.Spells {
			s.Spells[i].Draw = 0
		}
		out := ran(rt, s)
		if out.End != Fed || out.Time != s.Horizon || out.Used != 0 || out.SpellsNotFed != 0 || len(out.Changes) != 0 {
			rt.Fatalf("%+v", out)
		}
	})
}

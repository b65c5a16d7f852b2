package cylinder

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

const (
	hour = 3600.0
	gram = unit.MassFlow(1e-3 / hour) // in an hour
)

func twentyPound() Filled {
	size, _ := TradeSizeFor(48 * lb)
	return Filled{size.Vessel(), 20 * lb}
}

// winter is a day of eight spells in the cold, about a kilogram in all.
func winter(vessels ...Filled) Supply {
	return Supply{
		Vessels: vessels, Wall: 5, Start: 273.15, Least: 243.15,
		Air: Air{Coldest: 258.15, Swing: 10, Dawn: 6 * hour},
		Spells: []Spell{
			{0, 6 * hour, 20 * gram}, {6.5 * hour, 0.5 * hour, 160 * gram}, {7 * hour, hour, 90 * gram}, {12 * hour, 0.4 * hour, 160 * gram},
			{17 * hour, 5 * hour, 60 * gram}, {18 * hour, hour, 200 * gram}, {20 * hour, 0.25 * hour, 160 * gram}, {22.5 * hour, 3 * hour, 30 * gram},
		},
		Horizon: 14 * day,
	}
}

func ran(t tester, s Supply) Outcome {
	t.Helper()
	out, err := Run(s)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// steady is one vessel in air of one temperature, drawn on without a pause.
func steady(v Filled, air float64, flow unit.MassFlow, days float64) Supply {
	return Supply{
		Vessels: []Filled{v}, Wall: 5, Start: unit.Temperature(air), Least: 235, Air: Air{Coldest: unit.Temperature(air)},
		Spells: []Spell{{0, day, flow}}, Horizon: unit.Duration(days * day),
	}
}

// Without a wall and without metal the liquid alone gives the heat, by hand with
// the published saturation table: 1 kg out of 9.07 kg, from 0 °C, about −10 °C in
// the mean: 388.3 kJ and what fills its room, 393.8 kJ, from 8.57 kg of liquid of
// 2.42 kJ/(kg K) (package propane): 19.0 K; the vapour that condenses as it cools
// takes a per cent off.
func TestLiquidGivesItsOwnHeat(t *testing.T) {
	v := twentyPound()
	v.Metal = 0
	s := steady(v, 273.15, unit.MassFlow(1/hour), 1./24)
	s.Wall = 0
	out := ran(t, s)
	if out.End != Fed || math.Abs(float64(out.Used)-1) > 1e-9 {
		t.Fatalf("%+v", out)
	}
	want := 388.3e3 / (1 - 7.632/541.80) / 8.57 / value[unit.HeatCapacity](t)(propane.LiquidHeatCapacity(263.15))
	if fall := 273.15 - float64(out.Lowest.Temperature); math.Abs(fall/want-0.985) > 0.005 || math.Abs(want-19) > 0.1 {
		t.Errorf("cooled by %.2f K, want %.2f", fall, want*0.985)
	}
}

// A draw that [Sustained] names leaves the temperature as it is, and the metal
// makes no difference to that.
func TestRunAgreesWithSustained(t *testing.T) {
	for _, metal := range []unit.Mass{0, 8} {
		v := twentyPound()
		v.Metal = metal
		const least = 250.0
		flow := value[unit.MassFlow](t)(Sustained(v.Vessel, v.Propane, 5, 273.15, least))
		s := steady(v, 273.15, unit.MassFlow(flow), 60/day)
		s.Start = least
		out := ran(t, s)
		if off := float64(out.Lowest.Temperature) - least; math.Abs(off) > 0.01 {
			t.Errorf("%g kg of metal: %.4f K off after a minute", float64(metal), off)
		}
	}
}

// With nothing drawn the vessel follows the air with the lag of its heat: a
// closed form where area and heat capacity hardly change, from 283 K in air of
// 273 K.
func TestRestingVesselFollowsTheAir(t *testing.T) {
	v := twentyPound()
	s := steady(v, 273.15, 0, 0.25)
	s.Start, s.Interval = 283.15, 900
	area := value[unit.Area](t)(WettedArea(v.Vessel, v.Propane, 278.15))
	c := value[unit.HeatCapacity](t)(propane.LiquidHeatCapacity(278.15))
	lag := (float64(v.Propane)*c + 18*lb*447) / (5 * area)
	for _, p := range ran(t, s).Series {
		want := 273.15 + 10*math.Exp(-float64(p.Time)/lag)
		if math.Abs(float64(p.Temperature)-want) > 0.15 {
			t.Errorf("after %.2f h %.3f K, want %.3f", float64(p.Time)/hour, float64(p.Temperature), want)
		}
		if p.Propane != v.Propane {
			t.Errorf("after %.2f h %g kg", float64(p.Time)/hour, float64(p.Propane))
		}
	}
}

func TestEnds(t *testing.T) {
	v := twentyPound()
	for _, c := range []struct {
		name string
		s    Supply
		end  End
	}{
		{"nothing drawn", steady(v, 260, 0, 30), Fed},
		{"no spells", Supply{Vessels: []Filled{v}, Wall: 5, Start: 260, Least: 250, Air: Air{Coldest: 250, Swing: 20}, Horizon: 30 * day}, Fed},
		{"a small draw", steady(v, 260, 10*gram, 30), Fed},
		{"till it is empty", steady(v, 273.15, 60*gram, 30), Emptied},
		{"till it is too cold", steady(v, 260, 700*gram, 30), Chilled},
		{"too cold from the start", steady(v, 230, 10*gram, 30), Chilled},
		{"no propane", steady(Filled{v.Vessel, 0}, 273.15, 10*gram, 30), Emptied},
		{"only vapour", steady(Filled{v.Vessel, 0.1}, 273.15, 10*gram, 30), Emptied},
	} {
		t.Run(c.name, func(t *testing.T) {
			out := ran(t, c.s)
			if out.End != c.end {
				t.Fatalf("ends %v after %.2f h, want %v", out.End, float64(out.Time)/hour, c.end)
			}
			if sum := float64(out.Used + out.Left); math.Abs(sum-float64(c.s.Vessels[0].Propane)) > 1e-9 {
				t.Errorf("used and left are %g kg", sum)
			}
			if (out.End == Fed) != (out.Time == c.s.Horizon) || (out.End == Fed) != (len(out.Changes) == 0) {
				t.Errorf("time %g, changes %v", float64(out.Time), out.Changes)
			}
			if out.End == Chilled && math.Abs(float64(min(out.Lowest.Temperature, c.s.Least)-out.Lowest.Temperature)) > 1e-6 {
				t.Errorf("lowest %g K, least %g K", float64(out.Lowest.Temperature), float64(c.s.Least))
			}
			if out.End == Fed && out.SpellsNotFed != 0 || out.End != Fed && out.SpellsNotFed == 0 {
				t.Errorf("%d spells not fed", out.SpellsNotFed)
			}
			if out.Days != int(float64(out.Time)/day) || out.Spare != 0 {
				t.Errorf("%d days, spare %g s", out.Days, float64(out.Spare))
			}
		})
	}
}

// What is left at each end is what the end says: vapour alone, or liquid at the
// least temperature.
func TestWhatIsLeft(t *testing.T) {
	v := twentyPound()
	empty := ran(t, steady(v, 273.15, 60*gram, 30))
	vapour := value[unit.Density](t)(propane.VapourDensity(empty.Lowest.Temperature)) * float64(Volume(v.Water))
	if math.Abs(float64(empty.Left)/vapour-1) > 0.05 {
		t.Errorf("%g kg left empty, the vapour is %g kg", float64(empty.Left), vapour)
	}
	if wait := float64(empty.Used) / float64(60*gram); math.Abs(wait-float64(empty.Time)) > 1e-3 {
		t.Errorf("empty after %g s, drawn for %g s", float64(empty.Time), wait)
	}
	cold := ran(t, steady(v, 260, 700*gram, 30))
	if cold.Left < 1 || math.Abs(float64(cold.Lowest.Temperature)-235) > 1e-6 || cold.Lowest.Time != cold.Time {
		t.Errorf("%+v", cold)
	}
	if p := value[unit.AbsolutePressure](t)(propane.SaturationPressure(235)); math.Abs(float64(cold.Lowest.Pressure)/p-1) > 1e-6 {
		t.Errorf("lowest pressure %g Pa, want %g", float64(cold.Lowest.Pressure), p)
	}
}

// The least temperature met while nothing is drawn ends nothing; the next draw
// that finds it so does.
func TestColdNightWithoutADraw(t *testing.T) {
	s := winter(twentyPound())
	s.Air, s.Least = Air{Coldest: 240, Swing: 35, Dawn: 6 * hour}, 258
	s.Spells = []Spell{{20 * hour, 600, 50 * gram}}
	if out := ran(t, s); out.End != Fed || out.Lowest.Temperature >= s.Least {
		t.Errorf("evenings: %v, lowest %g K", out.End, float64(out.Lowest.Temperature))
	}
	s.Spells = []Spell{{9 * hour, 600, 50 * gram}}
	out := ran(t, s)
	if out.End != Chilled || math.Mod(float64(out.Time), day) != 9*hour {
		t.Errorf("mornings: %v at %.3f h", out.End, float64(out.Time)/hour)
	}
}

// Spells: fed and not fed make up all that began before the horizon.
func TestSpellsFed(t *testing.T) {
	s := winter(twentyPound())
	s.Spells = append(s.Spells, Spell{13 * hour, hour, 0})
	s.Horizon = 20 * day
	out := ran(t, s)
	if out.End != Emptied || out.SpellsFed+out.SpellsNotFed != 9*20 {
		t.Fatalf("%+v", out)
	}
	last := int(float64(out.Time) / day)
	if out.SpellsFed < 8*last+20-last || out.SpellsFed > 8*(last+1)+20 {
		t.Errorf("%d fed by day %d", out.SpellsFed, last)
	}
	if out.Days != last {
		t.Errorf("%d days, want %d", out.Days, last)
	}
}

// By changeover the second vessel begins where the first gave out.
func TestChangeover(t *testing.T) {
	one := ran(t, winter(twentyPound()))
	s := winter(twentyPound(), twentyPound())
	s.Changeover, s.Horizon = true, 40*day
	two := ran(t, s)
	if one.End != Emptied || two.End != Emptied || len(two.Changes) != 2 {
		t.Fatalf("%+v, %+v", one, two)
	}
	first, second := two.Changes[0], two.Changes[1]
	if first.Vessel != 0 || second.Vessel != 1 || math.Abs(float64(first.Time-one.Time)) > 1e-3 {
		t.Errorf("changes %+v, one alone lasts %g s", two.Changes, float64(one.Time))
	}
	if two.Days != one.Days || math.Abs(float64(two.Spare-(two.Time-one.Time))) > 1e-3 {
		t.Errorf("%d days, spare %g s", two.Days, float64(two.Spare))
	}
	if math.Abs(float64(two.Left-first.Left-second.Left)) > 1e-9 {
		t.Errorf("%g kg left, %g and %g in the vessels", float64(two.Left), float64(first.Left), float64(second.Left))
	}
}

// By changeover the series shows the vessel in service, at rest too, though the
// one that waits is warmer.
func TestSeriesShowsTheVesselInService(t *testing.T) {
	alone, both := winter(twentyPound()), winter(twentyPound(), twentyPound())
	both.Changeover = true
	alone.Interval, both.Interval = hour/2, hour/2
	one, two := ran(t, alone), ran(t, both)
	compared := 0
	for i, p := range one.Series {
		if p.Time >= one.Time {
			break
		}
		compared++
		if off := float64(p.Temperature - two.Series[i].Temperature); math.Abs(off) > 1e-5 || math.Abs(float64(p.Propane+20*lb-two.Series[i].Propane)) > 1e-8 {
			t.Fatalf("at %g h %g K off", float64(p.Time)/hour, off)
		}
	}
	if compared < 100 {
		t.Errorf("%d points compared", compared)
	}
}

// Side by side and at rest the series shows the warmest: in falling air the one
// that lags, in rising air the one that is quick.
func TestSeriesShowsTheWarmestAtRest(t *testing.T) {
	big, little := twentyPound(), twentyPound()
	little.Propane, little.Metal = 1, 0
	for _, start := range []unit.Temperature{283, 243} {
		alone := func(v Filled) []Sample {
			s := steady(v, 263, 0, 1)
			s.Start, s.Interval = start, hour
			return ran(t, s).Series
		}
		one, other := alone(big), alone(little)
		for _, pair := range [][]Filled{{big, little}, {little, big}} {
			s := steady(big, 263, 0, 1)
			s.Vessels, s.Start, s.Interval = pair, start, hour
			for i, p := range ran(t, s).Series {
				if want := max(one[i].Temperature, other[i].Temperature); math.Abs(float64(p.Temperature-want)) > 1e-4 {
					t.Errorf("from %g K, after %d h: %g K, want %g", float64(start), i, float64(p.Temperature), float64(want))
				}
			}
		}
	}
}

// Side by side two vessels share the draw and stay warmer than one after the other.
func TestSideBySideIsWarmer(t *testing.T) {
	s := winter(twentyPound(), twentyPound())
	s.Horizon = 8 * day
	together := ran(t, s)
	s.Changeover = true
	turns := ran(t, s)
	if together.Lowest.Temperature <= turns.Lowest.Temperature+1 {
		t.Errorf("together %g K, by turns %g K", float64(together.Lowest.Temperature), float64(turns.Lowest.Temperature))
	}
}

// A vessel that runs dry drops out, and the other goes on alone.
func TestUnequalVesselsSideBySide(t *testing.T) {
	little := twentyPound()
	little.Propane = 2
	s := winter(twentyPound(), little)
	s.Horizon = 40 * day
	out := ran(t, s)
	if out.End != Emptied || len(out.Changes) != 2 || out.Changes[0].Vessel != 1 || out.Changes[1].Vessel != 0 || out.Changes[0].Time >= out.Changes[1].Time {
		t.Fatalf("%v, %+v", out.End, out.Changes)
	}
	if out.Days != int(float64(out.Time)/day) || out.Spare != 0 {
		t.Errorf("%d days, spare %g", out.Days, float64(out.Spare))
	}
}

// Three unlike vessels in air that warms, with a draw so small that they warm all
// the same: valves shut and open again, each time once.
func TestValvesShutAndOpen(t *testing.T) {
	unlike := func(water, slender, share float64, metal unit.Mass) Filled {
		D := math.Cbrt(4 * water / 999 / math.Pi / slender)
		return Filled{Vessel{Water: unit.WaterMass(water), Diameter: unit.Length(D), Metal: metal, Material: Steel}, unit.PropaneMass(share * water)}
	}
	s := Supply{
		Vessels: []Filled{unlike(2, 1, 0.42, 2), unlike(4, 0.875, 0.42, 0), unlike(94, 0.917, 0.158, 0)},
		Wall:    0.5, Start: 267.5, Least: 228.15, Air: Air{258.75, 9.4375, 1}, Spells: []Spell{{3, day, 12 * gram}}, Horizon: 2 * day,
	}
	r, err := newRun(s)
	if err != nil {
		t.Fatal(err)
	}
	given, turned := map[[3]bool]bool{}, 0
	var before [3]bool
	watch := r.watch[1].Step
	r.watch[1].Step = func(at float64, y []float64) {
		now := [3]bool{r.tanks[0].gives, r.tanks[1].gives, r.tanks[2].gives}
		if given[now] = true; now != before {
			turned++
		}
		before = now
		for i := range r.tanks {
			if d := y[2*i+1] - y[2*r.feeding+1]; d > 2*alike || r.tanks[i].gives && d < -2*alike {
				t.Fatalf("at %g s vessel %d stands %g K over the one that feeds", at, i, d)
			}
		}
		watch(at, y)
	}
	if err := r.follow(); err != nil {
		t.Fatal(err)
	}
	if len(given) < 3 || turned > 12 {
		t.Errorf("%d sets of vessels gave in %d turns: %v", len(given), turned, given)
	}
}

func TestSeries(t *testing.T) {
	s := winter(twentyPound())
	s.Horizon, s.Interval = 50*hour, 7*hour
	out := ran(t, s)
	want := []float64{0, 7, 14, 21, 28, 35, 42, 49, 50}
	var got []float64
	for i, p := range out.Series {
		got = append(got, float64(p.Time)/hour)
		if p.Temperature < out.Lowest.Temperature-0.05 || p.Pressure < out.Lowest.Pressure-500 {
			t.Errorf("point %d is colder than the lowest", i)
		}
		if i > 0 && p.Propane > out.Series[i-1].Propane {
			t.Errorf("point %d has more propane than the one before", i)
		}
		pressure := value[unit.AbsolutePressure](t)(propane.SaturationPressure(p.Temperature))
		if float64(p.Pressure) != pressure {
			t.Errorf("point %d: %g Pa, want %g", i, float64(p.Pressure), pressure)
		}
		drawn := 0.0
		for _, spell := range s.Spells {
			drawn += drawnUntil(spell, float64(p.Time))
		}
		if math.Abs(float64(s.Vessels[0].Propane)-drawn-float64(p.Propane)) > 1e-8 {
			t.Errorf("point %d: %g kg, %g drawn", i, float64(p.Propane), drawn)
		}
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	s.Interval = 0
	if quiet := ran(t, s); quiet.Series != nil || quiet.Lowest.Time != out.Lowest.Time || quiet.Used != out.Used {
		t.Error("the series changes the run")
	}
}

// drawnUntil is the integral of a spell from midnight of the first day to t,
// worked out spell by spell: each has a part in the day it starts and, past
// midnight, in the next; the first day has that of the day before.
func drawnUntil(s Spell, t float64) (sum float64) {
	for start := float64(s.Start) - day; start < t; start += day {
		sum += max(0, min(start+float64(s.Lasts), t)-max(start, 0)) * float64(s.Draw)
	}
	return sum
}

func BenchmarkTwoWeeks(b *testing.B) {
	s := winter(twentyPound(), twentyPound())
	s.Interval = hour
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Run(s); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkSustained(b *testing.B) {
	v := twentyPound()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Sustained(v.Vessel, v.Propane, 5, 273.15, 250); err != nil {
			b.Fatal(err)
		}
	}
}

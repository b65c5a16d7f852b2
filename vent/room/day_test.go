package room

import (
	"math"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"lowvent.example/gas/solve"
	"lowvent.example/schema/unit"
	"pgregory.net/rapid"
)

// outlasting is a room and its use for which the oxygen lasts: past its end the equation has
// no meaning. One that can't be followed at all is left for the test to fail on.
func outlasting(t *rapid.T) (Room, Use) {
	type both struct {
		room Room
		use  Use
	}
	drawn := rapid.Custom(func(t *rapid.T) both { return both{rooms(t), uses(t)} }).Filter(func(b both) bool {
		got, err := Follow(b.room, b.use)
		return err != nil || !got.Exhausted
	}).Draw(t, "with oxygen that lasts")
	return drawn.room, drawn.use
}

// uses draws a pattern of up to three spells.
func uses(t *rapid.T) Use {
	var u Use
	for range rapid.IntRange(0, 3).Draw(t, "spells") {
		u.Spells = append(u.Spells, Spell{
			Start:    unit.Duration(rapid.Float64Range(0, day-1).Draw(t, "start")),
			Lasts:    unit.Duration(rapid.Float64Range(60, 7200).Draw(t, "lasts")),
			Exchange: exchanges(t),
			Fan:      perHour(rapid.Float64Range(0, 30).Draw(t, "fan")),
		})
	}
	u.Days = rapid.IntRange(1, 3).Draw(t, "days")
	return u
}

// numeric integrates the same balance as an ordinary differential equation with
// four more unknowns: the fresh air and the room air that passed, and the carbon
// dioxide that came in and went out. It looks at the air at each end of a spell
// and in between, so that it finds a peak that [Follow] passed over.
type numeric struct {
	highest, lowest, damp float64
	y                     []float64
}

func integrate(t *rapid.T, r Room, use Use) numeric {
	out := numeric{lowest: 1, y: append(append([]float64{}, values(r.Air)...), 0, 0)}
	in, err := solve.NewIntegrator(1e-10, []float64{1e-12, 1e-12, 1e-12, 1e-9, 1e-9}, 600, 100000)
	if err != nil {
		t.Fatal(err)
	}
	look := func(_ float64, y []float64) {
		out.highest = max(out.highest, y[1]/(1-y[2]))
		out.lowest, out.damp = min(out.lowest, y[0]), max(out.damp, y[2])
	}
	look(0, out.y)
	room := r.standard(float64(r.Volume), r.Inside)
	edges := map[float64]bool{}
	for d := range use.Days {
		for _, s := range use.Spells {
			for _, at := range []float64{float64(s.Start), float64(s.Start + s.Lasts)} {
				edges[float64(d)*day+math.Mod(at, day)] = true
			}
		}
		edges[float64(d+1)*day] = true
	}
	for now, last := 0.0, float64(use.Days)*day; now < last; {
		next := last
		for e := range edges {
			if e > now {
				next = min(next, e)
			}
		}
		e, fan := going(use.Spells, math.Mod((now+next)/2, day))
		q := r.standard(float64(r.Fresh+fan), r.Outside)
		slope := func(_ float64, y, slope []float64) {
			x0, made := values(r.Air), []float64{-float64(e.Oxygen), float64(e.CarbonDioxide), float64(e.Water)}
			leaving := q + made[0] + made[1] + made[2]
			for i := range made {
				slope[i] = (q*x0[i] + made[i] - leaving*y[i]) / room
			}
			slope[3], slope[4] = q*x0[1]+made[1], leaving*y[1]
		}
		if _, _, err := in.Advance(slope, now, next, out.y, solve.Watch{Step: look}); err != nil {
			t.Fatal(err)
		}
		now = next
	}
	return out
}

func values(a Air) []float64 {
	return []float64{float64(a.Oxygen), float64(a.CarbonDioxide), float64(a.Water)}
}

// The exact course against the differential equation: the same peaks and the same
// end, and the carbon dioxide conserved: what came in and was made less what went
// out is what the room holds more.
func TestFollowAgainstTheEquation(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, use := outlasting(t)
		got, err := Follow(r, use)
		if err != nil {
			t.Fatal(err)
		}
		want := integrate(t, r, use)
		nearShare(t, "highest carbon dioxide", float64(got.CarbonDioxide.Air.Dry().CarbonDioxide), want.highest, 1e-6)
		nearShare(t, "lowest oxygen", float64(got.Oxygen.Air.Oxygen), want.lowest, 1e-6)
		nearShare(t, "most water", float64(got.Water.Air.Water), want.damp, 1e-6)
		nearShare(t, "carbon dioxide at the end", float64(got.End.CarbonDioxide), want.y[1], 1e-6)
		held := r.standard(float64(r.Volume), r.Inside) * float64(got.End.CarbonDioxide-r.Air.CarbonDioxide)
		if passed := want.y[3] - want.y[4]; math.Abs(held-passed) > 1e-6*(math.Abs(want.y[3])+1e-3) {
			t.Fatalf("carbon dioxide: %.9g m³ passed and made, %.9g held", passed, held)
		}
	})
}

// Two flames in turn, one past midnight, in a closed room of 10 m³: what is made is
// known beforehand, and the peaks stand where the second one ends.
func TestClosedDayByHand(t *testing.T) {
	flame := Exchange{CarbonDioxide: 1e-6, Oxygen: 1e-6} // swells nothing
	use := Use{Days: 2, Spells: []Spell{
		{Start: 23 * hour, Lasts: 2 * hour, Exchange: flame},
		{Start: 12 * hour, Lasts: hour, Exchange: flame},
	}}
	got := must(Follow(van(), use))
	// On the first day the spell past midnight has also burned from 0 to 1 h, as on
	// every day: 3 h a day.
	near(t, "carbon dioxide at the end", float64(got.End.CarbonDioxide), 400e-6+6*hour*1e-6/10, 1e-12)
	near(t, "oxygen at the end", float64(got.End.Oxygen), 0.2095-6*hour*1e-6/10, 1e-12)
	near(t, "time of the peak", float64(got.CarbonDioxide.At), 48*hour, 1e-12)
	near(t, "time of the lowest oxygen", float64(got.Oxygen.At), 48*hour, 1e-12)
	if got.Exhausted {
		t.Error("exhausted")
	}
}

// Spells that overlap add up, and so do their fans: against the steady air of both
// at once.
func TestSpellsOverlap(t *testing.T) {
	one, two := Propane(1000), must(Breathing(Resting, 3))
	use := Use{Days: 1, Spells: []Spell{
		{Start: 0, Lasts: 20 * hour, Exchange: one, Fan: perHour(20)},
		{Start: 0, Lasts: 20 * hour, Exchange: two, Fan: perHour(30)},
	}}
	r := van()
	out := must(Follow(r, use))
	r.Fresh = perHour(50)
	both := must(Steady(r, Together(one, two)))
	for i, share := range values(out.CarbonDioxide.Air) {
		nearShare(t, "share", share, values(both)[i], 1e-9)
	}
}

// The oxygen may last to the middle of a spell or nearly to its end.
func TestOxygenLastsIntoASpell(t *testing.T) {
	last, _, err := TimeToOxygen(van(), Propane(3000), dryAir(), 0)
	if err != nil {
		t.Fatal(err)
	}
	for _, share := range []float64{0.3, 0.9, 0.999, 1.001} {
		use := Use{Days: 1, Spells: []Spell{{Lasts: unit.Duration(float64(last) / share), Exchange: Propane(3000)}}}
		got := must(Follow(van(), use))
		if got.Exhausted != (share <= 1) {
			t.Errorf("a spell of %.3f of what lasts: %+v", 1/share, got)
		}
		if got.Exhausted {
			near(t, "its end", float64(got.CarbonDioxide.At), float64(last), 1e-9)
		}
	}
}

// The peak is that at the end of the spell and not a mean over hours: 20 minutes
// of 3 kW in 10 m³ with 20 m³/h.
func TestPeakIsNoMean(t *testing.T) {
	r := van()
	r.Fresh = perHour(20)
	use := Use{Days: 1, Spells: []Spell{{Start: 12 * hour, Lasts: 1200, Exchange: Propane(3000)}}}
	got := must(Follow(r, use))
	near(t, "time of the peak", float64(got.CarbonDioxide.At), 12*hour+1200, 1e-12)
	direct := must(After(r, Propane(3000), r.Air, 1200))
	if diff := cmp.Diff(direct, got.CarbonDioxide.Air, cmp.Comparer(func(a, b unit.Ratio) bool { return math.Abs(float64(a-b)) < 1e-12 })); diff != "" {
		t.Error(diff)
	}
	peak := float64(got.CarbonDioxide.Air.Dry().CarbonDioxide)
	if mean := peak * 1200 / (8 * hour); peak < 0.008 || mean > 0.005 {
		t.Errorf("peak %.4f, over eight hours %.5f", peak, mean)
	}
}

// A room that is shut and burns on uses up its oxygen: the course ends there and
// says so.
func TestFollowEndsWithTheOxygen(t *testing.T) {
	use := Use{Days: 3, Spells: []Spell{{Start: 0, Lasts: day, Exchange: Propane(5000)}}}
	got := must(Follow(van(), use))
	if !got.Exhausted || math.Abs(float64(got.End.Oxygen)) > 1e-12 || got.Oxygen.At > 3*hour {
		t.Errorf("%+v", got)
	}
	last, found, err := TimeToOxygen(van(), Propane(5000), dryAir(), 0)
	if err != nil || !found {
		t.Fatal(err, found)
	}
	near(t, "end of the oxygen", float64(got.Oxygen.At), float64(last), 1e-9)
}

// Where nothing burns and nobody breathes the air stays that outside.
func TestNothingGoesOn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := rooms(t)
		for _, r := range []Room{r, r.Shut()} {
			got := must(Follow(r, Use{Days: 5}))
			for i, share := range values(got.End) {
				nearShare(t, "share", share, values(r.Air)[i], 1e-12)
			}
		}
	})
}

// Through a day, too, more fresh air, a larger room or less burning never makes a
// peak worse.
func TestFollowIsMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, use := rooms(t), uses(t)
		one := must(Follow(r, use))
		if one.Exhausted {
			return
		}
		fresher, larger, less := r, r, use
		fresher.Fresh = unit.VolumeFlow(1.5 * float64(r.Fresh))
		larger.Volume = unit.Volume(1.5 * float64(r.Volume))
		less.Spells = slices.Clone(use.Spells)
		if len(less.Spells) > 0 {
			less.Spells[0].Exchange = Exchange{}
		}
		for _, better := range []Outcome{must(Follow(fresher, use)), must(Follow(larger, use)), must(Follow(r, less))} {
			const slack = 1e-12
			if better.CarbonDioxide.Air.Dry().CarbonDioxide > one.CarbonDioxide.Air.Dry().CarbonDioxide+slack ||
				better.Oxygen.Air.Oxygen < one.Oxygen.Air.Oxygen-slack || better.Water.Air.Water > one.Water.Air.Water+slack {
				t.Fatalf("%+v\nis worse than\n%+v", better, one)
			}
		}
	})
}

// A room and everything in it ten times as large has the same air at the same
// times: no unit of volume is built in.
func TestFollowIsFreeOfScale(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, use := rooms(t), uses(t)
		one := must(Follow(r, use))
		r.Volume *= unit.Volume(10)
		r.Fresh *= unit.VolumeFlow(10)
		for i, s := range use.Spells {
			for range 9 {
				use.Spells[i].Exchange = Together(use.Spells[i].Exchange, s.Exchange)
			}
			use.Spells[i].Fan = unit.VolumeFlow(10 * float64(s.Fan))
		}
		ten := must(Follow(r, use))
		for i, share := range values(ten.End) {
			nearShare(t, "share", share, values(one.End)[i], 1e-9)
		}
		nearShare(t, "peak", float64(ten.CarbonDioxide.Air.CarbonDioxide), float64(one.CarbonDioxide.Air.CarbonDioxide), 1e-9)
	})
}

// A day that ends as it began ends the search; more days change nothing then.
func TestDaysRepeat(t *testing.T) {
	r := van()
	r.Fresh = perHour(50)
	use := Use{Days: 3, Spells: []Spell{{Start: 8 * hour, Lasts: hour, Exchange: Propane(2000)}}}
	three := must(Follow(r, use))
	use.Days = 1000
	near(t, "peak", float64(must(Follow(r, use)).CarbonDioxide.Air.CarbonDioxide), float64(three.CarbonDioxide.Air.CarbonDioxide), 1e-9)
}

func TestFollowRefusals(t *testing.T) {
	good := Spell{Start: 0, Lasts: 60}
	for _, c := range []struct {
		use  Use
		what string
	}{
		{Use{}, "days"},
		{Use{Days: 1001}, "days"},
		{Use{Days: 1, Spells: []Spell{good, {Start: -1, Lasts: 60}}}, "start of a spell"},
		{Use{Days: 1, Spells: []Spell{{Start: 0, Lasts: 0}}}, "length of a spell"},
		{Use{Days: 1, Spells: []Spell{{Start: 0, Lasts: unit.Duration(math.NaN())}}}, "length of a spell"},
		{Use{Days: 1, Spells: []Spell{{Start: 0, Lasts: 60, Fan: -1}}}, "flow of a fan"},
		{Use{Days: 1, Spells: []Spell{{Start: 0, Lasts: 60, Exchange: Exchange{Oxygen: unit.VolumeFlow(math.Inf(1))}}}}, "oxygen taken"},
	} {
		_, err := Follow(van(), c.use)
		refused(t, err, c.what)
	}
	_, err := Follow(Room{}, Use{Days: 1})
	refused(t, err, "volume of the room")
}

func BenchmarkFollowAYear(b *testing.B) {
	r := van()
	use := Use{Days: 365, Spells: []Spell{{Start: 8 * hour, Lasts: hour, Exchange: Exchange{CarbonDioxide: 1e-9, Oxygen: 1e-9}}}}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Follow(r, use); err != nil {
			b.Fatal(err)
		}
	}
}

package room

import (
	"errors"
	"math"
	"testing"

	"lowvent.example/schema/unit"
	"pgregory.net/rapid"
)

// More fresh air never makes the steady air worse, more burning never better.
func TestSteadyIsMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, e := aired(t)
		one := must(Steady(r, e))
		more := r
		more.Fresh = unit.VolumeFlow(1.2 * float64(r.Fresh))
		fresher := must(Steady(more, e))
		hotter, err := Steady(r, Together(e, Propane(100)))
		if fresher.Dry().CarbonDioxide > one.Dry().CarbonDioxide+1e-15 || fresher.Oxygen < one.Oxygen-1e-15 || fresher.Water > one.Water+1e-15 {
			t.Fatalf("more fresh air made it worse: %+v, %+v", one, fresher)
		}
		if err == nil && (hotter.Dry().CarbonDioxide <= one.Dry().CarbonDioxide || hotter.Oxygen >= one.Oxygen || hotter.Water <= one.Water) {
			t.Fatalf("more burning made it better: %+v, %+v", one, hotter)
		}
	})
}

// After a long time the air is the steady one, at once it is what it was, and two
// stretches one after the other are one stretch.
func TestAfter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, e := aired(t)
		steady := must(Steady(r, e))
		late := must(After(r, e, r.Air, 1e8))
		first := unit.Duration(rapid.Float64Range(0, 3000).Draw(t, "first"))
		then := unit.Duration(rapid.Float64Range(0, 3000).Draw(t, "then"))
		half := must(After(r, e, r.Air, first))
		whole := must(After(r, e, r.Air, first+then))
		two := must(After(r, e, half, then))
		for i := range 3 {
			nearShare(t, "late share", values(late)[i], values(steady)[i], 1e-9)
			near(t, "share at once", values(must(After(r, e, r.Air, 0)))[i], values(r.Air)[i], 0)
			nearShare(t, "share in two stretches", values(two)[i], values(whole)[i], 1e-9)
		}
	})
}

// The time to a share is the time at which the course has it; a limit that the
// steady air does not reach is never reached.
func TestTimesToLimits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, e := rooms(t), Propane(unit.GrossPower(rapid.Float64Range(500, 3000).Draw(t, "power")))
		if rapid.Bool().Draw(t, "shut") {
			r = r.Shut()
		}
		limit := unit.Ratio(rapid.Float64Range(0.002, 0.02).Draw(t, "limit"))
		at, reached, err := TimeToCarbonDioxide(r, e, r.Air, limit)
		if err != nil {
			t.Fatal(err)
		}
		steady, failed := Steady(r, e)
		if !reached {
			if failed != nil || steady.Dry().CarbonDioxide > limit+1e-12 {
				t.Fatalf("%+v goes over %v and the time says never", steady, limit)
			}
			return
		}
		air, err := After(r, e, r.Air, at)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "carbon dioxide", float64(air.Dry().CarbonDioxide), float64(limit), 1e-9)
		if failed == nil && steady.Dry().CarbonDioxide < limit-1e-12 {
			t.Fatalf("steady %+v is under %v and the time says %v", steady, limit, at)
		}
		low := unit.Ratio(float64(air.Oxygen))
		back, reached, err := TimeToOxygen(r, e, r.Air, low)
		if err != nil || !reached {
			t.Fatal(err, reached)
		}
		near(t, "time to the same oxygen", float64(back), float64(at), 1e-6)
	})
}

func TestTimesAtTheEdge(t *testing.T) {
	worse := Air{Oxygen: 0.19, CarbonDioxide: 0.02}
	at, reached, err := TimeToCarbonDioxide(van(), Propane(1000), worse, 0.01)
	if at != 0 || !reached || err != nil {
		t.Error(at, reached, err)
	}
	at, reached, err = TimeToOxygen(van(), Propane(1000), worse, 0.195)
	if at != 0 || !reached || err != nil {
		t.Error(at, reached, err)
	}
	at, reached, err = TimeToOxygen(van(), Exchange{}, dryAir(), 0.195)
	if at != 0 || reached || err != nil {
		t.Error(at, reached, err)
	}
}

// In the closed room a kilogram of propane is what is left of it: moles of each
// species before and after, the swollen air taken into account by a bag that holds
// what was pushed out.
func TestClosedRoomConservesOxygen(t *testing.T) {
	e := Propane(1000)
	const t0 = 600.0
	air := must(After(van(), e, dryAir(), t0))
	net, held := e.net(), 10.0
	// d(x·V)/dt = made − net·x, integrated with the closed form of x by Simpson.
	const steps = 1000
	lost := 0.0
	for i := range steps + 1 {
		weight := 2.0
		if i%2 == 1 {
			weight = 4
		}
		if i == 0 || i == steps {
			weight = 1
		}
		x := must(After(van(), e, dryAir(), unit.Duration(t0*float64(i)/steps)))
		lost += weight * net * float64(x.Oxygen) * t0 / steps / 3
	}
	near(t, "oxygen held", held*float64(air.Oxygen), held*float64(dryAir().Oxygen)-float64(e.Oxygen)*t0-lost, 1e-9)
}

// A hotter room holds less air and gets worse sooner; so does one high above the
// sea, by the ratio of the pressures while it is fresh.
func TestThinAirGetsWorseSooner(t *testing.T) {
	rise := func(r Room) float64 {
		return float64(must(After(r, Propane(2000), dryAir(), 60)).CarbonDioxide) - 400e-6
	}
	low, hot, high := van(), van(), van()
	hot.Inside = 45 + celsius
	high.Pressure = 75e3
	near(t, "rise when hot", rise(hot)/rise(low), (45+celsius)/(15+celsius), 0.002)
	near(t, "rise when high up", rise(high)/rise(low), 101325/75e3, 0.002)
	near(t, "worth of the oxygen at 1600 m", float64(must(SeaLevelOxygen(0.2095, 83524))), 0.1727, 0.001)
}

// People who breathe shrink dry air a little: in a room with no fresh air outside
// air follows, and nothing goes out.
func TestClosedRoomWithoutVapour(t *testing.T) {
	e := Exchange{Oxygen: 1.25e-5, CarbonDioxide: 1e-5}
	start := Air{Oxygen: 0.15, CarbonDioxide: 0.01}
	air := must(After(van(), e, start, 3600))
	near(t, "oxygen", float64(air.Oxygen), 0.15-3600*(1.25e-5-0.25e-5*0.2095)/10, 1e-9)
	near(t, "carbon dioxide", float64(air.CarbonDioxide), 0.01+3600*(1e-5+0.25e-5*400e-6)/10, 1e-9)
}

func TestBalanceFailures(t *testing.T) {
	var closed *ClosedError
	if _, err := Steady(van(), Propane(1000)); !errors.As(err, &closed) || closed.Error() == "" {
		t.Error(err)
	}
	r := van()
	r.Fresh = perHour(1)
	var gone *ExhaustedError
	if _, err := Steady(r, Propane(3000)); !errors.As(err, &gone) || !(gone.After > 0) || gone.Error() == "" {
		t.Error(err)
	}
	if _, err := After(van(), Propane(3000), dryAir(), 1e6); !errors.As(err, &gone) || !(gone.After > 3600 && gone.After < 6*3600) {
		t.Error(err)
	}
	last := gone.After
	if air := must(After(van(), Propane(3000), dryAir(), last-unit.Duration(1))); !(air.Oxygen > 0 && air.Oxygen < 1e-4) {
		t.Errorf("a second before the end: %+v", air)
	}
	if _, err := After(van(), Propane(3000), dryAir(), last+unit.Duration(1)); !errors.As(err, &gone) {
		t.Error(err)
	}
}

// The dry part of outside air is always the same, whatever its water.
func TestOutside(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		T := unit.Temperature(rapid.Float64Range(230, 330).Draw(t, "T"))
		humidity := rapid.Float64Range(0, 1).Draw(t, "humidity")
		a := must(Outside(500e-6, T, unit.Ratio(humidity), 90e3))
		near(t, "oxygen", float64(a.Dry().Oxygen), float64(OxygenOutside), 1e-12)
		near(t, "carbon dioxide", float64(a.Dry().CarbonDioxide), 500e-6, 1e-12)
		near(t, "vapour", float64(must(VapourPressure(a, 90e3))), humidity*float64(must(SaturationPressure(T))), 1e-12)
	})
}

func TestBalanceRefusals(t *testing.T) {
	nan := math.NaN()
	with := func(change func(*Room)) Room {
		r := van()
		r.Fresh = 0.01
		change(&r)
		return r
	}
	for _, c := range []struct {
		room Room
		what string
	}{
		{with(func(r *Room) { r.Volume = 0 }), "volume of the room"},
		{with(func(r *Room) { r.Volume = unit.Volume(nan) }), "volume of the room"},
		{with(func(r *Room) { r.Inside = 20 }), "temperature inside"},
		{with(func(r *Room) { r.Outside = unit.Temperature(nan) }), "temperature outside"},
		{with(func(r *Room) { r.Pressure = 0 }), "pressure of the air"},
		{with(func(r *Room) { r.Fresh = -1 }), "fresh air"},
		{with(func(r *Room) { r.Fresh = unit.VolumeFlow(math.Inf(1)) }), "fresh air"},
		{with(func(r *Room) { r.Air.Oxygen = -0.1 }), "oxygen outside"},
		{with(func(r *Room) { r.Air.CarbonDioxide = unit.Ratio(nan) }), "carbon dioxide outside"},
		{with(func(r *Room) { r.Air.Water = 0.95 }), "water vapour outside"},
		{with(func(r *Room) { r.Air = Air{0.5, 0.4, 0.3} }), "oxygen, carbon dioxide and water outside"},
	} {
		_, err := Steady(c.room, Exchange{})
		refused(t, err, c.what)
		_, err = After(c.room, Exchange{}, dryAir(), 1)
		refused(t, err, c.what)
		_, _, err = TimeToOxygen(c.room, Exchange{}, dryAir(), 0.19)
		refused(t, err, c.what)
	}
	_, err := Steady(van(), Exchange{Water: -1})
	refused(t, err, "water given")
	_, err = After(van(), Exchange{}, Air{Oxygen: 2}, 1)
	refused(t, err, "oxygen at the start")
	_, err = After(van(), Exchange{}, dryAir(), unit.Duration(nan))
	refused(t, err, "time")
	_, _, err = TimeToCarbonDioxide(van(), Exchange{}, dryAir(), 1.5)
	refused(t, err, "limit")
	_, err = Rise(0.1, 0.2, 0.1)
	refused(t, err, "volume made")
	_, err = Rise(0.1, 0.2, 0)
	refused(t, err, "fresh air")
	_, err = Rise(-1, 0.2, 1)
	refused(t, err, "share outside")
	_, err = SeaLevelOxygen(2, 101325)
	refused(t, err, "oxygen")
	_, err = Outside(0.02, 280, 1, 101325)
	refused(t, err, "carbon dioxide of the outside air")
	_, err = Outside(420e-6, 280, 1.1, 101325)
	refused(t, err, "relative humidity")
	_, err = Outside(420e-6, 200, 1, 101325)
	refused(t, err, "over water")
	_, err = Outside(420e-6, 280, 1, unit.AbsolutePressure(nan))
	refused(t, err, "pressure of the air")
	_, err = Burned(Fuel{}, 1e-3)
	refused(t, err, "carbon atoms")
	_, err = Burned(Fuel{3, 80}, 1e-3)
	refused(t, err, "hydrogen atoms")
	_, err = Burned(Fuel{3, 8}, unit.MassFlow(nan))
	refused(t, err, "fuel burned")
	_, err = Breathing(Resting, -1)
	refused(t, err, "people")
	_, err = Breathing(0, 1)
	refused(t, err, "activity")
}

// Air of nothing but water has no dry part.
func TestDryOfSteam(t *testing.T) {
	if a := (Air{Water: 1}).Dry(); a.Water != 1 {
		t.Errorf("%+v", a)
	}
}

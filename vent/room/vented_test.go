package room

import (
	"math"
	"testing"

	"lowvent.example/gas/air"
	"lowvent.example/gas/solve/physicstest"
	"lowvent.example/schema/unit"
	"lowvent.example/vent/flow"
	"pgregory.net/rapid"
)

// pair is a low and a high opening of so many cm², 1.5 m apart.
func pair(low, high float64) []flow.Opening {
	at := func(area, middle float64) flow.Opening {
		return flow.Opening{Area: unit.Area(area * 1e-4), Coefficient: flow.Coefficient, Middle: unit.Length(middle), Extent: 0.05}
	}
	return []flow.Opening{at(low, 0.1), at(high, 1.6)}
}

func dwelling(difference float64) Room {
	r := van()
	r.Inside = 20 + celsius
	r.Outside = unit.Temperature(20 + celsius - difference)
	return r
}

// Two alike openings against the closed form of the stack, the neutral level half
// way: Q = C·A·√(2·g·(H/2)·ΔT/T) by ASHRAE 2009 chapter 16 eq. 39.
func TestStackFlowOfAPair(t *testing.T) {
	for _, difference := range []float64{1, 3, 10} {
		r, _, err := Vented(dwelling(difference), pair(100, 100), Draws{})
		if err != nil {
			t.Fatal(err)
		}
		want := must(flow.StackFlow(flow.Coefficient, 0.01, 0.75, unit.TemperatureDifference(difference), r.Inside))
		near(t, "fresh air", float64(r.Fresh), float64(want), 0.03)
	}
}

// 19 m³/h at 32 K is 5.8 at 3 K (engineering notes): flow goes with the root of the
// difference.
func TestWarmthDrivesTheStack(t *testing.T) {
	cold, _, err := Vented(dwelling(32), pair(20, 20), Draws{})
	if err != nil {
		t.Fatal(err)
	}
	mild, _, err := Vented(dwelling(3), pair(20, 20), Draws{})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "cold over mild", float64(cold.Fresh)/float64(mild.Fresh), 19/5.8, 0.08)
}

// Larger openings, or a room warmer than outside by more, never let in less.
func TestVentedIsMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		difference := rapid.Float64Range(0.5, 30).Draw(t, "difference")
		low, high := rapid.Float64Range(5, 300).Draw(t, "low"), rapid.Float64Range(5, 300).Draw(t, "high")
		draws := Draws{Extract: perHour(rapid.Float64Range(0, 100).Draw(t, "extract")), Supply: perHour(rapid.Float64Range(0, 100).Draw(t, "supply"))}
		fresh := func(difference, low, high float64, d Draws) float64 {
			r, _, err := Vented(dwelling(difference), pair(low, high), d)
			if err != nil {
				t.Fatal(err)
			}
			return float64(r.Fresh) * (1 + 1e-6)
		}
		one := fresh(difference, low, high, Draws{}) / (1 + 1e-6)
		if fresh(difference+5, low, high, Draws{}) < one || fresh(difference, 1.3*low, high, Draws{}) < one || fresh(difference, low, 1.3*high, Draws{}) < one {
			t.Fatal("less fresh air for a larger opening or more warmth")
		}
		if fresh(difference, low, high, draws) < max(one, 0.85*float64(max(draws.Extract, draws.Supply))) {
			t.Fatal("fans took fresh air away")
		}
	})
}

// Fans: an extract fan draws in at least what it blows out, and lowers the pressure
// by the closed form where the stack is still; a supply fan adds its own; without
// openings there is no fresh air.
func TestDraws(t *testing.T) {
	still := dwelling(0)
	extract := perHour(60)
	openings := pair(50, 50)
	r, pressure, err := Vented(still, openings, Draws{Extract: extract})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "fresh air of a fan", float64(r.Fresh), float64(extract), 1e-6)
	rho := must(air.Density(101325, still.Outside))
	near(t, "pressure", -float64(pressure), float64(must(Depressurisation(extract, 0.01, flow.Coefficient, rho))), 1e-3)

	natural, _, err := Vented(dwelling(10), openings, Draws{})
	if err != nil {
		t.Fatal(err)
	}
	for _, d := range []Draws{{Extract: perHour(40)}, {Flues: perHour(40)}, {Supply: perHour(40)}} {
		both, _, err := Vented(dwelling(10), openings, d)
		if err != nil {
			t.Fatal(err)
		}
		if float64(both.Fresh) < float64(natural.Fresh)*(1-1e-6) || float64(both.Fresh) < 0.96*float64(perHour(40)) {
			t.Errorf("%+v: %v of fresh air, the stack alone gives %v", d, both.Fresh, natural.Fresh)
		}
	}
	// A strong fan leaves every opening one way: what it moves at the warmth inside
	// is less air outside.
	for _, d := range []Draws{{Extract: perHour(300)}, {Supply: perHour(300)}} {
		warm := dwelling(30)
		strong, _, err := Vented(warm, openings, d)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "fresh air as it is outside", float64(strong.Fresh), float64(perHour(300))*float64(warm.Outside)/float64(warm.Inside), 1e-6)
	}
	shut, pressure, err := Vented(dwelling(10), nil, Draws{Extract: extract})
	if err != nil || shut.Fresh != 0 || pressure != 0 {
		t.Error(shut.Fresh, pressure, err)
	}
	if got := (Draws{Extract: 3, Flues: 2, Supply: 1}).Net(); got != 4 {
		t.Errorf("net draw %v, want 4", got)
	}
}

// Both cases are looked at and the worse of each is told. In the mild case the
// openings pass little: the carbon dioxide is its. With saturated air outside the
// mild one is damper too; in the cold the same water settles sooner, which is
// judged by the caller on both.
func TestWorstIsTheWorseOfBoth(t *testing.T) {
	use := Use{Days: 1, Spells: []Spell{{Start: 8 * hour, Lasts: 2 * hour, Exchange: Propane(1500)}}}
	made := func(difference float64) Room {
		r, _, err := Vented(dwelling(difference), pair(60, 60), Draws{})
		if err != nil {
			t.Fatal(err)
		}
		r.Air = must(Outside(CarbonDioxideOutside, r.Outside, 1, r.Pressure))
		return r
	}
	mild, cold := made(3), made(35)
	w := must(Worst(mild, cold, use))
	a, b := must(Follow(mild, use)), must(Follow(cold, use))
	if w.CarbonDioxideCold || w.CarbonDioxide != a.CarbonDioxide || w.End != a.End {
		t.Errorf("%+v", w)
	}
	if w.CarbonDioxide.Air.Dry().CarbonDioxide < b.CarbonDioxide.Air.Dry().CarbonDioxide || w.Oxygen.Air.Oxygen > b.Oxygen.Air.Oxygen || w.Water.Air.Water < b.Water.Air.Water {
		t.Errorf("not the worse: %+v, %+v", w, b)
	}
	if w.Mild != a || w.Coldest != b {
		t.Error("the two outcomes do not come along")
	}
	// The coldest case is worse where its openings are shut: every flag turns.
	w = must(Worst(mild, cold.Shut(), use))
	if w.End != must(Follow(cold.Shut(), use)).End {
		t.Errorf("the end is not that of the case with the most carbon dioxide: %+v", w)
	}
	if !w.CarbonDioxideCold || !w.OxygenCold || !w.WaterCold || w.Exhausted {
		t.Errorf("%+v", w)
	}
	long := Use{Days: 1, Spells: []Spell{{Lasts: day, Exchange: Propane(3000)}}}
	w = must(Worst(mild, cold.Shut(), long))
	if !w.Exhausted || !w.ExhaustedCold {
		t.Errorf("%+v", w)
	}
	_, err := Worst(made(3.5), cold, use)
	refused(t, err, "mild case")
	_, err = Worst(mild, Room{Inside: 290, Outside: 290}, use)
	refused(t, err, "volume of the room")
	_, err = Worst(Room{}, cold, use)
	refused(t, err, "volume of the room")
}

// In the cold a room has less water and its glass sweats all the same.
func TestColdGlassSweatsFirst(t *testing.T) {
	use := Use{Days: 1, Spells: []Spell{{Start: 8 * hour, Lasts: 2 * hour, Exchange: Propane(1500)}}}
	margin := func(difference float64) float64 {
		r, _, err := Vented(dwelling(difference), pair(60, 60), Draws{})
		if err != nil {
			t.Fatal(err)
		}
		r.Air = must(Outside(CarbonDioxideOutside, r.Outside, 0.6, r.Pressure))
		out := must(Follow(r, use))
		return float64(must(Settle(r, out.Water.Air, SingleGlazing())).Margin)
	}
	if mild, cold := margin(3), margin(35); cold >= mild || cold > 0 {
		t.Errorf("margin %.1f K in the mild, %.1f K in the cold", mild, cold)
	}
}

// The pressure of a room and what a crack draws are each other's inverse: 10 Pa
// through 1 cm² draw 0.9 m³/h (engineering notes, computed with Cd 0.61).
func TestDepressurisation(t *testing.T) {
	near(t, "crack at 10 Pa in m³/h", float64(must(Crack(10, 1e-4, 0.61, 1.2)))*hour, 0.9, 0.01)
	rapid.Check(t, func(t *rapid.T) {
		q := unit.VolumeFlow(rapid.Float64Range(1e-4, 0.05).Draw(t, "q"))
		A := unit.Area(rapid.Float64Range(1e-3, 0.1).Draw(t, "A"))
		C := unit.Ratio(rapid.Float64Range(0.3, 1).Draw(t, "C"))
		rho := unit.Density(rapid.Float64Range(0.9, 1.4).Draw(t, "rho"))
		dp := must(Depressurisation(q, A, C, rho))
		if dp <= 2000 {
			near(t, "flow", float64(must(Crack(dp, A, C, rho))), float64(q), 1e-9)
		}
		near(t, "pressure of half the area", float64(must(Depressurisation(q, A/unit.Area(2), C, rho))), 4*float64(dp), 1e-9)
	})
}

func TestVentedRefusals(t *testing.T) {
	_, _, err := Vented(Room{}, pair(1, 1), Draws{})
	refused(t, err, "volume of the room")
	_, _, err = Vented(dwelling(3), pair(1, 1), Draws{Extract: -1})
	refused(t, err, "extract fans")
	_, _, err = Vented(dwelling(3), pair(1, 1), Draws{Flues: unit.VolumeFlow(math.NaN())})
	refused(t, err, "draw of flues")
	_, _, err = Vented(dwelling(3), pair(1, 1), Draws{Supply: 100})
	refused(t, err, "supply fans")
	hot := dwelling(3)
	hot.Inside = 400
	if _, _, err := Vented(hot, pair(1, 1), Draws{}); err == nil {
		t.Error("air of 400 K has a density here")
	}
	hot.Inside, hot.Outside = 290, 400
	if _, _, err := Vented(hot, pair(1, 1), Draws{}); err == nil {
		t.Error("air of 400 K has a density here")
	}
	wrong := pair(1, 1)
	wrong[0].Coefficient = 2
	if _, _, err := Vented(dwelling(3), wrong, Draws{}); err == nil {
		t.Error("a coefficient of 2 was taken")
	}
	_, err = Depressurisation(-1, 0.01, 0.6, 1.2)
	refused(t, err, "drawn out")
	_, err = Depressurisation(0.01, 0, 0.6, 1.2)
	refused(t, err, "free area")
	_, err = Depressurisation(0.01, 0.01, 0, 1.2)
	refused(t, err, "discharge coefficient")
	_, err = Crack(-1, 0.01, 0.6, 1.2)
	refused(t, err, "difference of pressure")
	_, err = Crack(1, unit.Area(math.NaN()), 0.6, 1.2)
	refused(t, err, "area of the crack")
	_, err = Crack(1, 0.01, 0.6, 0)
	refused(t, err, "density")
	_, err = Leakage(-1)
	refused(t, err, "50 Pa")
}

// The limits and the bands that are in the table of thresholds agree with it, and
// all of its read bands are here.
func TestLimitsAgainstTheTable(t *testing.T) {
	limits, bands := Limits(), AlarmBands()
	found := 0
	for _, row := range physicstest.Table(t, "thresholds.csv") {
		if row["provenance"] != "read" {
			continue
		}
		switch row["item"] {
		case "CO2 8 h OSHA/Canada":
			near(t, row["item"], float64(limits[0].Share)*1e6, row.Number(t, "value"), 1e-9)
		case "oxygen deficient atmosphere":
			near(t, row["item"], float64(limits[1].Share)*100, row.Number(t, "value"), 1e-9)
		case "CO 8 h OSHA":
			near(t, row["item"], float64(limits[2].Share)*1e6, row.Number(t, "value"), 1e-9)
		case "CO alarm UL 2034", "CO alarm EN 50291":
			if found >= len(bands) {
				t.Fatal("more bands in the table than here")
			}
			band := bands[found]
			near(t, row["item"], float64(band.Share)*1e6, row.Number(t, "value"), 1e-9)
			if "CO alarm "+band.Standard != row["item"] || band.Response != row["limit"] || band.Source != row["source"] || band.Address != row["address"] {
				t.Errorf("%+v\n%v", band, row)
			}
		default:
			continue
		}
		found++
	}
	if found != 3+len(bands) {
		t.Errorf("%d rows compared, want %d", found, 3+len(bands))
	}
}

// Every limit has a source, and an address where it was read.
func TestLimitsHaveSources(t *testing.T) {
	for _, l := range Limits() {
		if l.Source == "" || l.Basis == "" || l.Read != (l.Address != "") || !(l.Share > 0) || l.Least != (l.Gas == "oxygen") {
			t.Errorf("%+v", l)
		}
	}
	last := unit.GaugePressure(0)
	for _, l := range SpillageLimits() {
		if l.Source == "" || l.Appliance == "" || l.Pressure < last || (l.Address != "" && !l.Read) {
			t.Errorf("%+v", l)
		}
		last = l.Pressure
	}
	for _, p := range People() {
		if p.Source == "" || p.Address == "" || !(p.Oxygen > p.CarbonDioxide) {
			t.Errorf("%+v", p)
		}
	}
}

// Common figures for a grown person: 18 L/h of carbon dioxide at rest (common
// practice, no source), 40 to 60 and 60 to 120 g/h of water.
func TestPeople(t *testing.T) {
	all := People()
	near(t, "carbon dioxide at rest, L/h", float64(all[0].CarbonDioxide)*hour*1000, 18, 0.05)
	near(t, "water at rest, g/h", float64(all[0].Water)*hour*1000, 60, 1e-9)
	two := must(Breathing(LightWorking, 2))
	near(t, "carbon dioxide of two", float64(two.CarbonDioxide), 2*float64(all[1].CarbonDioxide), 1e-12)
	near(t, "water of two", float64(two.Water), 2*float64(steam(float64(all[1].Water))), 1e-12)
	if e := must(Breathing(Resting, 0)); e != (Exchange{}) {
		t.Errorf("nobody breathes %+v", e)
	}
}

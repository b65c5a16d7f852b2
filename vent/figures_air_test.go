package vent_test

import (
	"context"
	"math"
	"strings"
	"testing"

	"lowvent.example/schema/check"
	"lowvent.example/schema/check/checktest"
	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
	"lowvent.example/vent"
)

// airFigures computes the figures of the demonstration bus with edits made to it.
func airFigures(t *testing.T, patch ...string) map[string]report.Figure {
	t.Helper()
	var edits []source.Edit
	for _, line := range patch {
		e, err := source.ParseEdit(line)
		if err != nil {
			t.Fatal(err)
		}
		edits = append(edits, e)
	}
	l, err := bench(t).Layout(checktest.DefaultBase, edits)
	if err != nil {
		t.Fatal(err)
	}
	codes, err := bench(t).Codes(checktest.DefaultCode)
	if err != nil {
		t.Fatal(err)
	}
	r, err := check.Run(context.Background(), check.Set{Figures: vent.Checks().Figures}, l, codes, check.Options{On: checktest.Day})
	if err != nil {
		t.Fatal(err)
	}
	found := map[string]report.Figure{}
	for _, f := range r.Figures {
		found[f.ID+" "+f.Subject] = f
	}
	return found
}

// figure is the nominal value of a figure; the test fails if it has none.
func figure(t *testing.T, figures map[string]report.Figure, key string) float64 {
	t.Helper()
	f, shown := figures[key]
	if !shown || f.Value == nil || f.Value.SI == nil {
		t.Fatalf("%s has no value: %+v", key, f)
	}
	return *f.Value.SI
}

func nearTo(t *testing.T, what string, got, want, share float64) {
	t.Helper()
	if math.Abs(got-want) > share*math.Abs(want) {
		t.Errorf("%s is %v, by hand %v", what, got, want)
	}
}

// The studio of the demonstration bus: 4.6 by 2.3 by 1.98 m, a roof vent of 520 cm2 behind a
// cover that is 75 % open and a floor vent of 84 in2 behind one of 65 %, 1.98 m apart.
const (
	studioVolume = 4.60 * 2.30 * 1.98
	studioTop    = 520e-4 * 0.75
	studioBottom = 84 * 0.0254 * 0.0254 * 0.65
)

// TestAirByHand: the flow of two openings in still air (ASHRAE Fundamentals 2009, ch. 16), and
// the steady shares of the stoichiometry (NIST heat of combustion; 0.115 m3 of carbon
// dioxide and 0.192 m3 of oxygen a kWh) for a flame that never goes out.
func TestAirByHand(t *testing.T) {
	figures := airFigures(t)
	area := math.Sqrt2 * 0.65 * studioTop * studioBottom / math.Hypot(studioTop, studioBottom)
	Q := area * math.Sqrt(9.80665*1.98*3/293.15)
	nearTo(t, "still air", figure(t, figures, "space.still-air /spaces/studio"), Q, 1e-6)

	always := airFigures(t, `/appliances/hob/use = { "always": { "at": "00:00", "for": "24 h", "share": "10 %", "season": "winter" } }`, `/dwelling/sleeps = 0`)
	kilowatts := 2200 * 0.29307107e-3
	got := figure(t, always, "space.carbon-dioxide-peak /spaces/studio") - 420e-6
	dry := 0.115 * kilowatts / 3600 / Q * 101325 / 93871 // at the pressure of 2100 ft
	nearTo(t, "carbon dioxide", got, dry, 0.04)
	fall := 0.2095 - figure(t, always, "space.oxygen-least /spaces/studio")
	if fall < 0.192/0.115*dry || fall > 0.192/0.115*dry+0.2095*0.04 {
		t.Errorf("oxygen falls by %v, by hand %v and the room that water takes", fall, 0.192/0.115*dry)
	}
	if shut, open := figure(t, figures, "space.carbon-dioxide-shut /spaces/studio"), figure(t, figures, "space.carbon-dioxide-peak /spaces/studio"); shut < 2*open {
		t.Errorf("with every vent shut %v, with the vents %v", shut, open)
	}
	if shut, open := figure(t, figures, "space.oxygen-shut /spaces/studio"), figure(t, figures, "space.oxygen-least /spaces/studio"); shut >= open {
		t.Errorf("oxygen with every vent shut %v, with the vents %v", shut, open)
	}
	if f := figures["space.carbon-dioxide-peak /spaces/battery-bay"]; f.Value != nil || len(f.Missing) == 0 {
		t.Errorf("in a bay in which nobody stays: %+v", f.Value)
	}
	if least := figure(t, figures, "space.oxygen-least /spaces/cab"); least != 0 {
		t.Errorf("two people for two days in a cab without a vent leave %v of oxygen", least)
	}
	if dew := figure(t, figures, "space.dew-point /spaces/studio"); dew < 271.15 || dew > 283 {
		t.Errorf("dew point %v K", dew)
	}
}

// TestSuctionByHand: 70 cfm and 60 m3/h against 742 cm2 with 0.65 and air of -10 degC at 93.87 kPa.
func TestSuctionByHand(t *testing.T) {
	figures := airFigures(t)
	q := 70*0.028316846592/60 + 60.0/3600
	rho := 93871 * 0.0289644 / (8.31432 * 263.15)
	v := q / (0.65 * (studioTop + studioBottom))
	nearTo(t, "suction", figure(t, figures, "space.suction /spaces/studio"), v*v*rho/2, 1e-3)
}

// TestLeaksInSpaceByHand: 1.7 % of the studio as warm vapour of 1.62 kg/m3 (40 degC, 93.87 kPa),
// against the 19.9 lb of a cylinder; the hob's 22000 BTU/h as a layer 5 cm deep.
func TestLeaksInSpaceByHand(t *testing.T) {
	figures := airFigures(t)
	const rho = 93871 * 44.0956e-3 / (8.314462 * 313.15) * 1.013
	mass := studioVolume * 0.017 * rho
	nearTo(t, "flammable mass", figure(t, figures, "space.flammable-mass /spaces/studio"), mass, 3e-3)
	nearTo(t, "times over", figure(t, figures, "space.times-flammable /spaces/studio"), 19.9*0.45359237/mass, 3e-3)
	q := 22000 * 0.29307107 / 50.327e6 / rho
	nearTo(t, "5 cm deep", figure(t, figures, "appliance.ankle-time /appliances/hob"), 4.60*2.30*0.05*0.017/q, 3e-3)
	mixed := figure(t, figures, "appliance.mixed-time /appliances/hob")
	nearTo(t, "mixed", mixed, -studioVolume/q*math.Log(1-0.017), 1e-2)
	if late := figure(t, figures, "alarm.latest /alarms/gas-studio"); late < figure(t, figures, "appliance.ankle-time /appliances/hob") {
		t.Errorf("the alarm is heard after %v s at the latest, before the gas is 5 cm deep", late)
	}
	for _, none := range []string{"appliance.ankle-time /appliances/heater", "alarm.latest /alarms/co-studio"} {
		if f := figures[none]; f.Value != nil || len(f.Missing) == 0 {
			t.Errorf("%s has the value %v", none, f.Value)
		}
	}
}

// TestLockerFigures: more leak, or vents that are half blocked, hold more; the largest leak is
// held; without a vent that counts nothing ever clears.
func TestLockerFigures(t *testing.T) {
	figures := airFigures(t)
	held := func(name string) float64 { return figure(t, figures, "locker.held-"+name+" /lockers/skirt") }
	if !(held("0-25-mm2-high-side") < held("1-mm2-high-side") && held("1-mm2-high-side") < held("2-5-mm2-high-side")) {
		t.Error("more leak holds less")
	}
	if !(held("1-mm2-high-side-half") > held("1-mm2-high-side")) || !(held("1-mm2-failed-regulator") > held("1-mm2-low-side")) {
		t.Error("vents that are half blocked hold less, or a failed regulator leaks less")
	}
	// every legal locker is far over the lower limit for a hole of 0.25 mm2 at cylinder pressure
	if held("0-25-mm2-high-side") < 1 {
		t.Errorf("a quarter of a square millimetre is held at %v of the lower limit", held("0-25-mm2-high-side"))
	}
	largest, clears := figure(t, figures, "locker.largest-leak /lockers/skirt"), figure(t, figures, "locker.clears /lockers/skirt")
	if largest <= 0 || largest > 1e-4 || clears < 60 || clears > 3600*10 {
		t.Errorf("largest leak %v kg/s, clears in %v s", largest, clears)
	}
	// gas at 1.7 % is 1.5 times air where there is only gas: 0.009 of the air's weight over 58 cm
	if wind := figure(t, figures, "locker.cancelling-wind /lockers/skirt"); wind < 0.2 || wind > 0.4 {
		t.Errorf("a wind of %v m/s", wind)
	}
	if flush := figure(t, figures, "locker.trapped /lockers/skirt"); flush != 0 {
		t.Errorf("%v m3 lie behind a vent in the floor", flush)
	}
	behind := airFigures(t, `/lockers/skirt/vents/low-inner/lowerEdgeOverLowest = "30 mm"`, `/lockers/skirt/vents/low-outer/lowerEdgeOverLowest = "20 mm"`)
	nearTo(t, "behind 20 mm", figure(t, behind, "locker.trapped /lockers/skirt"), 0.90*0.62*0.020, 1e-9)
	shut := airFigures(t, `/lockers/skirt/vents/low-inner/closable = true`, `/lockers/skirt/vents/low-outer/closable = true`, `/lockers/skirt/vents/high/closable = true`)
	if f := shut["locker.clears /lockers/skirt"]; f.Value != nil || len(f.Missing) == 0 || !strings.Contains(f.Missing[0].What, "never") {
		t.Errorf("without a vent it clears: %+v", f)
	}
	for _, id := range []string{"locker.cancelling-wind", "locker.trapped"} {
		if f := shut[id+" /lockers/skirt"]; f.Value != nil || len(f.Missing) == 0 {
			t.Errorf("without a vent %s is %+v", id, f.Value)
		}
	}
}

// TestGasArrives: 22000 BTU/h over the studio and the cab, which lie open to each other at one
// level, as a layer of the lower limit; lower is never later, and no way there is no time.
func TestGasArrives(t *testing.T) {
	arrives := func(patch ...string) func(string) float64 {
		figures := airFigures(t, patch...)
		return func(source string) float64 {
			return figure(t, figures, "ignition.gas-arrives /ignitionSources/"+source)
		}
	}
	const rho = 93871 * 44.0956e-3 / (8.314462 * 313.15) * 1.013
	q := 22000 * 0.29307107 / 50.327e6 / rho
	deep := func(z float64) float64 { return 0.017 * 4.60 * 2.30 * z / q }
	high := arrives()("bandsaw")
	low := arrives(`/ignitionSources/bandsaw/at = ["3.00 m", "2.00 m", "0.10 m"]`)("bandsaw")
	if low > high || low > deep(0.10) {
		t.Errorf("at 10 cm %v s, higher %v s; with the curtain shut %v s by hand", low, high, deep(0.10))
	}
	if shut := arrives(`/appliances/hob/in = "spaces/berth"`)("water-pump"); shut <= 0 {
		t.Errorf("over the sill of the washroom after %v s", shut)
	}
	if f := airFigures(t)["ignition.gas-arrives /ignitionSources/starter-battery"]; f.Value != nil || len(f.Missing) == 0 {
		t.Errorf("in the engine space, to which no way leads: %+v", f)
	}
}

// TestALowerSillLetsGasOver: of the sills that two rooms list for one doorway the lower
// counts, whoever lists it, and a higher one keeps gas back for longer.
func TestALowerSillLetsGasOver(t *testing.T) {
	soon := func(a, b, sillA, sillB, source string) float64 {
		patch := func(from, to, sill string) string {
			return "/spaces/" + from + "/openTo/" + to + `/sill = "` + sill + `"`
		}
		return figure(t, airFigures(t, patch(a, b, sillA), patch(b, a, sillB), `/ignitionSources/bandsaw/in = "spaces/`+b+`"`, `/ignitionSources/bandsaw/at = ["3.00 m", "2.00 m", "0.02 m"]`), "ignition.gas-arrives /ignitionSources/"+source)
	}
	for _, way := range [][2]string{{"studio", "cab"}, {"studio", "washroom"}} {
		low, high := soon(way[0], way[1], "50 mm", "50 mm", "bandsaw"), soon(way[0], way[1], "300 mm", "300 mm", "bandsaw")
		if low >= high {
			t.Errorf("to the %s: over 5 cm after %v s, over 30 cm after %v s", way[1], low, high)
		}
		one, other := soon(way[0], way[1], "50 mm", "300 mm", "bandsaw"), soon(way[0], way[1], "300 mm", "50 mm", "bandsaw")
		if one != low || other != low {
			t.Errorf("to the %s: %v s and %v s where one side lists 5 cm, %v s where both do", way[1], one, other, low)
		}
	}
}

// TestHeightsOverALowerFloor: how deep gas stands, and how high what lights it, is told over
// the floor of the space, wherever that lies.
func TestHeightsOverALowerFloor(t *testing.T) {
	course := airFigures(t, `/spaces/studio/box/from = ["0 m", "0 m", "-0.2 m"]`, `/ignitionSources/bandsaw/at = ["3.00 m", "2.00 m", "1 m"]`)["appliance.unlit-course /appliances/hob"].Course
	for _, p := range course.Points {
		if p[1] < 0 {
			t.Errorf("after %v s the gas stands at %v m over the floor", p[0], p[1])
		}
	}
	height := -1.0
	for _, l := range course.Levels {
		if strings.Contains(l.Title, "bandsaw") {
			height = l.At
		}
	}
	if math.Abs(height-1.2) > 1e-9 {
		t.Errorf("the saw is %v m over the floor, want 1.2 m", height)
	}
}

// TestGasMayGoAllOneWay: of two doorways with sills at one height all of the gas may go
// through either, so that a second one keeps nobody's room free for longer.
func TestGasMayGoAllOneWay(t *testing.T) {
	sills := []string{`/spaces/studio/openTo/washroom/sill = "100 mm"`, `/spaces/washroom/openTo/studio/sill = "100 mm"`,
		`/ignitionSources/bandsaw/in = "spaces/washroom"`, `/ignitionSources/bandsaw/at = ["5 m", "1 m", "0.05 m"]`}
	const saw = "ignition.gas-arrives /ignitionSources/bandsaw"
	one := figure(t, airFigures(t, append(sills, "delete /spaces/studio/openTo/cab", "delete /spaces/cab/openTo/studio")...), saw)
	two := figure(t, airFigures(t, append(sills, `/spaces/studio/openTo/cab/sill = "100 mm"`, `/spaces/cab/openTo/studio/sill = "100 mm"`)...), saw)
	if two > one*(1+1e-9) {
		t.Errorf("with one way %v s, with two %v s", one, two)
	}
}

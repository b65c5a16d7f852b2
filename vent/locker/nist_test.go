package locker

import (
	"strconv"
	"strings"
	"testing"

	"lowvent.example/gas/solve"
	"lowvent.example/gas/solve/physicstest"
	"lowvent.example/schema/unit"
	"lowvent.example/vent/flow"
)

// helium is the box of a row, upright: helium rises as propane sinks.
func helium(t testing.TB, row physicstest.Row) *Model {
	t.Helper()
	openings := ssv()
	if input(t, row, "vents") == 2 {
		openings = ulv()
	}
	near(t, "vent", float64(openings[0].Area), input(t, row, "vent_w")*input(t, row, "vent_h"), 1e-9)
	return model(t, box(t, flow.Helium(), openings, input(t, row, "G_L_min")/6e4))
}

// atStop is the share when the leak stops.
func atStop(t testing.TB, m *Model, row physicstest.Row) unit.Ratio {
	t.Helper()
	return got[unit.Ratio](t)(m.After(0, unit.Duration(input(t, row, "release_s"))))
}

// run names a run by its data file.
func run(row physicstest.Row) string {
	return row["source"][strings.LastIndex(row["source"], " ")+1:] + ", " + row["quantity"]
}

// factor is how much richer the richest place of a run may be: a leak under the
// ceiling is, for helium, what one on the floor is for propane.
func factor(row physicstest.Row) unit.Ratio {
	if strings.Contains(row["inputs"], "below ceiling") {
		return Near
	}
	return Far
}

// NIST helium tests 2009, at the end of the leak. One vent: the mean within 5 %. Two
// vents: the model at or over the mean, and the richest sensor 0.85 to 1.15 of it.
// Everywhere: the richest place as told at or over the richest sensor, and the model
// over the leanest. With one vent and a jet under the ceiling the sensor there is 1.38
// of the model, which is what [Near] is taken from.
func TestHeliumAtTheEndOfTheLeak(t *testing.T) {
	one, two := &comparison{name: "one vent, mean at the end"}, &comparison{name: "two vents, mean at the end"}
	top, bottom := &comparison{name: "two vents, mixed against the richest sensor"}, &comparison{name: "mixed against the leanest sensor"}
	rich := &comparison{name: "richest place as told against the richest sensor"}
	rows := append(topic(t, "gas build-up, one vent (release)"), topic(t, "gas build-up, two vents (release)")...)
	for _, row := range rows {
		m := helium(t, row)
		mixed, measured := atStop(t, m, row), row.Number(t, "value")/100
		two2 := input(t, row, "vents") == 2
		switch {
		case strings.HasPrefix(row["quantity"], "mean") && two2:
			two.add(t, run(row), float64(mixed), measured, 1, 1.6)
		case strings.HasPrefix(row["quantity"], "mean"):
			one.add(t, run(row), float64(mixed), measured, 0.95, 1.05)
		case strings.HasPrefix(row["quantity"], "sensor 1"):
			bottom.add(t, run(row), float64(mixed), measured, 1, 3.1)
		case strings.HasPrefix(row["quantity"], "sensor 7"):
			if two2 {
				top.add(t, run(row), float64(mixed), measured, 1/1.15, 1/0.85)
			}
			rich.add(t, run(row), float64(Richest(mixed, factor(row))), measured, 1, 1.4)
		default:
			t.Errorf("row not understood: %v", row)
		}
	}
	if len(rows) != 21 {
		t.Errorf("%d rows, want 21", len(rows))
	}
	for _, c := range []*comparison{one, two, top, bottom, rich} {
		c.log(t)
	}
}

// After the leak. One vent: within 10 % an hour later, and within 12 % two and five
// hours later. Two vents: the richest gas leaves first and the measured mean falls
// faster than a mixed box does; the model is 1.2 to 1.8 times over it, never under.
func TestHeliumAfterTheLeak(t *testing.T) {
	hour, later := &comparison{name: "one vent, 1 h after"}, &comparison{name: "one vent, 2 h and 5 h after"}
	two := &comparison{name: "two vents, 1 h, 2 h and 5 h after"}
	rows := append(topic(t, "gas build-up, one vent (decay)"), topic(t, "gas build-up, two vents (decay)")...)
	for _, row := range rows {
		m, after := helium(t, row), input(t, row, "t_after_stop_s")
		share := float64(got[unit.Ratio](t)(m.Rest(atStop(t, m, row), unit.Duration(after))))
		measured := row.Number(t, "value") / 100
		switch {
		case input(t, row, "vents") == 2:
			two.add(t, run(row), share, measured, 1.2, 1.8)
		case after == 3600:
			hour.add(t, run(row), share, measured, 0.9, 1.1)
		default:
			later.add(t, run(row), share, measured, 0.9, 1.12)
		}
	}
	if len(rows) != 21 {
		t.Errorf("%d rows, want 21", len(rows))
	}
	for _, c := range []*comparison{hour, later, two} {
		c.log(t)
	}
}

// The coefficient that carries the measured mean from one hour to five hours after the
// stop, found with our model, is the published one: the decay is integrated right.
func TestEffectiveCoefficient(t *testing.T) {
	means := map[string]float64{}
	for _, name := range []string{"gas build-up, one vent (decay)", "gas build-up, two vents (decay)"} {
		for _, row := range topic(t, name) {
			file := row["source"][strings.LastIndex(row["source"], " ")+1:]
			means[file+strconv.FormatFloat(input(t, row, "t_after_stop_s"), 'f', 0, 64)] = row.Number(t, "value") / 100
		}
	}
	c := &comparison{name: "effective coefficient of the decay"}
	for _, row := range topic(t, "effective exchange coefficient") {
		file := row["source"][strings.LastIndex(row["source"], " ")+1:]
		first, last := means[file+"3600"], means[file+"18000"]
		m := helium(t, row)
		carried := func(coefficient float64) float64 {
			slow := append([]flow.Opening{}, m.open...)
			for i := range slow {
				slow[i].Coefficient = unit.Ratio(coefficient)
			}
			n := *m
			n.slow = slow
			return float64(got[unit.Ratio](t)(n.Rest(unit.Ratio(first), 4*3600))) - last
		}
		found, err := solve.Root(carried, 0.2, 1, 1e-4)
		if err != nil {
			t.Fatal(err)
		}
		c.add(t, file, found, row.Number(t, "value"), 0.975, 1.025) // the fit's step is 0.01
	}
	c.log(t)
}

// The mean before much is lost. What lies over the highest sensor is not in the
// measured mean of seven, so that the model is over it, by up to half a point.
func TestHeliumWhileItFills(t *testing.T) {
	c := &comparison{name: "mean while it fills"}
	for _, row := range topic(t, "mass balance before much loss") {
		m := model(t, box(t, flow.Helium(), ssv(), input(t, row, "G_L_min")/6e4))
		share := float64(got[unit.Ratio](t)(m.After(0, unit.Duration(input(t, row, "t_s")))))
		measured := row.Number(t, "value") / 100
		c.add(t, row["inputs"], share, measured, 1-0.01, 1+0.005/measured)
		noLoss := input(t, row, "G_L_min") / 6e4 * input(t, row, "t_s") / input(t, row, "V_m3")
		if share > noLoss {
			t.Errorf("%s: %g of gas, more than the %g that came in", row["inputs"], share, noLoss)
		}
	}
	c.log(t)
}

// The front of a filling box against the first 0.5 % at seven sensors: within a
// factor of two at 0.466 m and above. Nearer to the source the measured front is
// twice to thrice as early, and below it the law knows none though helium came: named
// here, since those rows stand outside the band. The law errs late.
func TestFillingFront(t *testing.T) {
	c, close := &comparison{name: "filling front, 0.466 m and above"}, &comparison{name: "filling front, close to the source"}
	below := 0
	for _, row := range topic(t, "filling front, practically unvented") {
		source, sensor := input(t, row, "source_z"), input(t, row, "sensor_z")
		h := sensor - source
		gas := got[unit.Density](t)(flow.Helium().InAir(21+celsius, sea))
		front, err := Front(unit.Area(input(t, row, "floor_area")), unit.Length(input(t, row, "ceiling")-source),
			unit.Length(h), unit.VolumeFlow(input(t, row, "G_L_min")/6e4), gas, 1.2, EntrainmentHigh)
		measured := row.Number(t, "value")
		switch {
		case h <= 0: // 0.185 and 0.093 m: "no front below the source"; measured 323 to 755 s
			refused(t, row["inputs"], err)
			below++
		case sensor > 0.4:
			c.add(t, row["inputs"], float64(front), measured, 0.5, 2)
		default: // 0.372 m: 2.1 times late at 14.8 L/min; 0.276 m: 3.4 and 2.7 times
			close.add(t, row["inputs"], float64(front), measured, 0.5, 3.5)
		}
		if text, ok := strings.CutPrefix(row["recomputed"], "point-source filling box, alpha 0.127: "); ok && h > 0 {
			want, err := strconv.ParseFloat(strings.TrimSuffix(text, " s"), 64)
			if err != nil {
				t.Fatal(err)
			}
			near(t, "own working of the row, "+row["inputs"], float64(front), want, 0.03)
		}
	}
	if below != 4 {
		t.Errorf("%d rows below the source, want 4", below)
	}
	c.log(t)
	close.log(t)
}

// The two-layer law against the runs with two vents: both constants, both vents'
// coefficients; the layer is over the richest sensor.
func TestTwoLayers(t *testing.T) {
	c := &comparison{name: "two-layer share against the richest sensor"}
	for _, row := range topic(t, "steady two-layer model against two-vent test") {
		gas := got[unit.Density](t)(flow.Helium().InAir(21+celsius, sea))
		for _, k := range []struct{ alpha, coefficient unit.Ratio }{{EntrainmentLow, 0.60}, {EntrainmentHigh, 0.65}, {EntrainmentLow, 0.65}} {
			a := unit.Area(input(t, row, "A_each"))
			effective := got[unit.Area](t)(flow.EffectiveArea(a, a, k.coefficient))
			layer := got[Layer](t)(Displacement(effective, unit.Length(input(t, row, "H_above_source")),
				unit.VolumeFlow(input(t, row, "G_L_min")/6e4), gas, 1.2, k.alpha))
			if z := 0.21 + float64(layer.Clear); z < 0.30 || z > 0.335 { // published 0.31 to 0.33 m
				t.Errorf("%s: interface at %.3f m", row["inputs"], z)
			}
			c.add(t, row["inputs"], float64(layer.Share), row.Number(t, "value")/100, 1, 1.75)
		}
	}
	c.log(t)
}

// The anchors of the mirrored box, by the code that judges lockers: propane, and
// helium the other way up.
func TestMirrorAnchors(t *testing.T) {
	c := &comparison{name: "steady share in the mirrored box, anchors"}
	gas := got[flow.Gas](t)(flow.IdealGas("propane, 1.5225 times air", 28.9644e-3*1.5225))
	light := got[flow.Gas](t)(flow.IdealGas("helium, 0.1382 times air", 28.9644e-3*(1-0.8618)))
	for _, row := range topic(t, "mirror case for propane (no experiment)") {
		q := input(t, row, "G_L_min") / 6e4
		states := got[States](t)(model(t, box(t, gas, ulv(), q)).Steady())
		c.add(t, row["inputs"], 100*float64(states.Full), row.Number(t, "value"), 0.995, 1.005)
		want, err := strconv.ParseFloat(strings.TrimPrefix(row["recomputed"], "helium with the same model "), 64)
		if err != nil {
			t.Fatal(err)
		}
		states = got[States](t)(model(t, box(t, light, ulv(), q)).Steady())
		c.add(t, row["inputs"]+" helium", 100*float64(states.Full), want, 0.995, 1.005)
		if states.Two || states.Lean != states.Full {
			t.Errorf("two states at one temperature: %+v", states)
		}
	}
	c.log(t)
}

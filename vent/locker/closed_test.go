package locker

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"lowvent.example/gas/solve/physicstest"
	"lowvent.example/schema/unit"
	"lowvent.example/vent/flow"
	"pgregory.net/rapid"
)

// blown is a box through which wind blows Q m³/s whatever the gas, which weighs as
// much as air: what the examples of constant flow reckon with.
func blown(t testing.TB, volume, through, leak float64) *Model {
	t.Helper()
	const rho = 101325 * 0.0289644 / (8.31432 * 294.15)
	alike := got[flow.Gas](t)(flow.IdealGas("as heavy as air", unit.Mass(0.0289644*8.314472/8.31432)))
	c := box(t, alike, []flow.Opening{{Area: 0.05, Coefficient: 0.6}, {Area: 0.05, Coefficient: 0.6}}, leak)
	c.Volume = unit.Volume(volume)
	drop := rho * math.Pow(through/(0.6*0.05), 2)
	c.Openings[0].Wind = unit.GaugePressure(drop)
	return model(t, c)
}

// Purging and persistence. The rows that were read are the ground; those from memory
// are worked too and must agree, but ground nothing.
func TestPurgeExamples(t *testing.T) {
	read, memory := &comparison{name: "persistence, read"}, &comparison{name: "persistence, from memory"}
	for _, row := range physicstest.Table(t, "ventilation_examples.csv") {
		var change, factor, start, end, want float64
		to := read
		switch row["topic"] {
		case "persistence": // C 0.16 /s, k 0.5, LEL 2.7 %, start 100 %: 26.9 s
			change, factor, start, end, want = 0.16, 1, 1, 0.5*0.027, 26.9
		case "IEC calc 2": // start 100 %, C 1/h, f 5, k .5, LEL 1.2 %: 25.58 h
			to, change, factor, start, end, want = memory, 1./3600, 5, 1, 0.5*0.012, 25.58*3600
		case "IEC calc 3": // 20/h, f 1, k .25, LEL 2.1 %: 0.262 h
			to, change, factor, start, end, want = memory, 20./3600, 1, 1, 0.25*0.021, 0.262*3600
		case "IEC calc 4": // 15/h, f 1, k .5, LEL 14.8 %: 0.174 h
			to, change, factor, start, end, want = memory, 15./3600, 1, 1, 0.5*0.148, 0.174*3600
		case "IEC calc 5": // 2/h, f 5, k .5, LEL 2.1 %: 11.39 h
			to, change, factor, start, end, want = memory, 2./3600, 5, 1, 0.5*0.021, 11.39*3600
		case "IEC calc 6": // 0.03/s, f 3, k .5, LEL 5 %: 368.9 s
			to, change, factor, start, end, want = memory, 0.03, 3, 1, 0.5*0.05, 368.9
		case "IEC calc 7": // 12/h, f 2, k .5, LEL 1.2 %: 0.853 h
			to, change, factor, start, end, want = memory, 12./3600, 2, 1, 0.5*0.012, 0.853*3600
		default:
			continue
		}
		if (row["provenance"] == "memory") != (to == memory) {
			t.Fatalf("%s is %s", row["topic"], row["provenance"])
		}
		purge := got[unit.Duration](t)(PurgeTime(unit.Volume(factor), unit.VolumeFlow(change), unit.Ratio(start), unit.Ratio(end)))
		to.add(t, row["topic"], float64(purge), want, 0.995, 1.005)
		volume := factor * 0.01 / change // the locker that changes its air as often
		clears := got[Arrival](t)(blown(t, volume, 0.01, 0).Clears(unit.Ratio(start), unit.Ratio(end)))
		to.add(t, row["topic"]+" by the model", float64(clears.Time), want, 0.99, 1.01)
	}
	read.log(t)
	memory.log(t)
}

// Dilution: 100 ft³/min of 15 % gas into 1000 ft³, K 0.2, 5 %: 1.666 changes of air.
// The answer itself was not read, only the formula; the number is that row's own.
func TestDilutionExample(t *testing.T) {
	c := &comparison{name: "time to a share, dilution"}
	for _, row := range physicstest.Table(t, "ventilation_examples.csv") {
		if row["topic"] != "time to a concentration" {
			continue
		}
		changes, ok := strings.CutPrefix(row["recomputed_here"], "N = ")
		want, err := strconv.ParseFloat(strings.Fields(changes)[0], 64)
		if !ok || err != nil {
			t.Fatal(row)
		}
		// the example counts the air alone as the flow: 15 over 85, K·N changes
		share := got[unit.Ratio](t)(Dilution(1/0.2, 15./85, 1, unit.Duration(want)))
		c.add(t, "share after them", float64(share), 0.05, 0.999, 1.001)
	}
	c.log(t)
}

// The model with a constant flow is the closed form.
func TestDilutionIsTheLimit(t *testing.T) {
	for _, time := range []float64{10, 100, 1000} {
		m := blown(t, 1, 0.01, 1e-5)
		share := got[unit.Ratio](t)(m.After(0, unit.Duration(time)))
		want := got[unit.Ratio](t)(Dilution(1, 1e-5, 0.01, unit.Duration(time)))
		near(t, "share", float64(share), float64(want), 2e-3)
	}
}

// The plume's constants: C 0.1586 at 0.127 (read), and the layer's height
// h = 24.55·F^(3/5)/Q^(1/5) that follows from it, 24.63 by the row's own working.
func TestPublishedPlume(t *testing.T) {
	c := &comparison{name: "plume constants"}
	for _, row := range topic(t, "plume") {
		plumeConstant := float64(got[unit.Ratio](t)(PlumeConstant(EntrainmentHigh)))
		switch row["quantity"] {
		case "entrainment constant, top-hat":
			if float64(EntrainmentHigh) != row.Number(t, "value") {
				t.Errorf("entrainment constant %g, published %s", EntrainmentHigh, row["value"])
			}
			c.add(t, "C", plumeConstant, 0.1586, 0.999, 1.001)
		case "k":
			k := 1 / (math.Pow(plumeConstant, 0.6) * math.Pow(gravity/(1.204*1005*293.15), 0.2))
			c.add(t, "k", k, row.Number(t, "value"), 0.99, 1.01)
		default:
			t.Errorf("row not understood: %v", row)
		}
	}
	c.add(t, "C at 0.10", float64(got[unit.Ratio](t)(PlumeConstant(EntrainmentLow))), 0.1154, 0.999, 1.001)
	c.log(t)
}

// A*/H² of a layer at ξ: 7.84e-4, 9.79e-3 and 5.01e-2 at α 0.10, 1.26e-3, 1.58e-2 and
// 8.09e-2 at 0.127 (experiments, section 4, computed), and the rows from memory. The
// height is found from the area again.
func TestDisplacementTable(t *testing.T) {
	c, memory := &comparison{name: "A*/H² of a layer, computed"}, &comparison{name: "A*/H² of a layer, from memory"}
	area := func(alpha unit.Ratio, xi float64) float64 {
		_, a, err := physicstest.Evaluate(DisplacementFormula, map[string]float64{
			"H": 1, "xi": xi, "C_plume": float64(got[unit.Ratio](t)(PlumeConstant(alpha)))})
		if err != nil {
			t.Fatal(err)
		}
		layer := got[Layer](t)(Displacement(unit.Area(a), 1, 1e-4, 1.83, 1.2, alpha))
		near(t, "height found again", float64(layer.Clear), xi, 1e-9)
		return a
	}
	for i, xi := range []float64{0.2, 0.5, 0.8} {
		c.add(t, "0.10", area(EntrainmentLow, xi), []float64{7.84e-4, 9.79e-3, 5.01e-2}[i], 0.995, 1.005)
		c.add(t, "0.127", area(EntrainmentHigh, xi), []float64{1.26e-3, 1.58e-2, 8.09e-2}[i], 0.995, 1.005)
	}
	for _, row := range physicstest.Table(t, "ventilation_examples.csv") {
		if row["topic"] != "displacement layer height" {
			continue
		}
		var xi float64
		text, _, _ := strings.Cut(strings.TrimPrefix(row["inputs"], "h/H = "), ",")
		xi, err := strconv.ParseFloat(text, 64)
		want, err2 := strconv.ParseFloat(strings.TrimPrefix(row["published_answer"], "A*/H^2 = "), 64)
		if err != nil || err2 != nil {
			t.Fatal(row)
		}
		memory.add(t, row["inputs"], area(EntrainmentLow, xi), want, 0.99, 1.01)
	}
	c.log(t)
	memory.log(t)
}

// Every text gives what its function gives.
func TestFormulaTexts(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		draw := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(rt, name) }
		alpha := rapid.SampledFrom([]unit.Ratio{EntrainmentLow, EntrainmentHigh}).Draw(rt, "constant")
		s := map[string]float64{
			"alpha": float64(alpha), "C_plume": float64(got[unit.Ratio](t)(PlumeConstant(alpha))),
			"H": draw("H", 0.2, 1), "xi": draw("xi", 0.05, 0.95), "rho_gas": 1.83, "rho_air": draw("rho_air", 1, 1.4),
			"S": draw("S", 0.1, 3), "q": draw("q", 1e-6, 1e-3), "Q": draw("Q", 1e-3, 1), "V": draw("V", 0.05, 3),
			"t": draw("t", 0, 1e4), "C": draw("C", 0, 1), "factor": 1.4, "C_start": draw("C_start", 0.1, 1), "C_end": draw("C_end", 1e-3, 0.1),
		}
		s["h"] = s["xi"] * s["H"]
		q, gas, air := unit.VolumeFlow(s["q"]), unit.Density(1.83), unit.Density(s["rho_air"])
		_, effective, err := physicstest.Evaluate(DisplacementFormula, s)
		if err != nil {
			rt.Fatal(err)
		}
		layer := got[Layer](t)(Displacement(unit.Area(effective), unit.Length(s["H"]), q, gas, air, alpha))
		for _, k := range []struct {
			text, symbol string
			value        float64
		}{
			{PlumeFormula, "C_plume", s["C_plume"]},
			{LayerShareFormula, "C_layer", float64(layer.Share)},
			{FrontFormula, "t", float64(got[unit.Duration](t)(Front(unit.Area(s["S"]), unit.Length(s["H"]), unit.Length(s["h"]), q, gas, air, alpha)))},
			{FillFormula, "t", float64(got[unit.Duration](t)(FillTime(unit.Volume(s["V"]), unit.Ratio(s["C"]), q)))},
			{DilutionFormula, "C", float64(got[unit.Ratio](t)(Dilution(unit.Volume(s["V"]), q, unit.VolumeFlow(s["Q"]), unit.Duration(s["t"]))))},
			{PurgeFormula, "t", float64(got[unit.Duration](t)(PurgeTime(unit.Volume(s["V"]), unit.VolumeFlow(s["Q"]), unit.Ratio(s["C_start"]), unit.Ratio(s["C_end"]))))},
			{RichestFormula, "C_rich", float64(Richest(unit.Ratio(s["C"]), Near))},
		} {
			symbol, value, err := physicstest.Evaluate(k.text, s)
			if err != nil || symbol != k.symbol {
				rt.Fatalf("%s: %q, %v", k.text, symbol, err)
			}
			if math.Abs(value-k.value) > 1e-7*math.Abs(k.value)+1e-15 {
				rt.Fatalf("%s = %g, function %g", k.text, value, k.value)
			}
		}
	})
}

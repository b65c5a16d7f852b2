package leak

import (
	"math"
	"testing"

	"lowvent.example/gas/air"
	"lowvent.example/gas/propane"
	"lowvent.example/gas/solve/physicstest"
	"lowvent.example/schema/unit"
	"pgregory.net/rapid"
)

const psi = 6894.757293168 // Pa

// Worked example, read at www.scribd.com/document/701330223/Method: a meter of
// 0.008 m³, 9 m of pipe of 0.00014 m³ a metre, 10 % for fittings on the pipe make
// 0.009386 m³. The pipe is that of 15 mm copper tube, bore 13.6 mm, which holds
// 0.000145 m³ a metre; the example rounds it down by 4 %.
func TestVolumeAgainstTheExample(t *testing.T) {
	volume := physicstest.Must[unit.Volume](t)
	c := physicstest.Comparison{Name: "test volume example"}
	c.Add(t, "volume", volume(VolumeUnderTest(9*0.00014, 0.008, FittingsAllowance)), 0.009386, 1e-9)
	c.Add(t, "pipe of 13.6 mm bore", volume(LineVolume(0.0136, 9)), 9*0.00014, 0.04)
	c.Log(t)
}

// Blind spots computed elsewhere: EN 1949 bears 10 mbar in 5 min in 700 cm³, which
// is 83 mL/h; a step of 0.1 psi in 1 L over 10 min (24 CFR 3280.705) is 41 mL/h.
func TestBlindSpotAgainstTheComputed(t *testing.T) {
	millilitres := func(V, dp, t0 float64) float64 {
		return 1e6 * hour * physicstest.Must[unit.VolumeFlow](t)(BlindSpot(unit.Volume(V), unit.GaugePressure(dp), sea, unit.Duration(t0)))
	}
	c := physicstest.Comparison{Name: "blind spots computed elsewhere"}
	c.Add(t, "10 mbar, 5 min, 700 cm³", millilitres(700e-6, 1000, 300), 83, 0.005)
	c.Add(t, "0.1 psi, 10 min, 1 L", millilitres(1e-3, 0.1*psi, 600), 41, 0.006)
	c.Log(t)
}

// "1 K on a 27 mbar line moves the gauge about 3.5 mbar" (102.8 kPa, 293 K); at
// atmospheric pressure 3.4 mbar or 1.4 inches of water (288 to 298 K).
func TestDriftAgainstTheComputed(t *testing.T) {
	drift := func(p, T float64) float64 {
		return physicstest.Must[unit.GaugePressure](t)(Drift(unit.AbsolutePressure(p), unit.Temperature(T), 1))
	}
	c := physicstest.Comparison{Name: "drift for a kelvin"}
	c.Add(t, "27 mbar line", drift(102.8e3, 293), 350, 0.01)
	c.Add(t, "one atmosphere, mbar", drift(sea, 298), 340, 0.01)
	c.Add(t, "one atmosphere, inH2O", drift(sea, 293.15)/249.08891, 1.4, 0.01)
	c.Log(t)
}

// A guide specification for gas piping (UFGS 15195N, read at
// ufgscriteriadocreport.tpub.com/15195N/15195N0019.htm) allows for temperature by
// PF + 101.32 = (P1 + 101.32)·(T2 + 273)/T1 + 273), in kPa and °C, with a bracket
// missing in print.
func TestDriftAgainstTheGuideSpecification(t *testing.T) {
	c := physicstest.Comparison{Name: "drift by the guide specification"}
	for _, row := range []struct{ gauge, T1, T2 float64 }{{350, 10, 25}, {350, 25, 10}, {21, 20, 22}, {2.7, 15, 14}} {
		specified := (row.gauge+101.32)*(row.T2+273)/(row.T1+273) - 101.32 - row.gauge
		moved := physicstest.Must[unit.GaugePressure](t)(Drift(unit.AbsolutePressure((row.gauge+101.32)*1e3), unit.Temperature(row.T1+celsius), unit.TemperatureDifference(row.T2-row.T1)))
		c.Add(t, "drift", moved/1e3, specified, 0.001)
	}
	c.Log(t)
}

// The bands of the German rule: under 1 L/h, 1 to 5, over 5.
func TestServiceVerdicts(t *testing.T) {
	litres := []float64{0, 1, 5}
	verdicts := ServiceVerdicts()
	if len(verdicts) != len(litres) {
		t.Fatalf("%d bands", len(verdicts))
	}
	for i, v := range verdicts {
		if math.Abs(float64(v.Least)*1e3*hour-litres[i]) > 1e-9 || v.What == "" || !v.Read || v.Address == "" {
			t.Errorf("%+v, want from %g L/h", v, litres[i])
		}
	}
}

func TestSettlings(t *testing.T) {
	last, longestSmall := unit.Duration(0), unit.Duration(0)
	for _, s := range Settlings() {
		if s.Time <= last || s.Source == "" || s.Address == "" {
			t.Errorf("%+v after %g s", s, float64(last))
		}
		if last = s.Time; s.Time < 3600 {
			longestSmall = s.Time
		}
	}
	if OwnSettling != longestSmall {
		t.Errorf("the own rule waits %g s, the published %g s", float64(OwnSettling), float64(longestSmall))
	}
}

func TestTestIsConsistent(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		V := rapid.Float64Range(1e-5, 0.1).Draw(rt, "V")
		dp := rapid.Float64Range(1, 1e4).Draw(rt, "dp")
		p := rapid.Float64Range(leastPressure, mostPressure).Draw(rt, "air")
		s := rapid.Float64Range(10, 86400).Draw(rt, "t")
		T := rapid.Float64Range(coldest, hottest).Draw(rt, "T")
		blind := func(V, s float64) float64 {
			return physicstest.Must[unit.VolumeFlow](t)(BlindSpot(unit.Volume(V), unit.GaugePressure(dp), unit.AbsolutePressure(p), unit.Duration(s)))
		}
		q := blind(V, s)
		if back := physicstest.Must[unit.GaugePressure](t)(Decay(unit.Volume(V), unit.VolumeFlow(q), unit.AbsolutePressure(p), unit.Duration(s))); math.Abs(back/dp-1) > 1e-12 {
			rt.Fatalf("%g Pa → %g m³/s → %g Pa", dp, q, back)
		}
		if blind(2*V, s) <= q || blind(V, 2*s) >= q {
			rt.Fatal("a larger volume must hide more, a longer test less")
		}
		warming := physicstest.Must[unit.TemperatureDifference](t)(Hiding(unit.GaugePressure(dp), unit.AbsolutePressure(p), unit.Temperature(T)))
		if warming <= 60 {
			back := physicstest.Must[unit.GaugePressure](t)(Drift(unit.AbsolutePressure(p), unit.Temperature(T), unit.TemperatureDifference(warming)))
			if math.Abs(back/dp-1) > 1e-12 {
				rt.Fatalf("%g Pa → %g K → %g Pa", dp, warming, back)
			}
		}
	})
}

// A vessel that leaks through a hole, integrated step by step: the mean of the
// leak gives the drop, the leak at the start a little more.
func TestDecayAgainstTheSteps(t *testing.T) {
	const V, start, q0, span = 1e-3, 15000.0, 1e-8, 600.0
	gauge, out := start, 0.0
	for range 100000 {
		step := q0 * math.Sqrt(gauge/start) * span / 100000
		out += step
		gauge -= step * sea / V
	}
	drop := func(q float64) float64 {
		return physicstest.Must[unit.GaugePressure](t)(Decay(V, unit.VolumeFlow(q), sea, span))
	}
	lost := start - gauge
	if math.Abs(drop(out/span)/lost-1) > 1e-9 {
		t.Errorf("by the mean %g Pa, in steps %g Pa", drop(out/span), lost)
	}
	if over := drop(q0)/lost - 1; over < 0 || over > lost/start/2 {
		t.Errorf("by the leak at the start %+.4f, stated up to %.4f", over, lost/start/2)
	}
}

func converted(t testing.TB, q, test, line, T float64) AsPropane {
	t.Helper()
	a, err := FromAir(unit.VolumeFlow(q), unit.GaugePressure(test), unit.GaugePressure(line), sea, unit.Temperature(T))
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// The volumes of propane for one of air at one pressure that the doc comment
// states: 2.3 through a fine path, 0.8 through a hole. Propane's viscosity is less
// than half of air's, its density one and a half times.
func TestAirToPropane(t *testing.T) {
	a := converted(t, 1e-6, 2740, 2740, 293.15)
	outside := 1.8650 // kg/m³ of propane
	if laminar := float64(a.Laminar) / outside / 1e-6; math.Abs(laminar-2.3) > 0.05 {
		t.Errorf("a fine path passes %.3f volumes", laminar)
	}
	if hole := float64(a.Orifice) / outside / 1e-6; math.Abs(hole-0.8) > 0.01 {
		t.Errorf("a hole passes %.3f volumes", hole)
	}
	if a.Most() != a.Laminar {
		t.Error("the greater is not the laminar one")
	}
	// At 150 mbar of air and a line of 30 mbar a hole is the worse one.
	if a := converted(t, 1e-6, 15000, 3000, 293.15); a.Most() != max(a.Laminar, a.Orifice) || a.Laminar > a.Orifice*2 {
		t.Errorf("%+v", a)
	}
}

// Poiseuille's law written out for an ideal gas: the mass flow goes with the
// difference of the squares of the pressures.
func TestLaminarAgainstTheSquares(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		test := rapid.Float64Range(100, 1e5).Draw(rt, "test")
		line := rapid.Float64Range(100, 2e4).Draw(rt, "line")
		T := rapid.Float64Range(263.15, 323.15).Draw(rt, "T")
		vapour, err := propane.VapourAt(unit.Temperature(T), sea)
		if err != nil {
			rt.Fatal(err)
		}
		mu := physicstest.Must[unit.Viscosity](t)(air.Viscosity(unit.Temperature(T)))
		squares := (math.Pow(sea+line, 2) - sea*sea) / (math.Pow(sea+test, 2) - sea*sea)
		rho := physicstest.Must[unit.Density](t)(air.Density(sea, unit.Temperature(T)))
		want := 1e-6 * rho * squares * (44.0956 / 28.9644) * mu / float64(vapour.Viscosity)
		if off := float64(converted(t, 1e-6, test, line, T).Laminar)/want - 1; math.Abs(off) > 0.035 {
			rt.Fatalf("off by %.4f", off) // Z of propane is 0.97 to 0.99
		}
	})
}

func TestConversionFollows(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		test := rapid.Float64Range(100, 5e5).Draw(rt, "test")
		line := rapid.Float64Range(100, 2e4).Draw(rt, "line")
		T := rapid.Float64Range(243.15, 333.15).Draw(rt, "T")
		a := converted(t, 1e-6, test, line, T)
		b := converted(t, 2e-6, test, line, T)
		if math.Abs(float64(b.Most())/float64(a.Most())-2) > 1e-12 {
			rt.Fatal("twice the leak is not twice the propane")
		}
		if c := converted(t, 1e-6, test*1.1, line, T); c.Most() > a.Most() {
			rt.Fatal("the same air at a higher test pressure means a larger hole")
		}
		if c := converted(t, 1e-6, test, line*1.1, T); c.Laminar <= a.Laminar || c.Orifice <= a.Orifice {
			rt.Fatal("a higher line pressure does not leak more")
		}
	})
}

func TestPressureTestTexts(t *testing.T) {
	const T, test, line, q = 293.15, 15000.0, 3000.0, 1e-6
	rho := physicstest.Must[unit.Density](t)(air.Density(sea, T))
	vapour, err := propane.VapourAt(T, sea+line/2)
	if err != nil {
		t.Fatal(err)
	}
	symbols := map[string]float64{
		"d": 0.0136, "L": 9, "V_fixed": 0.008, "s": 0.1, "p_abs": 102.8e3, "T": T, "dT": 2, "V": 0.009386, "dp": 100,
		"p_air": sea, "t": 600, "q": q, "m_air": q * rho, "dp_line": line, "dp_test": test,
		"rho_gas": float64(vapour.Density), "rho_air": rho * (1 + test/sea/2),
		"mu_air": physicstest.Must[unit.Viscosity](t)(air.Viscosity(T)), "mu_gas": float64(vapour.Viscosity),
	}
	V := physicstest.Must[unit.Volume](t)(LineVolume(0.0136, 9))
	symbols["V_line"] = V
	for _, k := range []struct {
		text, symbol string
		want         float64
	}{
		{LineVolumeFormula, "V_line", V},
		{TestVolumeFormula, "V", physicstest.Must[unit.Volume](t)(VolumeUnderTest(unit.Volume(V), 0.008, 0.1))},
		{DriftFormula, "dp", physicstest.Must[unit.GaugePressure](t)(Drift(102.8e3, T, 2))},
		{HidingFormula, "dT", physicstest.Must[unit.TemperatureDifference](t)(Hiding(100, 102.8e3, T))},
		{BlindSpotFormula, "q", physicstest.Must[unit.VolumeFlow](t)(BlindSpot(0.009386, 100, sea, 600))},
		{DecayFormula, "dp", physicstest.Must[unit.GaugePressure](t)(Decay(0.009386, q, sea, 600))},
		{LaminarFormula, "m_gas", float64(converted(t, q, test, line, T).Laminar)},
	} {
		symbol, value, err := physicstest.Evaluate(k.text, symbols)
		if err != nil || symbol != k.symbol || math.Abs(value/k.want-1) > 1e-12 {
			t.Errorf("%s: %s = %.12g, %v; want %.12g", k.text, symbol, value, err, k.want)
		}
	}
	// The orifice form is the release of the two gases, by its own texts.
	flow := func(p, rho, g float64) float64 {
		s := map[string]float64{"p_0": p, "rho_0": rho, "gamma": g, "p_air": sea, "A": 1, "C_d": 1}
		_, s["r"], _ = physicstest.Evaluate(ThroatFormula, s)
		_, m, err := physicstest.Evaluate(ReleaseFormula, s)
		if err != nil {
			t.Fatal(err)
		}
		return m
	}
	gas, err := LineGas(T, line, sea)
	if err != nil {
		t.Fatal(err)
	}
	want := q * rho * flow(float64(gas.Pressure), float64(gas.Density), float64(gas.Ratio)) / flow(sea+test, rho*(sea+test)/sea, 1.4)
	if a := converted(t, q, test, line, T); math.Abs(float64(a.Orifice)/want-1) > 1e-12 {
		t.Errorf("orifice %g, by the texts %g", float64(a.Orifice), want)
	}
}

func TestPressureTestRefusals(t *testing.T) {
	most := func(a AsPropane, err error) (float64, error) { return float64(a.Most()), err }
	for _, c := range []refusal{
		{"bore", plain(func(d unit.Length) (unit.Volume, error) { return LineVolume(d, 1) }), 0.01, []float64{0, -1, 0.3}},
		{"length", plain(func(l unit.Length) (unit.Volume, error) { return LineVolume(0.01, l) }), 0, []float64{-1, 2000}},
		{"lines", plain(func(v unit.Volume) (unit.Volume, error) { return VolumeUnderTest(v, 0, 0.1) }), 0, []float64{-1, 11}},
		{"fixed", plain(func(v unit.Volume) (unit.Volume, error) { return VolumeUnderTest(0, v, 0.1) }), 0, []float64{-1, 11}},
		{"allowance", plain(func(s unit.Ratio) (unit.Volume, error) { return VolumeUnderTest(1, 0, s) }), 0, []float64{-0.1, 1.1}},
		{"drift pressure", plain(func(p unit.AbsolutePressure) (unit.GaugePressure, error) { return Drift(p, 293.15, 1) }), 1e5, []float64{0, -1, 1e4, 3e6}},
		{"drift temperature", plain(func(T unit.Temperature) (unit.GaugePressure, error) { return Drift(1e5, T, 1) }), 293.15, []float64{0, 200, 400}},
		{"warming", plain(func(d unit.TemperatureDifference) (unit.GaugePressure, error) { return Drift(1e5, 293.15, d) }), -60, []float64{61, -61}},
		{"hidden drop", plain(func(d unit.GaugePressure) (unit.TemperatureDifference, error) { return Hiding(d, 1e5, 293.15) }), 0, []float64{-1, 2e6}},
		{"hiding pressure", plain(func(p unit.AbsolutePressure) (unit.TemperatureDifference, error) { return Hiding(1, p, 293.15) }), 1e5, []float64{0, 3e6}},
		{"blind volume", plain(func(v unit.Volume) (unit.VolumeFlow, error) { return BlindSpot(v, 1, sea, 60) }), 1e-3, []float64{0, -1, 11}},
		{"readable", plain(func(d unit.GaugePressure) (unit.VolumeFlow, error) { return BlindSpot(1e-3, d, sea, 60) }), 1, []float64{0, -1, 2e6}},
		{"blind air", plain(func(p unit.AbsolutePressure) (unit.VolumeFlow, error) { return BlindSpot(1e-3, 1, p, 60) }), sea, []float64{0, 1e4, 2e5}},
		{"blind time", plain(func(s unit.Duration) (unit.VolumeFlow, error) { return BlindSpot(1e-3, 1, sea, s) }), 60, []float64{0, -1, 1e9}},
		{"decay leak", plain(func(q unit.VolumeFlow) (unit.GaugePressure, error) { return Decay(1e-3, q, sea, 60) }), 0, []float64{-1, 2}},
		{"decay volume", plain(func(v unit.Volume) (unit.GaugePressure, error) { return Decay(v, 1e-6, sea, 60) }), 1, []float64{0, 11}},
		{"converted leak", func(q float64) (float64, error) { return most(FromAir(unit.VolumeFlow(q), 15e3, 3e3, sea, 293.15)) }, 0, []float64{-1, 2}},
		{"converted test", func(p float64) (float64, error) { return most(FromAir(1e-6, unit.GaugePressure(p), 3e3, sea, 293.15)) }, 1, []float64{0, -1, 3e6}},
		{"converted line", func(p float64) (float64, error) {
			return most(FromAir(1e-6, 15e3, unit.GaugePressure(p), sea, 293.15))
		}, 0, []float64{-1, 1e6}},
		{"converted air", func(p float64) (float64, error) {
			return most(FromAir(1e-6, 15e3, 3e3, unit.AbsolutePressure(p), 293.15))
		}, 8e4, []float64{0, 2e5}},
		{"converted temperature", func(T float64) (float64, error) {
			return most(FromAir(1e-6, 15e3, 3e3, sea, unit.Temperature(T)))
		}, 293.15, []float64{0, 228, 344}},
	} {
		physicstest.Refuses[*propane.RangeError](t, c.name, c.f, c.good, c.bad)
	}
}

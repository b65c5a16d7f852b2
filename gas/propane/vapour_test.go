package propane

import (
	"errors"
	"math"
	"testing"

	"lowvent.example/gas/solve/physicstest"
	"lowvent.example/schema/unit"
	"pgregory.net/rapid"
)

// vapour is VapourAt where it must succeed.
func vapour(t testing.TB, T, p float64) Vapour {
	t.Helper()
	v, err := VapourAt(unit.Temperature(T), unit.AbsolutePressure(p))
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// saturated is SaturatedVapour where it must succeed.
func saturated(t testing.TB, T float64) Vapour {
	t.Helper()
	v, err := SaturatedVapour(unit.Temperature(T))
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// The columns of the full equation of state in saturation.csv, worked out by
// another program under its own Maxwell criterion. What lies between is the
// rounding of the table and the 0.012 % by which the ancillary pressure is off.
func TestAgainstTheSaturationTable(t *testing.T) {
	density, heat := newTally(t, "saturated vapour density, saturation.csv"), newTally(t, "vapour c_p, saturation.csv")
	ratio, liquid := newTally(t, "c_p/c_v, saturation.csv"), newTally(t, "liquid c_p, saturation.csv")
	for _, row := range physicstest.Published(t, "saturation.csv") {
		T := row.Number(t, "t_C") + celsius
		v := saturated(t, T)
		for _, c := range []struct {
			tally     *tally
			got       float64
			column    string
			tolerance float64
		}{
			{density, float64(v.Density), "rho_vap_kg_m3", 2.1e-4},
			{heat, float64(v.HeatCapacity) / 1e3, "cp_vap_kJ_kgK", 2.1e-4},
			{ratio, float64(v.HeatCapacityRatio), "cp_cv_vap", 2e-4},
			{liquid, must(t, LiquidHeatCapacity)(T) / 1e3, "cp_liq_kJ_kgK", 5e-5},
		} {
			c.tally.add(c.got, row.Number(t, c.column))
			near(t, c.column+" at "+row["t_C"]+" °C", c.got, row.Number(t, c.column), c.tolerance)
		}
	}
}

// Heat by volume is heat by mass times density: the figure for real gas at 15 °C
// in properties.csv.
func TestVapourAtStandardConditions(t *testing.T) {
	for _, row := range physicstest.Published(t, "properties.csv") {
		if row["property"] == "higher heating value" && row["value"] == "95.58" {
			got := float64(GrossHeat) * float64(vapour(t, 15+celsius, 101325).Density) / 1e6
			near(t, row["property"], got, 95.58, 1e-4)
			return
		}
	}
	t.Error("properties.csv has no heating value of 95.58 MJ/m³")
}

// Younglove and Ely, J. Phys. Chem. Ref. Data 16 (1987) 577, Appendix G p. 688,
// an older equation fitted by others, as quoted in the tests of a general-purpose
// property library: kg/m³, J/(mol K) twice, m/s, µPa s. Its heat capacities of
// thin vapour lie up to 1.8 % over the newer ones, its viscosities 1 to 5.3 % over
// those of 1998, most at 10 bar; the newer figures have the better measurements
// and the check values above.
func TestAgainstTheTablesOf1987(t *testing.T) {
	tallies := map[string]*tally{}
	for _, name := range []string{"density", "c_p", "c_p/c_v", "speed of sound", "viscosity"} {
		tallies[name] = newTally(t, "vapour "+name+", Younglove and Ely 1987")
	}
	for _, c := range []struct{ T, p, rho, cv, cp, w, eta float64 }{
		{300, 101325, 1.820, 66.24, 75.16, 249.3, 8.30},
		{250, 2e5, 4.511, 58.32, 69.35, 222.2, 7.03},
		{270, 4e5, 8.689, 63.05, 76.06, 222.9, 7.67},
		{305, 1e6, 21.05, 71.63, 90.49, 218.3, 8.94},
	} {
		v := vapour(t, c.T, c.p)
		for _, k := range []struct {
			name                 string
			got, want, tolerance float64
		}{
			{"density", float64(v.Density), c.rho, 0.002},
			{"c_p", float64(v.HeatCapacity) * molarMass, c.cp, 0.018},
			{"c_p/c_v", float64(v.HeatCapacityRatio), c.cp / c.cv, 0.005},
			{"speed of sound", float64(v.SoundSpeed), c.w, 0.003},
			{"viscosity", float64(v.Viscosity) * 1e6, c.eta, 0.053},
		} {
			tallies[k.name].add(k.got, k.want)
			near(t, k.name, k.got, k.want, k.tolerance)
		}
	}
}

// Liquid of the same tables at 3 bar and 250 K, and at 8 bar and 280 K, 1 and
// 2 bar over the saturation pressure, which moves neither figure by 0.5 %.
func TestLiquidAgainstTheTablesOf1987(t *testing.T) {
	heat, eta := newTally(t, "liquid c_p, Younglove and Ely 1987"), newTally(t, "liquid viscosity, Younglove and Ely 1987")
	for _, c := range []struct{ T, cp, eta float64 }{{250, 103.5, 161}, {280, 112.8, 118}} {
		gotHeat := must(t, LiquidHeatCapacity)(c.T) * molarMass
		gotEta := must(t, LiquidViscosity)(c.T) * 1e6
		heat.add(gotHeat, c.cp)
		eta.add(gotEta, c.eta)
		near(t, "liquid c_p", gotHeat, c.cp, 0.01)
		near(t, "liquid viscosity", gotEta, c.eta, 0.01)
	}
}

// The viscosity of 1998 in its own published values, µPa s: Table 4, p. 961, at a
// pressure, as quoted in the tests of one general-purpose property library, and
// at a density in mol/m³ as quoted in those of CoolProp.
func TestAgainstTheViscosityTableOfTheAuthors(t *testing.T) {
	tally := newTally(t, "viscosity, Vogel 1998")
	for _, c := range []struct{ T, p, eta float64 }{{260, 1e4, 7.136}, {340, 1e6, 9.415}} {
		got := float64(vapour(t, c.T, c.p).Viscosity) * 1e6
		tally.add(got, c.eta)
		near(t, "viscosity of vapour", got, c.eta, 1e-4)
	}
	for _, c := range []struct{ T, rho, eta, tolerance float64 }{
		{90, 16520, 7388, 1e-3}, {150, 15140, 656.9, 5e-3}, {600, 10030, 73.92, 5e-3}, {280, 11780, 117.4, 1e-3},
	} {
		got := viscosity(c.T, c.rho) * 1e6
		tally.add(got, c.eta)
		near(t, "viscosity at a density", got, c.eta, c.tolerance)
	}
	s := isothermAt(300)
	rho, err := s.density(3e6, 11000)
	if err != nil {
		t.Fatal(err)
	}
	tally.add(viscosity(300, rho)*1e6, 99.38)
	near(t, "viscosity of liquid at 300 K and 3 MPa", viscosity(300, rho)*1e6, 99.38, 3e-3)
}

// The newer viscosity of Vogel and Herrmann, J. Phys. Chem. Ref. Data 45 (2016)
// 043103, Table 6, at 300 K and a density in kg/m³: another formula, fitted to
// more measurements.
func TestAgainstTheViscosityOf2016(t *testing.T) {
	tally := newTally(t, "viscosity, Vogel and Herrmann 2016")
	for _, c := range []struct{ rho, eta float64 }{{1, 8.174374}, {20, 8.230795}, {490, 95.63100}} {
		got := viscosity(300, c.rho/molarMass) * 1e6
		tally.add(got, c.eta)
		near(t, "viscosity", got, c.eta, 0.02)
	}
}

// Coarse handbook figures, each within its rounding or the share named: a table
// of propane at 25 °C and one atmosphere (engineeringtoolbox.com, d_1423) and a
// textbook's appendix for the ideal gas at 25 °C (Çengel, Table A-1: 1.679 and
// 1.491 kJ/(kg K), ratio 1.126).
func TestAgainstHandbookFigures(t *testing.T) {
	v := vapour(t, 25+celsius, 101325)
	thin := vapour(t, 25+celsius, 1)
	for _, c := range []struct {
		name                 string
		got, want, tolerance float64
	}{
		{"specific volume in m³/kg", 1 / float64(v.Density), 0.552, 0.012},
		{"c_p in J/(kg K)", float64(v.HeatCapacity), 1630, 0.035},
		{"c_p/c_v", float64(v.HeatCapacityRatio), 1.13, 0.006},
		{"speed of sound in m/s", float64(v.SoundSpeed), 253, 0.018},
		{"c_p of the ideal gas in J/(kg K)", float64(thin.HeatCapacity), 1679, 0.011},
		{"c_p/c_v of the ideal gas", float64(thin.HeatCapacityRatio), 1.126, 0.002},
	} {
		near(t, c.name, c.got, c.want, c.tolerance)
	}
	// The table's 0.0074 cP lies 9 % under, the 0.008 cP of the low-pressure pipe
	// equations 2 % under; the reference correlation stands.
	if cP := float64(v.Viscosity) * 1e3; cP < 0.008 || cP > 0.0083 {
		t.Errorf("viscosity %.5f cP, want 0.0080 to 0.0083", cP)
	}
}

// A thin gas is ideal: the density is p·M/(R·T), the exponent is c_p/c_v and the
// speed of sound √(γRT/M).
func TestThinGasIsIdeal(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		T := rapid.Float64Range(float64(LeastTemperature), float64(GreatestTemperature)).Draw(rt, "T")
		p := rapid.Float64Range(1e-6, 10).Draw(rt, "p")
		v := vapour(t, T, p)
		gamma := float64(v.HeatCapacityRatio)
		near(t, "density", float64(v.Density), p*molarMass/(gasConstant*T), 1e-5)
		near(t, "exponent", float64(v.IsentropicExponent), gamma, 1e-5)
		near(t, "speed of sound", float64(v.SoundSpeed), math.Sqrt(gamma*gasConstant*T/molarMass), 1e-5)
		near(t, "γ by c_p", gamma, 1/(1-gasConstant/molarMass/float64(v.HeatCapacity)), 1e-4)
	})
}

// The figures of one state belong together, in whatever state: w² = k·p/ρ, a real
// gas is denser than an ideal one, everything is finite and positive.
func TestVapourIsOfOnePiece(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		T := rapid.Float64Range(float64(LeastTemperature), float64(GreatestTemperature)).Draw(rt, "T")
		p := rapid.Float64Range(1e-9, 1).Draw(rt, "share") * saturationPressure(T)
		v := vapour(t, T, p)
		w := float64(v.SoundSpeed)
		near(t, "w²", w*w, float64(v.IsentropicExponent)*p/float64(v.Density), 1e-9)
		if ideal := p * molarMass / (gasConstant * T); float64(v.Density) < ideal*(1-1e-12) || float64(v.Density) > 1.6*ideal {
			rt.Fatalf("density %g, ideal gas %g", v.Density, ideal)
		}
		if v.HeatCapacityRatio < 1 || v.HeatCapacityRatio < v.IsentropicExponent || v.IsentropicExponent < 0.8 || v.Viscosity < 6e-6 || v.Viscosity > 12e-6 {
			rt.Fatalf("%+v", v)
		}
		s := isothermAt(T)
		back, _ := s.pressure(float64(v.Density) / molarMass)
		near(t, "pressure at the density found", back, p, 1e-12)
	})
}

// More pressure or less heat makes vapour denser.
func TestVapourDensityRisesWithPressure(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		T := rapid.Float64Range(float64(LeastTemperature), float64(GreatestTemperature)-1).Draw(rt, "T")
		p := rapid.Float64Range(0.001, 0.99).Draw(rt, "share") * saturationPressure(T)
		v := vapour(t, T, p)
		if denser := vapour(t, T, p*1.001); denser.Density <= v.Density {
			rt.Fatalf("%g kg/m³ under more pressure than %g", denser.Density, v.Density)
		}
		if warmer := vapour(t, T+0.1, p); warmer.Density >= v.Density {
			rt.Fatalf("%g kg/m³ when warmer than %g", warmer.Density, v.Density)
		}
	})
}

// Saturated vapour is the last vapour: VapourAt under the saturation pressure is
// the same, and over it there is none.
func TestSaturatedVapourIsTheLast(t *testing.T) {
	for T := float64(LeastTemperature); T <= float64(GreatestTemperature); T += 2.5 {
		p := saturationPressure(T)
		if got, want := vapour(t, T, p), saturated(t, T); got != want {
			t.Errorf("at %g K VapourAt gives %+v, SaturatedVapour %+v", T, got, want)
		}
		near(t, "vapour density by its ancillary equation", vapourDensity(T), float64(saturated(t, T).Density), 8e-3)
	}
}

func TestLiquidHeatCapacityRisesAndViscosityFalls(t *testing.T) {
	heat, eta := must(t, LiquidHeatCapacity), must(t, LiquidViscosity)
	for T := float64(LeastTemperature); T < float64(GreatestTemperature)-1; T++ {
		if heat(T+1) <= heat(T) || eta(T+1) >= eta(T) {
			t.Errorf("at %g K: c_p %g then %g, viscosity %g then %g", T, heat(T), heat(T+1), eta(T), eta(T+1))
		}
	}
}

func TestVapourOutsideItsRange(t *testing.T) {
	most := saturationPressure(293.15)
	for _, c := range []struct {
		name     string
		T, p     float64
		quantity string
	}{
		{"too cold", 228, 1e4, "temperature"},
		{"too hot", 343.2, 1e5, "temperature"},
		{"no temperature", math.NaN(), 1e5, "temperature"},
		{"endless temperature", math.Inf(1), 1e5, "temperature"},
		{"condensed", 293.15, math.Nextafter(most, math.Inf(1)), "pressure of vapour"},
		{"far condensed", 293.15, 1e9, "pressure of vapour"},
		{"vacuum", 293.15, 0, "pressure of vapour"},
		{"less than vacuum", 293.15, -1e5, "pressure of vapour"},
		{"no pressure", 293.15, math.NaN(), "pressure of vapour"},
		{"endless pressure", 293.15, math.Inf(1), "pressure of vapour"},
		{"endless suction", 293.15, math.Inf(-1), "pressure of vapour"},
	} {
		v, err := VapourAt(unit.Temperature(c.T), unit.AbsolutePressure(c.p))
		var outside *RangeError
		if !errors.As(err, &outside) || outside.Quantity != c.quantity || v != (Vapour{}) {
			t.Errorf("%s: %+v, %v; want nothing and a RangeError of %s", c.name, v, err, c.quantity)
		}
	}
	for _, T := range []unit.Temperature{228, 344, 0, -1, unit.Temperature(math.NaN()), unit.Temperature(math.Inf(1))} {
		v, vapourErr := SaturatedVapour(T)
		heat, heatErr := LiquidHeatCapacity(T)
		eta, etaErr := LiquidViscosity(T)
		for _, err := range []error{vapourErr, heatErr, etaErr} {
			var outside *RangeError
			if !errors.As(err, &outside) {
				t.Errorf("at %g K: %v, want a RangeError", T, err)
			}
		}
		if v != (Vapour{}) || heat != 0 || eta != 0 {
			t.Errorf("at %g K a figure beside an error: %+v, %g, %g", T, v, heat, eta)
		}
	}
}

// The least pressure that a float64 can hold is still a pressure.
func TestAlmostVacuum(t *testing.T) {
	v := vapour(t, 293.15, math.SmallestNonzeroFloat64)
	if math.IsNaN(float64(v.Density + unit.Density(v.IsentropicExponent) + unit.Density(v.SoundSpeed) + unit.Density(v.Viscosity))) {
		t.Errorf("%+v", v)
	}
}

func BenchmarkVapourAt(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := VapourAt(293.15, 836e3); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkLiquidHeatCapacity(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := LiquidHeatCapacity(293.15); err != nil {
			b.Fatal(err)
		}
	}
}

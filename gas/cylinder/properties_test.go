package cylinder

import (
	"math"
	"testing"

	"lowvent.example/gas/propane"
	"lowvent.example/gas/solve/physicstest"
	"lowvent.example/schema/unit"
)

func properly(t testing.TB) *properties {
	t.Helper()
	q, err := ofPropane()
	if err != nil {
		t.Fatal(err)
	}
	return &q
}

// tester is what a test and a property test have in common.
type tester interface {
	Helper()
	Fatal(...any)
}

// value is the result of a property function that must succeed.
func value[Q unit.Quantity](t tester) func(Q, error) float64 {
	return func(q Q, err error) float64 {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return float64(q)
	}
}

// The polynomials stand for the functions of package propane.
func TestPolynomialsFollowTheProperties(t *testing.T) {
	q := properly(t)
	for T := float64(propane.LeastTemperature); T <= float64(propane.GreatestTemperature); T += 0.5 {
		at := unit.Temperature(T)
		liquid := value[unit.Density](t)(propane.LiquidDensity(at))
		vapour := value[unit.Density](t)(propane.VapourDensity(at))
		latent := value[unit.HeatPerMass](t)(propane.LatentHeat(at))
		p := value[unit.AbsolutePressure](t)(propane.SaturationPressure(at))
		perVolume := latent / (1/vapour - 1/liquid)
		for _, c := range []struct {
			name      string
			got, want float64
		}{
			{"liquid", q.liquid.at(reduced(T)), liquid},
			{"vapour", q.vapour.at(reduced(T)), vapour},
			{"heat taken", q.taken.at(reduced(T)), perVolume / vapour},
			{"energy for each volume", q.f.at(reduced(T)), perVolume - p},
		} {
			if math.Abs(c.got/c.want-1) > 2e-7 {
				t.Errorf("%s at %.2f K: %.9g, want %.9g", c.name, T, c.got, c.want)
			}
		}
	}
}

func TestSlopesAreSlopes(t *testing.T) {
	q := properly(t)
	for x := -0.99; x < 1; x += 0.03 {
		const d = 1e-4
		for _, c := range []struct {
			name         string
			whole, slope *polynomial
		}{{"g", &q.g, &q.dg}, {"f", &q.f, &q.df}} {
			got := c.slope.at(x)
			want := (c.whole.at(x+d) - c.whole.at(x-d)) / (2 * d)
			if math.Abs(got/want-1) > 1e-5 {
				t.Errorf("%s at %g: slope %.8g, difference %.8g", c.name, x, got, want)
			}
		}
	}
}

// The energy as m·g + V·f is the energy of the liquid and of the vapour, each
// with its own: differences between two temperatures from the published table of
// the equation of state. The table has no heat capacity: that of the liquid is
// the one of package propane, integrated with the trapezium rule.
func TestEnergyAgainstLiquidAndVapour(t *testing.T) {
	const m, V = 9.07, 0.0218
	q := properly(t)
	energy := func(T float64) float64 { return m*q.g.at(reduced(T)) + V*q.f.at(reduced(T)) }
	rows := physicstest.Published(t, "saturation.csv")
	enthalpy, compared := 0.0, 0
	var before, first float64
	for i, row := range rows {
		T := row.Number(t, "t_C") + celsius
		p, liquid, vapour := row.Number(t, "p_sat_kPa_abs")*1e3, row.Number(t, "rho_liq_kg_m3"), row.Number(t, "rho_vap_kg_m3")
		latent := row.Number(t, "latent_kJ_kg") * 1e3
		if i > 0 { // dh′ = c·dT + (v′ − T·dv′/dT)·dp ≈ c·dT + v′·dp over a step
			for step := range 100 {
				at := unit.Temperature(T - 10 + (float64(step)+0.5)/10)
				enthalpy += value[unit.HeatCapacity](t)(propane.LiquidHeatCapacity(at)) / 10
			}
		}
		gas := (V - m/liquid) / (1/vapour - 1/liquid)
		inner := enthalpy - p/liquid
		now := (m-gas)*inner + gas*(enthalpy+latent-p/vapour)
		if i == 0 {
			first, before = now, energy(T)
			continue
		}
		compared++
		if off := (energy(T)-before)/(now-first) - 1; math.Abs(off) > 0.006 {
			t.Errorf("%g °C: %.5g J over −40 °C, want %.5g", T-celsius, energy(T)-before, now-first)
		} else {
			t.Logf("energy over −40 °C at %3.0f °C: off by %+.3f %%", T-celsius, off*100)
		}
	}
	if compared != 10 {
		t.Errorf("%d rows compared, want 10", compared)
	}
}

// A kilogram of vapour has the same enthalpy whether reached by way of the
// vessel or by boiling the liquid: g + λ = h′ + h.
func TestEnthalpyOfTheVapour(t *testing.T) {
	q := properly(t)
	at := func(T float64) float64 { return q.g.at(reduced(T)) + q.taken.at(reduced(T)) }
	rows := physicstest.Published(t, "saturation.csv")
	liquid, first := 0.0, 0.0
	for i, row := range rows {
		T := row.Number(t, "t_C") + celsius
		if i > 0 {
			for step := range 100 {
				u := unit.Temperature(T - 10 + (float64(step)+0.5)/10)
				liquid += value[unit.HeatCapacity](t)(propane.LiquidHeatCapacity(u)) / 10
			}
		}
		want := liquid + row.Number(t, "latent_kJ_kg")*1e3
		if i == 0 {
			first = at(T) - want
		}
		if off := at(T) - want - first; math.Abs(off) > 1800 {
			t.Errorf("%g °C: enthalpy off by %.0f J/kg", T-celsius, off)
		}
	}
}

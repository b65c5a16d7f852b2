package pipe

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
	"pgregory.net/rapid"
)

// The factor solves its equation: put in, it comes out, to 1e-10; and it is the larger
// where the flow may be either.
func TestFrictionFactorSolvesColebrook(t *testing.T) {
	for _, e := range []float64{0, 1e-6, 1e-5, 1e-4, 1e-3, 0.01, mostRelativeRoughness} {
		for Re := 2300.5; Re < 1e8; Re *= 1.37 {
			f := float64(must[unit.Ratio](t)(FrictionFactor(unit.Ratio(Re), unit.Ratio(e))))
			again := evaluate(t, ColebrookFormula, map[string]float64{"e": e * 0.02, "D": 0.02, "Re": Re, "f": f})
			near(t, fmt.Sprintf("f at Re %.0f, ε/D %g", Re, e), f, again, 1e-10)
			if f < 64/Re {
				t.Errorf("f = %g at Re %g is under the laminar factor", f, Re)
			}
		}
	}
}

// The laws that Colebrook joins: of smooth pipe (Prandtl) and of fully rough pipe (von
// Kármán), from memory; and an example that somebody published: Re 100 000, ε/D 0.005,
// f about 0.031 (calculator.7search.cc, Colebrook formula, read).
func TestFrictionFactorLimits(t *testing.T) {
	rough := float64(must[unit.Ratio](t)(FrictionFactor(1e8, 0.05)))
	near(t, "fully rough", rough, 1/math.Pow(2*math.Log10(3.7/0.05), 2), 1e-4)
	smooth := float64(must[unit.Ratio](t)(FrictionFactor(1e6, 0)))
	near(t, "smooth: 1/√f = 2·log10(Re·√f) − 0.8", 1/math.Sqrt(smooth), 2*math.Log10(1e6*math.Sqrt(smooth))-0.8, 1e-4)
	example := float64(must[unit.Ratio](t)(FrictionFactor(1e5, 0.005)))
	near(t, "published example", example, 0.031, 0.017)
	for _, Re := range []float64{1e-3, 1, 1000, 2300} {
		f := float64(must[unit.Ratio](t)(FrictionFactor(unit.Ratio(Re), 0.01)))
		near(t, LaminarFormula, f, evaluate(t, LaminarFormula, map[string]float64{"Re": Re}), 1e-15)
	}
}

func TestFrictionFactorRefuses(t *testing.T) {
	for _, bad := range append(nonsense, 0, 1.1e8) {
		outOfRange(t, fmt.Sprint("Re ", bad), second(FrictionFactor(unit.Ratio(bad), 0)))
	}
	for _, bad := range append(nonsense, 0.051) {
		outOfRange(t, fmt.Sprint("ε/D ", bad), second(FrictionFactor(1e5, unit.Ratio(bad))))
	}
}

// Laminar: Hagen and Poiseuille, Δp = 128·μ·L·ṁ/(π·ρ·D⁴), here 2.1 g/h in 4.8 mm tube.
func TestDarcyAgainstHagenPoiseuille(t *testing.T) {
	gas := propane.Vapour{Density: 1.9, Viscosity: 8e-6}
	const flow, bore, length = 2.1e-3 / 3600, 4.8e-3, 3.0
	loss := must[Loss](t)(Darcy(gas, 104065, flow, bore, 1.5e-6, length))
	want := 128 * 8e-6 * length * flow / (math.Pi * 1.9 * math.Pow(bore, 4))
	near(t, "laminar drop, Pa", float64(loss.Drop), want, 1e-5)
	if loss.Reynolds > LaminarTo {
		t.Errorf("Re = %g is not laminar", float64(loss.Reynolds))
	}
}

// Turbulent, by hand: 20 kW gross in ½ in steel pipe (15.8 mm), 10 m, 1.88 kg/m³, 8 µPa s:
// ṁ = 0.39740 g/s, A = 196.07 mm², u = 1.07812 m/s, Re = 4003.1, ε/D = 0.0028481; from
// 1/√f = 4.84 the equation of Colebrook gives 4.8394, then 4.8395, so f = 0.042697;
// Δp = f·L/D·ρu²/2 = 0.042697·632.91·1.0926 = 29.53 Pa. The code says 28.07 Pa: at so
// low a Reynolds number the rough wall of steel tells, and Darcy is the worse.
func TestDarcyByHand(t *testing.T) {
	gas := propane.Vapour{Density: 1.88, Viscosity: 8e-6}
	flow := unit.MassFlow(20e3 / 50.327e6)
	loss := must[Loss](t)(Darcy(gas, 104065, flow, 15.8e-3, 45e-6, 10))
	near(t, "Re", float64(loss.Reynolds), 4003.1, 1e-4)
	near(t, "u", float64(loss.Velocity), 1.07812, 5e-4)
	near(t, "f", float64(loss.Factor), 0.042697, 5e-5)
	near(t, "Δp", float64(loss.Drop), 29.53, 5e-4)
	code := must[unit.GaugePressure](t)(CodeDrop(CodePropane(), 20e3, 15.8e-3, 10))
	near(t, "code", float64(code), 28.07, 1e-3)
}

func TestDarcyTexts(t *testing.T) {
	gas := vapour(t, 20, 170e3)
	loss := must[Loss](t)(Darcy(gas, 170e3, 2e-3, 9e-3, 1.5e-6, 25))
	symbols := map[string]float64{
		"m": 2e-3, "D": 9e-3, "mu": float64(gas.Viscosity), "L": 25, "rho": float64(gas.Density), "p_1": 170e3,
		"f": float64(loss.Factor), "h": 1.7, "rho_air": airAt20, "rho_2": float64(gas.Density) * float64(loss.Outlet) / 170e3,
	}
	near(t, ReynoldsFormula, float64(loss.Reynolds), evaluate(t, ReynoldsFormula, symbols), 1e-12)
	near(t, DarcyOutletFormula, float64(loss.Outlet), evaluate(t, DarcyOutletFormula, symbols), 1e-12)
	near(t, VelocityFormula, float64(loss.Velocity), evaluate(t, VelocityFormula, symbols), 1e-12)
	near(t, "drop and outlet", float64(loss.Drop), 170e3-float64(loss.Outlet), 1e-9)
	head := must[unit.GaugePressure](t)(Head(gas.Density, airAt20, 1.7))
	near(t, HeadFormula, float64(head), evaluate(t, HeadFormula, symbols), 1e-12)
}

// Climbing loses pressure over the outside air, falling gains it: 1.865 kg/m³ in air of
// 1.204 kg/m³ (both at 20 °C), 6.48 Pa a metre.
func TestHead(t *testing.T) {
	up := must[unit.GaugePressure](t)(Head(1.865, 1.204, 1))
	near(t, "a metre up", float64(up), 6.482, 1e-3)
	if down := must[unit.GaugePressure](t)(Head(1.865, 1.204, -1)); down != -up {
		t.Errorf("a metre down: %g Pa", float64(down))
	}
	for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1e4, -1e4} {
		outOfRange(t, fmt.Sprint("rise ", bad), second(Head(1.9, 1.2, unit.Length(bad))))
	}
	for _, bad := range nonsense {
		outOfRange(t, fmt.Sprint("gas ", bad), second(Head(unit.Density(bad), 1.2, 1)))
		outOfRange(t, fmt.Sprint("air ", bad), second(Head(1.9, unit.Density(bad), 1)))
	}
}

// The isothermal form against the line cut into 1000 pieces, each with the density and
// viscosity of the equation of state at its own pressure: the error that the doc comment
// states.
func TestDarcyAgainstManyShortPieces(t *testing.T) {
	for _, c := range []struct {
		what                      string
		gauge, flow, bore, length float64
		share                     float64
	}{
		{"11 in w.c.", 2740, 4e-4, 11.3e-3, 12, 1e-4},
		{"10 psi, a tenth lost", 10 * psi, 3e-3, 10.2e-3, 30, 2e-3},
	} {
		p := standardAtmosphere + c.gauge
		whole := must[Loss](t)(Darcy(vapour(t, 20, p), unit.AbsolutePressure(p), unit.MassFlow(c.flow), unit.Length(c.bore), 1.5e-6, unit.Length(c.length)))
		at := p
		for range 1000 {
			piece := must[Loss](t)(Darcy(vapour(t, 20, at), unit.AbsolutePressure(at), unit.MassFlow(c.flow), unit.Length(c.bore), 1.5e-6, unit.Length(c.length/1000)))
			at -= float64(piece.Drop)
		}
		t.Logf("%s: %.1f Pa lost; isothermal form %+.4f %% off", c.what, p-at, 100*(float64(whole.Drop)/(p-at)-1))
		near(t, c.what, float64(whole.Drop), p-at, c.share)
	}
}

// Longer, narrower, rougher or more flow never loses less, across laminar and turbulent.
func TestDarcyIsMonotone(t *testing.T) {
	gas := propane.Vapour{Density: 1.9, Viscosity: 8e-6}
	type line struct{ flow, bore, rough, length float64 }
	rapid.Check(t, func(t *rapid.T) {
		l := line{
			math.Exp(rapid.Float64Range(math.Log(1e-7), math.Log(1e-3)).Draw(t, "log flow")),
			rapid.Float64Range(5e-3, 0.05).Draw(t, "bore"), rapid.Float64Range(0, 5e-5).Draw(t, "rough"), rapid.Float64Range(0.1, 50).Draw(t, "length"),
		}
		more := rapid.Float64Range(1, 2).Draw(t, "more")
		drop := func(l line) float64 {
			loss, err := Darcy(gas, 104065, unit.MassFlow(l.flow), unit.Length(l.bore), unit.Length(l.rough), unit.Length(l.length))
			var none *ExhaustedError
			if errors.As(err, &none) {
				return math.Inf(1)
			}
			if err != nil {
				t.Fatal(err)
			}
			if !(loss.Drop >= 0) || float64(loss.Outlet) > 104065 {
				t.Fatalf("%+v: %+v", l, loss)
			}
			return float64(loss.Drop)
		}
		least := drop(l) * (1 - 1e-9)
		for what, o := range map[string]line{
			"fuller": {l.flow * more, l.bore, l.rough, l.length}, "narrower": {l.flow, l.bore / more, l.rough, l.length},
			"rougher": {l.flow, l.bore, l.rough * more, l.length}, "longer": {l.flow, l.bore, l.rough, l.length * more},
		} {
			if drop(o) < least {
				t.Fatalf("%s than %+v by %g loses less", what, l, more)
			}
		}
	})
}

func TestDarcyNothingAndTooMuch(t *testing.T) {
	gas := propane.Vapour{Density: 1.9, Viscosity: 8e-6}
	loss := must[Loss](t)(Darcy(gas, 104065, 0, 0.01, 1.5e-6, 10))
	if loss != (Loss{Outlet: 104065}) {
		t.Errorf("no flow: %+v", loss)
	}
	for _, tiny := range []unit.MassFlow{5e-324, 1e-305, 1e-200, 1e-30} {
		if loss := must[Loss](t)(Darcy(gas, 104065, tiny, 0.01, 1.5e-6, 10)); loss != (Loss{Outlet: 104065}) {
			t.Errorf("%g kg/s: %+v", float64(tiny), loss)
		}
	}
	var none *ExhaustedError
	if err := second(Darcy(gas, 104065, 1, 0.01, 1.5e-6, 10)); !errors.As(err, &none) {
		t.Errorf("error %v, want an ExhaustedError", err)
	}
	for _, bad := range nonsense {
		for what, err := range map[string]error{
			"density":   second(Darcy(propane.Vapour{Density: unit.Density(bad), Viscosity: 8e-6}, 104065, 1e-4, 0.01, 0, 1)),
			"viscosity": second(Darcy(propane.Vapour{Density: 1.9, Viscosity: unit.Viscosity(bad)}, 104065, 1e-4, 0.01, 0, 1)),
			"inlet":     second(Darcy(gas, unit.AbsolutePressure(bad), 1e-4, 0.01, 0, 1)),
			"flow":      second(Darcy(gas, 104065, unit.MassFlow(bad), 0.01, 0, 1)),
			"bore":      second(Darcy(gas, 104065, 1e-4, unit.Length(bad), 0, 1)),
			"roughness": second(Darcy(gas, 104065, 1e-4, 0.01, unit.Length(bad), 1)),
			"length":    second(Darcy(gas, 104065, 1e-4, 0.01, 0, unit.Length(bad))),
		} {
			outOfRange(t, fmt.Sprint(what, " ", bad), err)
		}
	}
}

// What the doc comments say of old steel and of height above the sea: rusted steel
// (0.25 mm) against new in ½ in pipe, and 80 kPa of outside air against 101.325.
func TestDarcyInOldPipeAndOnAMountain(t *testing.T) {
	sea := supply(t)
	mountain := sea
	mountain.Atmosphere = 79.5e3 // 2000 m
	mountain.Gas = vapour(t, 15.556, 79.5e3+float64(sea.Outlet))
	drop := func(s Supply, power, rough float64) float64 {
		return float64(must[Loss](t)(Darcy(s.Gas, s.Atmosphere+unit.AbsolutePressure(s.Outlet), unit.MassFlow(power/50.327e6), 15.8e-3, unit.Length(rough), 6)).Drop)
	}
	least, most := math.Inf(1), 0.0
	for power := 21e3; power <= 80e3; power += 1e3 {
		ratio := drop(sea, power, 0.25e-3) / drop(sea, power, 45e-6)
		least, most = min(least, ratio), max(most, ratio)
		if higher := drop(mountain, power, 45e-6) / drop(sea, power, 45e-6); higher < 1.2 || higher > 1.32 {
			t.Errorf("%g W on 2000 m loses %.3f times as much", power, higher)
		}
	}
	t.Logf("rusted over new steel: %.2f to %.2f", least, most)
	if least < 1.25 || most > 1.5 {
		t.Errorf("rusted over new steel: %.2f to %.2f, the doc comment says 1.25 to 1.50", least, most)
	}
}

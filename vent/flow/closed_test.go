package flow

import (
	"math"
	"testing"

	"lowvent.example/gas/solve/physicstest"
	"lowvent.example/schema/unit"
	"pgregory.net/rapid"
)

// Every text gives what its function gives.
func TestFormulaTexts(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		draw := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(rt, name) }
		s := map[string]float64{
			"p": draw("p", 4e4, 1.2e5), "T": draw("T", 230, 340), "M": 0.04409562, "C": draw("C", 0, 1),
			"rho_air": draw("rho_air", 0.8, 1.5), "rho_gas": draw("rho_gas", 1.6, 2.2), "rho": 1.2,
			"drho": draw("drho", 1e-3, 0.5), "A_top": draw("A_top", 1e-4, 0.1), "A_bottom": draw("A_bottom", 1e-4, 0.1),
			"A_eff": draw("A_eff", 1e-4, 0.1), "A": draw("A", 1e-5, 0.1), "C_d": draw("C_d", 0.1, 1), "H": draw("H", 0.05, 3),
			"h": draw("h", 0, 2), "q": draw("q", 1e-7, 1e-2), "dT": draw("dT", 0, 40), "dp": draw("dp", 0, 0.1),
			"mu": pipeViscosity, "L": draw("L", 0, 3), "D": draw("D", 0.005, 0.1), "C_p": draw("C_p", 0.1, 1.5),
			"p_head": draw("p_head", 0, 10), "U": draw("U", 0, 20),
		}
		rho := func(name string) unit.Density { return unit.Density(s[name]) }
		gas := Gas{molar: s["M"]}
		for _, k := range []struct {
			text, symbol string
			value        float64
		}{
			{ThinGasFormula, "rho_gas", got[unit.Density](t)(gas.InAir(unit.Temperature(s["T"]), unit.AbsolutePressure(s["p"])))},
			{MixtureFormula, "rho_mix", got[unit.Density](t)(Mixture(rho("rho_gas"), rho("rho_air"), unit.Ratio(s["C"])))},
			{EffectiveAreaFormula, "A_eff", got[unit.Area](t)(EffectiveArea(unit.Area(s["A_top"]), unit.Area(s["A_bottom"]), unit.Ratio(s["C_d"])))},
			{MixedFlowFormula, "Q", got[unit.VolumeFlow](t)(MixedFlow(unit.Area(s["A_eff"]), rho("rho_gas"), rho("rho_air"), unit.Length(s["H"]), unit.VolumeFlow(s["q"])))},
			{StackFlowFormula, "Q", got[unit.VolumeFlow](t)(StackFlow(unit.Ratio(s["C_d"]), unit.Area(s["A"]), unit.Length(s["H"]), unit.TemperatureDifference(s["dT"]), unit.Temperature(s["T"])))},
			{ExchangeFormula, "V", got[unit.VolumeFlow](t)(OneOpening(unit.Ratio(s["C_d"]), unit.Area(s["A"]), unit.Length(s["h"]), unit.Density(1.2+s["drho"]/2), unit.Density(1.2-s["drho"]/2)))},
			{HorizontalExchangeFormula, "V", got[unit.VolumeFlow](t)(HorizontalExchange(unit.Area(s["A"]), unit.Density(1.2+s["drho"]/2), unit.Density(1.2-s["drho"]/2), unit.GaugePressure(s["dp"])))},
			{PipeSpeedFormula, "v", got[unit.Speed](t)(PipeSpeed(unit.GaugePressure(s["dp"]), 1.2, unit.Ratio(s["C_d"]), unit.Length(s["L"]), unit.Length(s["D"])))},
			{HeadFormula, "p_head", got[unit.GaugePressure](t)(Head(unit.Density(1.2+s["drho"]), 1.2, unit.Length(s["H"])))},
			{WindSpeedFormula, "U", got[unit.Speed](t)(WindSpeed(unit.GaugePressure(s["p_head"]), unit.Ratio(s["C_p"]), rho("rho_air")))},
			{WindFormula, "p_wind", got[unit.GaugePressure](t)(WindPressure(unit.Ratio(s["C_p"]), rho("rho_air"), unit.Speed(s["U"])))},
		} {
			symbol, value, err := physicstest.Evaluate(k.text, s)
			if err != nil || symbol != k.symbol {
				rt.Fatalf("%s: %q, %v", k.text, symbol, err)
			}
			if math.Abs(value-k.value) > 1e-9*math.Abs(k.value)+1e-12 {
				rt.Fatalf("%s = %g, function %g", k.text, value, k.value)
			}
		}
	})
}

// The pipe's explicit speed satisfies the pressure drop it comes from.
func TestPipeSpeed(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		dp := rapid.Float64Range(1e-4, 1000).Draw(rt, "dp")
		L, D := rapid.Float64Range(0, 5).Draw(rt, "L"), rapid.Float64Range(0.005, 0.1).Draw(rt, "D")
		v := got[unit.Speed](t)(PipeSpeed(unit.GaugePressure(dp), 1.5, 0.65, unit.Length(L), unit.Length(D)))
		back := 1.5*v*v/2*(1/0.65/0.65+0.04*L/D) + 32*pipeViscosity*L*v/D/D
		near(t, "drop", back, dp, 1e-9)
		if free := 0.65 * math.Sqrt(2*dp/1.5); v > free*(1+1e-12) {
			rt.Fatalf("the pipe passes more, %g m/s, than the bare opening, %g", v, free)
		}
	})
}

// Wind speed and wind pressure undo each other.
func TestWindRoundTrip(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		u := rapid.Float64Range(0.01, 40).Draw(rt, "U")
		p := got[unit.GaugePressure](t)(WindPressure(0.8, 1.25, unit.Speed(u)))
		near(t, "speed", got[unit.Speed](t)(WindSpeed(unit.GaugePressure(p), 0.8, 1.25)), u, 1e-12)
	})
}

// The exchange through a floor falls with the pressure across it and stops.
func TestFlooding(t *testing.T) {
	at := func(dp float64) float64 {
		return got[unit.VolumeFlow](t)(HorizontalExchange(1e-3, 1.3, 1.2, unit.GaugePressure(dp)))
	}
	flood := 0.754 * 0.754 * gravity * 0.1 * math.Pow(4*1e-3/math.Pi, 2.5) / (2 * 1e-6)
	near(t, "flooding by the shape factor", at(flood/2), at(0)/2, 1e-3)
	if at(flood*1.001) != 0 || at(0) <= 0 {
		t.Errorf("at flooding %g, without pressure %g", at(flood*1.001), at(0))
	}
	if v := got[unit.VolumeFlow](t)(HorizontalExchange(1e-3, 1.2, 1.3, 0)); v != 0 {
		t.Errorf("a stable hole exchanges %g", v)
	}
}

func TestClosedFormsRefuse(t *testing.T) {
	for _, x := range bad() {
		A, C, rho, H, q := unit.Area(x), unit.Ratio(x), unit.Density(x), unit.Length(x), unit.VolumeFlow(x)
		p, T, dT, v := unit.GaugePressure(x), unit.Temperature(x), unit.TemperatureDifference(x), unit.Speed(x)
		for i, err := range []error{
			second(EffectiveArea(A, 1, 0.6)), second(EffectiveArea(1, A, 0.6)), second(EffectiveArea(1, 1, C)),
			second(MixedFlow(A, 1.8, 1.2, 1, 1)), second(MixedFlow(1, rho, 1.2, 1, 1)), second(MixedFlow(1, 1.8, rho, 1, 1)),
			second(MixedFlow(1, 1.8, 1.2, H, 1)), second(MixedFlow(1, 1.8, 1.2, 1, q)),
			second(StackFlow(C, 1, 1, 1, 300)), second(StackFlow(1, A, 1, 1, 300)), second(StackFlow(1, 1, H, 1, 300)),
			second(StackFlow(1, 1, 1, dT, 300)), second(StackFlow(1, 1, 1, 1, T)),
			second(OneOpening(C, 1, 1, 1.2, 1.3)), second(OneOpening(1, A, 1, 1.2, 1.3)), second(OneOpening(1, 1, H, 1.2, 1.3)),
			second(OneOpening(1, 1, 1, rho, 1.3)), second(OneOpening(1, 1, 1, 1.2, rho)),
			second(HorizontalExchange(A, 1.3, 1.2, 0)), second(HorizontalExchange(1, rho, 1.2, 0)), second(HorizontalExchange(1, 1.3, rho, 0)),
			second(PipeSpeed(p, 1.2, 1, 1, 1)), second(PipeSpeed(1, rho, 1, 1, 1)), second(PipeSpeed(1, 1.2, C, 1, 1)),
			second(PipeSpeed(1, 1.2, 1, H, 1)), second(PipeSpeed(1, 1.2, 1, 1, H)),
			second(Head(rho, 1.2, 1)), second(Head(1.2, rho, 1)), second(Head(1.3, 1.2, H)),
			second(WindPressure(C, 1.2, 1)), second(WindPressure(1, rho, 1)), second(WindPressure(1, 1.2, v)),
			second(WindSpeed(p, 1, 1.2)), second(WindSpeed(1, C, 1.2)), second(WindSpeed(1, 1, rho)),
			second(Mixture(rho, 1.2, 0.1)), second(Mixture(1.8, rho, 0.1)), second(Mixture(1.8, 1.2, C)),
			second(Propane().Density(T, sea)), second(Helium().Density(293, unit.AbsolutePressure(x))),
			second(Propane().InAir(T, sea)), second(IdealGas("x", unit.Mass(x))), second(Gas{}.Density(293, sea)),
			second(HorizontalExchange(1, 1.3, 1.2, unit.GaugePressure(-math.Abs(x)))),
		} {
			if err == nil {
				t.Errorf("%g: refusal %d is missing", x, i)
				continue
			}
			refused(t, "closed form", err)
		}
	}
	g, err := IdealGas("butane", 0.0581)
	if err != nil || g.Name() != "butane" {
		t.Errorf("%v, %v", g, err)
	}
}

func second[A any](_ A, err error) error { return err }

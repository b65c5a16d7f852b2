package room

import (
	"testing"

	"lowvent.example/gas/solve/physicstest"
	"lowvent.example/schema/unit"
)

// Each formula text says what its function does.
func TestFormulaTexts(t *testing.T) {
	r := Room{Volume: 12, Inside: 293, Outside: 268, Pressure: 84e3, Fresh: 0.009,
		Air: must(Outside(430e-6, 268, 0.9, 84e3))}
	e := Together(Propane(1800), must(Breathing(LightWorking, 2)))
	steady := must(Steady(r, e))
	after := must(After(r, e, r.Air, 700))
	shut := must(After(r.Shut(), e, r.Air, 700))
	qStd, vRoom := r.standard(0.009, r.Outside), r.standard(12, r.Inside)
	water := map[string]float64{"p_water": 1402}
	for _, c := range []struct {
		text    string
		symbols map[string]float64
		want    float64
	}{
		{OutsideWaterFormula, map[string]float64{"RH": 0.9, "p_sat": float64(must(SaturationPressure(268))), "p": 84e3}, float64(r.Air.Water)},
		{DryFormula, map[string]float64{"x_wet": float64(steady.CarbonDioxide), "x_water": float64(steady.Water)}, float64(steady.Dry().CarbonDioxide)},
		{SeaLevelOxygenFormula, map[string]float64{"x_O2": 0.2, "p": 84e3}, float64(must(SeaLevelOxygen(0.2, 84e3)))},
		{WaterVolumeFormula, map[string]float64{"m_water": 1e-4}, float64(steam(1e-4))},
		{NetFormula, map[string]float64{"V_CO2": float64(e.CarbonDioxide), "V_water": float64(e.Water), "V_O2": float64(e.Oxygen)}, e.net()},
		{StandardFlowFormula, map[string]float64{"q": 0.009, "p": 84e3, "T": 268}, qStd},
		{RiseFormula, map[string]float64{"x_out": 420e-6, "V": 1e-5, "q_std": 0.01}, float64(must(Rise(420e-6, 1e-5, 0.01)))},
		{SteadyFormula, map[string]float64{"q_std": qStd, "x_out": float64(r.Air.CarbonDioxide), "V": float64(e.CarbonDioxide), "V_net": e.net()}, float64(steady.CarbonDioxide)},
		{SteadyFormula, map[string]float64{"q_std": qStd, "x_out": float64(r.Air.Oxygen), "V": -float64(e.Oxygen), "V_net": e.net()}, float64(steady.Oxygen)},
		{AfterFormula, map[string]float64{"x_wet": float64(steady.Water), "x_0": float64(r.Air.Water), "q_std": qStd, "V_net": e.net(), "V_room": vRoom, "t": 700}, float64(after.Water)},
		{ClosedFormula, map[string]float64{"x_0": float64(r.Air.Oxygen), "V": -float64(e.Oxygen), "V_net": e.net(), "V_room": vRoom, "t": 700}, float64(shut.Oxygen)},
		{SaturationFormula, map[string]float64{"T": 285}, float64(must(SaturationPressure(285)))},
		{FrostFormula, map[string]float64{"T": 261}, float64(must(FrostPressure(261)))},
		{DewPointFormula, water, float64(must(DewPoint(1402)))},
		{FrostPointFormula, map[string]float64{"p_water": 302}, float64(must(FrostPoint(302)))},
		{VapourPressureFormula, map[string]float64{"x_water": float64(steady.Water), "p": 84e3}, float64(must(VapourPressure(steady, 84e3)))},
		{SurfaceFormula, map[string]float64{"T_in": 293, "T_out": 268, "U": 6, "h_in": 1 / 0.13}, float64(must(SingleGlazing().Temperature(293, 268)))},
		{DepressurisationFormula, map[string]float64{"q": 0.05, "A": 0.01, "C_d": 0.65, "rho": 1.2}, float64(must(Depressurisation(0.05, 0.01, 0.65, 1.2)))},
		{CrackFormula, map[string]float64{"dp": 10, "A": 1e-4, "C_d": 0.61, "rho": 1.2}, float64(must(Crack(10, 1e-4, 0.61, 1.2)))},
		{LeakageFormula, map[string]float64{"q_50": 0.3}, float64(must(Leakage(0.3)))},
	} {
		_, got, err := physicstest.Evaluate(c.text, c.symbols)
		if err != nil {
			t.Error(err)
			continue
		}
		near(t, c.text, got, c.want, 1e-9)
	}
}

// 1 kW gross of propane gives 0.115 m³/h of carbon dioxide and takes 0.192 of
// oxygen; 3 kW with 30 m³/h of air add 1.15 %, take 1.92 %, and give 0.35 kg/h of
// water (engineering notes to the property table, balance of atoms).
func TestThreeKilowattsInThirtyCubicMetres(t *testing.T) {
	e := Propane(3000)
	outside := 0.0004
	near(t, "CO2 for each kW in m³/h", float64(Propane(1000).CarbonDioxide)*hour, 0.115, 0.005)
	near(t, "O2 for each kW in m³/h", float64(Propane(1000).Oxygen)*hour, 0.192, 0.005)
	near(t, "rise of CO2", float64(must(Rise(unit.Ratio(outside), e.CarbonDioxide, perHour(30))))-outside, 0.0115, 0.005)
	near(t, "fall of O2", float64(must(Rise(0.2095, -e.Oxygen, perHour(30))))-0.2095, -0.0192, 0.005)
	near(t, "water in kg/h", float64(e.Water)/molarVolume*waterMolarMass*hour, 0.35, 0.005)
	near(t, "O2 taken for each CO2", float64(e.Oxygen)/float64(e.CarbonDioxide), 5.0/3, 1e-9)

	r := van()
	r.Fresh = perHour(30)
	wet := must(Steady(r, e))
	near(t, "exact wet rise of CO2", float64(wet.CarbonDioxide)-outside, 0.0115, 0.012)
	near(t, "exact dry rise of CO2", float64(wet.Dry().CarbonDioxide)-outside, 0.0115, 0.012)
	near(t, "exact dry fall of O2", 0.2095-float64(wet.Dry().Oxygen), 0.0192, 0.12)
}

// A dry balance over methane and over propane as the reference to the burner room
// gives them: x(CO2) = (k·n_f + c₀·n_a)/(n_a − n_f·m).
func TestAgainstTheDryBalanceByMoles(t *testing.T) {
	for _, c := range []struct {
		fuel                 Fuel
		carbon, oxygen, lost float64 // per mole of fuel; lost: dry gas that disappears
		mass                 float64
	}{
		{Fuel{1, 4}, 1, 2, 1, 0.01604246},
		{Fuel{3, 8}, 3, 5, 2, 0.04409562},
	} {
		const fuelMoles, airMoles = 0.05, 4.0
		r := van()
		r.Fresh = unit.VolumeFlow(airMoles * molarVolume)
		dry := must(Steady(r, must(Burned(c.fuel, unit.MassFlow(fuelMoles*c.mass))))).Dry()
		near(t, "carbon dioxide", float64(dry.CarbonDioxide), (c.carbon*fuelMoles+400e-6*airMoles)/(airMoles-c.lost*fuelMoles), 1e-4)
		near(t, "oxygen", float64(dry.Oxygen), (0.2095*airMoles-c.oxygen*fuelMoles)/(airMoles-c.lost*fuelMoles), 1e-4)
	}
}

// Propane by its atoms is propane by its property package.
func TestPropaneIsThreeAndEight(t *testing.T) {
	one := Propane(1000)
	mass := 1000 / 50.327e6
	other := must(Burned(Fuel{Carbon: 3, Hydrogen: 8}, unit.MassFlow(mass)))
	near(t, "oxygen", float64(other.Oxygen), float64(one.Oxygen), 1e-4)
	near(t, "carbon dioxide", float64(other.CarbonDioxide), float64(one.CarbonDioxide), 1e-4)
	near(t, "water", float64(other.Water), float64(one.Water), 1e-4)
}

// An oxygen sensor is no help: at 18 % and at 15 % of oxygen a propane flame has
// already made 1.7 and 3.5 % of carbon dioxide, and at 19.5 % 8500 ppm.
func TestOxygenFallsAfterCarbonDioxideHasRisen(t *testing.T) {
	for _, c := range []struct{ oxygen, least, most float64 }{
		{0.195, 0.0084, 0.0086}, {0.18, 0.0170, 0.0172}, {0.15, 0.034, 0.036},
	} {
		low, found, err := TimeToOxygen(van(), Propane(2000), dryAir(), unit.Ratio(c.oxygen))
		if err != nil || !found {
			t.Fatal(err, found)
		}
		air := must(After(van(), Propane(2000), dryAir(), low))
		near(t, "oxygen", float64(air.Oxygen), c.oxygen, 1e-9)
		if dry := float64(air.Dry().CarbonDioxide); dry < c.least || dry > c.most {
			t.Errorf("at %.1f %% of oxygen the carbon dioxide is %.4f", 100*c.oxygen, dry)
		}
	}
}

package leak

import (
	"math"

	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

// The formulas as texts: p and p_air in Pa absolute, rho_liquid in kg/m³; T the
// temperature inside and T_boil that of boiling under one atmosphere in K, c_p the
// heat capacity of the liquid halfway in J/(kg K), h_boil the latent heat at
// T_boil in J/kg, x the share of the liquid that turns to vapour at once.
const (
	LiquidFormula = "m_flow = C_d * A * sqrt(2*rho_liquid*max(0, p - p_air))"
	FlashFormula  = "x = max(0, c_p * (T - T_boil) / h_boil)"
)

// Spill is what comes out of an opening below the level of the liquid.
type Spill struct {
	Flow  unit.MassFlow
	Flash unit.Ratio // share that is vapour as soon as it is out; the rest boils off after
}

// Liquid returns the flow of liquid propane from an opening in a cylinder that
// has fallen over or is too full, or in anything that liquid has reached:
//
//	ṁ = Cd·A·√(2ρ′·(p − pₐ))
//	x = c_p·(T − T_boil) / h
//
// ṁ in kg/s, A in m², ρ′ of the saturated liquid in kg/m³, p the saturation
// pressure in Pa absolute; x the share that flashes, with c_p of the liquid halfway
// between T and T_boil = 231.04 K and h the latent heat at T_boil. The rest is
// cold liquid that boils off from what it lies on: all of the mass becomes gas.
//
// Valid from −45 to +70 °C, for openings, coefficients and air as in [Release],
// else [*propane.RangeError]. Error size: it is a bound. Liquid that boils in the
// opening itself comes out slower, down to a third in a long crack (from memory),
// so the flow errs high: the cautious side. A sharp edge passes Cd 0.61 (from
// memory): then the mass is 8 times that of vapour through the same hole with 0.8
// at 20 °C, with one coefficient for both 11 times. The flash share is
// low by up to 0.003 at 20 °C and 0.012 at 55 °C at one atmosphere, and by another
// 0.005 to 0.006 for each kelvin by which propane boils colder at height.
//
// Source: Bernoulli; balance of heat at constant enthalpy, with
// [propane.LiquidDensity], [propane.LiquidHeatCapacity] and [propane.LatentHeat].
func Liquid(opening unit.Area, coefficient unit.Ratio, temperature unit.Temperature, air unit.AbsolutePressure) (Spill, error) {
	if err := valid(opening, coefficient, air); err != nil {
		return Spill{}, err
	}
	density, err := propane.LiquidDensity(temperature)
	if err != nil {
		return Spill{}, err
	}
	pressure, err := propane.SaturationPressure(temperature)
	if err != nil {
		return Spill{}, err
	}
	flash, err := flashShare(float64(temperature))
	if err != nil {
		return Spill{}, err
	}
	A, C, rho, excess := float64(opening), float64(coefficient), float64(density), float64(pressure)-float64(air)
	return Spill{Flow: unit.MassFlow(C * A * math.Sqrt(2*rho*max(0, excess))), Flash: flash}, nil
}

// flashShare is the share of liquid at T, in K, that vaporizes when the pressure
// falls to one atmosphere.
func flashShare(T float64) (unit.Ratio, error) {
	boiling := float64(propane.BoilingPoint)
	heat, err := propane.LiquidHeatCapacity(unit.Temperature((T + boiling) / 2))
	if err != nil {
		return 0, err
	}
	latent, err := propane.LatentHeat(propane.BoilingPoint)
	if err != nil {
		return 0, err
	}
	return unit.Ratio(max(0, float64(heat)*(T-boiling)/float64(latent))), nil
}

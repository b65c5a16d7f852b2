package cylinder

import (
	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

// SustainedFormula is the formula of [Sustained] as a text: m_flow in kg/s, U the
// wall coefficient in W/(m² K), A the wetted area in m², T_air and T in K, the
// densities in kg/m³, h_latent in J/kg.
const SustainedFormula = "m_flow = U * A * max(0, T_air - T) * (1 - rho_vapour/rho_liquid) / h_latent"

// WallInStillAir returns the band of the wall coefficient, in W/(m² K), of a
// bare metal cylinder in the still air of a locker: 5 to 10, nominal 7.
//
// Reasons, from memory: natural convection along an upright wall is about
// 1.31·ΔT^⅓, 2.8 at 10 K and 3.6 at 20 K; radiation between painted walls is
// about 4·0.9·σ·T³, 3.5 at 258 K; 6.3 to 7.1 together, more on a thin vessel,
// less where the walls of a tight locker are as cold as the vessel. No
// measurement of a cylinder in still air was found. Published charts of draws
// imply 11 to 13 for a 100 lb cylinder and a rule for horizontal tanks 19 to 20:
// both stand in moving outside air.
//
// Low is the figure to judge by. It errs further to the wrong side under frost
// and for a composite wall, whose plastic lets less heat through than metal: a
// centimetre of it alone is about 30 (from memory), which turns 7 into 6.
func WallInStillAir() unit.Value[unit.HeatTransfer] {
	return unit.Value[unit.HeatTransfer]{Nominal: 7, Low: 5, High: 10}
}

// greatestWall bounds a wall coefficient in W/(m² K): heated by a rain of warm
// water a wall would reach some hundreds.
const greatestWall = 1000.0

// Sustained returns the draw at which heat through the wetted wall just holds
// the liquid at the least temperature, the one whose pressure still feeds the
// regulator:
//
//	ṁ = U·A·(T_air − T)·(1 − ρ″/ρ′)/h
//
// ṁ in kg/s, U in W/(m² K), A in m² as [WettedArea] at T, temperatures in K, h the
// latent heat in J/kg at T. The factor with the densities ρ″ and ρ′ of vapour and liquid
// is the vapour that stays behind in the room of the liquid that boiled away. It
// is zero when the air is no warmer than T, and when no liquid is left.
//
// Valid from −45 to +70 °C, for U from 0 to 1000 and a mass that the vessel can
// hold, else [*propane.RangeError].
//
// Error size: that of U, a factor of two. It falls with the mass, so that it
// holds only for the contents given. Heat through the wall above the liquid and
// through the foot is left out: the cautious side. Frost, humid air that freezes on,
// a nearly closed locker that cools with the cylinder, and layers in the liquid
// are left out too, and all of them make it less. T is an input: for a gas that
// is a mixture the caller gives that mixture's temperature at the least pressure.
//
// Source: heat balance of the wall; [propane.LatentHeat].
func Sustained(v Vessel, m unit.PropaneMass, wall unit.HeatTransfer, air, leastTemperature unit.Temperature) (unit.MassFlow, error) {
	s, err := stateOf(v, m, leastTemperature)
	if err != nil {
		return 0, err
	}
	if err := exchange(wall, air); err != nil {
		return 0, err
	}
	warmer := float64(air) - float64(leastTemperature)
	if warmer <= 0 || s.volume == 0 {
		return 0, nil
	}
	U := float64(wall)
	return unit.MassFlow(U * s.area * warmer * (1 - s.vapour/s.liquid) / s.latent), nil
}

// SustainedPower returns [Sustained] as gross heat of combustion, in W: what
// appliances may burn for as long as the contents last at this level.
func SustainedPower(v Vessel, m unit.PropaneMass, wall unit.HeatTransfer, air, leastTemperature unit.Temperature) (unit.GrossPower, error) {
	flow, err := Sustained(v, m, wall, air, leastTemperature)
	return unit.GrossPower(float64(flow) * float64(propane.GrossHeat)), err
}

// exchange reports a RangeError for a wall coefficient or an air temperature
// that no cylinder meets.
func exchange(wall unit.HeatTransfer, air unit.Temperature) error {
	if U := float64(wall); !(U >= 0 && U <= greatestWall) {
		return &propane.RangeError{Quantity: "wall coefficient", Value: U, Low: 0, High: greatestWall, Unit: "W/(m² K)"}
	}
	return tempered("air temperature", air)
}

// tempered reports a RangeError for a temperature outside the range of the
// propane properties.
func tempered(what string, temperature unit.Temperature) error {
	T, low, high := float64(temperature), float64(propane.LeastTemperature), float64(propane.GreatestTemperature)
	if !(T >= low && T <= high) {
		return &propane.RangeError{Quantity: what, Value: T, Low: low, High: high, Unit: "K"}
	}
	return nil
}

package flow

import (
	"math"

	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

// The closed forms as texts, for hand checks: areas in m², heights H and h in m,
// densities in kg/m³, flows q, Q and V in m³/s, pressures in Pa, U in m/s, mu in
// Pa s, T and dT in K.
const (
	EffectiveAreaFormula      = "A_eff = sqrt(2) * C_d * A_top*A_bottom / sqrt(pow(A_top, 2) + pow(A_bottom, 2))"
	MixedFlowFormula          = "Q = pow(pow(A_eff, 2) * 9.80665*(rho_gas - rho_air)/rho_air * H * q, 1/3)"
	StackFlowFormula          = "Q = C_d * A * sqrt(2*9.80665*H*dT/T)"
	ExchangeFormula           = "V = C_d / 3 * A * sqrt(9.80665*h*drho/rho)"
	HorizontalExchangeFormula = "V = sqrt(9.80665*drho/rho) * 0.055*pow(4*A/3.141592653589793, 1.25)" +
		" * max(0, 1 - dp/(0.4608*9.80665*drho*sqrt(4*A/3.141592653589793)))"
	PipeSpeedFormula = "v = (sqrt(pow(32*mu*L/pow(D, 2), 2) + 2*rho*(1/pow(C_d, 2) + 0.04*L/D)*dp) - 32*mu*L/pow(D, 2))" +
		" / (rho*(1/pow(C_d, 2) + 0.04*L/D))"
	HeadFormula      = "p_head = drho * 9.80665 * H"
	WindSpeedFormula = "U = sqrt(2*p_head/(C_p*rho_air))"
	WindFormula      = "p_wind = C_p * rho_air * pow(U, 2) / 2"
)

// EffectiveArea returns the area that two openings at different heights are worth
// together:
//
//	A* = √2·C·A_t·A_b / √(A_t² + A_b²)
//
// in m², with one discharge coefficient C for both: √2·C·A/√2 = C·A for two alike.
// Valid for areas above 0 up to 100 m² and C above 0 up to 1, else
// *[propane.RangeError].
//
// Source: Linden, Lane-Serff and Smerdon, J. Fluid Mech. 212 (1990) 309 (from
// memory); it is what [Balance] gives for small contrasts (tests).
func EffectiveArea(top, bottom unit.Area, coefficient unit.Ratio) (unit.Area, error) {
	err := first(
		propane.Above("free area of an opening", float64(top), 0, mostArea, "m²"),
		propane.Above("free area of an opening", float64(bottom), 0, mostArea, "m²"),
		propane.Above("discharge coefficient", float64(coefficient), 0, 1, "1"))
	if err != nil {
		return 0, err
	}
	t, b := float64(top), float64(bottom)
	return unit.Area(math.Sqrt2 * float64(coefficient) * t * (b / math.Hypot(t, b))), nil
}

// MixedFlow returns the mixture, in m³/s, that leaves a well-mixed box with two
// openings a height H apart once a leak of q m³/s holds steady:
//
//	Q = (A*²·g′·H·q)^(1/3),  g′ = g·|ρ_gas − ρ_air|/ρ_air
//
// A* of [EffectiveArea] in m². The share of gas held is q/Q.
//
// Valid for all above 0, else *[propane.RangeError], and for thin mixtures only: it
// counts neither the inside density of what goes out nor the leak's own volume. The
// share q/Q errs high against [Balance], the cautious side: propane by 2 % of it at a
// share of 9 %, 5 % at 22 %; helium by 4 % at 8 %, 25 % at 39 % (tests). Where q/Q is
// over 1 it has no meaning.
//
// Source: as [EffectiveArea]; C = [q/(C·A·√(g·k·H))]^(2/3) for two alike.
func MixedFlow(effective unit.Area, gas, airDensity unit.Density, height unit.Length, leak unit.VolumeFlow) (unit.VolumeFlow, error) {
	err := first(
		propane.Above("effective area", float64(effective), 0, mostArea, "m²"),
		propane.Within("density of the gas", float64(gas), leastRho, mostRho, "kg/m³"),
		propane.Within("density of the air", float64(airDensity), leastRho, mostRho, "kg/m³"),
		propane.Above("height between the openings", float64(height), 0, mostHeight, "m"),
		propane.Above("leak", float64(leak), 0, mostSource, "m³/s"))
	if err != nil {
		return 0, err
	}
	reduced := gravity * math.Abs(float64(gas-airDensity)) / float64(airDensity)
	return unit.VolumeFlow(math.Cbrt(float64(effective) * float64(effective) * reduced * float64(height) * float64(leak))), nil
}

// StackFlow returns the air, in m³/s, that a difference of temperature drives
// through an opening the height H above or below the neutral level:
//
//	Q = C·A·√(2·g·H·ΔT/T)
//
// A in m², H in m, T the warmer temperature in K. Valid for areas up to 100 m²,
// heights up to 100 m and ΔT from 0 to T/2, else *[propane.RangeError].
//
// Source: ASHRAE Fundamentals 2009 ch. 16 eq. 39, quoted by the EnergyPlus
// Engineering Reference (read).
func StackFlow(coefficient unit.Ratio, area unit.Area, height unit.Length, difference unit.TemperatureDifference, warmer unit.Temperature) (unit.VolumeFlow, error) {
	err := first(
		propane.Above("discharge coefficient", float64(coefficient), 0, 1, "1"),
		propane.Within("free area of an opening", float64(area), 0, mostArea, "m²"),
		propane.Within("height to the neutral level", float64(height), 0, mostHeight, "m"),
		propane.Above("temperature", float64(warmer), 0, 2000, "K"),
		propane.Within("difference of temperature", float64(difference), 0, float64(warmer)/2, "K"))
	if err != nil {
		return 0, err
	}
	root := math.Sqrt(2 * gravity * float64(height) * float64(difference) / float64(warmer))
	return unit.VolumeFlow(float64(coefficient) * float64(area) * root), nil
}

// OneOpening returns what passes each way, in m³/s, through one opening in a wall of
// the height h when no source pushes:
//
//	V = (C/3)·A·√(g·h·Δρ/ρ)
//
// Δρ between the sides and ρ their mean, kg/m³. Valid for areas up to 100 m²,
// heights up to 100 m and densities of 0.05 to 10 kg/m³, else
// *[propane.RangeError].
//
// Error size: [Coefficient] errs high for a small hole, on the wrong side in a
// decay; see [CoefficientOneHole]. For a strong contrast each way differs from the
// mean (which is why [Balance] does not use it): within 1 % for Δρ/ρ up to 0.1.
//
// Source: Brown and Solvason 1962 eq. 6 as quoted by a building library (read).
func OneOpening(coefficient unit.Ratio, area unit.Area, extent unit.Length, one, other unit.Density) (unit.VolumeFlow, error) {
	err := first(
		propane.Above("discharge coefficient", float64(coefficient), 0, 1, "1"),
		propane.Within("free area of an opening", float64(area), 0, mostArea, "m²"),
		propane.Within("vertical extent of an opening", float64(extent), 0, mostHeight, "m"),
		propane.Within("density", float64(one), leastRho, mostRho, "kg/m³"),
		propane.Within("density", float64(other), leastRho, mostRho, "kg/m³"))
	if err != nil {
		return 0, err
	}
	contrast, mean := math.Abs(float64(one-other)), float64(one+other)/2
	return unit.VolumeFlow(float64(coefficient) / 3 * float64(area) * math.Sqrt(gravity*float64(extent)*contrast/mean)), nil
}

package propane

import (
	"math"

	"lowvent.example/schema/unit"
)

// The range of validity of the saturation functions: −45 °C to +70 °C. The
// equations themselves reach from the triple point to the critical point; they
// are compared with the full equation of state over the whole range.
const (
	LeastTemperature    unit.Temperature = 228.15 // K
	GreatestTemperature unit.Temperature = 343.15 // K
)

// BoilingPoint is the temperature, in K, at which pure propane boils under
// 101 325 Pa: −42.1138 °C.
//
// Source: equation of state of Lemmon, McLinden and Wagner, J. Chem. Eng. Data
// 54 (2009) 3141, evaluated with a general-purpose property library; handbooks
// round it to −42 °C or −44 °F.
const BoilingPoint unit.Temperature = 231.0362

// The critical temperature in K and, for the formulas below, the critical
// pressure in Pa and the critical density in kg/m³ (5000 mol/m³).
const (
	criticalTemperature = 369.89
	criticalPressure    = 4.2512e6
	criticalDensity     = 5000 * molarMass
)

// The formulas of this file as texts. T is the temperature in K, p in Pa,
// rho_liquid and rho_vapour in kg/m³, h_latent in J/kg.
const (
	SaturationPressureFormula = "p = 4.2512e6 * exp(369.89/T * (" +
		"-23.998635747*pow(1 - T/369.89, 1.05) + 18.313017605*pow(1 - T/369.89, 1.084)" +
		" - 0.42240851967*pow(1 - T/369.89, 2.259) - 2.7378298814*pow(1 - T/369.89, 4.287)" +
		" + 0.25788841417*pow(1 - T/369.89, 7.66) - 1.3113462226*pow(1 - T/369.89, 18.584)))"
	LiquidDensityFormula = "rho_liquid = 5000*0.04409562 * (1" +
		" + 2.1040680523*pow(1 - T/369.89, 0.368) + 0.33718924116*pow(1 - T/369.89, 0.875)" +
		" + 0.4401223811*pow(1 - T/369.89, 3.009) - 3.5679018989*pow(1 - T/369.89, 9.51)" +
		" + 59.938896971*pow(1 - T/369.89, 15.381) - 70.940246909*pow(1 - T/369.89, 17.001))"
	VapourDensityFormula = "rho_vapour = 5000*0.04409562 * exp(369.89/T * (" +
		"-3.4013608451*pow(1 - T/369.89, 0.431) - 1.9443653795*pow(1 - T/369.89, 1.339)" +
		" - 0.41012114595*pow(1 - T/369.89, 2.091) - 15.598374207*pow(1 - T/369.89, 6.822)" +
		" + 15.844867806*pow(1 - T/369.89, 8.214) - 15.298907422*pow(1 - T/369.89, 19.706)))"
	LatentHeatFormula = "h_latent = (28027.43347 - 87.51145056*T - 0.5641568879*pow(T, 2)" +
		" + 6.749038230e-3*pow(T, 3) - 3.51655998e-5*pow(T, 4) + 1.013381842e-7*pow(T, 5)" +
		" - 1.571832795e-10*pow(T, 6) + 1.046837739e-13*pow(T, 7)) / (1 - 2.664434280e-3*T) / 0.04409562"
)

// term is one summand n·θ^t of the saturation equations.
type term struct{ n, t float64 }

// SaturationPressure returns the pressure over liquid propane at temperature T:
//
//	p = pc · exp[(Tc/T) · Σ nᵢ θ^tᵢ],  θ = 1 − T/Tc
//
// p in Pa absolute, T in K, pc = 4.2512 MPa, Tc = 369.89 K.
// Valid from −45 to +70 °C, else *[RangeError].
//
// Error size: within 0.02 % of the full equation of state for pure propane.
// Commercial propane stands higher (see the package comment), so that the
// figure errs low for a hot cylinder; a share of butane makes it err high for
// a cold one.
//
// Source: ancillary vapour-pressure equation to Lemmon, McLinden and Wagner,
// J. Chem. Eng. Data 54 (2009) 3141, as published in the fluid file of the
// general-purpose property library CoolProp.
func SaturationPressure(temperature unit.Temperature) (unit.AbsolutePressure, error) {
	T, err := valid(temperature)
	if err != nil {
		return 0, err
	}
	return unit.AbsolutePressure(saturationPressure(T)), nil
}

func saturationPressure(T float64) float64 {
	return criticalPressure * math.Exp(criticalTemperature/T*series(T, [6]term{
		{-23.998635747, 1.05}, {18.313017605, 1.084}, {-0.42240851967, 2.259},
		{-2.7378298814, 4.287}, {0.25788841417, 7.66}, {-1.3113462226, 18.584},
	}))
}

// LiquidDensity returns the density of liquid propane in balance with its
// vapour at temperature T:
//
//	ρ′ = ρc · [1 + Σ nᵢ θ^tᵢ],  θ = 1 − T/Tc
//
// ρ′ in kg/m³, T in K, ρc = 5000 mol/m³ · M, Tc = 369.89 K.
// Valid from −45 to +70 °C, else *[RangeError].
//
// Error size: within 0.08 % of the full equation of state up to 30 °C, then
// growing to +0.18 % at 60 °C and +0.20 % at 70 °C; within 0.42 % over the whole range of the
// equation. It errs high when hot, so that a cylinder computed from it turns
// liquid-full up to 0.4 K later than it does: the wrong side, and small against
// the margin that a filling limit leaves.
//
// Source: as [SaturationPressure].
func LiquidDensity(temperature unit.Temperature) (unit.Density, error) {
	T, err := valid(temperature)
	if err != nil {
		return 0, err
	}
	return unit.Density(liquidDensity(T)), nil
}

func liquidDensity(T float64) float64 {
	return criticalDensity * (1 + series(T, [6]term{
		{2.1040680523, 0.368}, {0.33718924116, 0.875}, {0.4401223811, 3.009},
		{-3.5679018989, 9.51}, {59.938896971, 15.381}, {-70.940246909, 17.001},
	}))
}

// VapourDensity returns the density of propane vapour in balance with its
// liquid at temperature T:
//
//	ρ″ = ρc · exp[(Tc/T) · Σ nᵢ θ^tᵢ],  θ = 1 − T/Tc
//
// ρ″ in kg/m³, T in K, ρc = 5000 mol/m³ · M, Tc = 369.89 K.
// Valid from −45 to +70 °C, else *[RangeError].
//
// Error size: within 0.37 % of the full equation of state from −40 to +60 °C,
// to either side (low below −20 °C and above 50 °C, high between), then 0.75 % low
// at 70 °C; [SaturatedVapour] has not that error. An ideal gas
// would be 16 % low at 20 °C. The mass flow of a leak moves by half as much.
//
// Source: as [SaturationPressure].
func VapourDensity(temperature unit.Temperature) (unit.Density, error) {
	T, err := valid(temperature)
	if err != nil {
		return 0, err
	}
	return unit.Density(vapourDensity(T)), nil
}

func vapourDensity(T float64) float64 {
	return criticalDensity * math.Exp(criticalTemperature/T*series(T, [6]term{
		{-3.4013608451, 0.431}, {-1.9443653795, 1.339}, {-0.41012114595, 2.091},
		{-15.598374207, 6.822}, {15.844867806, 8.214}, {-15.298907422, 19.706},
	}))
}

// LatentHeat returns the heat that a kilogram of liquid propane takes up to
// become vapour at temperature T:
//
//	h = Σ Aᵢ Tⁱ / (1 + B·T) / M
//
// h in J/kg, T in K, M in kg/mol, Aᵢ and B as in [LatentHeatFormula].
// Valid from −45 to +70 °C, else *[RangeError].
//
// Error size: within 0.1 % of the full equation of state from −40 to +60 °C,
// low when hot. A low figure lets a cylinder make more vapour than it does,
// by the same 0.1 %.
//
// Source: as [SaturationPressure].
func LatentHeat(temperature unit.Temperature) (unit.HeatPerMass, error) {
	T, err := valid(temperature)
	if err != nil {
		return 0, err
	}
	a := [8]float64{28027.43347, -87.51145056, -0.5641568879, 6.749038230e-3,
		-3.51655998e-5, 1.013381842e-7, -1.571832795e-10, 1.046837739e-13}
	sum := 0.0
	for i := len(a) - 1; i >= 0; i-- {
		sum = sum*T + a[i]
	}
	return unit.HeatPerMass(sum / (1 - 2.664434280e-3*T) / molarMass), nil
}

// valid hands back the temperature as a plain number if the formulas hold there.
func valid(temperature unit.Temperature) (T float64, err error) {
	T = float64(temperature)
	return T, Within("temperature", T, float64(LeastTemperature), float64(GreatestTemperature), "K")
}

// series is Σ nᵢ θ^tᵢ with θ = 1 − T/Tc.
func series(T float64, terms [6]term) (sum float64) {
	theta := 1 - T/criticalTemperature
	for _, k := range terms {
		sum += k.n * math.Pow(theta, k.t)
	}
	return sum
}

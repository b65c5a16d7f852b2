package flow

import (
	"lowvent.example/gas/air"
	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

// gasConstant is R in J/(mol K), as the equation of state of propane takes it.
const gasConstant = 8.314472

// The formulas of this file as texts: p in Pa absolute, T in K, M in kg of one
// mole, C a share by volume, densities in kg/m³.
const (
	ThinGasFormula = "rho_gas = p * M / (8.314472*T)"
	MixtureFormula = "rho_mix = rho_air + C*(rho_gas - rho_air)"
)

// Gas is a gas that may leak. Make one with [Propane], [Helium], [Methane] or
// [IdealGas]; the zero Gas has no density.
type Gas struct {
	name  string
	molar float64 // kg/mol
	real  bool    // propane: the equation of state knows the undiluted vapour
}

// Propane is propane, 44.09562 g/mol, 1.52 times as heavy as air.
func Propane() Gas { return Gas{"propane", float64(propane.MolarMass), true} }

// Helium is helium, 4.0026 g/mol (standard atomic weight, from memory). Buoyant
// gas was studied with it: a leak of propane is that of helium upside down.
func Helium() Gas { return Gas{name: "helium", molar: 4.0026e-3} }

// Methane is methane, 16.043 g/mol (from memory), which rises.
func Methane() Gas { return Gas{name: "methane", molar: 16.043e-3} }

// IdealGas is any other gas, by the mass of one mole in kg, 0.002 to 0.2, else
// *[propane.RangeError].
func IdealGas(name string, molarMass unit.Mass) (Gas, error) {
	if err := propane.Within("molar mass", float64(molarMass), 0.002, 0.2, "kg/mol"); err != nil {
		return Gas{}, err
	}
	return Gas{name: name, molar: float64(molarMass)}, nil
}

// Name is what the gas is called.
func (g Gas) Name() string { return g.name }

// Density returns the density, in kg/m³, of the undiluted gas at temperature T in
// K and pressure p in Pa absolute: for propane that of the real vapour
// ([propane.VapourAt]), for others [Gas.InAir].
//
// Valid for 40 to 120 kPa and −50 to +70 °C, for propane from −45 °C and as long
// as it has not condensed, else *[propane.RangeError]. Error size: 0.03 % for
// propane; under 0.3 % for helium and methane.
func (g Gas) Density(temperature unit.Temperature, p unit.AbsolutePressure) (unit.Density, error) {
	if !g.real {
		return g.InAir(temperature, p)
	}
	if err := validState(temperature, p); err != nil {
		return 0, err
	}
	vapour, err := propane.VapourAt(temperature, p)
	return vapour.Density, err
}

// InAir returns the density, in kg/m³, that the gas brings into a thin mixture
// with air: that of an ideal gas,
//
//	ρ = p·M / (R·T)
//
// p in Pa absolute, T in K, R = 8.314472 J/(mol K). Among molecules of air those of
// propane hardly meet each other, so the pull that makes undiluted vapour 1.7 %
// denser at 20 °C is missing. A mass of leaked propane divided by this density is
// 1.7 % more volume than it has in the pipe, and weighs less over air: both to the
// side of more gas held. Where the mixture is nearly all propane the density errs
// low by up to 2 %, which is the same side.
//
// Valid for 40 to 120 kPa and −50 to +70 °C, else *[propane.RangeError].
//
// Source: ideal gas law.
func (g Gas) InAir(temperature unit.Temperature, p unit.AbsolutePressure) (unit.Density, error) {
	if err := first(propane.Above("molar mass", g.molar, 0, 1, "kg/mol"), validState(temperature, p)); err != nil {
		return 0, err
	}
	return unit.Density(float64(p) * g.molar / (gasConstant * float64(temperature))), nil
}

// validState asks the air, whose range this package shares.
func validState(temperature unit.Temperature, p unit.AbsolutePressure) error {
	if _, err := air.Density(p, temperature); err != nil {
		return first(
			propane.Within("temperature", float64(temperature), 223.15, 343.15, "K"),
			propane.Within("pressure", float64(p), 40e3, 120e3, "Pa"))
	}
	return nil
}

// Mixture returns the density of a mixture that holds the share C by volume of a
// gas in air, both densities at one temperature and pressure:
//
//	ρ = ρ_air + C·(ρ_gas − ρ_air)
//
// in kg/m³. Exact for ideal gases. Valid for shares of 0 to 1 and densities of
// 0.05 to 10 kg/m³, else *[propane.RangeError].
func Mixture(gas, airDensity unit.Density, share unit.Ratio) (unit.Density, error) {
	err := first(
		propane.Within("density of the gas", float64(gas), leastRho, mostRho, "kg/m³"),
		propane.Within("density of the air", float64(airDensity), leastRho, mostRho, "kg/m³"),
		propane.Within("share of gas", float64(share), 0, 1, "m³/m³"))
	if err != nil {
		return 0, err
	}
	return airDensity + unit.Density(float64(share)*float64(gas-airDensity)), nil
}

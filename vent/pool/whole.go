package pool

import (
	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

// The formulas of [Flammable] as texts: m in kg, V the volume of the space in m³, x
// the lower flammable limit by volume, rho the density of the gas in kg/m³; n how many
// times over a content m_held in kg does it.
const (
	FlammableFormula = "m = V * x * rho"
	TimesFormula     = "n = m_held / m"
)

// Whole is the gas that makes all of a space flammable, against what is at hand.
type Whole struct {
	Mass  unit.PropaneMass
	Share unit.Ratio // of what is held; over 1 if that is not enough
	Times unit.Ratio // how many times over what is held does it
}

// Flammable returns the mass of gas that makes a space flammable from wall to wall,
// mixed throughout at the lower flammable limit x:
//
//	m = V·x·ρ,  n = m_held / m
//
// m in kg, V in m³, ρ of the gas in kg/m³ at the temperature and pressure of the
// space. For propane at 20 °C it is about 31 g/m³ at 1.7 % and 38 g/m³ at 2.1 %.
//
// Valid for V up to 1e6 m³, x from 1e-6 to 1, ρ up to 100 kg/m³, a held mass above 0
// up to 1e6 kg, else [*propane.RangeError].
//
// Error: high for what is needed. A tenth of it in a layer makes a tenth of the space
// flammable, and burning expands that eightfold (from memory). Low by the share of the
// gas that escapes while it mixes.
//
// Source: definition of a share by volume.
func Flammable(volume unit.Volume, limit unit.Ratio, gas unit.Density, held unit.PropaneMass) (Whole, error) {
	err := first(validVolume(volume), validShare(limit), propane.Within("density of the gas", float64(gas), least, mostDensity, "kg/m³"),
		propane.Within("mass of gas held", float64(held), least, mostMass, "kg"))
	if err != nil {
		return Whole{}, err
	}
	m := float64(volume) * float64(limit) * float64(gas)
	return Whole{Mass: unit.PropaneMass(m), Share: unit.Ratio(m / float64(held)), Times: unit.Ratio(float64(held) / m)}, nil
}

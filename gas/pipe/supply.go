package pipe

import (
	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

// Supply is what feeds the tree.
type Supply struct {
	Outlet     unit.GaugePressure    // of the regulator while the gas flows
	Atmosphere unit.AbsolutePressure // outside air
	Gas        propane.Vapour        // at Outlet over Atmosphere and the temperature of the lines
	Air        unit.Density          // outside air
	Code       CodeGas
}

// AirDensityFormula is the density of dry air, rho_air in kg/m³ for p_a in Pa absolute
// and T in K.
const AirDensityFormula = "rho_air = p_a/(287.055*T)"

// SupplyAt returns the supply of propane at an outlet pressure in Pa over the outside
// air, an outside pressure in Pa absolute and the temperature of lines and air in K:
// the gas by [propane.VapourAt], the air as a dry ideal gas,
//
//	ρ_air = p_a/(R_air·T),  R_air = 287.055 J/(kg K)
//
// and the code's gas by [CodePropane].
//
// Valid from −45 to +70 °C, for 40 to 120 kPa outside, 100 Pa to 1 MPa over it, as long
// as the gas does not condense; else *[propane.RangeError]. Error size: that of the
// vapour; humid air is up to 2 % lighter at 30 °C, which makes the head of a climb err
// low by up to 4 %.
//
// Source: ideal gas; R over the molar mass of dry air, 28.9647 g/mol (from memory).
func SupplyAt(outlet unit.GaugePressure, outside unit.AbsolutePressure, temperature unit.Temperature) (Supply, error) {
	gas, err := propane.VapourAt(temperature, outside+unit.AbsolutePressure(outlet))
	if err != nil {
		return Supply{}, err
	}
	s := Supply{
		Outlet: outlet, Atmosphere: outside, Gas: gas, Code: CodePropane(),
		Air: unit.Density(float64(outside) / (287.055 * float64(temperature))),
	}
	if err := s.check(); err != nil {
		return Supply{}, err
	}
	return s, nil
}

func (s Supply) check() error {
	for _, err := range []error{
		propane.Within("outlet pressure of the supply", float64(s.Outlet), leastOutlet, mostOutlet, "Pa"),
		propane.Within("pressure of the outside air", float64(s.Atmosphere), leastOutside, mostOutside, "Pa"),
		propane.Within("density of the outside air", float64(s.Air), leastDensity, mostDensity, "kg/m³"),
		checkGas(s.Gas), s.Code.check(),
	} {
		if err != nil {
			return err
		}
	}
	return nil
}

package room

import (
	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

// The standard state in which amounts of gas are told as volumes, 15 °C and
// 101 325 Pa, and the volume of one mole there in m³.
const (
	standardPressure    = 101325.0
	standardTemperature = 288.15
	molarVolume         = 8.314472 * standardTemperature / standardPressure
)

// Molar masses in kg/mol. Source: standard atomic weights (from memory).
const (
	carbonMolarMass   = 0.0120107
	hydrogenMolarMass = 0.00100794
	waterMolarMass    = 0.01801528
)

// The formulas of this file as texts: V_CO2, V_water, V_O2 and V_net volume flows
// in m³/s at 15 °C and 101 325 Pa, m_water a mass flow in kg/s.
const (
	WaterVolumeFormula = "V_water = m_water / 0.01801528 * 8.314472*288.15/101325"
	NetFormula         = "V_net = V_CO2 + V_water - V_O2"
)

// Exchange is what something takes from the air and gives to it each second, as
// volumes at 15 °C and 101 325 Pa of an ideal gas. All are zero or more.
type Exchange struct {
	Oxygen        unit.VolumeFlow // taken
	CarbonDioxide unit.VolumeFlow // given
	Water         unit.VolumeFlow // given, as vapour
}

// Propane returns the exchange of a complete propane flame of the given gross
// power in W. Its water becomes a volume by
//
//	V = ṁ/M · R·T/p
//
// with M = 0.01801528 kg/mol, at 15 °C and 101 325 Pa. Valid for any power of
// zero or more. Error size: 0.5 % against trade figures. A starved flame takes
// and gives less than this and makes carbon monoxide, which is not computed.
//
// Source: [propane.Burn].
func Propane(power unit.GrossPower) Exchange {
	c := propane.Burn(power)
	return Exchange{Oxygen: c.OxygenVolume, CarbonDioxide: c.CarbonDioxideVolume, Water: steam(float64(c.Water))}
}

// steam turns a mass flow of water in kg/s into a standard volume flow.
func steam(water float64) unit.VolumeFlow {
	return unit.VolumeFlow(water / waterMolarMass * molarVolume)
}

// Fuel is a hydrocarbon by the atoms of its molecule; methane is 1 and 4,
// propane 3 and 8.
type Fuel struct{ Carbon, Hydrogen int }

// Burned returns the exchange of a complete flame that burns the mass flow in
// kg/s:
//
//	CxHy + (x + y/4) O2 → x CO2 + y/2 H2O
//
// Valid for molecules of 1 to 20 carbon and 0 to 42 hydrogen atoms and 0 to 1
// kg/s, else *[propane.RangeError]. Error size: 0.1 %.
//
// Source: balance of atoms.
func Burned(fuel Fuel, burned unit.MassFlow) (Exchange, error) {
	x, y := float64(fuel.Carbon), float64(fuel.Hydrogen)
	err := firstOf(
		propane.Within("carbon atoms of the fuel", x, 1, 20, "1"),
		propane.Within("hydrogen atoms of the fuel", y, 0, 42, "1"),
		propane.Within("fuel burned", float64(burned), 0, 1, "kg/s"),
	)
	if err != nil {
		return Exchange{}, err
	}
	volume := float64(burned) / (x*carbonMolarMass + y*hydrogenMolarMass) * molarVolume
	return Exchange{
		Oxygen:        unit.VolumeFlow(volume * (x + y/4)),
		CarbonDioxide: unit.VolumeFlow(volume * x),
		Water:         unit.VolumeFlow(volume * y / 2),
	}, nil
}

// Together returns the exchange of all of them at once: the sum.
func Together(parts ...Exchange) (sum Exchange) {
	for _, e := range parts {
		sum.Oxygen += e.Oxygen
		sum.CarbonDioxide += e.CarbonDioxide
		sum.Water += e.Water
	}
	return sum
}

func (e Exchange) valid() error {
	const most = 10 // m³/s, a fire of 300 MW
	return firstOf(
		propane.Within("oxygen taken", float64(e.Oxygen), 0, most, "m³/s"),
		propane.Within("carbon dioxide given", float64(e.CarbonDioxide), 0, most, "m³/s"),
		propane.Within("water given", float64(e.Water), 0, most, "m³/s"),
	)
}

// net is by how much the air grows, in standard m³/s.
func (e Exchange) net() float64 {
	return float64(e.CarbonDioxide) + float64(e.Water) - float64(e.Oxygen)
}

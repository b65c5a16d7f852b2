package propane

import "lowvent.example/schema/unit"

// molarMass is the mass of one mole of propane in kg/mol.
const molarMass float64 = 0.04409562

// MolarMass is the mass of one mole of propane, C3H8, in kg.
//
// Source: fluid file to Lemmon, McLinden and Wagner 2009; NIST Chemistry WebBook
// gives 44.0956 g/mol.
const MolarMass = unit.PropaneMass(molarMass)

// The heats of combustion in J/kg at 25 °C. GrossHeat counts the heat of the
// water made as given back (liquid water), NetHeat does not.
//
// GrossHeat: 2219.2 ± 0.46 kJ/mol over the molar mass, 50.33 MJ/kg. Source: NIST
// Chemistry WebBook, propane (Pittam and Pilcher 1972). Trade tables stand 0.1
// to 0.4 % lower (21 548 to 21 622 BTU/lb against 21 637), the rule of thumb of
// 21 000 BTU/lb 3 % lower: a run time from GrossHeat is longer than theirs by as
// much.
//
// NetHeat: GrossHeat less the latent heat of the four moles of water made,
// 44.01 kJ/mol each at 25 °C, 46.33 MJ/kg.
const (
	GrossHeat = unit.HeatPerMass(2219.2e3 / molarMass)
	NetHeat   = unit.HeatPerMass((2219.2e3 - 4*44.01e3) / molarMass)
)

// Masses of one mole of oxygen, carbon dioxide and water in kg/mol, and the
// mass share of oxygen in dry air. Source: standard atomic weights (from
// memory), proved by the published mass ratios of combustion in the tests.
const (
	oxygenMolarMass        = 0.0319988
	carbonDioxideMolarMass = 0.0440095
	waterMolarMass         = 0.01801528
	oxygenInAir            = 0.2314
)

// What one kilogram of propane takes from the air and makes when it burns
// completely, in kg per kg:
//
//	C3H8 + 5 O2 → 3 CO2 + 4 H2O
//
// AirPerPropane is the least air that holds the oxygen, dry and without any
// excess. A real burner needs more air than that, and one short of air makes
// carbon monoxide, which no stoichiometry tells.
const (
	OxygenPerPropane        = unit.Ratio(5 * oxygenMolarMass / molarMass)
	AirPerPropane           = unit.Ratio(5 * oxygenMolarMass / oxygenInAir / molarMass)
	CarbonDioxidePerPropane = unit.Ratio(3 * carbonDioxideMolarMass / molarMass)
	WaterPerPropane         = unit.Ratio(4 * waterMolarMass / molarMass)
)

// molarVolume is the volume of one mole of an ideal gas at 15 °C and 101 325 Pa
// in m³: R·T/p with R = 8.314472 J/(mol K).
const molarVolume = 8.314472 * 288.15 / 101325

// The formulas of [Burn] as texts: P is gross power in W, H gross heat in J/kg,
// m_fuel … m_water mass flows in kg/s, V_O2 and V_CO2 volume flows in m³/s.
const (
	FuelFormula                = "m_fuel = P / H"
	OxygenFormula              = "m_O2 = m_fuel * 5*0.0319988/0.04409562"
	AirFormula                 = "m_air = m_O2 / 0.2314"
	CarbonDioxideFormula       = "m_CO2 = m_fuel * 3*0.0440095/0.04409562"
	WaterFormula               = "m_water = m_fuel * 4*0.01801528/0.04409562"
	OxygenVolumeFormula        = "V_O2 = m_fuel / 0.04409562 * 5 * 8.314472*288.15/101325"
	CarbonDioxideVolumeFormula = "V_CO2 = m_fuel / 0.04409562 * 3 * 8.314472*288.15/101325"
)

// Combustion is what a flame takes and makes each second.
type Combustion struct {
	Fuel          unit.MassFlow // propane burned
	Oxygen        unit.MassFlow // taken from the air
	Air           unit.MassFlow // least air that holds it
	CarbonDioxide unit.MassFlow // made
	Water         unit.MassFlow // made, as vapour

	OxygenVolume        unit.VolumeFlow // at 15 °C and 101 325 Pa, ideal gas
	CarbonDioxideVolume unit.VolumeFlow // at 15 °C and 101 325 Pa, ideal gas
}

// Burn returns what a complete flame of the given gross power, in W, takes and
// makes: fuel ṁ = P/H and the rest by the stoichiometry of [OxygenPerPropane]
// and its neighbours.
//
// Valid for any power; a power of 0 gives zeros. Error size: 0.1 % for pure
// propane; volumes are those of an ideal gas, within 0.5 % for CO2 at room
// conditions. Trade tables of air per volume of gas, 23.5 to 23.9, agree within
// 2 %. It errs low wherever a burner is starved: incomplete combustion takes
// less oxygen but makes carbon monoxide, which is not computed.
//
// Source: balance of atoms.
func Burn(power unit.GrossPower) Combustion {
	fuel := float64(power) / float64(GrossHeat)
	moles := fuel / molarMass
	return Combustion{
		Fuel:                unit.MassFlow(fuel),
		Oxygen:              unit.MassFlow(fuel * float64(OxygenPerPropane)),
		Air:                 unit.MassFlow(fuel * float64(AirPerPropane)),
		CarbonDioxide:       unit.MassFlow(fuel * float64(CarbonDioxidePerPropane)),
		Water:               unit.MassFlow(fuel * float64(WaterPerPropane)),
		OxygenVolume:        unit.VolumeFlow(moles * 5 * molarVolume),
		CarbonDioxideVolume: unit.VolumeFlow(moles * 3 * molarVolume),
	}
}

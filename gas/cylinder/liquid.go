package cylinder

import "lowvent.example/schema/unit"

// LiquidVolume returns the volume of the liquid in an upright vessel that holds a
// mass of propane, liquid and vapour together, at temperature T: V′ of
// [WettedArea], in m³. Range and errors as there. Error size: that of the densities,
// 0.2 %; the stretch of the vessel is left out.
//
// Source: the masses of liquid and vapour add up.
func LiquidVolume(v Vessel, m unit.PropaneMass, temperature unit.Temperature) (unit.Volume, error) {
	s, err := stateOf(v, m, temperature)
	return unit.Volume(s.volume), err
}

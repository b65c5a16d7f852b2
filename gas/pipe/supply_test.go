package pipe

import (
	"fmt"
	"testing"

	"lowvent.example/schema/unit"
)

// 1.225 kg/m³ is air at 15 °C and 101 325 Pa (standard atmosphere, from memory);
// propane vapour at 1 atm has 1.8992 kg/m³ at 15 °C (full equation of state, as the
// reference tables give it).
func TestSupplyAt(t *testing.T) {
	s := must[Supply](t)(SupplyAt(2740, 101325, 288.15))
	near(t, "air", float64(s.Air), 1.225, 2e-4)
	near(t, "air by the text", float64(s.Air), evaluate(t, AirDensityFormula, map[string]float64{"p_a": 101325, "T": 288.15}), 1e-15)
	near(t, "gas", float64(s.Gas.Density), 1.8992*(101325+2740)/101325, 2e-3)
	near(t, "viscosity", float64(s.Gas.Viscosity), 7.87e-6, 0.01)
	if s.Code != CodePropane() || s.Outlet != 2740 || s.Atmosphere != 101325 {
		t.Errorf("%+v", s)
	}
}

func TestSupplyAtRefuses(t *testing.T) {
	for _, bad := range nonsense {
		outOfRange(t, fmt.Sprint("outlet ", bad), second(SupplyAt(unit.GaugePressure(bad), 101325, 288)))
		outOfRange(t, fmt.Sprint("outside ", bad), second(SupplyAt(2740, unit.AbsolutePressure(bad), 288)))
		outOfRange(t, fmt.Sprint("temperature ", bad), second(SupplyAt(2740, 101325, unit.Temperature(bad))))
	}
	outOfRange(t, "liquid", second(SupplyAt(10*psi, 101325, 235)))
}

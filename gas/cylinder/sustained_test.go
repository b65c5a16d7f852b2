package cylinder

import (
	"math"
	"testing"

	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
	"pgregory.net/rapid"
)

// By hand: 20 lb cylinder full, U = 5, air 0 °C, liquid −20 °C. Published
// saturation table: 554.45 and 5.505 kg/m³, 400.8 kJ/kg.
func TestSustainedByHand(t *testing.T) {
	v := twentyPound()
	volume, D := 48*lb/999, 12.5*inch
	liquid := (9.0718474 - 5.505*volume) / (554.45 - 5.505)
	area := 4*liquid/D + math.Pi/4*D*D
	want := 5 * area * 20 * (1 - 5.505/554.45) / 400.8e3
	got := value[unit.MassFlow](t)(Sustained(v.Vessel, v.Propane, 5, 273.15, 253.15))
	if math.Abs(got/want-1) > 0.002 {
		t.Errorf("%.4g kg/s, want %.4g", got, want)
	}
	power := value[unit.GrossPower](t)(SustainedPower(v.Vessel, v.Propane, 5, 273.15, 253.15))
	if math.Abs(power/(got*float64(propane.GrossHeat))-1) > 1e-12 || power < 3400 || power > 3700 {
		t.Errorf("%.0f W", power)
	}
}

func TestSustainedIsNothing(t *testing.T) {
	v := twentyPound()
	for _, c := range []struct {
		name          string
		m             unit.PropaneMass
		wall          unit.HeatTransfer
		air, coldness unit.Temperature
	}{
		{"air as cold", v.Propane, 5, 250, 250},
		{"air colder", v.Propane, 5, 240, 250},
		{"no propane", 0, 5, 300, 250},
		{"only vapour", 0.05, 5, 300, 250},
		{"a wall that lets nothing through", v.Propane, 0, 300, 250},
	} {
		if got, err := Sustained(v.Vessel, c.m, c.wall, c.air, c.coldness); got != 0 || err != nil {
			t.Errorf("%s: %g kg/s, %v", c.name, float64(got), err)
		}
	}
}

func TestSustainedRefuses(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	v := twentyPound()
	for _, c := range []struct {
		name, quantity        string
		m, wall, air, coldest float64
	}{
		{"negative wall", "wall coefficient", 9, -1, 273, 250},
		{"undefined wall", "wall coefficient", 9, nan, 273, 250},
		{"endless wall", "wall coefficient", 9, inf, 273, 250},
		{"wall in other units", "wall coefficient", 9, 5000, 273, 250},
		{"undefined air", "air temperature", 9, 5, nan, 250},
		{"air in °C", "air temperature", 9, 5, 20, 250},
		{"air of an oven", "air temperature", 9, 5, 400, 250},
		{"undefined least", "temperature", 9, 5, 273, nan},
		{"least too cold", "temperature", 9, 5, 273, 220},
		{"least too hot", "temperature", 9, 5, 273, 350},
		{"too much propane", "mass of propane", 13, 5, 273, 250},
		{"negative propane", "mass of propane", -1, 5, 273, 250},
		{"undefined propane", "mass of propane", nan, 5, 273, 250},
	} {
		flow, err := Sustained(v.Vessel, unit.PropaneMass(c.m), unit.HeatTransfer(c.wall), unit.Temperature(c.air), unit.Temperature(c.coldest))
		refused(t, c.name, err, c.quantity)
		power, powerErr := SustainedPower(v.Vessel, unit.PropaneMass(c.m), unit.HeatTransfer(c.wall), unit.Temperature(c.air), unit.Temperature(c.coldest))
		refused(t, c.name, powerErr, c.quantity)
		if flow != 0 || power != 0 {
			t.Errorf("%s: figures beside an error", c.name)
		}
	}
	if _, err := Sustained(Vessel{}, 1, 5, 273, 250); err == nil {
		t.Error("a vessel without figures passed")
	}
}

// Colder air, less propane, a poorer wall, a higher least temperature: never more.
func TestSustainedIsMonotone(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		v := anyVessel(rt)
		m := unit.PropaneMass(rapid.Float64Range(0, 0.38).Draw(rt, "share") * float64(v.Water))
		wall := unit.HeatTransfer(rapid.Float64Range(0.01, 40).Draw(rt, "wall"))
		air := unit.Temperature(rapid.Float64Range(229, 330).Draw(rt, "air"))
		least := unit.Temperature(rapid.Float64Range(228.15, 280).Draw(rt, "least"))
		at := func(m unit.PropaneMass, wall unit.HeatTransfer, air, least unit.Temperature) float64 {
			return value[unit.MassFlow](rt)(Sustained(v, m, wall, air, least))
		}
		flow := at(m, wall, air, least)
		if flow < 0 || at(m*0.9, wall, air, least) > flow || at(m, wall*0.9, air, least) > flow ||
			at(m, wall, air-0.5, least) > flow || at(m, wall, air, least+0.5) > flow {
			rt.Fatalf("%g kg/s is not the most of its neighbours", flow)
		}
		if half := at(m, wall/2, air, least); math.Abs(2*half-flow) > 1e-12*flow {
			rt.Fatalf("half the wall gives %g of %g", half, flow)
		}
		if math.Abs(2*at(m, wall, (air+least)/2, least)-flow) > 1e-9*flow && air > least {
			rt.Fatal("the draw does not follow the difference of temperature")
		}
	})
}

// Two vessels of half the size and the same shape wet more wall than one: they
// sustain more, by the cube root of two where little is vapour.
func TestTwoHalvesSustainMore(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		v := anyVessel(rt)
		m := unit.PropaneMass(rapid.Float64Range(0.02, 0.38).Draw(rt, "share") * float64(v.Water))
		half := v
		half.Water, half.Diameter, half.Metal = v.Water/2, unit.Length(float64(v.Diameter)/math.Cbrt(2)), v.Metal/2
		one := value[unit.MassFlow](rt)(Sustained(v, m, 5, 275, 240))
		two := 2 * value[unit.MassFlow](rt)(Sustained(half, m/2, 5, 275, 240))
		if math.Abs(two/one-math.Cbrt(2)) > 1e-9 {
			rt.Fatalf("two halves give %g times as much", two/one)
		}
	})
}

func TestWallInStillAir(t *testing.T) {
	w := WallInStillAir()
	if !(0 < w.Low && w.Low < w.Nominal && w.Nominal < w.High) || float64(w.High) > 10 || float64(w.Low) != 5 {
		t.Errorf("%v", w)
	}
	const sigma = 5.670374e-8 // W/(m² K⁴)
	for _, difference := range []float64{10, 20} {
		sum := 1.31*math.Cbrt(difference) + 4*0.9*sigma*math.Pow(258, 3)
		if sum < float64(w.Low) || sum > float64(w.High) || math.Abs(sum-float64(w.Nominal)) > 0.8 {
			t.Errorf("convection and radiation over %g K: %.2f W/(m² K)", difference, sum)
		}
	}
}

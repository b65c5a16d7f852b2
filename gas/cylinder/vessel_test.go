package cylinder

import (
	"errors"
	"math"
	"testing"

	"lowvent.example/gas/propane"
	"lowvent.example/gas/solve/physicstest"
	"lowvent.example/schema/unit"
	"pgregory.net/rapid"
)

func refused(t testing.TB, name string, err error, quantity string) {
	t.Helper()
	var outside *propane.RangeError
	if !errors.As(err, &outside) || outside.Quantity != quantity {
		t.Errorf("%s: error %v, want a RangeError of the %s", name, err, quantity)
	}
}

// anyVessel draws a vessel that Check accepts.
func anyVessel(rt *rapid.T) Vessel {
	water := rapid.Float64Range(2, 250).Draw(rt, "water")
	slender := rapid.Float64Range(0.7, 5).Draw(rt, "slender")
	return Vessel{
		Water: unit.WaterMass(water), Diameter: unit.Length(math.Cbrt(4 * water / 999 / math.Pi / slender)),
		Metal:    unit.Mass(water * rapid.Float64Range(0, 1).Draw(rt, "metal")),
		Material: rapid.SampledFrom([]Material{MaterialNotKnown, Steel, Aluminium, Composite}).Draw(rt, "material"),
	}
}

func TestVesselCheck(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	good := twentyPound().Vessel
	for _, c := range []struct {
		name     string
		change   func(*Vessel)
		quantity string
	}{
		{"good", func(*Vessel) {}, ""},
		{"height not known", func(v *Vessel) { v.Height = 0 }, ""},
		{"metal not known", func(v *Vessel) { v.Metal, v.Material = 0, MaterialNotKnown }, ""},
		{"no water", func(v *Vessel) { v.Water = 0 }, "water capacity"},
		{"undefined water", func(v *Vessel) { v.Water = unit.WaterMass(nan) }, "water capacity"},
		{"no diameter", func(v *Vessel) { v.Diameter = 0 }, "outside diameter for this water capacity"},
		{"diameter in inches", func(v *Vessel) { v.Diameter = 12.5 }, "outside diameter for this water capacity"},
		{"diameter in feet", func(v *Vessel) { v.Diameter = 1.04 }, "outside diameter for this water capacity"},
		{"diameter of a pipe", func(v *Vessel) { v.Diameter = 0.1 }, "outside diameter for this water capacity"},
		{"undefined diameter", func(v *Vessel) { v.Diameter = unit.Length(nan) }, "outside diameter for this water capacity"},
		{"endless diameter", func(v *Vessel) { v.Diameter = unit.Length(inf) }, "outside diameter for this water capacity"},
		{"too low for its water", func(v *Vessel) { v.Height = 0.25 }, "height for this water capacity and diameter"},
		{"far too high for its water", func(v *Vessel) { v.Height = 18 }, "height for this water capacity and diameter"},
		{"negative height", func(v *Vessel) { v.Height = -1 }, "height for this water capacity and diameter"},
		{"undefined height", func(v *Vessel) { v.Height = unit.Length(nan) }, "height for this water capacity and diameter"},
		{"negative metal", func(v *Vessel) { v.Metal = -1 }, "mass of the empty vessel"},
		{"undefined metal", func(v *Vessel) { v.Metal = unit.Mass(nan) }, "mass of the empty vessel"},
		{"endless metal", func(v *Vessel) { v.Metal = unit.Mass(inf) }, "mass of the empty vessel"},
	} {
		v := good
		c.change(&v)
		switch err := v.Check(); {
		case c.quantity == "" && err != nil:
			t.Errorf("%s: %v", c.name, err)
		case c.quantity != "":
			refused(t, c.name, err, c.quantity)
			_, areaErr := WettedArea(v, 1, 273.15)
			refused(t, c.name+", area", areaErr, c.quantity)
		}
	}
}

// By hand: 20 lb in the 20 lb cylinder at 0 °C, with the densities of the published
// saturation table: 528.59 and 10.35 kg/m³.
func TestWettedAreaByHand(t *testing.T) {
	v := twentyPound()
	volume := 48 * lb / 999
	liquid := (9.0718474 - 10.351*volume) / (528.59 - 10.351)
	D := 12.5 * inch
	want := 4*liquid/D + math.Pi/4*D*D
	got := value[unit.Area](t)(WettedArea(v.Vessel, v.Propane, 273.15))
	if math.Abs(got/want-1) > 0.002 {
		t.Errorf("%.5f m², want %.5f", got, want)
	}
	if got < 0.29 || got > 0.30 {
		t.Errorf("%.5f m², want about 0.297", got)
	}
}

func TestWettedAreaProperties(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		v := anyVessel(rt)
		T := rapid.Float64Range(228.15, 343.15).Draw(rt, "T")
		share := rapid.Float64Range(0, 0.39).Draw(rt, "share")
		m := unit.PropaneMass(share * float64(v.Water))
		at := func(v Vessel, m unit.PropaneMass) float64 {
			return value[unit.Area](rt)(WettedArea(v, m, unit.Temperature(T)))
		}
		area, D := at(v, m), float64(v.Diameter)
		bottom, whole := math.Pi/4*D*D, math.Pi/4*D*D+4*float64(Volume(v.Water))/D
		if area < bottom || area > whole {
			rt.Fatalf("%g m² is not between the bottom, %g, and the bottom and side, %g", area, bottom, whole)
		}
		if at(v, m+0.01) < area {
			rt.Fatal("more propane wets less wall")
		}
		double := v // twice as long in every direction
		double.Water, double.Diameter, double.Height = 8*v.Water, 2*v.Diameter, 2*v.Height
		if big := at(double, 8*m); math.Abs(big/area-4) > 1e-9 {
			rt.Fatalf("the area depends on the unit of length: %g times as much", big/area)
		}
	})
}

func TestWettedAreaEnds(t *testing.T) {
	v := twentyPound().Vessel
	bottom := math.Pi / 4 * (12.5 * inch) * (12.5 * inch)
	for _, c := range []struct{ m, T float64 }{{0, 273.15}, {0.2, 273.15}, {0.7, 343.15}} {
		if got := value[unit.Area](t)(WettedArea(v, unit.PropaneMass(c.m), unit.Temperature(c.T))); math.Abs(got-bottom) > 1e-9 {
			t.Errorf("%g kg at %g K, all vapour: %g m², the bottom is %g", c.m, c.T, got, bottom)
		}
	}
	for _, c := range []struct {
		name, quantity string
		m, T           float64
	}{
		{"too much", "mass of propane", 11.6, 273.15},
		{"negative", "mass of propane", -1, 273.15},
		{"undefined", "mass of propane", math.NaN(), 273.15},
		{"too cold", "temperature", 9, 228},
		{"too hot", "temperature", 8, 344},
		{"undefined temperature", "temperature", 9, math.NaN()},
	} {
		area, err := WettedArea(v, unit.PropaneMass(c.m), unit.Temperature(c.T))
		refused(t, c.name, err, c.quantity)
		if area != 0 {
			t.Errorf("%s: %g m² beside an error", c.name, float64(area))
		}
	}
}

// The heat that a kilogram of wall stores, by published tables: the figure used
// lies at or below each of them (see the doc comment for the sources).
func TestHeatCapacities(t *testing.T) {
	for _, c := range []struct {
		m         Material
		name      string
		want      float64
		published []float64
	}{
		{Steel, "steel", 447, []float64{447, 490, 510}},
		{Aluminium, "aluminium", 870, []float64{870, 897, 910}},
		{Composite, "composite", 840, []float64{840, 1000, 1550}},
		{MaterialNotKnown, "not known", 0, nil},
		{Material(99), "not known", 0, nil},
	} {
		got := float64(c.m.HeatCapacity())
		if got != c.want || c.m.String() != c.name {
			t.Errorf("%v: %g J/(kg K), want %s %g", c.m, got, c.name, c.want)
		}
		for _, p := range c.published {
			if got > p {
				t.Errorf("%s: over the published %g", c.name, p)
			}
		}
	}
}

// Against the published rows, and each with itself.
func TestTradeSizes(t *testing.T) {
	read := map[string]physicstest.Row{}
	for _, row := range physicstest.Published(t, "cylinders.csv") {
		if row["name"] == "20 lb" && row["diameter"] != "" {
			read["20 lb"] = row
		}
		if row["name"] == "100 lb" {
			read["100 lb"] = row
		}
	}
	twenty, hundred := read["20 lb"], read["100 lb"]
	if twenty["diameter"] != "12.5 in" || twenty["height"] != "18 in" || twenty["tare"] != "18 lb" || twenty["water_capacity_lb"] != "48" || hundred["water_capacity_lb"] != "239" {
		t.Errorf("the published rows are gone: %v, %v", twenty, hundred)
	}
	sizes := TradeSizes()
	for _, c := range []struct {
		name                           string
		water, diameter, height, empty float64
	}{{"20 lb", 48, 12.5, 18, 18}, {"30 lb", 72, 12.5, 24, 24}, {"100 lb", 239, 14.5, 48, 68}} {
		size, found := TradeSizeFor(unit.WaterMass(c.water * lb))
		off := math.Abs(float64(size.Diameter)/inch-c.diameter) + math.Abs(float64(size.Height)/inch-c.height) + math.Abs(float64(size.Empty)/lb-c.empty)
		if !found || size.Name != c.name || off > 1e-9 {
			t.Errorf("%s: %+v", c.name, size)
		}
	}
	for _, s := range sizes {
		if err := s.Vessel().Check(); err != nil {
			t.Errorf("%s: %v", s.Name, err)
		}
		if s.Source == "" || s.Address == "" {
			t.Errorf("%s has no source", s.Name)
		}
		column := float64(Volume(s.Water)) / (math.Pi / 4 * float64(s.Diameter) * float64(s.Diameter))
		if share := column / float64(s.Height); share < 0.55 || share > 0.95 {
			t.Errorf("%s: a column of its water takes %.2f of its height", s.Name, share)
		}
	}
	sizes[0].Diameter = 0
	if TradeSizes()[0].Diameter == 0 {
		t.Error("a caller can change the table")
	}
}

// What lies between the sizes is not known.
func TestTradeSizeForTheUnknown(t *testing.T) {
	for _, water := range []float64{0, 12, 45, 51, 60, 95, 104, 230, 245, math.NaN(), math.Inf(1)} {
		if size, found := TradeSizeFor(unit.WaterMass(water * lb)); found || size != (TradeSize{}) {
			t.Errorf("%g lb of water: %+v", water, size)
		}
	}
	for _, water := range []float64{47.1, 47.6, 48.9, 71.5, 238, 240} {
		if _, found := TradeSizeFor(unit.WaterMass(water * lb)); !found {
			t.Errorf("%g lb of water: no size", water)
		}
	}
}

func TestWallFormulaTexts(t *testing.T) {
	const m, T, U, air = 6.5, 250.0, 5.0, 263.0
	v := twentyPound().Vessel
	liquid, vapour := value[unit.Density](t)(propane.LiquidDensity(T)), value[unit.Density](t)(propane.VapourDensity(T))
	symbols := map[string]float64{
		"m": m, "V": float64(Volume(v.Water)), "D": float64(v.Diameter), "rho_liquid": liquid, "rho_vapour": vapour,
		"U": U, "T_air": air, "T": T, "h_latent": value[unit.HeatPerMass](t)(propane.LatentHeat(T)),
	}
	for _, c := range []struct {
		text, symbol string
		want         float64
	}{
		{LiquidVolumeFormula, "V_liquid", value[unit.Volume](t)(LiquidVolume(v, m, T))},
		{WettedAreaFormula, "A", value[unit.Area](t)(WettedArea(v, m, T))},
		{SustainedFormula, "m_flow", value[unit.MassFlow](t)(Sustained(v, m, U, air, T))},
	} {
		symbol, got, err := physicstest.Evaluate(c.text, symbols)
		if err != nil || symbol != c.symbol || math.Abs(got/c.want-1) > 1e-12 {
			t.Errorf("%s: %s = %.12g, %v; the function gives %.12g", c.text, symbol, got, err, c.want)
		}
		symbols[symbol] = got
	}
}

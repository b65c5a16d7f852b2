package cylinder

import (
	"math"

	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

// Vessel is an upright cylinder as the physics sees it.
type Vessel struct {
	Water    unit.WaterMass // water capacity, kg
	Diameter unit.Length    // outside, m
	Height   unit.Length    // over all, m; 0 where it is not known
	Metal    unit.Mass      // of the empty vessel, kg; 0 where it is not known: it then stores no heat
	Material Material       // of the wall; not known stores no heat
}

// How slender an upright vessel can be: its height, filled with its water
// capacity, over its diameter. Trade cylinders lie between 0.9 and 4.
const leastSlender, mostSlender = 0.2, 12.0

// The formulas of the wall as texts: V_liquid the volume of the liquid and V that
// of the vessel in m³, m the mass of propane in kg, rho_liquid and rho_vapour the
// densities in kg/m³, D the outside diameter in m, A an area in m².
const (
	LiquidVolumeFormula = "V_liquid = max(0, m - rho_vapour*V) / (rho_liquid - rho_vapour)"
	WettedAreaFormula   = "A = 4*V_liquid/D + 0.7853981633974483*D*D"
)

// Check tells whether the vessel's figures agree with each other: the water
// capacity is one that a vessel can have, the outside cylinder of the given
// diameter, and of the given height where it is known, holds it, and the mass of
// metal is none or more. It fails with [*propane.RangeError].
//
// It finds a diameter in the wrong unit; it does not prove one right.
func (v Vessel) Check() error {
	if _, err := massPerVolume(0, v.Water); err != nil {
		return err
	}
	volume, D := float64(Volume(v.Water)), float64(v.Diameter)
	thin, thick := math.Cbrt(4*volume/math.Pi/mostSlender), math.Cbrt(4*volume/math.Pi/leastSlender)
	if !(D >= thin && D <= thick) {
		return &propane.RangeError{Quantity: "outside diameter for this water capacity", Value: D, Low: thin, High: thick, Unit: "m"}
	}
	if height, column := float64(v.Height), volume/(math.Pi/4*D*D); v.Height != 0 && !(height >= column && height <= 3*column+1) {
		return &propane.RangeError{Quantity: "height for this water capacity and diameter", Value: height, Low: column, High: 3*column + 1, Unit: "m"}
	}
	if metal := float64(v.Metal); !(metal >= 0 && metal <= most) {
		return &propane.RangeError{Quantity: "mass of the empty vessel", Value: metal, Low: 0, High: most, Unit: "kg"}
	}
	return nil
}

// WettedArea returns the area of wall that the liquid touches in an upright
// vessel holding a mass of propane, liquid and vapour together, at temperature T:
//
//	A = 4·V′/D + π/4·D²,  V′ = (m − ρ″·V)/(ρ′ − ρ″)
//
// A in m², V′ the volume of the liquid in m³, D the outside diameter in m, m in
// kg, V the inside volume in m³, ρ′ and ρ″ the densities of liquid and vapour in
// kg/m³. Where all of it is vapour only the bottom is left.
//
// Valid from −45 to +70 °C for a mass that the vessel can hold at T, else
// [*propane.RangeError]; so with figures that [Vessel.Check] refuses.
//
// Error size: the liquid is a straight column on a flat round bottom that is
// wetted to its rim by any liquid. Against a dished bottom (2:1 ellipse) that
// errs high by 3 % in a full 100 lb cylinder and by 20 % in one a tenth full,
// the wrong side; a published chart of draws lies 11 to 24 % over it there. The
// column is reckoned with the outside diameter, low by 2 to 3 % of the side; a
// bottom that stands in a foot ring gets less air than the side.
//
// Source: geometry.
func WettedArea(v Vessel, m unit.PropaneMass, temperature unit.Temperature) (unit.Area, error) {
	s, err := stateOf(v, m, temperature)
	if err != nil {
		return 0, err
	}
	return unit.Area(s.area), nil
}

// state is what stands in a vessel at one temperature.
type state struct {
	liquid, vapour float64 // densities, kg/m³
	latent         float64 // J/kg
	volume         float64 // of the liquid, m³
	area           float64 // wetted, m²
}

func stateOf(v Vessel, m unit.PropaneMass, temperature unit.Temperature) (state, error) {
	if err := v.Check(); err != nil {
		return state{}, err
	}
	liquid, err := propane.LiquidDensity(temperature)
	if err != nil {
		return state{}, err
	}
	if err := holds(v, m, liquid); err != nil {
		return state{}, err
	}
	vapour, err := propane.VapourDensity(temperature)
	if err != nil {
		return state{}, err
	}
	latent, err := propane.LatentHeat(temperature)
	s := state{liquid: float64(liquid), vapour: float64(vapour), latent: float64(latent)}
	s.volume = max(0, float64(m)-s.vapour*float64(Volume(v.Water))) / (s.liquid - s.vapour)
	s.area = wetted(s.volume, float64(v.Diameter))
	return s, err
}

// wetted is the area in m² that a column of the given volume in m³ wets.
func wetted(volume, D float64) float64 { return 4*volume/D + math.Pi/4*D*D }

// holds reports a RangeError unless the vessel has room for the mass as liquid
// of the given density.
func holds(v Vessel, m unit.PropaneMass, liquid unit.Density) error {
	if _, err := massPerVolume(m, v.Water); err != nil {
		return err
	}
	if room := float64(liquid) * float64(Volume(v.Water)); float64(m) > room {
		return &propane.RangeError{Quantity: "mass of propane", Value: float64(m), Low: 0, High: room, Unit: "kg"}
	}
	return nil
}

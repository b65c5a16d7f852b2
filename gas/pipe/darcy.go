package pipe

import (
	"math"

	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

// gravity is the standard acceleration of free fall in m/s².
const gravity = 9.80665

// Darcy's method as texts: m the mass flow in kg/s, D the bore and L the length in
// m, rho and mu the density and viscosity of the gas at the inlet pressure p_1, f the
// friction factor, p_2 the outlet pressure; u the velocity there, rho_2 the density
// there; dp_h the loss by a rise of h m among air of density rho_air. Pressures in Pa
// absolute.
const (
	ReynoldsFormula    = "Re = 4*m/(3.14159265358979*D*mu)"
	DarcyOutletFormula = "p_2 = sqrt(p_1*p_1 - f*L/D*pow(4*m/(3.14159265358979*D*D), 2)*p_1/rho)"
	VelocityFormula    = "u = 4*m/(3.14159265358979*D*D*rho_2)"
	HeadFormula        = "dp_h = (rho - rho_air)*9.80665*h"
)

// Loss is what a flow loses in one run by Darcy's method.
type Loss struct {
	Outlet   unit.AbsolutePressure // at the end, height left out
	Drop     unit.GaugePressure    // by friction
	Reynolds unit.Ratio            // 0 without flow
	Factor   unit.Ratio            // friction factor, 0 without flow
	Velocity unit.Speed            // at the end, where it is greatest
}

// Darcy returns what a flow loses by friction in a run of one bore, isothermal, by
// the law of Darcy and Weisbach with the density following the pressure:
//
//	p1² − p2² = f·(L/D)·G²·p1/ρ1,  G = 4·ṁ/(π·D²),  Re = 4·ṁ/(π·D·μ)
//
// p in Pa absolute, ρ1 in kg/m³ and μ in Pa s at p1, L in m with the fittings in it,
// D in m, ṁ in kg/s; f by [FrictionFactor]. For small drops it is Δp = f·(L/D)·ρ·u²/2.
//
// Valid for bores of 1 mm to 1 m, lengths to 100 km, flows to 100 kg/s and the ranges
// of [FrictionFactor], else *[propane.RangeError]; with no pressure left it fails with
// *[ExhaustedError]. A flow with Re under 1e-9, some 1e-16 kg/s, counts as none.
//
// Error size: what the friction factor has, 10 to 15 %. Taking p/ρ and μ as the same
// all along errs low, by 0.01 % of the drop in low-pressure lines and 0.2 % where a
// tenth of the pressure is lost from 10 psi. The pressure that gas needs to gather
// speed is left out, which errs low too: ρu²/2 where it starts from rest, 4 Pa at
// 2 m/s, and on the way a share 2·ln(p1/p2)/(f·L/D) of the drop, 0.03 % for 0.5 in w.c.
// in 300 bores.
//
// Source: Darcy and Weisbach, isothermal flow, in any textbook of fluid mechanics
// (from memory; the tests hold it against Hagen and Poiseuille and against a
// reckoning by hand).
func Darcy(gas propane.Vapour, inlet unit.AbsolutePressure, flow unit.MassFlow, bore, roughness, length unit.Length) (Loss, error) {
	for _, err := range []error{
		checkGas(gas), checkBore(bore), checkLength(length),
		propane.Within("inlet pressure", float64(inlet), leastOutside, 2e6, "Pa"),
		propane.Within("mass flow", float64(flow), 0, 100, "kg/s"),
		propane.Within("roughness", float64(roughness), 0, mostRelativeRoughness*float64(bore), "m"),
	} {
		if err != nil {
			return Loss{}, err
		}
	}
	s := stream{p: float64(inlet), perDensity: float64(inlet) / float64(gas.Density), viscosity: float64(gas.Viscosity)}
	loss, ok := s.lose(float64(flow), float64(bore), float64(roughness), float64(length))
	if !ok {
		return Loss{}, &ExhaustedError{Segment: -1, Inlet: inlet, Method: darcyMethod}
	}
	return loss, nil
}

func checkGas(gas propane.Vapour) error {
	if err := propane.Within("gas density", float64(gas.Density), leastDensity, mostDensity, "kg/m³"); err != nil {
		return err
	}
	return propane.Within("gas viscosity", float64(gas.Viscosity), leastViscosity, mostViscous, "Pa s")
}

// stream is gas at a point of a line: absolute pressure, pressure over density
// (the same all along an isothermal line) and viscosity.
type stream struct{ p, perDensity, viscosity float64 }

// lose is [Darcy] without the checks; ok is false when no pressure is left.
func (s stream) lose(flow, bore, roughness, length float64) (loss Loss, ok bool) {
	loss.Outlet = unit.AbsolutePressure(s.p)
	perArea := 4 * flow / (math.Pi * bore * bore)
	Re := perArea * bore / s.viscosity
	if Re < leastReynolds {
		return loss, true
	}
	f := frictionFactor(Re, roughness/bore)
	squares := f * length / bore * perArea * perArea * s.perDensity
	left := s.p*s.p - squares
	if !(left > 0) {
		return Loss{}, false
	}
	out := math.Sqrt(left)
	return Loss{
		Outlet: unit.AbsolutePressure(out), Drop: unit.GaugePressure(squares / (s.p + out)),
		Reynolds: unit.Ratio(Re), Factor: unit.Ratio(f), Velocity: unit.Speed(perArea * s.perDensity / out),
	}, true
}

// Head returns the pressure over the outside air, in Pa, that standing gas loses on
// a climb of h m:
//
//	Δp = (ρ − ρ_air)·g·h
//
// ρ in kg/m³, g = 9.80665 m/s². Propane is heavier than air: a line that climbs loses,
// one that falls gains (Δp below 0), 6.4 Pa a metre at 20 °C. Valid for climbs of
// ±1000 m and densities of 0.1 to 50 kg/m³, else *[propane.RangeError]. Error size: that
// of the densities.
//
// Source: hydrostatics.
func Head(gas, air unit.Density, rise unit.Length) (unit.GaugePressure, error) {
	for _, err := range []error{
		propane.Within("gas density", float64(gas), leastDensity, mostDensity, "kg/m³"),
		propane.Within("air density", float64(air), leastDensity, mostDensity, "kg/m³"),
		propane.Within("rise", float64(rise), -mostRise, mostRise, "m"),
	} {
		if err != nil {
			return 0, err
		}
	}
	return unit.GaugePressure((float64(gas) - float64(air)) * gravity * float64(rise)), nil
}

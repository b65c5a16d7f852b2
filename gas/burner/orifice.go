// Package burner computes what the jet of a burner lets through, what input that
// makes, what height above the sea does to it, and what happens when the gas is not
// the one that the jet was drilled for.
//
// It is for the fitter's sheet and for findings. A diameter from here is never an
// instruction to drill. Left out: how much air the burner draws in, the size of its
// ports, and whether the flame lifts, lights back or soots, which no flow through
// a jet tells.
//
// The coefficient of a jet is a band, and so is every input worked out from it. It
// errs low for a jet that was drilled up or worn, high for one that is dirty.
package burner

import (
	"math"

	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

// The ranges within which a jet is worked out.
const (
	leastDiameter = 1e-5 // m
	mostDiameter  = 0.02 // m
	mostManifold  = 10e3 // Pa
	leastInput    = 1.0  // W
	mostInput     = 1e6  // W
	leastAir      = 40e3 // Pa
	mostAir       = 120e3
	leastDensity  = 0.05 // kg/m³
	mostDensity   = 20.0
)

// tradeAir is the density of air, in kg/m³, that hides in the trade's constant of
// 1658.5 ft³/(h in²) for √inH2O: air of 60 °F and 30 inches of mercury, damp.
const tradeAir = 1.218438

// The formulas as texts: d the diameter of the jet in m, A its area in m², K its
// coefficient of discharge, rho the density of the gas in kg/m³, dp the pressure
// before the jet over the air in Pa, m_flow in kg/s, G the density of the gas over
// that of air, Q in m³/s, P in W gross, H in J/kg.
const (
	AreaFormula      = "A = 3.141592653589793/4 * d*d"
	FlowFormula      = "m_flow = K * A * sqrt(2*rho*dp)"
	TradeFlowFormula = "Q = K * A * sqrt(2*dp / (1.218438*G))"
	InputFormula     = "P = H * K * A * sqrt(2*rho*dp)"
	DiameterFormula  = "d = sqrt(4/3.141592653589793 * P / (H * K * sqrt(2*rho*dp)))"
)

// Coefficient returns the band of the coefficient of discharge of a drilled jet of
// which nothing else is known: 0.80 to 0.90, nominal 0.85.
//
// It reaches from 0.82 to 0.87, which the rated inputs of a cooking appliance
// imply (manual read at manualsdump.com/amp/en/manuals/82071/22), to 0.90, for
// which a published capacity table is made (BCcampus, Plumbing Level 3, Appendix 2).
// The angle of approach and the length of the channel change it greatly (U.S.
// Bureau of Standards Technologic Paper 193, 1921, abstract): a sharp edge has 0.6
// to 0.65, a rounded approach up to 0.98 (from memory), and both lie outside.
func Coefficient() unit.Value[unit.Ratio] {
	return unit.Value[unit.Ratio]{Nominal: 0.85, Low: 0.80, High: 0.90}
}

// Area returns the area of a round jet:
//
//	A = π/4 · d²
//
// A in m², d in m, 0.01 to 20 mm, else [*propane.RangeError].
func Area(diameter unit.Length) (unit.Area, error) {
	d := float64(diameter)
	if err := propane.Within("diameter of the jet", d, leastDiameter, mostDiameter, "m"); err != nil {
		return 0, err
	}
	return unit.Area(math.Pi / 4 * d * d), nil
}

// Flow returns the mass flow of any gas through a jet:
//
//	ṁ = K·A·√(2·ρ·Δp)
//
// ṁ in kg/s, A in m², Δp in Pa, ρ the density in kg/m³ of the gas at the air's
// pressure. Valid for a diameter of 0.01 to 20 mm, K over 0 and up to 1, Δp of 0 to
// 10 kPa and ρ of 0.05 to 20 kg/m³, else [*propane.RangeError]: over 10 kPa the
// gas is no longer incompressible.
//
// Error size: with K given, high by 0.5 % at 3 kPa and 1.5 % at 10 kPa.
//
// Source: Bernoulli. The trade's form, Q = 1658.5·K·A·√(H/G), is the same equation;
// see [TradeFlow].
func Flow(diameter unit.Length, coefficient unit.Ratio, manifold unit.GaugePressure, density unit.Density) (unit.MassFlow, error) {
	A, err := Area(diameter)
	if err != nil {
		return 0, err
	}
	K, dp, rho := float64(coefficient), float64(manifold), float64(density)
	if err := jet(K, dp); err != nil {
		return 0, err
	}
	if err := propane.Within("density of the gas", rho, leastDensity, mostDensity, "kg/m³"); err != nil {
		return 0, err
	}
	return unit.MassFlow(K * float64(A) * math.Sqrt(2*rho*dp)), nil
}

// TradeFlow returns the volume flow of a gas of relative density G through a jet
// in the trade's form, for comparison with its tables:
//
//	Q[ft³/h] = 1658.5·K·A[in²]·√(H[inH2O]/G)
//	Q[m³/s]  = K·A[m²]·√(2·Δp[Pa] / (1.2184 kg/m³·G))
//
// The two are one equation, and both are [Flow] with ρ = G·1.2184 kg/m³: the
// constant holds the density of damp air at 60 °F and 30 inches of mercury, 0.6 %
// less than that of dry air. Valid as [Flow], for G of 0.05 to 5, else
// [*propane.RangeError]. Error size: 0.1 % against the published table.
//
// Source: NFPA 54 Annex E (constant from memory; proved by the table).
func TradeFlow(diameter unit.Length, coefficient unit.Ratio, manifold unit.GaugePressure, relativeDensity unit.Ratio) (unit.VolumeFlow, error) {
	G := float64(relativeDensity)
	if err := propane.Within("relative density", G, 0.05, 5, "1"); err != nil {
		return 0, err
	}
	flow, err := Flow(diameter, coefficient, manifold, unit.Density(tradeAir*G))
	if err != nil {
		return 0, err
	}
	return unit.VolumeFlow(float64(flow) / (tradeAir * G)), nil
}

// Jet is the hole through which a burner is fed.
type Jet struct {
	Diameter    unit.Value[unit.Length]
	Coefficient unit.Value[unit.Ratio] // see [Coefficient]
}

// Input returns the heat input that a jet passes as propane:
//
//	P = H·K·A·√(2·ρ·Δp)
//
// P in W gross, Δp the pressure before the jet in Pa, ρ of propane at the air's
// pressure in Pa absolute and temperature T in K, H = 50.33 MJ/kg. Each input may
// have a band, and the result's band holds every case inside them. Valid as [Flow],
// for −30 to +60 °C and air of 40 to 120 kPa, else [*propane.RangeError].
//
// Error size: that of the coefficient, 6 % to either side; the rest 1 %. At its
// ends the band errs to neither side, so that a rating outside it is a finding and
// a rating inside it proves nothing.
//
// Source: [Flow], [propane.VapourAt], [propane.GrossHeat].
func Input(jet Jet, manifold unit.Value[unit.GaugePressure], temperature unit.Temperature, air unit.AbsolutePressure) (unit.Value[unit.GrossPower], error) {
	density, err := gas(temperature, air)
	if err != nil {
		return unit.Value[unit.GrossPower]{}, err
	}
	var result unit.Value[unit.GrossPower]
	for _, end := range []struct {
		to       *unit.GrossPower
		d        unit.Length
		K        unit.Ratio
		manifold unit.GaugePressure
	}{
		{&result.Low, jet.Diameter.Low, jet.Coefficient.Low, manifold.Low},
		{&result.Nominal, jet.Diameter.Nominal, jet.Coefficient.Nominal, manifold.Nominal},
		{&result.High, jet.Diameter.High, jet.Coefficient.High, manifold.High},
	} {
		flow, err := Flow(end.d, end.K, end.manifold, density)
		if err != nil {
			return unit.Value[unit.GrossPower]{}, err
		}
		*end.to = unit.GrossPower(float64(flow) * float64(propane.GrossHeat))
	}
	return result, nil
}

// Diameter returns the diameter of a jet that passes an input as propane, the
// inverse of [Input]:
//
//	d = √(4/π · P / (H·K·√(2·ρ·Δp)))
//
// d in m, P in W gross. Valid for 1 W to 1 MW, Δp over 0, the rest as [Input], else
// [*propane.RangeError]. Error size: half that of the coefficient. For the fitter's
// sheet alone: jets are bought with the appliance, not drilled.
//
// Source: as [Input].
func Diameter(input unit.GrossPower, coefficient unit.Ratio, manifold unit.GaugePressure, temperature unit.Temperature, air unit.AbsolutePressure) (unit.Length, error) {
	P, K, dp := float64(input), float64(coefficient), float64(manifold)
	if err := propane.Within("heat input", P, leastInput, mostInput, "W"); err != nil {
		return 0, err
	}
	if err := jet(K, dp); err != nil {
		return 0, err
	}
	if err := propane.Above("pressure before the jet", dp, 0, mostManifold, "Pa"); err != nil {
		return 0, err
	}
	density, err := gas(temperature, air)
	if err != nil {
		return 0, err
	}
	d := math.Sqrt(4 / math.Pi * P / (float64(propane.GrossHeat) * K * math.Sqrt(2*float64(density)*dp)))
	if err := propane.Within("diameter of the jet", d, leastDiameter, mostDiameter, "m"); err != nil {
		return 0, err
	}
	return unit.Length(d), nil
}

// gas is the density of propane at the air's pressure.
func gas(temperature unit.Temperature, air unit.AbsolutePressure) (unit.Density, error) {
	if err := propane.Within("temperature", float64(temperature), 243.15, 333.15, "K"); err != nil {
		return 0, err
	}
	if err := propane.Within("pressure of the air", float64(air), leastAir, mostAir, "Pa"); err != nil {
		return 0, err
	}
	vapour, err := propane.VapourAt(temperature, air)
	return vapour.Density, err
}

// jet reports what is wrong with a coefficient or a pressure.
func jet(K, dp float64) error {
	if err := propane.Above("coefficient of discharge", K, 0, 1, "1"); err != nil {
		return err
	}
	return propane.Within("pressure before the jet", dp, 0, mostManifold, "Pa")
}

package pipe

import (
	"math"

	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

// The Reynolds numbers between which flow may be laminar or turbulent,
// and the least that is asked for: below it 64/Re is no figure that means anything.
const (
	LaminarTo     = 2300
	turbulentFrom = 4000
	leastReynolds = 1e-9
)

// The friction factor as texts: Re the Reynolds number, e the roughness and D the
// bore in m, f the factor (on both sides of Colebrook's, which it solves).
const (
	LaminarFormula   = "f = 64/Re"
	ColebrookFormula = "f = 1/pow(-2*log10(e/D/3.7 + 2.51/(Re*sqrt(f))), 2)"
)

// FrictionFactor returns the friction factor of Darcy and Weisbach for a Reynolds
// number and a roughness as a share of the bore. Up to Re = 2300 the flow is laminar,
//
//	f = 64/Re
//
// and over it the factor solves the equation of Colebrook and White,
//
//	1/√f = −2·log10(ε/(3.7·D) + 2.51/(Re·√f)).
//
// Between 2300 and 4000 the flow may be either; the larger of the two factors is
// taken, which is Colebrook's, up to twice the laminar one: the cautious side.
//
// Valid for 1e-9 ≤ Re ≤ 1e8 and a roughness of 0 to 5 % of the bore, else
// *[propane.RangeError]. Error size: laminar exact; Colebrook and White within
// 10 to 15 % of experiments on commercial pipe (from memory), to either side; the
// equation is solved to 1e-10 of f.
//
// Source: Hagen and Poiseuille; C. F. Colebrook, J. Inst. Civ. Eng. 11 (1939) 133
// (from memory; the tests hold the solution against the equation itself, against the
// laws of smooth and of fully rough pipe, and against a published example).
func FrictionFactor(reynolds, roughness unit.Ratio) (unit.Ratio, error) {
	Re, e := float64(reynolds), float64(roughness)
	if err := propane.Within("Reynolds number", Re, leastReynolds, 1e8, ""); err != nil {
		return 0, err
	}
	if err := propane.Within("roughness over bore", e, 0, mostRelativeRoughness, ""); err != nil {
		return 0, err
	}
	return unit.Ratio(frictionFactor(Re, e)), nil
}

const mostRelativeRoughness = 0.05

// frictionFactor is [FrictionFactor] without the checks, for Re > 0.
func frictionFactor(Re, roughness float64) float64 {
	laminar := 64 / Re
	switch {
	case Re <= LaminarTo:
		return laminar
	case Re < turbulentFrom:
		return max(laminar, colebrook(Re, roughness))
	}
	return colebrook(Re, roughness)
}

// colebrook solves for x = 1/√f the equation x + 2·log10(a + b·x) = 0 by Newton's
// method. The left side rises and is concave, so that from any start left of the
// root the steps climb to it without passing it; the start is left of it because
// x is over 2 for every roughness and Reynolds number that is let in.
func colebrook(Re, roughness float64) float64 {
	a, b := roughness/3.7, 2.51/Re
	x := 2.0
	for range 20 {
		within := a + b*x
		step := (x + 2*math.Log10(within)) / (1 + 2/math.Ln10*b/within)
		x -= step
		if math.Abs(step) <= 1e-13*x {
			break
		}
	}
	return 1 / (x * x)
}

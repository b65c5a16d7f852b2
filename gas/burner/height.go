package burner

import (
	"math"

	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

// The formulas as texts: p_air the pressure of the air there and 101 325 Pa that
// at the sea, f and s shares of what they are at the sea.
const (
	UnadjustedFormula = "f = sqrt(p_air / 101325)"
	OxygenFormula     = "s = p_air / 101325"
)

// DeratingRule is a published rule by which the input of an appliance is cut with
// height above the sea, unless its maker says otherwise.
type DeratingRule struct {
	Share   unit.Ratio  // of the input at the sea, lost for each Step
	Step    unit.Length // of height above the sea
	Above   unit.Length // the rule applies above this height, and then from the sea on
	Source  string
	Address string
}

// Derating returns the North American rule: 4 % for each 1000 ft above the sea,
// applied above 2000 ft.
//
// Source: trade magazine on NFPA 54 E.1.1(d), 2015, read.
func Derating() DeratingRule {
	return DeratingRule{
		Share: 0.04, Step: 304.8, Above: 609.6,
		Source:  "Trade magazine on NFPA 54 E.1.1(d), 2015",
		Address: "www.industry-publications.com/digitalissues/ICM_SeptemberOctober_2015/pubData/SEO/Page_19.html",
	}
}

// At returns the share of its input at the sea that the rule leaves an appliance
// at a height:
//
//	1 − Share · h/Step above the height from which it applies, 1 up to it
//
// Valid from −430 to 5000 m, else [*propane.RangeError]. It is a rule and no
// physics: it cuts more than the air thins, so that it errs to a lean flame.
//
// One furnace table, read, cuts by a step less than the rule it names.
func (r DeratingRule) At(elevation unit.Length) (unit.Ratio, error) {
	h := float64(elevation)
	if err := propane.Within("height above the sea", h, -430, 5000, "m"); err != nil {
		return 0, err
	}
	if h <= float64(r.Above) {
		return 1, nil
	}
	return unit.Ratio(max(0, 1-float64(r.Share)*h/float64(r.Step))), nil
}

// Thin is what the air at a height does to a burner that nobody adjusted, as
// shares of what it is at the sea.
type Thin struct {
	Input  unit.Ratio // the heat that the jet passes
	Oxygen unit.Ratio // the oxygen in the same volume of air
}

// Unadjusted returns what thin air does to a burner that nobody adjusted:
//
//	f = √(pₐ / 101 325 Pa)     heat through the jet
//	s = pₐ / 101 325 Pa        oxygen in a volume of air
//
// pₐ in Pa absolute, at one temperature. The jet passes less, since the gas is
// thinner under the same gauge pressure, but oxygen falls twice as fast: the flame
// turns rich, by 9 % at 1500 m and 20 % at 3000 m if the burner draws the same
// volume of air. That is why input is cut. Valid for 40 to 120 kPa, else
// [*propane.RangeError]. Error size: 1 % for the jet; how much air a burner draws
// is not computed.
//
// Source: [Flow] with the density of an ideal gas.
func Unadjusted(air unit.AbsolutePressure) (Thin, error) {
	p := float64(air)
	if err := propane.Within("pressure of the air", p, leastAir, mostAir, "Pa"); err != nil {
		return Thin{}, err
	}
	share := p / 101325
	return Thin{Input: unit.Ratio(math.Sqrt(share)), Oxygen: unit.Ratio(share)}, nil
}

// FuelGas is a gas for which burners are drilled, by published trade figures.
type FuelGas struct {
	Name            string
	RelativeDensity unit.Ratio  // to air
	Heat            unit.Energy // gross, in one cubic foot at the trade's standard conditions
	Source          string
	Address         string
}

const fuelAddress = "www.manualshelf.com/manual/pro-flex/pfct-0114-75/installation-instructions-english/page-51.html"

// NaturalGas returns the trade's natural gas: 0.60 of the density of air, 1000 BTU
// in a cubic foot. Others have 1000 to 1040; the richer, the less a burner for it
// is overfired by propane, so that 1000 errs high by up to 4 %.
func NaturalGas() FuelGas {
	return FuelGas{"natural gas", 0.60, 1000 * btu, "Tubing maker's installation instructions, reference data, p. 48", fuelAddress}
}

// PropaneGas returns the trade's propane: 1.52 of the density of air, 2516 BTU in a
// cubic foot. It stands here for one side of [WrongGas] only; everywhere else
// propane is what package propane says.
func PropaneGas() FuelGas {
	return FuelGas{"propane", 1.52, 2516 * btu, "Tubing maker's installation instructions, reference data, p. 48", fuelAddress}
}

// btu is the BTU of the International Table in J.
const btu = 1055.05585262

// WrongGasFormula is [WrongGas] as a text: E_burned and E_rated the gross heat in
// one volume of the gas that comes and of the gas that the jet is for, G_burned and
// G_rated their relative densities, dp_burned and dp_rated the pressures before the
// jet in Pa.
const WrongGasFormula = "F = E_burned/E_rated * sqrt(G_rated/G_burned) * sqrt(dp_burned/dp_rated)"

// WrongGas returns how many times its rating a burner takes when its jet, made for
// one gas at one pressure, is fed another:
//
//	F = E/E_rated · √(G_rated/G) · √(Δp/Δp_rated)
//
// E the heat in one volume, G the relative densities, Δp in Pa before the jet. A
// jet for natural gas on propane at 11 inches of water takes 1.6 times its rating
// if it was set for 11, 2.6 times if for 4: a flame that lifts, soots and makes
// carbon monoxide. The other way round it takes 0.6 times or less and may go out.
//
// Valid for pressures over 0 and up to 10 kPa, heats over 0 and up to 10 MJ and
// relative densities of 0.05 to 5, else [*propane.RangeError]. Error size: 5 %, by
// the natural gas; an appliance regulator in between would lower the pressure.
//
// Source: [Flow] for both gases; figures of [NaturalGas] and [PropaneGas].
func WrongGas(burned, rated FuelGas, burnedAt, ratedAt unit.GaugePressure) (unit.Ratio, error) {
	for _, side := range []struct {
		gas FuelGas
		at  unit.GaugePressure
	}{{burned, burnedAt}, {rated, ratedAt}} {
		if err := propane.Above("pressure before the jet", float64(side.at), 0, mostManifold, "Pa"); err != nil {
			return 0, err
		}
		if err := propane.Above("heat in one volume", float64(side.gas.Heat), 0, 1e7, "J"); err != nil {
			return 0, err
		}
		if err := propane.Within("relative density", float64(side.gas.RelativeDensity), 0.05, 5, "1"); err != nil {
			return 0, err
		}
	}
	E, G, dp := float64(burned.Heat)/float64(rated.Heat), float64(rated.RelativeDensity)/float64(burned.RelativeDensity), float64(burnedAt)/float64(ratedAt)
	return unit.Ratio(E * math.Sqrt(G) * math.Sqrt(dp)), nil
}

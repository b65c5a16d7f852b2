package gas

import (
	"slices"
	"strconv"
	"strings"

	"lowvent.example/gas/leak"
	"lowvent.example/gas/propane"
	"lowvent.example/gas/regulator"
	"lowvent.example/schema/check"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/unit"
)

const (
	releaseSource = "one-dimensional flow of gas with the density of the real vapour (IEC 60079-10-1, from memory)"
	failedSource  = "definition; a relief that works, with its vent open"
)

// failedPressure is what stands behind a regulator that no longer shuts.
var failedPressure = &check.Figure[unit.GaugePressure, *layout.Regulator]{
	ID: "regulator.failed-pressure", Title: "pressure behind the regulator if it fails open, on the hottest day",
	Calc: func(s *check.Sheet, r *layout.Regulator) unit.GaugePressure {
		inlet := check.Fig(s, "p_inlet", hotPressure, s.Layout())
		relief := check.Measure(s, "p_relief", &r.Relief)
		formula := check.Formula{Text: regulator.FailedFormula, Source: failedSource, Valid: "errs low: a relief holds the pressure somewhat above its setting"}
		return check.Try(s, r, "p_failed", formula, func() (unit.GaugePressure, error) { return regulator.Failed(inlet, relief) })
	},
}

// unlit is what comes out of an appliance whose burners are open and not lit.
var unlit = &check.Figure[unit.MassFlow, *layout.Appliance]{
	ID: "appliance.unlit", Title: "gas from the open burners, not lit",
	Calc: func(s *check.Sheet, a *layout.Appliance) unit.MassFlow {
		input := check.Fig(s, "P", applianceInput, a)
		grossHeat(s)
		formula := check.Formula{Text: propane.FuelFormula, Source: heatSource}
		return check.Try(s, a, "m_fuel", formula, func() (unit.MassFlow, error) { return leak.Unlit(input) })
	},
}

// dropOut is what comes out of an appliance until its flame guards have shut.
var dropOut = &check.Figure[unit.PropaneMass, *layout.Appliance]{
	ID: "appliance.drop-out", Title: "gas that comes out until the flame guards have shut",
	Calc: func(s *check.Sheet, a *layout.Appliance) unit.PropaneMass {
		input, time := check.Fig(s, "P", applianceInput, a), check.Measure(s, "t", &a.DropOut)
		grossHeat(s)
		formula := check.Formula{Text: leak.DropOutFormula, Source: heatSource, Valid: "all burners blown out together"}
		return check.Try(s, a, "m", formula, func() (unit.PropaneMass, error) { return leak.DropOut(input, time) })
	},
}

// Leak is what comes out of one published size of leak: at cylinder pressure on the hottest
// day, as liquid, behind a regulator, and behind one that has failed, in kg/s. Name and
// Area are the source's, in m².
type Leak struct {
	Name             string
	Area             unit.Area
	HighSide, Liquid *check.Figure[unit.MassFlow, *layout.Layout]
	LowSide, Failed  *check.Figure[unit.MassFlow, *layout.Regulator]
}

var leaks = leaksBySize()

// Leaks returns the published sizes of leak with their figures, smallest first, for checks
// and figures outside of this package.
//
// Source: package leak.
func Leaks() []Leak { return slices.Clone(leaks) }

func leaksBySize() []Leak {
	var all []Leak
	for _, o := range leak.Openings() {
		if n := len(all); n > 0 && all[n-1].Area == o.Area {
			continue
		}
		all = append(all, Leak{Name: o.Name, Area: o.Area,
			HighSide: leakOf(o, "high-side", "at cylinder pressure, hottest day", highSide),
			Liquid:   leakOf(o, "liquid", "of liquid, a fallen or overfilled cylinder, hottest day", liquidSide),
			LowSide:  leakOf(o, "low-side", "behind the regulator", lowSide),
			Failed:   leakOf(o, "failed-regulator", "behind a regulator that fails open", failedSide),
		})
	}
	return all
}

func showLeaks(all []Leak) []check.Shown {
	var shown []check.Shown
	for _, each := range all {
		shown = append(shown, check.Detail(check.ShowDwelling(each.HighSide)), check.Detail(check.ShowDwelling(each.Liquid)),
			check.Detail(check.Show(each.LowSide, regulators)), check.Detail(check.Show(each.Failed, regulators)))
	}
	return shown
}

// leakOf is the figure of one opening in one place.
func leakOf[S layout.Item](o leak.Opening, where, words string, flow func(*check.Sheet, S, unit.Area) unit.MassFlow) *check.Figure[unit.MassFlow, S] {
	size := strconv.FormatFloat(float64(o.Area)*1e6, 'g', 6, 64)
	return &check.Figure[unit.MassFlow, S]{
		ID:    "leak." + strings.ReplaceAll(size, ".", "-") + "-mm2-" + where,
		Title: "leak through " + size + " mm2 (" + o.Name + ") " + words,
		Calc: func(s *check.Sheet, subject S) unit.MassFlow {
			check.Constant(s, "A", o.Name, o.Source, o.Area)
			check.Constant(s, "C_d", "discharge coefficient", "common practice, no source", leak.Coefficient)
			return flow(s, subject, o.Area)
		},
	}
}

func highSide(s *check.Sheet, l *layout.Layout, opening unit.Area) unit.MassFlow {
	T := hotLiquid(s)
	return release(s, l, opening, func(unit.AbsolutePressure) (leak.Gas, error) { return leak.CylinderGas(T) })
}

func lowSide(s *check.Sheet, r *layout.Regulator, opening unit.Area) unit.MassFlow {
	outlet := check.Measure(s, "p_outlet", &r.Outlet)
	return lineLeak(s, r, opening, outlet)
}

func failedSide(s *check.Sheet, r *layout.Regulator, opening unit.Area) unit.MassFlow {
	return lineLeak(s, r, opening, check.Fig(s, "p_failed", failedPressure, r))
}

// lineLeak is a leak of gas that stands at a pressure over the air on a mild day: colder
// gas is denser, and more of it comes out.
func lineLeak(s *check.Sheet, r *layout.Regulator, opening unit.Area, over unit.GaugePressure) unit.MassFlow {
	check.Constant(s, "T", "temperature of the gas", "own rule: a mild day", mild)
	return release(s, r, opening, func(around unit.AbsolutePressure) (leak.Gas, error) { return leak.LineGas(mild, over, around) })
}

// release writes down the gas inside and works out what comes of it.
func release(s *check.Sheet, about layout.Item, opening unit.Area, inside func(unit.AbsolutePressure) (leak.Gas, error)) unit.MassFlow {
	around := airOutside(s)
	var gas leak.Gas
	state := check.Formula{Source: frictionSource, Valid: "pure propane"}
	check.Try(s, about, "p_0", state, func() (_ unit.AbsolutePressure, err error) {
		gas, err = inside(around)
		return gas.Pressure, err
	})
	check.Step(s, "rho_0", state, func() unit.Density { return gas.Density })
	check.Step(s, "gamma", state, func() unit.Ratio { return gas.Ratio })
	throat := check.Formula{Text: leak.ThroatFormula, Source: releaseSource}
	check.Step(s, "r", throat, func() unit.Ratio { return leak.Throat(gas, around) })
	formula := check.Formula{Text: leak.ReleaseFormula, Source: releaseSource, Valid: "a hole of that area; the area is known to a factor of ten"}
	return check.Try(s, about, "m_flow", formula, func() (unit.MassFlow, error) { return leak.Release(opening, leak.Coefficient, gas, around) })
}

func liquidSide(s *check.Sheet, l *layout.Layout, opening unit.Area) unit.MassFlow {
	T := hotLiquid(s)
	around := airOutside(s)
	density := check.Formula{Text: propane.LiquidDensityFormula, Source: saturationSource}
	check.Try(s, l, "rho_liquid", density, func() (unit.Density, error) { return propane.LiquidDensity(T) })
	pressure := check.Formula{Text: propane.SaturationPressureFormula, Source: saturationSource}
	check.Try(s, l, "p", pressure, func() (unit.AbsolutePressure, error) { return propane.SaturationPressure(T) })
	formula := check.Formula{Text: leak.LiquidFormula, Source: "Bernoulli: the most that can come out", Valid: "liquid that does not boil in the hole; errs high"}
	return check.Try(s, l, "m_flow", formula, func() (unit.MassFlow, error) {
		spill, err := leak.Liquid(opening, leak.Coefficient, T, around)
		return spill.Flow, err
	})
}

var (
	_ = show(check.Detail(check.Show(failedPressure, regulators)))
	_ = show(check.Detail(check.Show(unlit, appliances)))
	_ = show(check.Detail(check.Show(dropOut, appliances)))
	_ = showAll(showLeaks(leaks))
)

package gas

import (
	"lowvent.example/gas/air"
	"lowvent.example/gas/propane"
	"lowvent.example/schema/check"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/unit"
)

const (
	saturationSource = "ancillary equations to Lemmon, McLinden and Wagner (2009) and to Bücker and Wagner (2006)"
	mixtureSource    = "Raoult's law less an allowance of our own for what it overstates"
	restSource       = "Lord Rayleigh (1902), simple distillation (from memory)"
)

// quarter is the share of its filling at which a cylinder is judged in the cold: the last
// quarter has the least wetted wall, and the most butane.
const quarter unit.Ratio = 0.25

// seaLevel writes down the pressure of the air by the sea. Higher up a regulator needs
// less absolute pressure for the same gauge pressure, so that it errs to the strict side.
func seaLevel(s *check.Sheet) unit.AbsolutePressure {
	return check.Constant(s, "p_air", "pressure of the air by the sea", airSource, air.StandardPressure)
}

// shareLeft is the share of propane in what is left of a filling when a quarter of it is
// left, drawn off at the temperature that stands as T.
func shareLeft(s *check.Sheet, T unit.Temperature) unit.Ratio {
	l := s.Layout()
	filled := check.Measure(s, "x_0", &l.Gas.Propane)
	butane := check.Formula{Text: propane.ButanePressureFormula, Source: saturationSource, Valid: "n-butane, from -45 to +70 degC"}
	pure := check.Formula{Text: propane.SaturationPressureFormula, Source: saturationSource, Valid: "pure propane, from -45 to +70 degC"}
	p := check.Try(s, l, "p", pure, func() (unit.AbsolutePressure, error) { return propane.SaturationPressure(T) })
	b := check.Try(s, l, "p_butane", butane, func() (unit.AbsolutePressure, error) { return propane.ButanePressure(T) })
	check.Step(s, "alpha", check.Formula{Text: "alpha = p / p_butane", Source: "Raoult's law"}, func() unit.Ratio { return unit.Ratio(float64(p) / float64(b)) })
	rest := check.Formula{Source: restSource, Valid: "a filling that is drawn off without being topped up; solved for x"}
	x := check.Try(s, l, "x", rest, func() (unit.Ratio, error) { return propane.ShareLeft(T, filled, quarter) })
	if mixed := float64(x); mixed > 0 && mixed < 1 {
		check.Step(s, "F", check.Formula{Text: propane.RestFormula, Source: restSource, Valid: "the share of the filling that is left, as a proof"}, func() unit.Ratio { return quarter })
	}
	return x
}

// coldPressure is the pressure of a cylinder a quarter full in the coldest air.
var coldPressure = &check.Figure[unit.GaugePressure, *layout.Layout]{
	ID: "dwelling.cold-pressure", Title: "pressure of a cylinder a quarter full in the coldest air",
	Calc: func(s *check.Sheet, l *layout.Layout) unit.GaugePressure {
		T := check.Measure(s, "T", &l.Climate.Coldest)
		x := shareLeft(s, T)
		mix := check.Formula{Text: propane.MixturePressureFormula, Source: mixtureSource, Valid: "errs low, by up to 5 %"}
		p := check.Try(s, l, "p_mix", mix, func() (unit.AbsolutePressure, error) { return propane.MixturePressure(T, x) })
		around := seaLevel(s)
		return check.Step(s, "p_cold", check.Formula{Text: "p_cold = p_mix - p_air", Source: "definition"}, func() unit.GaugePressure {
			return unit.GaugePressure(p - around)
		})
	},
}

// leastLiquid is how cold the liquid of a cylinder a quarter full may get before its
// pressure no longer feeds the regulator.
var leastLiquid = &check.Figure[unit.Temperature, *layout.Regulator]{
	ID: "regulator.least-liquid-temperature", Title: "how cold the liquid may get before the regulator starves",
	Calc: func(s *check.Sheet, r *layout.Regulator) unit.Temperature {
		T := check.Measure(s, "T", &s.Layout().Climate.Coldest)
		x := shareLeft(s, T)
		least, around := check.Measure(s, "p_least", &r.LeastInlet), seaLevel(s)
		needed := check.Step(s, "p_mix", check.Formula{Text: "p_mix = p_least + p_air", Source: "definition"}, func() unit.AbsolutePressure {
			return unit.AbsolutePressure(least) + around
		})
		solved := check.Formula{Source: mixtureSource, Valid: "the temperature at which the mixture has the pressure p_mix; errs high"}
		return check.Try(s, r, "T_least", solved, func() (unit.Temperature, error) { return propane.MixtureTemperature(needed, x) })
	},
}

// fromCylinders asks only of a regulator that cylinders feed with nothing that brings the
// pressure down between.
func fromCylinders(s *check.Sheet, r *layout.Regulator, ask func() check.Ruling) check.Ruling {
	check.List(s, &s.Layout().Lines)
	fed, further := false, false
	climb(s.Layout(), r.Ref(), func(line *layout.Line, from layout.Ref) bool {
		check.Read(s, &line.From)
		fed = fed || from.Section() == "cylinders"
		further = further || from.Section() == "regulators"
		return !further
	})
	if further {
		return check.NotApplicable(s, "another regulator stands before it")
	}
	if !fed {
		s.Missing("the lines that bring gas from a cylinder to "+r.Label(), s.Layout().Lines.Spot())
	}
	return ask()
}

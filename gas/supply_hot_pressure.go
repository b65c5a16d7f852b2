package gas

import (
	"lowvent.example/gas/propane"
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

var _ = add(check.For(check.Descriptor{
	ID:         "supply.hot-pressure",
	Asks:       "Do the regulator and the hoses before it bear the cylinder's pressure on the hottest day, in the place where it stands?",
	Why:        "A regulator or a hose beyond its rating can burst or let cylinder pressure through to the burners, and all of it comes out as a cloud.",
	NotCovered: "Which relief valve opens when, the hose's age, and heat from an engine, an exhaust or a fire.",
	Word:       report.Warning,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.PracticeHotRating.Term},
	Reads: []string{"/climate/hottest", "/climate/solarExcess", "/climate/highestPlace", "/regulators/*/inletRating",
		"/lines", "/lines/*/from", "/lines/*/kind", "/lines/*/ratedPressure"},
	Sources: []string{saturationSource, ceilingSource, airSource},
}, regulators, func(s *check.Sheet, r *layout.Regulator) check.Ruling {
	return fromCylinders(s, r, func() check.Ruling {
		duty := check.Asked(s, code.PracticeHotRating, nil)
		rating := check.Measure(s, "p_rated", &r.InletRating)
		hot := check.Fig(s, "p_hot", hotPressure, s.Layout())
		return check.AtMost(s, hot, check.Against(duty, rating)).Mend(coolOrStronger, check.Raise(&r.InletRating, hot))
	})
}, func(s *check.Sheet, r *layout.Regulator) check.Ruling {
	return fromCylinders(s, r, func() check.Ruling {
		none := func() check.Ruling { return check.NotApplicable(s, "no hose is before the regulator") }
		return check.Every(s, hosesBefore(s, r), none, func(s *check.Sheet, hose *layout.Line) check.Ruling {
			duty := check.Asked(s, code.PracticeHotRating, nil)
			rating := check.Measure(s, "p_rated", &hose.RatedPressure)
			hot := check.Fig(s, "p_hot", hotPressure, s.Layout())
			return check.AtMost(s, hot, check.Against(duty, rating)).Mend(coolOrStronger, check.Raise(&hose.RatedPressure, hot))
		})
	})
}))

const (
	coolOrStronger = "A place for the cylinder that stays cooler, out of the sun and away from the engine, or a part with a higher rating."
	ceilingSource  = "specification of commercial propane, 208 psig at 100 degF (GPA 2140, ASTM D1835, as reported; not read)"
)

// hotPressure is the highest pressure of what is sold as propane, in the hottest air and
// in the sun.
var hotPressure = &check.Figure[unit.GaugePressure, *layout.Layout]{
	ID: "dwelling.hot-pressure", Title: "highest pressure of a cylinder on the hottest day, in the sun",
	Calc: func(s *check.Sheet, l *layout.Layout) unit.GaugePressure {
		T := hotLiquid(s)
		around := airOutside(s)
		pure := check.Formula{Text: propane.SaturationPressureFormula, Source: saturationSource, Valid: "pure propane, from -45 to +70 degC"}
		check.Try(s, l, "p", pure, func() (unit.AbsolutePressure, error) { return propane.SaturationPressure(T) })
		ceiling := check.Formula{Text: propane.CeilingPressureFormula, Source: ceilingSource, Valid: "errs high when hot, by up to 9 %"}
		p := check.Try(s, l, "p_ceiling", ceiling, func() (unit.AbsolutePressure, error) { return propane.CeilingPressure(T) })
		return check.Step(s, "p_hot", check.Formula{Text: "p_hot = p_ceiling - p_air", Source: "definition"}, func() unit.GaugePressure {
			return unit.GaugePressure(p - around)
		})
	},
}

// hotLiquid is the temperature of a cylinder on the hottest day, by what the place where
// it stands adds to the air in the shade. It stands as T.
func hotLiquid(s *check.Sheet) unit.Temperature {
	climate := &s.Layout().Climate
	shade, sun := check.Measure(s, "T_shade", &climate.Hottest), check.Measure(s, "dT_sun", &climate.SolarExcess)
	return check.Step(s, "T", check.Formula{Text: "T = T_shade + dT_sun", Source: "definition"}, func() unit.Temperature {
		return shade + unit.Temperature(sun)
	})
}

// hosesBefore lists the hoses between the cylinders and a regulator.
func hosesBefore(s *check.Sheet, r *layout.Regulator) []*layout.Line {
	var found []*layout.Line
	climb(s.Layout(), r.Ref(), func(line *layout.Line, _ layout.Ref) bool {
		check.Read(s, &line.From)
		if check.Read(s, &line.Kind) == layout.LineKindHose {
			found = append(found, line)
		}
		return true
	})
	return found
}

var (
	_ = show(check.ShowDwelling(coldPressure))
	_ = show(check.ShowDwelling(hotPressure))
)

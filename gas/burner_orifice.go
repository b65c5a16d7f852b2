package gas

import (
	"lowvent.example/gas/burner"
	"lowvent.example/gas/propane"
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

var _ = add(check.For(check.Descriptor{
	ID:   "burner.orifice",
	Asks: "Does each jet pass about the heat that its burner is rated for, as propane, at its pressure and at the highest place?",
	Why:  "A jet for another gas or pressure burns up to twice the rating or more: flames that lift, soot, scorch what is near and poison the air.",
	NotCovered: "How the burner draws its air, dirt, and a jet that was drilled up; what is right for this burner, which its maker's table tells. " +
		"Nobody but a licensed fitter changes a jet.",
	Word:   report.Caution,
	MayAct: report.LicensedFitter,
	Limits: []*code.Term{code.PracticeJetMost.Term, code.PracticeJetLeast.Term},
	Reads: []string{"/appliances/*/burners", "/appliances/*/burners/*/orifice", "/appliances/*/burners/*/input", "/appliances/*/plate/basis",
		"/appliances/*/plate/inlet", "/appliances/*/plate/manifold", "/climate/highestPlace"},
	Instead: []string{"/appliances/*/plate/manifold"},
	Sources: []string{jetSource, deratingSource, frictionSource, airSource, heatSource},
}, appliances, func(s *check.Sheet, a *layout.Appliance) check.Ruling {
	none := func() check.Ruling { return check.NotApplicable(s, "the file states that it has no burner") }
	return check.Every(s, check.List(s, &a.Burners), none, func(s *check.Sheet, b *layout.Burner) check.Ruling {
		return check.All(s,
			func(s *check.Sheet) check.Ruling {
				most := check.Limit(s, "s_max", code.PracticeJetMost, nil)
				return check.AtMost(s, jetShare(s, a, b), most).About("%s", b.Label()).Mend(haveJetLookedAt)
			},
			func(s *check.Sheet) check.Ruling {
				least := check.Limit(s, "s_min", code.PracticeJetLeast, nil)
				return check.AtLeast(s, jetShare(s, a, b), least).About("%s", b.Label()).Mend(haveJetLookedAt)
			})
	})
}))

const (
	haveJetLookedAt = "Have the fitter hold the jet against the maker's table for propane at this pressure and height. Never drill or change one yourself."
	jetSource       = "Bernoulli, with the coefficient of a published table of jets (BCcampus, Plumbing Level 3, Appendix 2)"
	deratingSource  = "NFPA 54 E.1.1(d), 4 % for each 1000 ft, from 2000 ft up, as a trade magazine of 2015 has it"
	inTheTable      = unit.Ratio(0.9) // coefficient of discharge of the published table of jets
	mild            = unit.Temperature(288.15)
)

// jetShare is what a jet passes, by the published table, as a share of what its burner is
// rated for at the highest place.
func jetShare(s *check.Sheet, a *layout.Appliance, b *layout.Burner) unit.Ratio {
	before := &a.Plate.Inlet
	if a.Plate.Manifold.Known() {
		before = &a.Plate.Manifold
	}
	diameter, pressure := check.Measure(s, "d", &b.Orifice), check.Measure(s, "dp", before)
	around := OutsidePressure(s)
	check.Constant(s, "K", "coefficient of discharge", jetSource, inTheTable)
	check.Constant(s, "T", "temperature of the gas", "own rule: a mild day", mild)
	state := check.Formula{Source: frictionSource, Valid: "pure propane at the pressure of the air outside"}
	rho := check.Try(s, b, "rho", state, func() (unit.Density, error) {
		gas, err := propane.VapourAt(mild, around)
		return gas.Density, err
	})
	check.Try(s, b, "A", check.Formula{Text: burner.AreaFormula, Source: "geometry"}, func() (unit.Area, error) { return burner.Area(diameter) })
	grossHeat(s)
	input := check.Formula{Text: burner.InputFormula, Source: jetSource, Valid: "up to 10 kPa; jets of makers pass less than drilled ones"}
	passed := check.Try(s, b, "P", input, func() (unit.GrossPower, error) {
		flow, err := burner.Flow(diameter, inTheTable, pressure, rho)
		return unit.GrossPower(float64(flow) * float64(propane.GrossHeat)), err
	})
	rated := gross(s, "P_rated", &b.Input, &a.Plate.Basis)
	height := check.Measure(s, "h", &s.Layout().Climate.HighestPlace)
	rule := burner.Derating()
	text := "f = 1"
	if height > rule.Above {
		text = "f = 1 - 0.04 * h/304.8"
	}
	f := check.Try(s, b, "f", check.Formula{Text: text, Source: deratingSource}, func() (unit.Ratio, error) { return rule.At(height) })
	return check.Step(s, "s_jet", check.Formula{Text: "s_jet = P / (P_rated * f)", Source: "definition"}, func() unit.Ratio {
		return unit.Ratio(float64(passed) / (float64(rated) * float64(f)))
	})
}

// wrongGas is what share of its rating an appliance whose jets are for natural gas would
// burn on propane at its own inlet pressure.
var wrongGas = &check.Figure[unit.Ratio, *layout.Appliance]{
	ID: "appliance.wrong-gas", Title: "share of its rating that it would burn with jets for natural gas",
	Calc: func(s *check.Sheet, a *layout.Appliance) unit.Ratio {
		inlet := check.Measure(s, "dp_burned", &a.Plate.Inlet)
		check.Constant(s, "dp_rated", "pressure that jets for natural gas are made for", "7 inH2O, plates in North America; common practice, no source", naturalPressure)
		burned, rated := burner.PropaneGas(), burner.NaturalGas()
		check.Constant(s, "E_burned", "heat of a cubic foot of propane", burned.Source, burned.Heat)
		check.Constant(s, "E_rated", "heat of a cubic foot of natural gas", rated.Source, rated.Heat)
		check.Constant(s, "G_burned", "density of propane over that of air", burned.Source, burned.RelativeDensity)
		check.Constant(s, "G_rated", "density of natural gas over that of air", rated.Source, rated.RelativeDensity)
		formula := check.Formula{Text: burner.WrongGasFormula, Source: jetSource, Valid: "the same jet; what the burner's ports make of it is another matter"}
		return check.Try(s, a, "F", formula, func() (unit.Ratio, error) { return burner.WrongGas(burned, rated, inlet, naturalPressure) })
	},
}

const naturalPressure = unit.GaugePressure(7 * 249.08891)

var _ = show(check.Detail(check.Show(wrongGas, appliances)))

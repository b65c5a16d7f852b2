package gas

import (
	"lowvent.example/gas/air"
	"lowvent.example/gas/pipe"
	"lowvent.example/gas/propane"
	"lowvent.example/schema/check"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/unit"
)

const (
	codeEquationSource = "International Fuel Gas Code 2018, 402.4 and Appendix A.4 (the exponents and 19.17 from memory, proved on its tables)"
	frictionSource     = "Darcy and Weisbach, Colebrook and White (from memory); equation of state of Lemmon, McLinden and Wagner (2009)"
	ofTheMaker         = "the maker's table for the line"
)

// lineDropByCode is the pressure lost in a line by the equation of the fuel gas codes.
var lineDropByCode = &check.Figure[unit.GaugePressure, *layout.Line]{
	ID: "line.drop-by-code", Title: "pressure lost in the line, by the codes' equation",
	Calc: func(s *check.Sheet, line *layout.Line) unit.GaugePressure {
		load := check.Fig(s, "P", lineLoad, line)
		return dropOf(s, line, load, func(bore, length unit.Length) unit.GaugePressure {
			return codeDrop(s, line, load, bore, length)
		})
	},
}

// codeDrop is what a load loses in a bore over a length, which stand as P, D and L.
func codeDrop(s *check.Sheet, line *layout.Line, load unit.GrossPower, bore, length unit.Length) unit.GaugePressure {
	gas := codeGas(s)
	flow := check.Formula{Text: pipe.CodeFlowFormula, Source: "definition"}
	check.Step(s, "V", flow, func() unit.VolumeFlow { return unit.VolumeFlow(float64(load) * float64(gas.Flow) / float64(gas.Power)) })
	formula := check.Formula{Text: pipe.CodeDropFormula, Source: codeEquationSource, Valid: "smooth pipe below 1.5 psi; within 1 % of the tables of 2018"}
	return check.Try(s, line, "dp", formula, func() (unit.GaugePressure, error) { return pipe.CodeDrop(gas, load, bore, length) })
}

// codeGas writes down propane as the tables of the codes have it.
func codeGas(s *check.Sheet) pipe.CodeGas {
	gas := pipe.CodePropane()
	const implied = "the heating value that the tables of 2018 imply, 2470 BTU/ft3"
	check.Constant(s, "P_0", "heat of a flow of 1 ft3/h", implied, gas.Power)
	check.Constant(s, "V_0", "a flow of 1 ft3/h", "definition", gas.Flow)
	check.Constant(s, "Cr", "factor for propane", codeEquationSource, gas.Cr)
	return gas
}

// lineDropByFriction is the pressure lost in a line by friction and by its rise.
var lineDropByFriction = &check.Figure[unit.GaugePressure, *layout.Line]{
	ID: "line.drop-by-friction", Title: "pressure lost in the line, by friction and rise",
	Calc: func(s *check.Sheet, line *layout.Line) unit.GaugePressure {
		load := check.Fig(s, "P", lineLoad, line)
		return dropOf(s, line, load, func(bore, length unit.Length) unit.GaugePressure {
			return friction(s, line, load, bore, length)
		})
	},
}

// warm is the temperature of the gas that friction is reckoned at: colder gas is
// denser, and the same mass of it loses less.
const warm unit.Temperature = 313.15

// friction is Darcy's drop and the head of a line, with gas at the pressure of the air
// outside: a little thinner than it is, so that the figure errs high.
func friction(s *check.Sheet, line *layout.Line, load unit.GrossPower, bore, length unit.Length) unit.GaugePressure {
	outside := OutsidePressure(s)
	check.Step(s, "p_1", check.Formula{Text: "p_1 = p", Source: "definition", Valid: "gas a little thinner than it is in the line: errs high"},
		func() unit.AbsolutePressure { return outside })
	gas, around := warmGas(s, outside)
	rough, _ := pipe.RoughnessOf(materialOf(check.Read(s, &line.Kind)))
	check.Constant(s, "e", "roughness of the wall", rough.Source, rough.Height)
	grossHeat(s)
	flow := check.Step(s, "m", check.Formula{Text: "m = P / H", Source: heatSource}, func() unit.MassFlow { return propane.Burn(load).Fuel })
	var loss pipe.Loss
	reynolds := check.Formula{Text: pipe.ReynoldsFormula, Source: frictionSource}
	check.Try(s, line, "Re", reynolds, func() (_ unit.Ratio, err error) {
		loss, err = pipe.Darcy(gas, outside, flow, bore, rough.Height, length)
		return loss.Reynolds, err
	})
	factor := check.Formula{Source: frictionSource, Valid: "solved for f; new and clean pipe, within 15 % of experiments"}
	check.Step(s, "f", factor, func() unit.Ratio { return loss.Factor })
	proof := check.Formula{Text: frictionText(loss.Reynolds), Source: frictionSource, Valid: "as a proof: what was found stands on both sides"}
	check.Step(s, "f", proof, func() unit.Ratio { return loss.Factor })
	check.Step(s, "p_2", check.Formula{Text: pipe.DarcyOutletFormula, Source: frictionSource}, func() unit.AbsolutePressure { return loss.Outlet })
	rise := riseOf(s, line)
	head := check.Try(s, line, "dp_h", check.Formula{Text: pipe.HeadFormula, Source: "hydrostatics"}, func() (unit.GaugePressure, error) {
		return pipe.Head(gas.Density, around, rise)
	})
	return check.Step(s, "dp", check.Formula{Text: "dp = p_1 - p_2 + dp_h", Source: "definition"}, func() unit.GaugePressure {
		return unit.GaugePressure(float64(outside)-float64(loss.Outlet)) + head
	})
}

// warmGas is propane vapour and the air around on a warm day at a pressure.
func warmGas(s *check.Sheet, p unit.AbsolutePressure) (gas propane.Vapour, around unit.Density) {
	check.Constant(s, "T", "temperature of gas and air, a warm day", "own rule: the warmer, the more is lost", warm)
	state := check.Formula{Text: "", Source: frictionSource, Valid: "pure propane"}
	check.Try(s, s.Layout(), "rho", state, func() (_ unit.Density, err error) {
		gas, err = propane.VapourAt(warm, p)
		return gas.Density, err
	})
	check.Step(s, "mu", state, func() unit.Viscosity { return gas.Viscosity })
	around = check.Try(s, s.Layout(), "rho_air", check.Formula{Text: "rho_air = p_1 * 0.0289644 / (8.31432*T)", Source: airSource}, func() (unit.Density, error) {
		return air.Density(p, warm)
	})
	return gas, around
}

// frictionText is the law of the factor: without flow there is none to take.
func frictionText(reynolds unit.Ratio) string {
	switch Re := float64(reynolds); {
	case Re == 0:
		return ""
	case Re <= pipe.LaminarTo:
		return pipe.LaminarFormula
	}
	return pipe.ColebrookFormula
}

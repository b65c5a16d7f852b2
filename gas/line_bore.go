package gas

import (
	"lowvent.example/gas/air"
	"lowvent.example/gas/pipe"
	"lowvent.example/schema/check"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/unit"
)

// dropOf is the pressure lost in a line: nothing where one part screws into the next,
// what the maker's table says for hose and corrugated tube, and for pipe what straight
// makes of its bore and its length with the fittings.
func dropOf(s *check.Sheet, line *layout.Line, load unit.GrossPower, straight func(bore, length unit.Length) unit.GaugePressure) unit.GaugePressure {
	switch kind := check.Read(s, &line.Kind); kind {
	case layout.LineKindDirect:
		return check.Constant(s, "dp", "one part screws into the next", "definition", unit.GaugePressure(0))
	case layout.LineKindHose, layout.LineKindCorrugatedStainless:
		return dropByTable(s, line, load)
	}
	bore := boreOf(s, line)
	length := withFittings(s, line, bore)
	if s.Stuck() {
		return 0
	}
	return straight(bore, length)
}

// dropByTable takes a row of the maker's table. A flow below that of the row loses less
// than its share: losses rise faster than the flow.
func dropByTable(s *check.Sheet, line *layout.Line, load unit.GrossPower) unit.GaugePressure {
	row, lost := check.Measure(s, "P_row", &line.Carries), check.Measure(s, "dp_row", &line.LosesThen)
	if !s.Stuck() && load > unit.GrossPower(row) {
		s.Missing("a row of the maker's table for "+unit.Text(load)+" or more", line.Carries.Spot())
	}
	formula := check.Formula{Text: "dp = dp_row * P / P_row", Source: ofTheMaker, Valid: "up to the heat of the row; errs high below it"}
	return check.Step(s, "dp", formula, func() unit.GaugePressure { return unit.GaugePressure(float64(lost) * float64(load) / float64(row)) })
}

// boreOf is the inside of a pipe or tube. Its outside alone does not tell it, nor does
// the size that it is sold by.
func boreOf(s *check.Sheet, line *layout.Line) unit.Length {
	outside, wall := check.Measure(s, "D_o", &line.Outside), check.Measure(s, "t", &line.Wall)
	return check.Try(s, line, "D", check.Formula{Text: pipe.BoreFormula, Source: "geometry"}, func() (unit.Length, error) { return pipe.BoreOf(outside, wall) })
}

// withFittings is the length of straight pipe that loses as much as the line with its
// fittings.
func withFittings(s *check.Sheet, line *layout.Line, bore unit.Length) unit.Length {
	length, f := check.Measure(s, "L", &line.Length), &line.Fittings
	count := func(symbol string, g *layout.Given[int]) int { return int(check.Count(s, symbol, g)) }
	fittings := pipe.Fittings{
		Elbow90: count("n_90", &f.Elbow90), Elbow45: count("n_45", &f.Elbow45), TeeThrough: count("n_through", &f.TeeRun), TeeBranch: count("n_branch", &f.TeeSide),
		Valve: count("n_valve", &f.Valve), Coupling: count("n_coupling", &f.Coupling), SweptBend: count("n_bend", &f.Bend),
	}
	formula := check.Formula{Text: pipe.EquivalentLengthFormula, Source: "International Fuel Gas Code 2018, A.2.2 and tables of equivalent lengths",
		Valid: "valves that turn a quarter and open fully; handbooks differ by a third"}
	even := check.Try(s, line, "L_eq", formula, func() (unit.Length, error) { return pipe.EquivalentLength(length, bore, fittings) })
	return check.Step(s, "L", check.Formula{Text: "L = L_eq", Source: "definition"}, func() unit.Length { return even })
}

// riseOf is by how much a line climbs from its start to its end. One whose route is not
// stated may climb all its length.
func riseOf(s *check.Sheet, line *layout.Line) unit.Length {
	if !line.Route.Known() {
		return check.Measure(s, "h", &line.Length)
	}
	route := check.Read(s, &line.Route)
	if s.Stuck() || len(route) == 0 {
		return 0
	}
	first, last := route[0][2], route[len(route)-1][2]
	return check.Band(s, "h", "rise of "+line.Label(), unit.Value[unit.Length]{
		Nominal: last.Nominal - first.Nominal, Low: last.Low - first.High, High: last.High - first.Low})
}

// OutsidePressure is the pressure of the outside air at the highest place where gas is
// burned.
func OutsidePressure(s *check.Sheet) unit.AbsolutePressure {
	l := s.Layout()
	height := check.Measure(s, "h", &l.Climate.HighestPlace)
	formula := check.Formula{Text: air.PressureFormula, Source: airSource, Valid: "fair weather: it moves the pressure by 3 to 5 %"}
	return check.Try(s, l, "p", formula, func() (unit.AbsolutePressure, error) { return air.Pressure(height) })
}

// airOutside is that pressure under the symbol p_air.
func airOutside(s *check.Sheet) unit.AbsolutePressure {
	around := OutsidePressure(s)
	return check.Step(s, "p_air", check.Formula{Text: "p_air = p", Source: "definition"}, func() unit.AbsolutePressure { return around })
}

const airSource = "U.S. Standard Atmosphere 1976"

// materialOf is what the walls of a line are like.
func materialOf(kind layout.LineKind) pipe.Material {
	switch kind {
	case layout.LineKindCopper:
		return pipe.CopperL
	case layout.LineKindSteelPipe:
		return pipe.SteelPipe
	case layout.LineKindStainlessTube:
		return pipe.StainlessTube
	case layout.LineKindPolyethylene:
		return pipe.Polyethylene
	case layout.LineKindAluminium:
		return pipe.AluminiumTube
	}
	return pipe.SteelTube
}

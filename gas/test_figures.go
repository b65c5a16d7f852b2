package gas

import (
	"lowvent.example/gas/leak"
	"lowvent.example/schema/check"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/unit"
)

const (
	tightnessSource = "ideal gas in a closed line; the fitter's own gauge and time decide"
	readable        = unit.GaugePressure(50) // 0.5 mbar, 0.2 inH2O
	sheetTime       = unit.Duration(600)
)

// lineVolume is the room inside a line.
var lineVolume = &check.Figure[unit.Volume, *layout.Line]{
	ID: "line.volume", Title: "volume inside the line",
	Calc: func(s *check.Sheet, line *layout.Line) unit.Volume {
		if check.Read(s, &line.Kind) == layout.LineKindDirect {
			return check.Constant(s, "V_line", "one part screws into the next", "definition", unit.Volume(0))
		}
		bore := boreOf(s, line)
		check.Step(s, "d", check.Formula{Text: "d = D", Source: "definition"}, func() unit.Length { return bore })
		length := check.Measure(s, "L", &line.Length)
		formula := check.Formula{Text: leak.LineVolumeFormula, Source: "definition"}
		return check.Try(s, line, "V_line", formula, func() (unit.Volume, error) { return leak.LineVolume(bore, length) })
	},
}

// testVolume is the room in all lines behind a regulator, with an allowance for fittings.
var testVolume = &check.Figure[unit.Volume, *layout.Regulator]{
	ID: "regulator.test-volume", Title: "volume under test, behind the regulator",
	Calc: func(s *check.Sheet, r *layout.Regulator) unit.Volume {
		check.List(s, &s.Layout().Lines)
		check.Inventory(s, layout.InventoryListLines)
		text, volumes := "V_line = 0", []float64(nil)
		walk(s.Layout(), r.Ref(), func(line *layout.Line, to layout.Ref) bool {
			check.Read(s, &line.To)
			symbol := check.Symbol("V", line.ID())
			text += " + " + symbol
			volumes = append(volumes, float64(check.Fig(s, symbol, lineVolume, line)))
			return to.Section() != "regulators"
		})
		lines := check.Step(s, "V_line", check.Formula{Text: text, Source: "definition"}, func() unit.Volume { return total[unit.Volume](volumes) })
		check.Constant(s, "V_fixed", "what is not line: the gauge and its hose are not listed", "definition", unit.Volume(0))
		check.Constant(s, "s", "allowance for fittings", "worked example of a test volume", leak.FittingsAllowance)
		formula := check.Formula{Text: leak.TestVolumeFormula, Source: "worked example of a test volume"}
		return check.Try(s, r, "V", formula, func() (unit.Volume, error) { return leak.VolumeUnderTest(lines, 0, leak.FittingsAllowance) })
	},
}

// testDrift is by how much the gauge of a test at the outlet pressure moves when the line
// warms by a kelvin.
var testDrift = &check.Figure[unit.GaugePressure, *layout.Regulator]{
	ID: "regulator.test-drift", Title: "how far the gauge moves for each kelvin, in a test at outlet pressure",
	Calc: func(s *check.Sheet, r *layout.Regulator) unit.GaugePressure {
		outlet := check.Measure(s, "p_outlet", &r.Outlet)
		around := airOutside(s)
		check.Constant(s, "T", "temperature of the line", "own rule: a mild day", mild)
		check.Constant(s, "dT", "warming", "definition", unit.TemperatureDifference(1))
		inside := check.Step(s, "p_abs", check.Formula{Text: "p_abs = p_air + p_outlet", Source: "definition"}, func() unit.AbsolutePressure {
			return around + unit.AbsolutePressure(outlet)
		})
		formula := check.Formula{Text: leak.DriftFormula, Source: tightnessSource}
		return check.Try(s, r, "dp", formula, func() (unit.GaugePressure, error) { return leak.Drift(inside, mild, 1) })
	},
}

// blindSpot is the greatest leak that a gauge does not show in ten minutes.
var blindSpot = &check.Figure[unit.VolumeFlow, *layout.Regulator]{
	ID: "regulator.test-blind-spot", Title: "leak that a gauge of 0.5 mbar does not show in ten minutes",
	Calc: func(s *check.Sheet, r *layout.Regulator) unit.VolumeFlow {
		volume := check.Fig(s, "V", testVolume, r)
		around := airOutside(s)
		check.Constant(s, "dp", "the least change that is seen on the gauge", "common practice, no source", readable)
		check.Constant(s, "t", "time of the test", "common practice, no source", sheetTime)
		formula := check.Formula{Text: leak.BlindSpotFormula, Source: tightnessSource, Valid: "temperature that does not change"}
		return check.Try(s, r, "q", formula, func() (unit.VolumeFlow, error) { return leak.BlindSpot(volume, readable, around, sheetTime) })
	},
}

var _ = showAll([]check.Shown{
	check.Detail(check.Show(testVolume, regulators)),
	check.Detail(check.Show(testDrift, regulators)),
	check.Detail(check.Show(blindSpot, regulators)),
})

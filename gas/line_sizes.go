package gas

import (
	"lowvent.example/gas/cylinder"
	"lowvent.example/gas/demand"
	"lowvent.example/gas/pipe"
	"lowvent.example/gas/regulator"
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/unit"
)

// leastBore is the bore that a line needs so that no more than common practice lets be
// lost is lost over the longest way. It is for the fitter's sheet: nothing that is built
// is to be made narrower on its account.
var leastBore = &check.Figure[unit.Length, *layout.Line]{
	ID: "line.least-bore", Title: "bore that the line needs, by the longest-length method",
	Calc: func(s *check.Sheet, line *layout.Line) unit.Length {
		r := regulatorBefore(s, line)
		if r == nil {
			return 0
		}
		run := check.Fig(s, "L", longestEvenRun, r)
		load := check.Fig(s, "P", lineLoad, line)
		most := check.Limit(s, "dp", code.PracticePressureDrop, nil)
		gas := codeGas(s)
		flow := check.Formula{Text: pipe.CodeFlowFormula, Source: "definition"}
		check.Step(s, "V", flow, func() unit.VolumeFlow { return unit.VolumeFlow(float64(load) * float64(gas.Flow) / float64(gas.Power)) })
		formula := check.Formula{Text: pipe.CodeBoreFormula, Source: codeEquationSource}
		return check.Try(s, line, "D", formula, func() (unit.Length, error) { return pipe.CodeBore(gas, load, run, most.At()) })
	},
}

// leastSize is the outside diameter of the narrowest standard pipe or tube of a line's
// material that has that bore.
var leastSize = &check.Figure[unit.Length, *layout.Line]{
	ID: "line.least-size", Title: "outside of the narrowest standard size with that bore",
	Calc: func(s *check.Sheet, line *layout.Line) unit.Length {
		bore := check.Fig(s, "D", leastBore, line)
		kind := check.Read(s, &line.Kind)
		if s.Stuck() {
			return 0
		}
		for _, size := range pipe.Sizes(materialOf(kind)) {
			if size.Bore >= bore {
				check.Constant(s, "D_size", "bore of "+size.Name, size.Source, size.Bore)
				return check.Step(s, "D_o", check.Formula{Source: size.Source, Valid: "the narrowest of the standard sizes"}, func() unit.Length { return size.Outside })
			}
		}
		s.Missing("standard sizes of "+string(kind)+" that are wide enough", line.Kind.Spot())
		return 0
	},
}

// liquidFull is the temperature at which a cylinder's propane has grown to fill it.
var liquidFull = &check.Figure[unit.Temperature, *layout.Cylinder]{
	ID: "cylinder.liquid-full", Title: "temperature at which the liquid fills the cylinder",
	Calc: func(s *check.Sheet, c *layout.Cylinder) unit.Temperature {
		held, water := check.Measure(s, "m", &c.Propane), check.Measure(s, "m_water", &c.WaterCapacity)
		check.Step(s, "rho_liquid", check.Formula{Text: cylinder.LiquidFullFormula, Source: "definition"}, func() unit.Density {
			return unit.Density(float64(held) / float64(cylinder.Volume(water)))
		})
		solved := check.Formula{Source: saturationSource, Valid: "the temperature at which the liquid has that density; within 0.5 K"}
		return check.Try(s, c, "T_full", solved, func() (unit.Temperature, error) { return cylinder.LiquidFullTemperature(held, water) })
	},
}

// coldCapacity is what a regulator passes with the pressure that a cylinder a quarter full
// has in the coldest air.
var coldCapacity = &check.Figure[unit.GrossPower, *layout.Regulator]{
	ID: "regulator.cold-capacity", Title: "what the regulator passes in the coldest air, at most",
	Calc: func(s *check.Sheet, r *layout.Regulator) unit.GrossPower {
		inlet := check.Fig(s, "p_inlet", coldPressure, s.Layout())
		passes := capacity(s, r)
		plate := regulator.Plate{Capacity: fuelOf(passes), Least: check.Measure(s, "p_least", &r.LeastInlet), Outlet: check.Measure(s, "p_outlet", &r.Outlet)}
		around := seaLevel(s)
		estimate := check.Formula{Source: "choked flow through a seat that is wide open; own estimate", Valid: "a bound: a real regulator passes less below its least inlet"}
		flow := check.Try(s, r, "m_flow", estimate, func() (unit.MassFlow, error) { return plate.PassedAt(inlet, around) })
		grossHeat(s)
		return check.Step(s, "P_cold", check.Formula{Text: "P_cold = m_flow * H", Source: heatSource}, func() unit.GrossPower {
			return demand.FromConsumption(unit.Exactly(flow)).Nominal
		})
	},
}

var _ = showAll([]check.Shown{
	check.Detail(check.Show(leastBore, lines)),
	check.Detail(check.Show(leastSize, lines)),
	check.Detail(check.Show(liquidFull, cylinders)),
	check.Detail(check.Show(coldCapacity, regulators)),
})

package gas

import (
	"lowvent.example/gas/demand"
	"lowvent.example/gas/propane"
	"lowvent.example/schema/check"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/unit"
)

const heatSource = "NIST Chemistry WebBook, propane: heat of combustion 2219.2 kJ/mol"

var (
	byConsumption = check.Formula{Text: demand.PowerFormula, Source: heatSource, Valid: "pure propane; trade figures lie within 0.6 %"}
	sumOfInputs   = check.Formula{Text: "", Source: "definition", Valid: "all appliances at full flame at once: the most that can be asked"}
)

// applianceInput is an appliance's heat input at full flame, gross.
var applianceInput = &check.Figure[unit.GrossPower, *layout.Appliance]{
	ID: "appliance.input", Title: "heat input, gross",
	Calc: func(s *check.Sheet, a *layout.Appliance) unit.GrossPower {
		if a.Plate.Consumption.Known() {
			flow := check.Measure(s, "m_flow", &a.Plate.Consumption)
			grossHeat(s)
			return check.Step(s, "P", byConsumption, func() unit.GrossPower {
				return demand.FromConsumption(unit.Exactly(flow)).Nominal
			})
		}
		return gross(s, "P", &a.Plate.Input, &a.Plate.Basis)
	},
}

// grossHeat writes the heat of combustion into the working.
func grossHeat(s *check.Sheet) {
	check.Constant(s, "H", "gross heat of combustion of propane", heatSource, propane.GrossHeat)
}

// gross puts a power as written on a plate on the gross basis.
func gross(s *check.Sheet, symbol string, m *layout.Measure[unit.Power], basis *layout.Given[layout.HeatBasis]) unit.GrossPower {
	written := check.Measure(s, symbol+"_written", m)
	if check.Read(s, basis) == layout.HeatBasisNet {
		grossHeat(s)
		check.Constant(s, "H_net", "net heat of combustion of propane", heatSource, propane.NetHeat)
		formula := check.Formula{Text: symbol + " = " + symbol + "_written * H / H_net", Source: heatSource, Valid: "a plate that counts no heat of the water vapour"}
		return check.Step(s, symbol, formula, func() unit.GrossPower {
			return demand.FromNet(unit.Exactly(unit.NetPower(written))).Nominal
		})
	}
	formula := check.Formula{Text: symbol + " = " + symbol + "_written", Source: "the rating plate", Valid: "a plate on the gross basis, as in North America"}
	return check.Step(s, symbol, formula, func() unit.GrossPower { return unit.GrossPower(written) })
}

// connectedLoad is every appliance of the dwelling at full flame.
var connectedLoad = &check.Figure[unit.GrossPower, *layout.Layout]{
	ID: "dwelling.connected-load", Title: "connected load, all burners on",
	Calc: func(s *check.Sheet, d *layout.Layout) unit.GrossPower {
		check.Inventory(s, layout.InventoryListAppliances)
		return loadOf(s, check.List(s, &d.Appliances))
	},
}

// regulatorLoad is every appliance behind a regulator at full flame.
var regulatorLoad = &check.Figure[unit.GrossPower, *layout.Regulator]{
	ID: "regulator.load", Title: "connected load behind the regulator",
	Calc: func(s *check.Sheet, r *layout.Regulator) unit.GrossPower {
		return loadOf(s, downstream(s, r.Ref()))
	},
}

func loadOf(s *check.Sheet, appliances []*layout.Appliance) unit.GrossPower {
	var inputs []unit.Value[unit.GrossPower]
	text := "P_load = 0"
	for _, a := range appliances {
		symbol := check.Symbol("P", a.ID())
		inputs = append(inputs, unit.Exactly(check.Fig(s, symbol, applianceInput, a)))
		text += " + " + symbol
	}
	formula := sumOfInputs
	formula.Text = text
	return check.Step(s, "P_load", formula, func() unit.GrossPower { return demand.Connected(inputs...).Nominal })
}

// propaneInService is the propane of all cylinders in service, by the net mass on
// the sleeve where that is given, since swapped cylinders are often sold short.
var propaneInService = &check.Figure[unit.PropaneMass, *layout.Layout]{
	ID: "dwelling.propane-in-service", Title: "propane in service",
	Calc: func(s *check.Sheet, d *layout.Layout) unit.PropaneMass {
		check.Inventory(s, layout.InventoryListCylinders)
		var masses []float64
		text := "m = 0"
		for _, c := range check.List(s, &d.Cylinders) {
			if check.Read(s, &c.Role) != layout.CylinderRoleInService {
				continue
			}
			symbol := check.Symbol("m", c.ID())
			text += " + " + symbol
			held := &c.Propane
			if c.SleeveMass.Known() {
				held = &c.SleeveMass
			}
			masses = append(masses, float64(check.Measure(s, symbol, held)))
		}
		return check.Step(s, "m", check.Formula{Text: text, Source: "definition"}, func() unit.PropaneMass { return total[unit.PropaneMass](masses) })
	},
}

func total[Q unit.Quantity](values []float64) Q {
	var sum float64
	for _, each := range values {
		sum += each
	}
	return Q(sum)
}

// dailyHeat is the heat that an ordinary day burns, by the use pattern of every
// appliance. Every spell of use is counted, whatever its season.
var dailyHeat = &check.Figure[unit.Energy, *layout.Layout]{
	ID: "dwelling.daily-heat", Title: "heat burned on an ordinary day",
	Calc: func(s *check.Sheet, d *layout.Layout) unit.Energy {
		check.Inventory(s, layout.InventoryListAppliances)
		return heatOf(s, check.List(s, &d.Appliances))
	},
}

// heatOf is the heat that appliances burn on an ordinary day.
func heatOf(s *check.Sheet, appliances []*layout.Appliance) unit.Energy {
	var uses []demand.Use
	text := "E_day = 0"
	for _, a := range appliances {
		P := check.Symbol("P", a.ID())
		input := check.Fig(s, P, applianceInput, a)
		for _, u := range check.List(s, &a.Use) {
			share, on := check.Symbol("s", a.ID(), u.ID()), check.Symbol("t", a.ID(), u.ID())
			uses = append(uses, demand.Use{Input: unit.Exactly(input),
				Share: unit.Exactly(check.Measure(s, share, &u.Share)), PerDay: unit.Exactly(check.Measure(s, on, &u.For))})
			text += " + " + P + " * " + share + " * " + on
		}
	}
	formula := check.Formula{Text: text, Source: "definition", Valid: "people guess use low by tens of percent: the run time errs long"}
	return check.Step(s, "E_day", formula, func() unit.Energy { return demand.Daily(uses...).Nominal })
}

var runTimeByPattern = &check.Figure[unit.Duration, *layout.Layout]{
	ID: "dwelling.run-time-by-pattern", Title: "run time by the use pattern",
	Calc: func(s *check.Sheet, d *layout.Layout) unit.Duration {
		m := check.Fig(s, "m", propaneInService, d)
		E := check.Fig(s, "E_day", dailyHeat, d)
		grossHeat(s)
		return lasts(s, "t_run", check.Formula{Text: demand.RunTimeFormula, Source: heatSource,
			Valid: "leaves out the cold, a short fill, pilots and leaks: it errs long"},
			func() (unit.Value[unit.Duration], error) { return demand.RunTime(unit.Exactly(m), unit.Exactly(E)) })
	},
}

var runTimeFlatOut = &check.Figure[unit.Duration, *layout.Layout]{
	ID: "dwelling.run-time-flat-out", Title: "run time with everything full on",
	Calc: func(s *check.Sheet, d *layout.Layout) unit.Duration {
		m := check.Fig(s, "m", propaneInService, d)
		P := check.Fig(s, "P", connectedLoad, d)
		grossHeat(s)
		return lasts(s, "t", check.Formula{Text: demand.FlatOutFormula, Source: heatSource,
			Valid: "leaves out the cold, which can stop the supply long before the cylinder is empty"},
			func() (unit.Value[unit.Duration], error) { return demand.FlatOut(unit.Exactly(m), unit.Exactly(P)) })
	},
}

// lasts turns a run time that has no end into something that is not known.
func lasts(s *check.Sheet, symbol string, f check.Formula, calc func() (unit.Value[unit.Duration], error)) unit.Duration {
	if s.Stuck() {
		return 0
	}
	t, err := calc()
	if err != nil {
		s.Missing("a use of gas: by what the file states, nothing burns", s.Layout().Appliances.Spot())
	}
	return check.Step(s, symbol, f, func() unit.Duration { return t.Nominal })
}

var (
	_ = show(check.ShowDwelling(connectedLoad))
	_ = show(check.ShowDwelling(propaneInService))
	_ = show(check.ShowDwelling(dailyHeat))
	_ = show(check.ShowDwelling(runTimeByPattern))
	_ = show(check.ShowDwelling(runTimeFlatOut))
)

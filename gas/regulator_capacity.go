package gas

import (
	"lowvent.example/gas/demand"
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

var _ = add(check.For(check.Descriptor{
	ID:         "regulator.capacity",
	Asks:       "Can the regulator pass what all the appliances behind it burn at once?",
	Why:        "A regulator that is too small starves the flames: they go out, or burn badly and make carbon monoxide.",
	NotCovered: "Capacity at a cold, low inlet pressure, which is less than the plate's figure.",
	Word:       report.Warning,
	Instead:    []string{"/regulators/*/capacityByMass", "/appliances/*/plate/consumption"},
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.PracticeRegulatorCapacity.Term},
	Reads: []string{"/regulators/*/capacity", "/regulators/*/capacityByMass", "/lines", "/lines/*/to", "/appliances",
		"/appliances/*/plate/input", "/appliances/*/plate/consumption", "/appliances/*/plate/basis"},
	Inventory: []layout.InventoryList{layout.InventoryListLines, layout.InventoryListAppliances},
	Sources:   []string{heatSource},
}, regulators, func(s *check.Sheet, r *layout.Regulator) check.Ruling {
	duty := check.Asked(s, code.PracticeRegulatorCapacity, nil)
	load := check.Fig(s, "P_load", regulatorLoad, r)
	ruling := check.AtLeast(s, capacity(s, r), check.Against(duty, load))
	if r.CapacityGas.Known() {
		return ruling.Mend("A regulator with at least this capacity; the fitter chooses it.",
			check.Raise(&r.CapacityGas, demand.Consumption(unit.Exactly(load)).Nominal))
	}
	return ruling.Mend("A regulator with at least this capacity; the fitter chooses it.", check.Raise(&r.Capacity, unit.Power(load)))
}))

func regulators(l *layout.Layout) *layout.Section[layout.Regulator] { return &l.Regulators }

// capacity is what the regulator passes, gross. A figure in watts is taken as
// gross: were it net, the regulator would pass more, so this errs low.
func capacity(s *check.Sheet, r *layout.Regulator) unit.GrossPower {
	if r.CapacityGas.Known() {
		flow := check.Measure(s, "m_flow", &r.CapacityGas)
		grossHeat(s)
		return check.Step(s, "P", byConsumption, func() unit.GrossPower { return demand.FromConsumption(unit.Exactly(flow)).Nominal })
	}
	plate := check.Measure(s, "P_plate", &r.Capacity)
	return check.Step(s, "P", check.Formula{Text: "P = P_plate", Source: "the regulator's plate"}, func() unit.GrossPower { return unit.GrossPower(plate) })
}

package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

var _ = add(check.For(check.Descriptor{
	ID:   "supply.cold-heating",
	Asks: "Where warmth depends on gas: does the cylinder, a quarter full and in the coldest air, feed everything that heats, at full flame all night?",
	Why:  "On the coldest night the heater hardly pauses. When the cylinder can't keep up people wake in the cold, and light what should never be lit indoors.",
	NotCovered: "Frost on the wall, damp air, a nearly closed locker that cools with its cylinders, layers in the liquid: all of them make it worse. " +
		"What else burns beside the heaters.",
	Word:      report.Warning,
	MayAct:    report.Owner,
	Limits:    []*code.Term{code.PracticeColdHeating.Term},
	Reads:     append([]string{"/wants/heatingDependsOnGas", "/appliances/*/usedForHeating"}, coldReads...),
	Inventory: []layout.InventoryList{layout.InventoryListLines, layout.InventoryListAppliances},
	Instead:   []string{"/appliances/*/plate/consumption"},
	Sources:   []string{saturationSource, mixtureSource, restSource, wallSource, heatSource},
}, regulators, func(s *check.Sheet, r *layout.Regulator) check.Ruling {
	if depends := check.Read(s, &s.Layout().Wants.HeatingOnGas); !depends && !s.Stuck() {
		return check.NotApplicable(s, "the file states that warmth does not depend on gas")
	}
	return fromCylinders(s, r, func() check.Ruling {
		duty := check.Asked(s, code.PracticeColdHeating, nil)
		heat := check.Fig(s, "P_heat", heatingLoad, r)
		if heat == 0 && !s.Stuck() {
			return check.NotApplicable(s, "nothing behind the regulator is used for heating")
		}
		return check.AtLeast(s, check.Fig(s, "P_cold", coldDraw, r), check.Against(duty, heat)).Mend(warmerSupply)
	})
}))

// heatingLoad is everything behind a regulator that is used for heating, at full flame.
var heatingLoad = &check.Figure[unit.GrossPower, *layout.Regulator]{
	ID: "regulator.heating-load", Title: "heaters behind the regulator, all at full flame",
	Calc: func(s *check.Sheet, r *layout.Regulator) unit.GrossPower {
		var heaters []*layout.Appliance
		for _, a := range downstream(s, r.Ref()) {
			if check.Read(s, &a.ForHeat) {
				heaters = append(heaters, a)
			}
		}
		return loadOf(s, heaters)
	},
}

package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

var coldReads = []string{"/climate/coldest", "/gas/propaneShare", "/regulators/*/leastInlet",
	"/cylinders/*/role", "/cylinders/*/waterCapacity", "/cylinders/*/propane", "/cylinders/*/diameter", "/cylinders/*/tare", "/cylinders/*/material",
	"/lines", "/lines/*/from", "/lines/*/to",
	"/appliances", "/appliances/*/plate/input", "/appliances/*/plate/consumption", "/appliances/*/plate/basis"}

var _ = add(check.For(check.Descriptor{
	ID:   "supply.cold-draw",
	Asks: "Does the cylinder, a quarter full and in the coldest air, make vapour as fast as an ordinary day burns it?",
	Why:  "A cylinder boils its gas with warmth from the air. Drawn too hard in the cold it chills itself until nothing comes, and flames starve.",
	NotCovered: "Frost on the wall, damp air, a nearly closed locker that cools with its cylinders, layers in the liquid: all of them make it worse. " +
		"A day that burns more than the ordinary one.",
	Word:      report.Caution,
	MayAct:    report.Owner,
	Limits:    []*code.Term{code.PracticeColdDraw.Term},
	Reads:     append([]string{"/changeovers/*/automatic", "/appliances/*/use", "/appliances/*/use/*/share", "/appliances/*/use/*/for", "/appliances/*/use/*/at"}, coldReads...),
	Inventory: []layout.InventoryList{layout.InventoryListLines, layout.InventoryListAppliances},
	Instead:   []string{"/appliances/*/plate/consumption"},
	Sources:   []string{saturationSource, mixtureSource, restSource, wallSource, heatSource},
}, regulators, func(s *check.Sheet, r *layout.Regulator) check.Ruling {
	return burning(s, r, func() check.Ruling {
		duty := check.Asked(s, code.PracticeColdDraw, nil)
		mean := check.Fig(s, "P_day", meanLoad, r)
		return check.AtLeast(s, check.Fig(s, "P_cold", coldDraw, r), check.Against(duty, mean)).About("all day long, on average").Mend(warmerSupply)
	})
}, func(s *check.Sheet, r *layout.Regulator) check.Ruling {
	return burning(s, r, func() check.Ruling {
		duty := check.Asked(s, code.PracticeColdDraw, nil)
		came := fedInTheCold(s, r)
		return check.Is(s, came.all, duty, came.text, "vapour for each busy time of an ordinary day").About("when most is burned").Mend(warmerSupply)
	})
}))

const warmerSupply = "A larger cylinder, two that feed together, or an earlier swap. Never warm a cylinder by flame, heater or hot water."

// burning asks of a regulator on cylinders that something burns behind.
func burning(s *check.Sheet, r *layout.Regulator, ask func() check.Ruling) check.Ruling {
	return fromCylinders(s, r, func() check.Ruling {
		if len(downstream(s, r.Ref())) == 0 {
			return check.NotApplicable(s, "nothing that burns is behind the regulator")
		}
		return ask()
	})
}

// meanLoad is what an ordinary day burns behind a regulator, spread over the day.
var meanLoad = &check.Figure[unit.GrossPower, *layout.Regulator]{
	ID: "regulator.mean-load", Title: "what an ordinary day burns, spread over the day",
	Calc: func(s *check.Sheet, r *layout.Regulator) unit.GrossPower {
		heat := heatOf(s, downstream(s, r.Ref()))
		return check.Step(s, "P_day", check.Formula{Text: "P_day = E_day / 86400", Source: "definition"}, func() unit.GrossPower {
			return unit.GrossPower(float64(heat) / 86400)
		})
	},
}

package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/unit"
)

// dropByCode and dropByFriction are the pressures lost between the last regulator and
// an appliance while everything burns, by two methods that know nothing of each other.
var (
	dropByCode     = dropTo("appliance.drop-by-code", "pressure lost on the way, by the codes' equation", lineDropByCode)
	dropByFriction = dropTo("appliance.drop-by-friction", "pressure lost on the way, by friction and rise", lineDropByFriction)
)

func dropTo(id, title string, inLine *check.Figure[unit.GaugePressure, *layout.Line]) *check.Figure[unit.GaugePressure, *layout.Appliance] {
	return &check.Figure[unit.GaugePressure, *layout.Appliance]{ID: id, Title: title, Calc: func(s *check.Sheet, a *layout.Appliance) unit.GaugePressure {
		_, way := wayTo(s, a, a.Ref())
		text, drops := "dp_way = 0", make([]float64, 0, len(way))
		for _, line := range way {
			symbol := check.Symbol("dp", line.ID())
			text += " + " + symbol
			drops = append(drops, float64(check.Fig(s, symbol, inLine, line)))
		}
		return check.Step(s, "dp_way", check.Formula{Text: text, Source: "definition"}, func() unit.GaugePressure { return total[unit.GaugePressure](drops) })
	}}
}

// runningPressure is what is left at an appliance of the regulator's outlet pressure
// while everything burns, by the worse of the two methods.
var runningPressure = &check.Figure[unit.GaugePressure, *layout.Appliance]{
	ID: "appliance.running-pressure", Title: "pressure at the appliance, all burners on",
	Calc: func(s *check.Sheet, a *layout.Appliance) unit.GaugePressure {
		r, _ := wayTo(s, a, a.Ref())
		if r == nil {
			return 0
		}
		outlet := check.Measure(s, "p_outlet", &r.Outlet)
		byCode, byFriction := check.Fig(s, "dp_code", dropByCode, a), check.Fig(s, "dp_friction", dropByFriction, a)
		formula := check.Formula{Text: "p_run = p_outlet - max(dp_code, dp_friction)", Source: "definition", Valid: "a regulator that holds its outlet at full flow; most give up a little"}
		return check.Step(s, "p_run", formula, func() unit.GaugePressure { return outlet - max(byCode, byFriction) })
	},
}

var _ = showAll([]check.Shown{
	check.Show(runningPressure, appliances),
	check.Detail(check.Show(dropByCode, appliances)),
	check.Detail(check.Show(dropByFriction, appliances)),
	check.Detail(check.Show(lineLoad, lines)),
	check.Detail(check.Show(lineDropByCode, lines)),
	check.Detail(check.Show(lineDropByFriction, lines)),
	check.Detail(check.Show(lineWithFittings, lines)),
})

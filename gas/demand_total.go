package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

var _ = add(check.For(check.Descriptor{
	ID:         "demand.total",
	Asks:       "Is the appliance's heat input known, and do its burners add up to no more than its plate?",
	Why:        "Regulator, pipe and run time all stand on the input; one that is copied wrong makes every later figure wrong.",
	NotCovered: "Inputs taken from tables instead of the plate, and derating for height above the sea.",
	Word:       report.Notice,
	Instead:    []string{"/appliances/*/plate/consumption"},
	MayAct:     report.Owner,
	Limits:     []*code.Term{code.PracticeBurnersAddUp.Term},
	Reads: []string{"/appliances/*/plate/input", "/appliances/*/plate/consumption", "/appliances/*/plate/basis",
		"/appliances/*/burners", "/appliances/*/burners/*/input"},
	Sources: []string{heatSource},
}, appliances, func(s *check.Sheet, a *layout.Appliance) check.Ruling {
	duty := check.Asked(s, code.PracticeBurnersAddUp, nil)
	plate := check.Fig(s, "P_plate", applianceInput, a)
	burners := check.List(s, &a.Burners)
	if len(burners) == 0 {
		return check.Is(s, plate > 0, duty, unit.Text(plate)+" on the plate", "an input above zero")
	}
	var inputs []float64
	text := "P_burners = 0"
	for _, b := range burners {
		symbol := check.Symbol("P", b.ID())
		inputs = append(inputs, float64(gross(s, symbol, &b.Input, &a.Plate.Basis)))
		text += " + " + symbol
	}
	sum := check.Step(s, "P_burners", check.Formula{Text: text, Source: "definition"}, func() unit.GrossPower { return total[unit.GrossPower](inputs) })
	return check.AtMost(s, sum, check.Against(duty, plate)).
		Mend("Read the plate again: the input of each burner, and of all of them together.")
}))

func appliances(l *layout.Layout) *layout.Section[layout.Appliance] { return &l.Appliances }

package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:   "supply.cold-pressure",
	Asks: "Does a cylinder that is a quarter full still have the pressure that its regulator needs, in the coldest air?",
	Why:  "When the pressure falls away in the cold the flames sink and go out, when the warmth is needed most.",
	NotCovered: "The chill of boiling, which supply.cold-draw reckons; frost on the regulator; a cylinder that was topped up again and again, " +
		"in which more butane has gathered.",
	Word:    report.Caution,
	MayAct:  report.Owner,
	Limits:  []*code.Term{code.PracticeColdInlet.Term},
	Reads:   []string{"/climate/coldest", "/gas/propaneShare", "/regulators/*/leastInlet", "/lines", "/lines/*/from"},
	Sources: []string{saturationSource, mixtureSource, restSource},
}, regulators, func(s *check.Sheet, r *layout.Regulator) check.Ruling {
	return fromCylinders(s, r, func() check.Ruling {
		duty := check.Asked(s, code.PracticeColdInlet, nil)
		least := check.Measure(s, "p_least", &r.LeastInlet)
		pressure := check.Fig(s, "p_cold", coldPressure, s.Layout())
		ruling := check.AtLeast(s, pressure, check.Against(duty, least))
		const mend = "Gas with more propane in it, an earlier swap, or a regulator that works from less. Never warm a cylinder by flame, heater or hot water."
		if pressure <= 0 {
			return ruling.Mend(mend) // no regulator works from nothing
		}
		return ruling.Mend(mend, check.Lower(&r.LeastInlet, pressure))
	})
}))

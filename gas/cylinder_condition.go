package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

var _ = add(check.For(check.Descriptor{
	ID:         "cylinder.condition",
	Asks:       "Is the cylinder free of rust, dents, burns and leaks, and does it weigh what is stamped on it?",
	Why:        "Metal that is gone holds no pressure: a rusted, dented or burnt cylinder can burst in the sun or while it is filled.",
	NotCovered: "What lies under paint and foot ring: the examination at its date. Its valve has a check of its own.",
	Word:       report.Warning,
	MayAct:     report.Owner,
	Limits:     []*code.Term{code.CylinderDamage.Term, code.PracticeCylinderDamage.Term, code.CylinderTareLoss.Term, code.PracticeTareLoss.Term},
	Reads:      []string{"/cylinders/*/damage", "/cylinders/*/tare", "/cylinders/*/weighedEmpty"},
}, cylinders, undamaged, keptItsMetal))

const setAside = "Use it no more, do not empty it yourself, and take it to whoever fills or exchanges cylinders."

func undamaged(s *check.Sheet, c *layout.Cylinder) check.Ruling {
	return check.ByEither(s, code.CylinderDamage, code.PracticeCylinderDamage, func(s *check.Sheet, limit code.WordLimit) check.Ruling {
		allowed := check.AllowedWords(s, limit, nil)
		return check.OneOf(s, worstSeen(s, c, allowed), allowed).Mend(setAside)
	})
}

// worstSeen takes the first damage that is not allowed, or where all are allowed the
// last. An empty list states nothing: whoever looked and found nothing writes "none".
func worstSeen(s *check.Sheet, c *layout.Cylinder, allowed check.Words) layout.Damage {
	all := check.Read(s, &c.Condition.Given)
	if len(all) == 0 {
		s.Missing(`what was seen on it; "none" when there was nothing`, c.Condition.Spot())
		return ""
	}
	for _, seen := range all {
		if !allowed.Has(string(seen)) {
			return seen
		}
	}
	return all[len(all)-1]
}

// lost is the share of a cylinder's stamped tare that its weighing lacks.
var lost = check.Formula{Text: "f_lost = (m_tare - m_weighed) / m_tare", Source: "arithmetic", Valid: "a cylinder that is quite empty"}

func keptItsMetal(s *check.Sheet, c *layout.Cylinder) check.Ruling {
	return check.ByEither(s, code.CylinderTareLoss, code.PracticeTareLoss, func(s *check.Sheet, limit code.Limit[unit.Ratio]) check.Ruling {
		most := check.Limit(s, "f_max", limit, nil)
		tare, weighed := check.Measure(s, "m_tare", &c.Tare), check.Measure(s, "m_weighed", &c.WeighedTare)
		share := check.Step(s, "f_lost", lost, func() unit.Ratio { return unit.Ratio((float64(tare) - float64(weighed)) / float64(tare)) })
		return check.AtMost(s, share, most).Says("of its stamped tare").Mend(setAside)
	})
}

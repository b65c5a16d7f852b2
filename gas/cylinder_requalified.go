package gas

import (
	"strings"

	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "cylinder.requalified",
	Asks:       "Is the cylinder within the time for which it was last passed, by its label and by the law on it?",
	Why:        "Rust works on a cylinder from outside and unseen under its foot ring; the examination is what finds it before it bursts or leaks.",
	NotCovered: "What the examination would find: see cylinder.condition.",
	Word:       report.Warning,
	MayAct:     report.Owner,
	Limits:     []*code.Term{code.PracticeLabelDate.Term, code.CylinderRequalify.Term, code.CylinderTestAge.Term},
	Reads:      []string{"/cylinders/*/requalifiedBy", "/cylinders/*/lastQualified", "/cylinders/*/qualification", "/cylinders/*/specification"},
}, cylinders, labelHeeded, withinItsTerm))

func labelHeeded(s *check.Sheet, c *layout.Cylinder) check.Ruling {
	asked := check.Asked(s, code.PracticeLabelDate, nil)
	by := check.Read(s, &c.RequalifiedBy)
	return check.Is(s, !by.First().Before(s.On()), asked, "to be examined by "+by.String(), "a date that has not come").
		About("the date on its label").Mend(requalify)
}

const requalify = "Have it examined by whoever fills or exchanges cylinders, or swap it for one within its date."

// withinItsTerm holds the stamped date against the law on cylinders of its mark,
// and where its mark is none of those against the dwelling's own code.
func withinItsTerm(s *check.Sheet, c *layout.Cylinder) check.Ruling {
	mark := specification(s, c)
	if s.Stuck() {
		return check.Ruling{}
	}
	limit := code.CylinderTestAge
	if mark != otherMark {
		limit = code.CylinderRequalify
	}
	most := check.Limit(s, "n_max", limit, specificationFacts(c))
	last := check.Read(s, &c.LastQualified)
	return check.AtMost(s, yearsBegun(last, s.On()), most).About("years since it was last passed").
		Says("stamped %s; a year that has begun counts", last).Mend(requalify)
}

// otherMark is the word for every mark but those that the law of the United States
// names for LP-gas.
const otherMark = "other"

// specification takes the mark of the rule that a cylinder was built to, as a word
// of code.FactSpecification: "DOT-4BA240" is "dot-4ba".
func specification(s *check.Sheet, c *layout.Cylinder) string {
	mark := strings.ToLower(strings.TrimSpace(check.Read(s, &c.Specification)))
	mark = strings.NewReplacer(" ", "-").Replace(mark)
	for _, word := range []string{"dot-4ba", "dot-4bw", "dot-4b", "dot-4e"} {
		if pressure, is := strings.CutPrefix(mark, word); is && strings.Trim(pressure, "-0123456789") == "" {
			return word
		}
	}
	return otherMark
}

func specificationFacts(c *layout.Cylinder) check.Facts {
	return check.Facts{
		code.FactSpecification: func(s *check.Sheet) any { return specification(s, c) },
		code.FactQualification: func(s *check.Sheet) any { return string(check.Read(s, &c.Qualification)) },
	}
}

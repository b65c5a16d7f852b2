package code

import (
	"fmt"
	"slices"
	"strings"

	"lowvent.example/schema/unit"
)

// when chooses a rule by a fact; the first case that fits is taken:
//
//	{"when": [{"fact": "appliance.kind", "isOneOf": ["oven"], "then": "notAsked"}],
//	 "otherwise": {"oneOf": ["room-sealed"]}}
//
// A fact that is not known leaves the answer open as soon as a case depends on
// it: it is never taken for "otherwise".
type when struct {
	cases     []whenCase
	otherwise Rule
}

// whenCase is one condition and its rule: the fact is one of the words, or a
// date before the day or from it on.
type whenCase struct {
	fact    Fact
	isOneOf []string
	before  unit.Date
	from    unit.Date
	then    Rule
}

func (c whenCase) condition() string {
	switch {
	case !c.before.IsZero():
		return fmt.Sprintf("%s is before %s", c.fact.Phrase(), c.before)
	case !c.from.IsZero():
		return fmt.Sprintf("%s is %s or later", c.fact.Phrase(), c.from)
	}
	return fmt.Sprintf("%s is %s", c.fact.Phrase(), joined(c.isOneOf, "or"))
}

// fits tells whether the case applies, and whether that can be told.
func (c whenCase) fits(f Facts) (fits, clear bool) {
	if c.isOneOf != nil {
		w, known := word(f, c.fact)
		return slices.Contains(c.isOneOf, w), known
	}
	d, known := date(f, c.fact)
	if !known {
		return false, false
	}
	if !c.before.IsZero() {
		return before(d, c.before)
	}
	is, clear := before(d, c.from)
	return !is, clear
}

func (r when) String() string {
	texts := make([]string, len(r.cases))
	for i, c := range r.cases {
		texts[i] = fmt.Sprintf("where %s: %s", c.condition(), c.then)
	}
	return strings.Join(texts, "; ") + "; otherwise: " + r.otherwise.String()
}

func (r when) Facts() []Fact {
	all := factsOf([]Rule{r.otherwise})
	for _, c := range r.cases {
		all = append(all, c.fact)
		all = append(all, c.then.Facts()...)
	}
	slices.Sort(all)
	return slices.Compact(all)
}

func (r when) weigh(t *Term, f Facts) outcome {
	for _, c := range r.cases {
		fits, clear := c.fits(f)
		switch {
		case !clear:
			return needs(c.fact)
		case fits:
			return because(c.condition(), c.then.weigh(t, f))
		}
	}
	return because(r.found(f), r.otherwise.weigh(t, f))
}

// found says what the facts of the cases are, once all are known.
func (r when) found(f Facts) string {
	var texts []string
	for _, c := range r.cases {
		is, _ := word(f, c.fact)
		if d, dated := date(f, c.fact); dated {
			is = d.String()
		}
		texts = append(texts, c.fact.Phrase()+" is "+is)
	}
	slices.Sort(texts)
	return joined(slices.Compact(texts), "and")
}

// because adds the reason to an outcome that sets no limit.
func because(reason string, o outcome) outcome {
	if o.state == NotAsked || o.state == Silent {
		o.text += ": " + reason
	}
	return o
}

// exempt stands for "notAsked": the text says that it asks nothing of the case.
type exempt struct{}

func (exempt) String() string { return "not asked" }

func (exempt) Facts() []Fact { return nil }

func (exempt) weigh(*Term, Facts) outcome {
	return outcome{state: NotAsked, text: "the text does not ask this here"}
}

// uncovered stands for "notCovered": the text has no figure for the case, which
// is not the same as asking nothing of it.
type uncovered struct{}

func (uncovered) String() string { return "not covered" }

func (uncovered) Facts() []Fact { return nil }

func (uncovered) weigh(*Term, Facts) outcome {
	return outcome{state: Silent, text: "the text has no figure for this case"}
}

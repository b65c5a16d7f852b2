package code

import (
	"fmt"
	"slices"
	"strconv"
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

// whenCase is a rule and the conditions that all have to fit for it, asked in order: one
// that does not fit leaves the rest unasked.
type whenCase struct {
	conditions []condition // at least one
	then       Rule
}

// condition is one question to a fact: it is one of the words, a date before the day or
// from it on, or a number up to a figure or at least it.
type condition struct {
	fact    Fact
	isOneOf []string
	before  unit.Date
	from    unit.Date
	upTo    *figure // the figure itself included
	atLeast *figure // the figure itself included
}

func (c whenCase) String() string {
	texts := make([]string, len(c.conditions))
	for i, each := range c.conditions {
		texts[i] = each.String()
	}
	return joined(texts, "and")
}

func (c condition) String() string {
	switch {
	case !c.before.IsZero():
		return fmt.Sprintf("%s is before %s", c.fact.Phrase(), c.before)
	case !c.from.IsZero():
		return fmt.Sprintf("%s is %s or later", c.fact.Phrase(), c.from)
	case c.upTo != nil:
		return fmt.Sprintf("%s is at most %s", c.fact.Phrase(), c.upTo.written)
	case c.atLeast != nil:
		return fmt.Sprintf("%s is at least %s", c.fact.Phrase(), c.atLeast.written)
	}
	return fmt.Sprintf("%s is %s", c.fact.Phrase(), joined(c.isOneOf, "or"))
}

// fits tells whether the condition applies, and whether that can be told.
func (c condition) fits(f Facts) (fits, clear bool) {
	switch {
	case c.isOneOf != nil:
		w, known := word(f, c.fact)
		return slices.Contains(c.isOneOf, w), known
	case c.upTo != nil || c.atLeast != nil:
		n, known := number(f, c.fact)
		n = twelveDigits(n)
		return known && (c.upTo == nil || n <= twelveDigits(c.upTo.si)) && (c.atLeast == nil || n >= twelveDigits(c.atLeast.si)), known
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

// says tells what the fact of a condition is, once it is known.
func (c condition) says(f Facts) string {
	is, _ := word(f, c.fact)
	if n, counted := number(f, c.fact); counted {
		is = c.fact.info().print(n)
	}
	if d, dated := date(f, c.fact); dated {
		is = d.String()
	}
	return c.fact.Phrase() + " is " + is
}

// twelveDigits rounds a figure as the checks do before they compare: one that was
// computed carries a last digit that nobody measured.
func twelveDigits(si float64) float64 {
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(si, 'e', 11, 64), 64)
	if err != nil {
		return si
	}
	return rounded
}

func (r when) String() string {
	texts := make([]string, len(r.cases))
	for i, c := range r.cases {
		texts[i] = fmt.Sprintf("where %s: %s", c, c.then)
	}
	return strings.Join(texts, "; ") + "; otherwise: " + r.otherwise.String()
}

func (r when) Facts() []Fact {
	all := factsOf([]Rule{r.otherwise})
	for _, c := range r.cases {
		for _, each := range c.conditions {
			all = append(all, each.fact)
		}
		all = append(all, c.then.Facts()...)
	}
	slices.Sort(all)
	return slices.Compact(all)
}

func (r when) weigh(t *Term, f Facts) outcome {
	var against []string // what speaks against each case so far
	for _, c := range r.cases {
		fit := true
		for _, each := range c.conditions {
			fits, clear := each.fits(f)
			if !clear {
				return needs(each.fact)
			}
			if !fits {
				fit = false
				against = append(against, each.says(f))
				break
			}
		}
		if fit {
			return because(c.String(), c.then.weigh(t, f))
		}
	}
	slices.Sort(against)
	return because(joined(slices.Compact(against), "and"), r.otherwise.weigh(t, f))
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

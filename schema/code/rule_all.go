package code

import (
	"fmt"
	"slices"
	"strings"
)

// allOf is several rules that hold together, so the strictest of them is the
// limit: {"allOf": [{"fixed": "100 cm2"}, …]}. Parts that do not ask anything
// of a case drop out; a part that can't be told leaves the whole open, and a
// part that the text does not cover leaves the whole silent, for either may be
// the strictest.
type allOf struct{ parts []Rule }

func (r allOf) String() string {
	texts := make([]string, len(r.parts))
	for i, p := range r.parts {
		texts[i] = p.String()
	}
	return "the strictest of: " + strings.Join(texts, "; ")
}

func (r allOf) Facts() []Fact { return factsOf(r.parts) }

// factsOf joins the facts of several rules.
func factsOf(rules []Rule) []Fact {
	var all []Fact
	for _, each := range rules {
		all = append(all, each.Facts()...)
	}
	slices.Sort(all)
	return slices.Compact(all)
}

func (r allOf) weigh(t *Term, f Facts) outcome {
	var answered []outcome
	var missing []Fact
	var spared, silent *outcome
	for _, part := range r.parts {
		o := part.weigh(t, f)
		switch o.state {
		case Answered:
			answered = append(answered, o)
		case Open:
			missing = append(missing, o.missing...)
		case NotAsked:
			spared = &o
		default:
			silent = &o
		}
	}
	switch {
	case silent != nil:
		return *silent
	case missing != nil:
		return needs(missing...)
	case answered == nil:
		return *spared
	}
	return strictest(t, answered)
}

// stricterThan tells whether one figure asks more than another.
func stricterThan(t *Term, a, b float64) bool {
	return t.Sense == Least && a > b || t.Sense == Most && a < b
}

// strictest joins answered outcomes into one that satisfies all.
func strictest(t *Term, all []outcome) outcome {
	o := all[0]
	for _, next := range all[1:] {
		o.exclusive = o.exclusive && !stricterThan(t, next.si, o.si) || next.exclusive && !stricterThan(t, o.si, next.si)
		switch t.Sense {
		case Least:
			o.si, o.expr = max(o.si, next.si), fmt.Sprintf("max(%s, %s)", o.expr, next.expr)
		case Most:
			o.si, o.expr = min(o.si, next.si), fmt.Sprintf("min(%s, %s)", o.expr, next.expr)
		case Allowed:
			o.words = slices.DeleteFunc(o.words, func(w string) bool { return !slices.Contains(next.words, w) })
		}
		o.text += "; and " + next.text
		o.symbols = append(o.symbols, next.symbols...)
	}
	if t.Sense == Allowed {
		o.text = joined(o.words, "or")
	}
	return o
}

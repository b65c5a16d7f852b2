package code

import (
	"slices"
	"strconv"
	"strings"

	"lowvent.example/schema/unit"
)

// perUnit is so much for each unit of one fact plus so much for each unit of
// another, split evenly over so many things if the text splits it:
// {"perUnit": [{"of": "dwelling.sleeps", "rate": "650 mm2"}], "splitOver": 2}.
type perUnit struct {
	parts  []ratePart
	split  int // at least 1
	bounds bounds
}

// ratePart is one summand of a perUnit.
type ratePart struct {
	of   Fact
	rate figure
}

// rateKind gives the kind of a rate that makes a limit of one kind out of a
// fact of another; 0 when no kind fits.
func rateKind(limit, fact unit.Kind) unit.Kind {
	switch {
	case fact == unit.KindRatio:
		return limit
	case limit == unit.KindArea && fact == unit.KindGrossPower:
		return unit.KindAreaPerPower
	case limit == unit.KindArea && fact == unit.KindPropaneMass:
		return unit.KindAreaPerMass
	}
	return 0
}

func (r perUnit) String() string {
	parts := make([]string, len(r.parts))
	for i, p := range r.parts {
		parts[i] = p.rate.written + " times " + p.of.Phrase()
	}
	return r.sum(strings.Join(parts, " plus ")) + r.bounds.String()
}

// sum puts what is summed into brackets where it is split.
func (r perUnit) sum(text string) string {
	if r.split == 1 {
		return text
	}
	return splitText(r.split) + "(" + text + ")"
}

// division ends each summand of the working, which has no brackets.
func (r perUnit) division() string {
	if r.split == 1 {
		return ""
	}
	return " / " + strconv.Itoa(r.split)
}

func (r perUnit) Facts() []Fact {
	var all []Fact
	for _, p := range r.parts {
		all = append(all, p.of)
	}
	slices.Sort(all)
	return slices.Compact(all)
}

func (r perUnit) weigh(_ *Term, f Facts) outcome {
	var missing []Fact
	var texts, exprs []string
	o := outcome{state: Answered}
	for _, p := range r.parts {
		info := p.of.info()
		si, known := number(f, p.of)
		if !known {
			missing = append(missing, p.of)
			continue
		}
		o.si += p.rate.si * si / float64(r.split)
		o.symbols = append(o.symbols, Symbol{info.symbol, info.kind, si})
		texts = append(texts, p.rate.print()+" times "+info.phrase+", "+info.print(si))
		exprs = append(exprs, p.rate.literal()+" * "+info.symbol+r.division())
	}
	if missing != nil {
		return needs(missing...)
	}
	o.text, o.expr = r.sum(strings.Join(texts, ", plus ")), strings.Join(exprs, " + ")
	return r.bounds.hold(o)
}

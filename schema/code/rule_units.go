package code

import (
	"slices"
	"strings"

	"lowvent.example/schema/unit"
)

// perUnit is so much for each unit of one fact plus so much for each unit of
// another: {"perUnit": [{"of": "dwelling.sleeps", "rate": "650 mm2"}]}.
type perUnit struct {
	parts  []ratePart
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
	}
	return 0
}

func (r perUnit) String() string {
	parts := make([]string, len(r.parts))
	for i, p := range r.parts {
		parts[i] = p.rate.written + " times " + p.of.Phrase()
	}
	return strings.Join(parts, " plus ") + r.bounds.String()
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
		o.si += p.rate.si * si
		o.symbols = append(o.symbols, Symbol{info.symbol, info.kind, si})
		texts = append(texts, p.rate.print()+" times "+info.phrase+", "+info.print(si))
		exprs = append(exprs, p.rate.literal()+" * "+info.symbol)
	}
	if missing != nil {
		return needs(missing...)
	}
	o.text, o.expr = strings.Join(texts, ", plus "), strings.Join(exprs, " + ")
	return r.bounds.hold(o)
}

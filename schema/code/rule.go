package code

import (
	"fmt"
	"strconv"

	"lowvent.example/schema/unit"
)

// Rule is how an entry makes its limit out of facts. The set of rules is
// closed; files write them in the forms that the schema tells.
type Rule interface {
	// String tells the rule in words, without any facts.
	String() string

	// Facts lists the facts that the rule may read, sorted, each once.
	Facts() []Fact

	// weigh evaluates the rule for a term. The outcome is Answered, Open,
	// NotAsked or Silent.
	weigh(t *Term, f Facts) outcome
}

// figure is a number that a file wrote: its size in SI and its text.
type figure struct {
	kind    unit.Kind
	si      float64
	written string
}

// print gives the figure in both systems of units.
func (g figure) print() string { return unit.TextOf(g.kind, g.si) }

// literal gives the figure in SI as a number of Go, exactly.
func (g figure) literal() string { return literal(g.si) }

func literal(si float64) string { return strconv.FormatFloat(si, 'g', -1, 64) }

// senseWords begins a sentence about a figure of that sense.
func senseWords(s Sense, exclusive bool) string {
	switch {
	case s == Most && exclusive:
		return "less than "
	case s == Most:
		return "at most "
	case exclusive:
		return "more than "
	}
	return "at least "
}

// fixed is one figure for every case: {"fixed": "24 in"}. Where the text says "less
// than" or "more than", the figure itself is outside: {"fixed": "3 kPa",
// "exclusive": true}.
type fixed struct {
	is        figure
	exclusive bool
}

func (r fixed) String() string {
	if r.exclusive {
		return r.is.written + ", that itself excluded"
	}
	return r.is.written
}

func (fixed) Facts() []Fact { return nil }

func (r fixed) weigh(t *Term, _ Facts) outcome {
	return outcome{state: Answered, si: r.is.si, exclusive: r.exclusive, text: senseWords(t.Sense, r.exclusive) + r.is.print(), expr: r.is.literal()}
}

// bounds are the least and the most that a computed figure may come to.
type bounds struct{ least, most *figure }

// hold brings an answered outcome within the bounds.
func (b bounds) hold(o outcome) outcome {
	if b.least != nil {
		o.si = max(o.si, b.least.si)
		o.expr = fmt.Sprintf("max(%s, %s)", o.expr, b.least.literal())
		o.text += ", and not less than " + b.least.print()
	}
	if b.most != nil {
		o.si = min(o.si, b.most.si)
		o.expr = fmt.Sprintf("min(%s, %s)", o.expr, b.most.literal())
		o.text += ", and not more than " + b.most.print()
	}
	return o
}

func (b bounds) String() string {
	text := ""
	if b.least != nil {
		text += ", and not less than " + b.least.written
	}
	if b.most != nil {
		text += ", and not more than " + b.most.written
	}
	return text
}

// shareOf is a share of one fact, split evenly over so many things if the text
// splits it: {"shareOf": "locker.floorArea", "share": "2 %", "splitOver": 2}.
type shareOf struct {
	of     Fact
	share  figure
	split  int // at least 1
	bounds bounds
}

func (r shareOf) part() string { return splitText(r.split) + r.share.written }

// splitText begins a sentence about a figure that is split evenly: "half of ".
func splitText(over int) string {
	switch over {
	case 1:
		return ""
	case 2:
		return "half of "
	}
	return fmt.Sprintf("1/%d of ", over)
}

func (r shareOf) String() string {
	return r.part() + " of " + r.of.Phrase() + r.bounds.String()
}

func (r shareOf) Facts() []Fact { return []Fact{r.of} }

func (r shareOf) weigh(_ *Term, f Facts) outcome {
	info := r.of.info()
	si, known := number(f, r.of)
	if !known {
		return needs(r.of)
	}
	o := outcome{state: Answered, si: r.share.si * si, expr: r.share.literal() + " * " + info.symbol}
	if r.split > 1 {
		o.si /= float64(r.split)
		o.expr += " / " + strconv.Itoa(r.split)
	}
	o.text = fmt.Sprintf("%s of %s of %s", r.part(), info.phrase, info.print(si))
	o.symbols = []Symbol{{info.symbol, info.kind, si}}
	return r.bounds.hold(o)
}

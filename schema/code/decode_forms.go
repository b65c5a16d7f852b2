package code

import (
	"fmt"
	"slices"

	"lowvent.example/schema/source"
	"lowvent.example/schema/unit"
)

func (d *decoder) fixed(n *source.Node, t *Term) Rule {
	d.object(n, keys{must: []string{"fixed"}, may: []string{"exclusive"}})
	return fixed{d.figure(n.Member("fixed"), t.Kind, t.Sense == Most), d.flag(n, "exclusive")}
}

// bounds reads the members least and most.
func (d *decoder) bounds(n *source.Node, t *Term) bounds {
	var b bounds
	if m := n.Member("least"); m != nil {
		b.least = new(d.figure(m, t.Kind, false))
	}
	if m := n.Member("most"); m != nil {
		b.most = new(d.figure(m, t.Kind, false))
	}
	if b.least != nil && b.most != nil && b.least.si > b.most.si {
		d.fault(n.Member("most").Place(), fmt.Sprintf("%q is below %q", b.most.written, b.least.written), `at least as much as "least"`, "")
	}
	return b
}

func (d *decoder) shareOf(n *source.Node, t *Term) Rule {
	d.object(n, keys{must: []string{"shareOf", "share"}, may: []string{"splitOver", "least", "most"}})
	r := shareOf{of: d.fact(n.Member("shareOf"), t, numberFact), split: d.split(n), bounds: d.bounds(n, t)}
	if r.of != "" && !shares(t.Kind, r.of.Kind()) {
		d.fault(n.Member("shareOf").Place(), fmt.Sprintf("a share of %s is no %s", r.of.Phrase(), t.Kind), "a fact of the same kind as the limit", "")
	}
	if m := n.Member("share"); m != nil {
		r.share = d.figure(m, unit.KindRatio, false)
		if r.share.si > 1 {
			d.fault(m.Place(), fmt.Sprintf("%q is more than the whole", r.share.written), "a share of at most 100 %", `write per cent with its sign, such as "42 %"`)
		}
	}
	return r
}

// shares tells whether a share of a fact of one kind can be a limit of another:
// the same kind, or propane as a share of the water that fills the vessel.
func shares(limit, fact unit.Kind) bool {
	return limit == fact || limit == unit.KindPropaneMass && fact == unit.KindWaterMass
}

// split reads over how many things a share is split evenly; 1 when left out.
func (d *decoder) split(n *source.Node) int {
	m := n.Member("splitOver")
	if m == nil {
		return 1
	}
	count := slices.Index([]string{"2", "3", "4"}, string(m.Number()))
	if count < 0 {
		d.fault(m.Place(), fmt.Sprintf("%s stands here", m.Raw()), "the number 2, 3 or 4", "")
		return 1
	}
	return count + 2
}

func (d *decoder) perUnit(n *source.Node, t *Term) Rule {
	d.object(n, keys{must: []string{"perUnit"}, may: []string{"splitOver", "least", "most"}})
	r := perUnit{split: d.split(n), bounds: d.bounds(n, t)}
	for _, e := range d.elements(n, "perUnit", 1) {
		if d.object(e, keys{must: []string{"of", "rate"}}) {
			r.parts = append(r.parts, d.ratePart(e, t, r.parts))
		}
	}
	return r
}

func (d *decoder) ratePart(n *source.Node, t *Term, earlier []ratePart) ratePart {
	p := ratePart{of: d.fact(n.Member("of"), t, numberFact)}
	if p.of == "" {
		return p
	}
	if slices.ContainsFunc(earlier, func(e ratePart) bool { return e.of == p.of }) {
		d.fault(n.Member("of").Place(), fmt.Sprintf("%q stands here twice", p.of), "each fact once", "add the two rates up")
	}
	k := rateKind(t.Kind, p.of.Kind())
	if k == 0 {
		d.fault(n.Member("of").Place(), fmt.Sprintf("there is no rate that makes %s of %s", t.Kind, p.of.Phrase()), "a fact that suits the limit", "")
		return p
	}
	if m := n.Member("rate"); m != nil {
		p.rate = d.figure(m, k, false)
	}
	return p
}

func (d *decoder) table(n *source.Node, t *Term) Rule {
	d.object(n, keys{must: []string{"tableBy", "rows"}})
	r := table{by: d.fact(n.Member("tableBy"), t, numberFact)}
	for _, e := range d.elements(n, "rows", 1) {
		d.object(e, keys{must: []string{"upTo", "is"}})
		upTo, is := e.Member("upTo"), e.Member("is")
		if r.by == "" || upTo == nil || is == nil {
			continue
		}
		next := row{d.figure(upTo, r.by.Kind(), true), d.figure(is, t.Kind, t.Sense == Most)}
		if len(r.rows) > 0 && next.upTo.si <= r.rows[len(r.rows)-1].upTo.si {
			d.fault(upTo.Place(), fmt.Sprintf("%q is not above the row before", next.upTo.written), "rows by rising upTo", "")
		}
		r.rows = append(r.rows, next)
	}
	return r
}

func (d *decoder) oneOf(n *source.Node, t *Term) Rule {
	d.object(n, keys{must: []string{"oneOf"}})
	return oneOf{d.choices(n, "oneOf", 1, t.Words)}
}

func (d *decoder) asked(n *source.Node, _ *Term) Rule {
	d.object(n, keys{must: []string{"asked"}})
	if m := n.Member("asked"); !m.Bool() {
		d.fault(m.Place(), m.Raw()+" stands here", "true", `leave the entry out if nothing is asked, or use "when" with "notAsked"`)
	}
	return asked{}
}

func (d *decoder) allOf(n *source.Node, t *Term) Rule {
	d.object(n, keys{must: []string{"allOf"}})
	var r allOf
	for _, e := range d.elements(n, "allOf", 2) {
		r.parts = append(r.parts, d.rule(e, t))
	}
	return r
}

func (d *decoder) when(n *source.Node, t *Term) Rule {
	d.object(n, keys{must: []string{"when", "otherwise"}})
	var r when
	for _, e := range d.elements(n, "when", 1) {
		if d.object(e, keys{must: []string{"fact", "then"}, may: append([]string{"and"}, questions...)}) {
			r.cases = append(r.cases, d.whenCase(e, t))
		}
	}
	r.otherwise = d.branch(n.Member("otherwise"), t)
	return r
}

// questions are the keys of what a condition can ask of its fact: one each.
var questions = []string{"isOneOf", "before", "from", "upTo", "atLeast"}

func (d *decoder) whenCase(n *source.Node, t *Term) whenCase {
	c := whenCase{conditions: []condition{d.condition(n, t)}, then: d.branch(n.Member("then"), t)}
	if n.Member("and") == nil {
		return c
	}
	for _, e := range d.elements(n, "and", 1) {
		if d.object(e, keys{must: []string{"fact"}, may: questions}) {
			c.conditions = append(c.conditions, d.condition(e, t))
		}
	}
	return c
}

func (d *decoder) condition(n *source.Node, t *Term) condition {
	var c condition
	var given []string
	for _, key := range questions {
		if n.Member(key) != nil {
			given = append(given, key)
		}
	}
	if len(given) != 1 {
		d.fault(n.Place(), fmt.Sprintf("%d conditions on one fact", len(given)), oneOfThese(questions), "")
		return c
	}
	switch given[0] {
	case "isOneOf":
		if c.fact = d.fact(n.Member("fact"), t, wordFact); c.fact != "" {
			c.isOneOf = d.choices(n, "isOneOf", 1, c.fact.Words())
		}
	case "upTo", "atLeast":
		if c.fact = d.fact(n.Member("fact"), t, numberFact); c.fact != "" {
			c.upTo, c.atLeast = d.bound(n.Member("upTo"), c.fact), d.bound(n.Member("atLeast"), c.fact)
		}
	default:
		c.fact = d.fact(n.Member("fact"), t, dateFact)
		c.before, c.from = d.date(n, "before"), d.date(n, "from")
	}
	return c
}

// bound reads the figure that a fact is held against, or nothing.
func (d *decoder) bound(n *source.Node, of Fact) *figure {
	if n == nil {
		return nil
	}
	return new(d.figure(n, of.Kind(), false))
}

// branch reads what a case leads to: a rule, "notAsked" or "notCovered".
func (d *decoder) branch(n *source.Node, t *Term) Rule {
	switch {
	case n == nil:
		return nil
	case n.Kind != source.String:
		return d.rule(n, t)
	case d.choice(n, []string{"notAsked", "notCovered"}) == "notCovered":
		return uncovered{}
	}
	return exempt{}
}

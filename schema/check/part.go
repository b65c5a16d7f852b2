package check

import (
	"math"

	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

// part is one part of an answer, before it is written into the report. A clause is
// asked again at every corner of its tolerances and only one answer is kept, so all
// that is written for people, and all the pointers, are made of that one alone.
type part struct {
	outcome report.Outcome
	reason  report.Reason
	about   string // the other thing of a comparison
	text    string
	found   string // in words; where there are none, as sizes has it
	needed  string
	sizes   sizes
	source  citation
	mend    *report.Mend
	missing []report.Missing
	place   func() report.Place // nil until it is known
	last    *Sheet              // that noted what the part rests on; the others hang on it
}

// sizes are the two sides of a comparison of quantities.
type sizes struct {
	kind          unit.Kind // zero when nothing was compared
	found, needed float64
	over          float64 // by how much the limit is kept, negative when it is broken
	broken        bool
	unmeasured    bool // there is a limit, and nothing to hold against it
}

// margin is over as a share of the limit, where it can be one.
func (z *sizes) margin() (share float64, ok bool) {
	return z.over / math.Max(math.Abs(z.needed), math.SmallestNonzeroFloat64), z.kind != 0 && z.needed != 0 && !z.unmeasured
}

// citation is where a limit stands: the question, the entry that answers it, and the
// rule in words.
type citation struct {
	term  *code.Term
	entry *code.Entry
	rule  string
}

func (c citation) source() *report.Source {
	if c.entry == nil {
		return nil
	}
	e := c.entry
	return &report.Source{Book: c.term.Book.String(), Document: e.Document, Clause: e.Clause, Edition: e.Edition,
		Address: e.Address, Provenance: report.Provenance(e.Provenance), Rule: c.rule, Note: e.Note}
}

// sign notes that the part rests on what a sheet holds, unless its place is known: that
// is where the hand has to go, to what is missing, to what a mend would change, to the
// quantity that was compared, or to the last statement that was read.
func (s *Sheet) sign(p *part) {
	s.before, p.last = p.last, s
	if p.place != nil {
		return
	}
	switch {
	case len(p.missing) > 0:
		first := p.missing[0].Place
		p.place = func() report.Place { return first }
	case p.mend != nil && len(p.mend.Set) > 0 && s.at(p.mend.Set[0].Pointer) != nil:
		node := s.at(p.mend.Set[0].Pointer)
		p.place = func() report.Place { return PlaceOf(node.Place()) }
	case s.sized != nil:
		p.place = placeAt(s.sized)
	case s.last != nil:
		p.place = placeAt(s.last)
	}
}

func placeAt(spot *layout.Spot) func() report.Place {
	return func() report.Place { return place(spot) }
}

// write writes the part into the report's, which is empty.
func (p *part) write(out *report.Part, book *notebook) {
	out.Outcome, out.Reason, out.About, out.Text = p.outcome, p.reason, p.about, p.text
	out.Source, out.Mend, out.Missing = p.source.source(), p.mend, p.missing
	if p.place != nil {
		out.Place = p.place()
	}
	p.sizes.write(out)
	if p.found != "" {
		out.Found = report.Words(p.found)
	}
	if p.needed != "" {
		out.Needed = report.Words(p.needed)
	}
	book.write(out, p.last)
}

func (z *sizes) write(out *report.Part) {
	switch {
	case z.kind == 0:
	case z.unmeasured:
		out.Needed = report.Quantity(z.kind, z.needed)
	default:
		out.Found, out.Needed = report.Apart(z.kind, z.found, z.needed)
		if z.broken {
			out.Short = report.Quantity(z.kind, -z.over)
		}
		if share, ok := z.margin(); ok {
			out.Margin = &share
		}
	}
}

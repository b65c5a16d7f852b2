package check

import (
	"slices"

	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

// note is one thing that a sheet rests on, as it was met: a layout.Stated that was read,
// the *layout.Spot of a whole list, the *code.Term of a limit, a surveyed list, or the
// *Sheet of a figure that was taken. Sheets are many and most are dropped, so a note is
// a pointer to what is there anyway.
type note any

// surveyed is a list that an answer relies on to be complete.
type surveyed struct {
	at   *layout.Spot
	list string
}

// notebook gathers the notes of a part, each once, to write them all into the report.
// One worker uses the same again and again.
type notebook struct {
	signed []*Sheet
	notes  []note
	seen   map[note]bool // once the notes are no longer few
}

// fewHere is up to how many a look through all of them is quicker than a map.
const fewHere = 64

// write writes what each sheet noted that signed a part, the first one first. The
// working of the one that signed last leads.
func (b *notebook) write(out *report.Part, last *Sheet) {
	b.signed, b.notes, b.seen = b.signed[:0], b.notes[:0], nil
	for s := last; s != nil; s = s.before {
		b.signed = append(b.signed, s)
		out.Working = append(out.Working, s.lines...)
	}
	for _, s := range slices.Backward(b.signed) {
		b.gather(s)
	}
	b.list(out)
}

func (b *notebook) gather(s *Sheet) {
	for _, each := range s.notes {
		if !b.has(each) {
			b.add(each)
			if figure, ok := each.(*Sheet); ok {
				b.gather(figure)
			}
		}
	}
}

func (b *notebook) has(each note) bool {
	if b.seen != nil {
		return b.seen[each]
	}
	return slices.Contains(b.notes, each)
}

func (b *notebook) add(each note) {
	b.notes = append(b.notes, each)
	switch {
	case b.seen != nil:
		b.seen[each] = true
	case len(b.notes) > fewHere:
		b.seen = make(map[note]bool, 2*len(b.notes))
		for _, old := range b.notes {
			b.seen[old] = true
		}
	}
}

// list writes the notes into lists of just their number.
func (b *notebook) list(out *report.Part) {
	var inputs, limits, surveys int
	for _, each := range b.notes {
		switch each.(type) {
		case layout.Stated, *layout.Spot:
			inputs++
		case *code.Term:
			limits++
		case surveyed:
			surveys++
		}
	}
	out.Inputs, out.Limits, out.Surveys = slices.Grow(out.Inputs, inputs), slices.Grow(out.Limits, limits), slices.Grow(out.Surveys, surveys)
	for _, each := range b.notes {
		switch each := each.(type) {
		case layout.Stated:
			out.Inputs = append(out.Inputs, report.Input{Pointer: each.Spot().Pointer(), Basis: string(each.Evidence().Basis)})
		case *layout.Spot:
			out.Inputs = append(out.Inputs, report.Input{Pointer: each.Pointer(), Basis: string(layout.BasisStated)})
		case *code.Term:
			out.Limits = append(out.Limits, each.ID)
		case surveyed:
			out.Surveys = append(out.Surveys, each.at.Pointer()+"#"+each.list)
		}
	}
}

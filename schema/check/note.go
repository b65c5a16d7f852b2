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

// notebook writes notes into a part, each once.
type notebook struct {
	part *report.Part
	few  []note
	many map[note]bool // instead of few, once they are no longer few
}

// fewHere is up to how many a look through all of them is quicker than a map.
const fewHere = 64

func (n *notebook) addAll(s *Sheet) {
	for _, each := range s.notes {
		if n.isNew(each) {
			n.add(each)
		}
	}
}

func (n *notebook) isNew(each note) bool {
	switch {
	case n.many != nil && n.many[each] || slices.Contains(n.few, each):
		return false
	case n.many != nil:
		n.many[each] = true
		return true
	}
	n.few = append(n.few, each)
	if len(n.few) > fewHere {
		n.many = make(map[note]bool, 2*len(n.few))
		for _, old := range n.few {
			n.many[old] = true
		}
		n.few = nil
	}
	return true
}

func (n *notebook) add(each note) {
	p := n.part
	switch each := each.(type) {
	case layout.Stated:
		p.Inputs = append(p.Inputs, report.Input{Pointer: each.Spot().Pointer(), Basis: string(each.Evidence().Basis)})
	case *layout.Spot:
		p.Inputs = append(p.Inputs, report.Input{Pointer: each.Pointer(), Basis: string(layout.BasisStated)})
	case *code.Term:
		p.Limits = append(p.Limits, each.ID)
	case surveyed:
		p.Surveys = append(p.Surveys, each.at.Pointer()+"#"+each.list)
	case *Sheet:
		n.addAll(each)
	}
}

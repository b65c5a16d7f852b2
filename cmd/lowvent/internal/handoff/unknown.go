package handoff

import (
	"fmt"
	"slices"
	"strings"

	"lowvent.example/cmd/lowvent/internal/paper"
	"lowvent.example/schema/report"
)

// notKnown is what is to be measured, each thing once with how to do it, with all the
// findings that it would settle and a blank for what was measured.
func notKnown(m *Matter) paper.Section {
	open := m.findings(ended(report.NotKnown))
	t := &paper.Table{Caption: "What is not known never counts as met", Small: true,
		Columns: columns([]string{"what to measure", "how", "for", "measured, by, on"}, 3, 4.4, 3.4, 2.4)}
	for _, l := range lacks(open, m.numbers()) {
		t.Rows = append(t.Rows, []paper.Cell{text(l.what), text(l.measure), {Text: strings.Join(l.settles, "; "), Word: string(l.word)}, blank()})
	}
	return paper.Section{ID: "not-known", Title: fmt.Sprintf("Not known: %s, each waiting for what is to be measured", of(len(open), "finding")),
		Blocks: []paper.Block{orNone(t, "No question waits for something that the file does not state. What it states is not inspected.")}}
}

// lack is one thing that the file does not state.
type lack struct {
	what, measure string
	word          report.Signal // the worst of the findings that wait for it
	settles       []string
}

// lacks gathers what the findings wait for, in the order in which it is first needed. A
// finding that names nothing is itself what is to be answered.
func lacks(open []*report.Finding, numbers map[*report.Finding]int) []lack {
	var all []lack
	add := func(f *report.Finding, what, measure string) {
		settles := fmt.Sprintf("%d %s, %s", numbers[f], f.Check, f.Label)
		i := slices.IndexFunc(all, func(l lack) bool { return l.what == what && l.measure == measure })
		if i < 0 {
			i = len(all)
			all = append(all, lack{what: what, measure: measure, word: f.Word})
		}
		if f.Word.Rank() > all[i].word.Rank() {
			all[i].word = f.Word
		}
		if !slices.Contains(all[i].settles, settles) {
			all[i].settles = append(all[i].settles, settles)
		}
	}
	for _, f := range open {
		names := 0
		for _, p := range f.Parts {
			for _, each := range p.Missing {
				add(f, each.What+" ("+each.Place.Pointer+")", each.Measure)
				names++
			}
		}
		if names == 0 {
			add(f, f.Asks, "")
		}
	}
	return all
}

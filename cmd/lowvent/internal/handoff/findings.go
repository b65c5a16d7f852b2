package handoff

import (
	"fmt"
	"slices"
	"strings"

	"lowvent.example/cmd/lowvent/internal/paper"
	"lowvent.example/cmd/lowvent/internal/render/saying"
	"lowvent.example/schema/report"
)

// worstOf is how many findings stand on the page of the worst.
const worstOf = 5

// worst is the page of the worst that is not met, or not known where lives hang on it: of
// each what it says, what was found and who may act. All else of them comes later.
func worst(m *Matter) paper.Section {
	s := paper.Section{ID: "worst", Title: "The worst five", NewPage: true}
	open := m.findings(func(f *report.Finding) bool { return f.Counts(report.Notice) })
	if len(open) == 0 {
		s.Blocks = []paper.Block{&paper.Para{Text: "In what the file states, nothing was found that is not met, and nothing that lives hang on is not known. That is no approval: nothing was inspected, and what the fitter has to prove stands on the fitter's pages."}}
		return s
	}
	for _, f := range open[:min(worstOf, len(open))] {
		s.Blocks = append(s.Blocks, heading(f), &paper.Pairs{Rows: gist(f)})
	}
	if len(open) > worstOf {
		s.Blocks = append(s.Blocks, &paper.Para{Text: fmt.Sprintf("And %s more, which the pages on what is not met and not known tell.", of(len(open)-worstOf, "finding"))})
	}
	return s
}

// gist is a finding in four lines.
func gist(f *report.Finding) []paper.Pair {
	rows := []paper.Pair{{Label: "asked", Value: f.Asks + outcome(f)}, {Label: "why", Value: f.Why}}
	if found := alike(f, compared); len(found) > 0 {
		rows = append(rows, paper.Pair{Label: "found", Value: found[0]})
	}
	if mends := alike(f, mended); len(mends) > 0 {
		rows = append(rows, paper.Pair{Label: "mend", Value: mends[0]})
	}
	return append(rows, paper.Pair{Label: "who may act", Value: string(f.MayAct)})
}

// notMet is every finding that is not met, worst first.
func notMet(m *Matter) paper.Section {
	open := m.findings(ended(report.NotMet))
	s := paper.Section{ID: "not-met", Title: fmt.Sprintf("Not met: %s, worst first", of(len(open), "finding")), NewPage: true}
	for _, word := range report.Signals() {
		s.Blocks = append(s.Blocks, &paper.Para{Word: string(word), Text: word.Meaning()})
	}
	if len(open) == 0 {
		s.Blocks = append(s.Blocks, &paper.Para{Text: "None in what the file states. Nothing was inspected."})
	}
	for _, f := range open {
		s.Blocks = append(s.Blocks, finding(f)...)
	}
	return s
}

func heading(f *report.Finding) paper.Block {
	return &paper.Heading{Word: string(f.Word), Text: f.Check + ", " + f.Label}
}

// mostRows is how many comparisons of one finding have a row of their own.
const mostRows = 3

// finding tells one finding from what it says down to who may mend it. What several of
// its clauses say alike is told once.
func finding(f *report.Finding) []paper.Block {
	rows := []paper.Pair{{Label: "asked", Value: f.Asks + outcome(f)}}
	add := func(label string, texts []string) {
		for _, each := range texts {
			rows = append(rows, paper.Pair{Label: label, Value: each})
		}
	}
	found := alike(f, compared)
	add("found", found[:min(mostRows, len(found))])
	if len(found) > mostRows {
		add("also", []string{strings.Join(found[mostRows:], ". ")})
	}
	add("rule", alike(f, ruled))
	add("source", alike(f, func(p *report.Part) string { return saying.Cite(p.Source) }))
	add("mend", alike(f, mended))
	add("missing", missing(f))
	add("why", []string{f.Why})
	add("who may act", []string{string(f.MayAct)})
	add("in the file", []string{saying.At(f.Place) + " " + f.Place.Pointer})
	if w := f.Waiver; w != nil {
		add("waived", []string{fmt.Sprintf("by %s until %s: %s (the finding stands)", w.DecidedBy, w.Until, w.Reason)})
	}
	return []paper.Block{heading(f), &paper.Pairs{Rows: rows}}
}

// alike is what the clauses that ended as the finding did say, each thing once.
func alike(f *report.Finding, say func(*report.Part) string) []string {
	var all []string
	for i := range f.Parts {
		if p := &f.Parts[i]; p.Outcome == f.Outcome {
			if said := say(p); said != "" && !slices.Contains(all, said) {
				all = append(all, said)
			}
		}
	}
	return all
}

func outcome(f *report.Finding) string {
	if f.Outcome == report.NotKnown {
		return " Not known."
	}
	return " Not met."
}

// compared is what was found against what is needed, and by how much they differ.
func compared(p *report.Part) string {
	var all []string
	for _, each := range []struct {
		word   string
		amount *report.Amount
	}{{"", p.Found}, {"needed ", p.Needed}, {"they differ by ", p.Short}} {
		if each.amount != nil && each.amount.Text != "" {
			all = append(all, each.word+each.amount.Text)
		}
	}
	about := strings.TrimPrefix(strings.TrimSuffix(p.About+": "+p.Text, ": "), ": ")
	return strings.TrimSuffix(strings.TrimPrefix(about+": "+strings.Join(all, "; "), ": "), ": ")
}

// ruled is the rule in words, where it says more than what is needed.
func ruled(p *report.Part) string {
	if p.Source == nil || p.Needed != nil && p.Found != nil && strings.Contains(p.Source.Rule, p.Needed.Text) {
		return ""
	}
	return p.Source.Rule
}

func mended(p *report.Part) string {
	if p.Mend == nil {
		return ""
	}
	return p.Mend.Text
}

// missing is what the file does not state, with how to find it out.
func missing(f *report.Finding) []string {
	var all []string
	for _, p := range f.Parts {
		for _, each := range p.Missing {
			all = append(all, each.What+" ("+each.Place.Pointer+"). How to measure: "+each.Measure)
		}
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// notKnown is every question that the file does not answer, with what to go and measure.
func notKnown(m *Matter) paper.Section {
	open := m.findings(ended(report.NotKnown))
	t := &paper.Table{Caption: "What is not known never counts as met", Small: true,
		Columns: columns([]string{"check", "of", "what the file does not state", "how to measure it"}, 3, 2.4, 3, 5)}
	for _, f := range open {
		t.Rows = append(t.Rows, unknown(f)...)
	}
	return paper.Section{ID: "not-known", Title: fmt.Sprintf("Not known: %s, each to be measured", of(len(open), "question")), NewPage: true,
		Blocks: []paper.Block{orNone(t, "The file states all that the checks asked of it. What it states is not inspected.")}}
}

func unknown(f *report.Finding) [][]paper.Cell {
	var rows [][]paper.Cell
	seen := map[string]bool{}
	for _, p := range f.Parts {
		for _, each := range p.Missing {
			if seen[each.What+each.Place.Pointer] {
				continue
			}
			seen[each.What+each.Place.Pointer] = true
			rows = append(rows, []paper.Cell{{Text: f.Check, Word: string(f.Word)}, text(f.Label), text(each.What + " (" + each.Place.Pointer + ")"), text(each.Measure)})
		}
	}
	if rows == nil {
		rows = [][]paper.Cell{{{Text: f.Check, Word: string(f.Word)}, text(f.Label), text(f.Asks), text("")}}
	}
	return rows
}

package handoff

import (
	"fmt"
	"slices"
	"strings"

	"lowvent.example/cmd/lowvent/internal/paper"
	"lowvent.example/cmd/lowvent/internal/render/saying"
	"lowvent.example/schema/report"
)

// worstOf is how many faults stand on the page of the worst.
const worstOf = 5

// worst is the page of the worst that is not met, or not known where lives hang on it: of
// each what it asks, what was found and who may act. All else of them comes later.
func worst(m *Matter) paper.Section {
	s := paper.Section{ID: "worst", Title: "The worst five", NewPage: true}
	open := m.findings(func(f *report.Finding) bool { return f.Counts(report.Notice) })
	if len(open) == 0 {
		s.Blocks = []paper.Block{&paper.Para{Text: "In what the file states, nothing was found that is not met, and nothing that lives hang on is not known. That is no approval: nothing was inspected, and what the fitter has to prove stands on the fitter's pages."}}
		return s
	}
	all := byGravity(m.faults(open))
	told := 0
	for _, f := range all[:min(worstOf, len(all))] {
		s.Blocks = append(s.Blocks, heading(f), &paper.Pairs{Rows: gist(f)})
		told += len(f.findings)
	}
	if left := len(m.numbered()) - told; left > 0 {
		s.Blocks = append(s.Blocks, &paper.Para{Text: fmt.Sprintf("%s more that are open, with their numbers, stand on the pages on what is not met, not known and left to the fitter.", of(left, "finding"))})
	}
	return s
}

// gist is a fault in five lines.
func gist(f fault) []paper.Pair {
	rows := []paper.Pair{{Label: "of", Value: f.things()}}
	if found := f.alike(compared); len(found) > 0 {
		rows = append(rows, paper.Pair{Label: "found", Value: found[0]})
	}
	rows = append(rows, paper.Pair{Label: "why", Value: f.findings[0].Why})
	if mends := f.alike(mended); len(mends) > 0 {
		rows = append(rows, paper.Pair{Label: "mend", Value: mends[0]})
	}
	return append(rows, paper.Pair{Label: "who may act", Value: string(f.findings[0].MayAct)})
}

// notMet is every finding that is not met, worst first, those of one question together.
func notMet(m *Matter) paper.Section {
	open := m.findings(ended(report.NotMet))
	s := paper.Section{ID: "not-met", Title: fmt.Sprintf("Not met: %s, worst first", of(len(open), "finding")), NewPage: true}
	for _, word := range report.Signals() {
		s.Blocks = append(s.Blocks, &paper.Para{Word: string(word), Text: word.Meaning()})
	}
	if len(open) == 0 {
		s.Blocks = append(s.Blocks, &paper.Para{Text: "None in what the file states. Nothing was inspected."})
	}
	for _, f := range m.faults(open) {
		s.Blocks = append(s.Blocks, told(f)...)
	}
	return s
}

func heading(f fault) paper.Block {
	return &paper.Heading{Word: string(f.findings[0].Word), Text: f.title()}
}

// told tells one fault: what was found of each thing, and once what holds for all of them.
func told(f fault) []paper.Block {
	var rows []paper.Pair
	add := func(label string, texts []string) {
		for _, each := range texts {
			rows = append(rows, paper.Pair{Label: label, Value: each})
		}
	}
	for i, each := range f.findings {
		rows = append(rows, paper.Pair{Label: fmt.Sprintf("%d %s", f.first+i, each.Label), Value: thing(each)})
	}
	add("rule", f.alike(ruled))
	add("source", f.alike(func(p *report.Part) string { return saying.Cite(p.Source) }))
	add("mend", f.alike(mended))
	add("why", []string{f.findings[0].Why})
	add("who may act", []string{string(f.findings[0].MayAct)})
	add("check", []string{f.findings[0].Check})
	return []paper.Block{heading(f), &paper.Pairs{Rows: rows}}
}

// thing is what was found of one thing, where the file says so, and what is missing beside.
func thing(f *report.Finding) string {
	said := []string{strings.Join(alike(f, compared), ". ")}
	if lacks := missing(f); len(lacks) > 0 {
		said = append(said, "Not known as well: "+strings.Join(lacks, "; "))
	}
	place := f.Place.Pointer
	if f.Place.Line > 0 {
		place = fmt.Sprintf("line %d, %s", f.Place.Line, place)
	}
	said = append(said, "("+place+")")
	if w := f.Waiver; w != nil {
		said = append(said, fmt.Sprintf("Waiver, %s and verified by nobody: by %s until %s: %s. The finding stands.", w.State, w.DecidedBy, w.Until, w.Reason))
	}
	return strings.Join(slices.DeleteFunc(said, func(s string) bool { return s == "" }), " ")
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
	switch f.Outcome {
	case report.NotKnown:
		return " Not known."
	case report.NotApplicable:
		return " For the fitter to answer."
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

// missing names what the file does not state beside what is not met.
func missing(f *report.Finding) []string {
	var all []string
	for _, p := range f.Parts {
		for _, each := range p.Missing {
			all = append(all, each.What+" ("+each.Place.Pointer+")")
		}
	}
	slices.Sort(all)
	return slices.Compact(all)
}

package handoff

import (
	"fmt"
	"slices"
	"strings"

	"lowvent.example/cmd/lowvent/internal/draw"
	"lowvent.example/cmd/lowvent/internal/paper"
	"lowvent.example/cmd/lowvent/internal/render/saying"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

// withinLimit lists what was compared and lies within its limit, as the file states it: of
// each answer the comparison that decided it.
func withinLimit(m *Matter) paper.Section {
	t := &paper.Table{Caption: "What was compared, not what was seen", Small: true,
		Columns: columns([]string{"check", "of", "found", "needed", "by", "for the fitter to prove"}, 2.6, 2.6, 3, 3, 3, 1.2)}
	all := m.findings(ended(report.Within))
	for _, f := range all {
		toProve := ""
		if f.Reason == report.ToProve {
			toProve = "yes"
		}
		p := deciding(f)
		t.Rows = append(t.Rows, []paper.Cell{text(f.Check), text(f.Label), text(label(p.Found)), text(label(p.Needed)), text(clause(p.Source)), text(toProve)})
	}
	return paper.Section{ID: "within", Title: fmt.Sprintf("Within limit, as stated: %s", of(len(all), "answer")),
		Blocks: []paper.Block{&paper.Para{Text: "Counted: " + asked(&m.Report.Counts) + "."}, orNone(t, "None.")}}
}

// deciding is the comparison that stands nearest to its limit, else the first.
func deciding(f *report.Finding) report.Part {
	var best report.Part
	for _, p := range f.Parts {
		if p.Outcome != f.Outcome || p.Found == nil && p.Needed == nil {
			continue
		}
		if best.Found == nil && best.Needed == nil || p.Margin != nil && (best.Margin == nil || *p.Margin < *best.Margin) {
			best = p
		}
	}
	return best
}

// clause is where a limit stands, without its edition, which the first page tells.
func clause(s *report.Source) string {
	if s == nil {
		return ""
	}
	if s.Document == "" {
		return saying.Provenance(s.Provenance)
	}
	place := strings.TrimSpace(s.Document + " " + s.Clause)
	if s.Provenance != "read" {
		place += ", " + saying.Provenance(s.Provenance)
	}
	return place
}

func label(a *report.Amount) string {
	if a == nil {
		return ""
	}
	return a.Text
}

// notCovered lists what the code is silent on, and what is left to the fitter.
func notCovered(m *Matter) paper.Section {
	silent := m.findings(func(f *report.Finding) bool { return f.Reason == report.NotCovered })
	ask := m.findings(func(f *report.Finding) bool { return f.Reason == report.AskFitter })
	blocks := []paper.Block{
		orNone(openTable("The code is silent, and nothing was taken from another", silent), "The code speaks to all that was asked."),
		orNone(openTable("Questions for the fitter: too little is known of the text to judge by it", ask), "No question is left to the fitter for want of a text."),
	}
	if c := m.Report.Code; c != nil && !c.Governs {
		blocks = append(blocks, &paper.Para{Text: "The code is a borrowed yardstick: " + c.Borrowed})
	}
	return paper.Section{ID: "not-covered", Title: fmt.Sprintf("Not covered by the code: %d; left to the fitter: %d", len(silent), len(ask)), Blocks: blocks}
}

// openTable lists findings that have no answer, each once, with what they asked.
func openTable(caption string, all []*report.Finding) *paper.Table {
	t := &paper.Table{Caption: caption, Small: true, Columns: columns([]string{"check", "of", "asked"}, 2, 4, 5)}
	for _, g := range grouped(all) {
		t.Rows = append(t.Rows, []paper.Cell{text(g.check), text(strings.Join(g.labels, ", ")), text(strings.Join(g.asks, " "))})
	}
	return t
}

// group is one check with the things that it ended alike for.
type group struct {
	check        string
	labels, asks []string
}

func grouped(all []*report.Finding) []group {
	var out []group
	for _, f := range all {
		i := slices.IndexFunc(out, func(g group) bool { return g.check == f.Check })
		if i < 0 {
			i = len(out)
			out = append(out, group{check: f.Check, asks: []string{f.Asks}})
		}
		out[i].labels = append(out[i].labels, f.Label)
		for _, p := range f.Parts {
			if p.Reason == f.Reason && p.Text != "" && !slices.Contains(out[i].asks, p.Text) {
				out[i].asks = append(out[i].asks, p.Text)
			}
		}
	}
	return out
}

// doesNotApply lists the questions that do not arise, so that none falls silent.
func doesNotApply(m *Matter) paper.Section {
	t := &paper.Table{Caption: "Questions that do not arise, by what the file states", Small: true, Columns: columns([]string{"check", "of", "since"}, 2, 4, 5)}
	all := m.findings(func(f *report.Finding) bool {
		return f.Outcome == report.NotApplicable && (f.Reason == report.NoSubject || f.Reason == report.RuleExempts)
	})
	for _, g := range grouped(all) {
		t.Rows = append(t.Rows, []paper.Cell{text(g.check), text(strings.Join(g.labels, ", ")), text(strings.Join(g.asks[1:], "; "))})
	}
	return paper.Section{ID: "not-applicable", Title: fmt.Sprintf("Not applicable: %d", len(all)), Blocks: []paper.Block{orNone(t, "None.")}}
}

// solved tells the figures that give a size to fit: they stand with the pipe schedule, on
// the fitter's pages and nowhere else.
func solved(id string) bool { return id == "line.least-bore" || id == "line.least-size" }

// figures lists every figure, whether or not a check reads it.
func figures(m *Matter) paper.Section {
	t := &paper.Table{Caption: "Each is as good as what the file states. None takes a code's limit back", Small: true, Columns: columns([]string{"figure", "of", "value"}, 5, 2.4, 4)}
	for i := range m.Report.Figures {
		f := &m.Report.Figures[i]
		value := valueOf(f)
		if f.Value == nil && f.Course == nil {
			value = "missing " + saying.Lacking(f.Missing)
		}
		if solved(f.ID) && f.Value != nil {
			value = "stands on the fitter's pages, in the pipe schedule"
		}
		t.Rows = append(t.Rows, []paper.Cell{text(f.Title), text(f.Label), text(value)})
	}
	return paper.Section{ID: "figures", Title: "Figures", Blocks: []paper.Block{orNone(t, "None.")}}
}

// charts are the courses over time. Where cylinder pressure can reach an appliance, what is
// drawn of its burners is too little, and that is said before it.
func charts(m *Matter) paper.Section {
	blocks := pictures("No course could be drawn: what it takes is not stated.", draw.Charts(m.Report)...)
	if at := draw.Unregulated(m.Layout); len(at) > 0 {
		blocks = append([]paper.Block{&paper.Para{Word: string(report.Danger), Strong: true,
			Text: "gas at cylinder pressure can reach " + refs(at) + ". Its burners then give far more gas than is drawn here, and the times are far shorter."}}, blocks...)
	}
	return paper.Section{ID: "charts", Title: "Charts: how it goes over time", NewPage: true, Blocks: blocks}
}

func refs(all []layout.Ref) string {
	var names []string
	for _, r := range all {
		names = append(names, string(r))
	}
	return strings.Join(names, ", ")
}

// assumed is what was reckoned with, but for the solved sizes.
func assumed(m *Matter) paper.Section {
	t := constants(m, "What was reckoned with and is not in the file", func(id string) bool { return !solved(id) })
	return paper.Section{ID: "assumptions", Title: "Assumptions, with their sources", Blocks: []paper.Block{orNone(t, "None.")}}
}

// constants lists what was reckoned with that the file does not state, in those checks and
// figures: constants, rules of the trade, and this program's own rules, each with where it
// comes from.
func constants(m *Matter, caption string, in func(id string) bool) *paper.Table {
	t := &paper.Table{Caption: caption, Small: true, Columns: columns([]string{"what", "value", "source"}, 4, 3, 5)}
	seen := map[string]bool{}
	add := func(l report.Line) {
		row := []paper.Cell{text(l.What), text(label(l.Value)), text(l.Source)}
		key := fmt.Sprint(row)
		if l.Role == "constant" && !seen[key] {
			seen[key] = true
			t.Rows = append(t.Rows, row)
		}
	}
	for _, f := range m.Report.Findings {
		for _, p := range f.Parts {
			for _, l := range p.Working {
				if in(f.Check) {
					add(l)
				}
			}
		}
	}
	for _, f := range m.Report.Figures {
		for _, l := range f.Working {
			if in(f.ID) {
				add(l)
			}
		}
	}
	slices.SortFunc(t.Rows, func(a, b []paper.Cell) int { return strings.Compare(fmt.Sprint(a), fmt.Sprint(b)) })
	return t
}

// changes tells what is otherwise than in the older file.
func changes(m *Matter) paper.Section {
	t := &paper.Table{Caption: "Against " + m.Old.File + ", SHA-256 " + m.Old.SHA256 + ", judged on the same day", Small: true,
		Columns: columns([]string{"check", "of", "went", "before", "now"}, 3, 2.4, 2, 4, 4)}
	for _, turn := range report.Turns() {
		for _, c := range m.Changes {
			if c.Turn == turn {
				f := c.Finding()
				t.Rows = append(t.Rows, []paper.Cell{{Text: f.Check, Word: string(f.Word)}, text(f.Label), text(string(turn)), text(saying.Ended(c.Old)), text(saying.Ended(c.New))})
			}
		}
	}
	return paper.Section{ID: "changes", Title: "Changes since the older file",
		Blocks: []paper.Block{orNone(t, "Every question ended as it did before. What the file says may still have changed.")}}
}

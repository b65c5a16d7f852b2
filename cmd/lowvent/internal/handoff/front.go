package handoff

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"lowvent.example/cmd/lowvent/internal/paper"
	"lowvent.example/cmd/lowvent/internal/render/saying"
	"lowvent.example/schema/report"
)

// first is the first page: who may work, what is live, and by which text was judged.
func first(m *Matter) paper.Section {
	var cautions []paper.Block
	for _, each := range m.Run.Caution {
		cautions = append(cautions, &paper.Para{Text: each, Strong: true})
	}
	blocks := []paper.Block{&paper.Box{Blocks: append(cautions, today(m)...)}}
	if len(m.Report.Waivers) > 0 {
		blocks = append(blocks, waivers(m))
	}
	blocks = append(blocks, &paper.Box{Blocks: gasNow(m)}, &paper.Box{Blocks: yardstick(m)})
	if m.Report.Overlay != nil {
		blocks = append(blocks, overlay(m.Report.Overlay))
	}
	blocks = append(blocks, &paper.Pairs{Rows: []paper.Pair{
		{Label: "dwelling", Value: each(word(&m.Layout.Dwelling.Kind), word(&m.Layout.Dwelling.Identity)) + "; gas: " + word(&m.Layout.Gas.Kind) + "; measured by " + word(&m.Layout.SurveyedBy.Who) + ", on " + date(&m.Layout.SurveyedBy.On)},
		{Label: "file", Value: m.Report.File + ", judged on " + m.Run.On + "; SHA-256 " + m.Report.SHA256},
	}}, &paper.Para{Text: saying.Result(m.Run), Strong: true})
	return paper.Section{ID: "first", Title: "Before anything else", Blocks: blocks}
}

// today is what the owner does before anybody comes, where something is at DANGER, not met
// or not known, or nobody says that the gas is off. None of it loosens a joint. What it asks
// is common practice of the trade, no source.
func today(m *Matter) []paper.Block {
	grave := len(m.findings(func(f *report.Finding) bool { return f.Word == report.Danger && f.Counts(report.Danger) }))
	connected, known := m.Layout.Gas.Connected.Get()
	if grave == 0 && known && !connected {
		return nil
	}
	head := m.Report.Gas + "."
	if grave > 0 {
		head = fmt.Sprintf("%s; %s at DANGER.", m.Report.Gas, of(grave, "open finding"))
	}
	items := []string{
		"Every flame and pilot out, and the valve on every cylinder shut; it stays shut.",
		"A cylinder that is joined to nothing: out into the open air, upright. One that is joined: leave it, the fitter takes it off.",
		"Out of gas lockers and away from cylinders: whatever is loose and sparks, burns or gives off vapour.",
		"Where gas is smelt: out, as the card for the wall says. Then the fitter. Loosen, cut, join and test nothing.",
	}
	return []paper.Block{&paper.Para{Text: "Today, and without touching a joint: " + head, Strong: true}, &paper.List{Ordered: true, Items: items}}
}

func firstSentence(s string) string {
	if i := strings.Index(s, ". "); i >= 0 {
		return s[:i+1]
	}
	return s
}

// gasNow says who may work and what a fitter finds on arrival.
func gasNow(m *Matter) []paper.Block {
	gas := &m.Layout.Gas
	return []paper.Block{&paper.Pairs{Rows: []paper.Pair{
		{Label: "licence needed", Value: "one that covers gas work in a dwelling of the kind " + word(&m.Layout.Dwelling.Kind) + ", where it stands"},
		{Label: "gas now", Value: m.Report.Gas},
		{Label: "work done so far", Value: word(&gas.WorkDone)},
		{Label: "what is live", Value: word(&gas.LiveParts)},
		{Label: "access, whom to call", Value: word(&gas.Access)},
		{Label: "fitter's licence, no.", Blank: true},
	}}}
}

// yardstick says by which text was judged, and how well that text is known.
func yardstick(m *Matter) []paper.Block {
	rows := []paper.Pair{{Label: "judged by", Value: "no code: none was chosen. Only the law on the thing itself, common practice and this program's own rules were judged."}}
	if c := m.Report.Code; c != nil {
		rows = []paper.Pair{{Label: "judged by", Value: strings.TrimSuffix(c.Title+"; "+c.Edition, "; ")}}
		if !c.Governs {
			rows = append(rows, paper.Pair{Label: "borrowed yardstick", Value: "not shown to be the law here: " + firstSentence(c.Borrowed) + " The annex says more."})
		}
		if c.File != "" {
			rows = append(rows, paper.Pair{Label: "read from", Value: c.File + ", a file of the user's own: nobody has verified it"})
		}
	}
	for _, c := range m.Report.Candidates {
		rows = append(rows, paper.Pair{Label: "might fit", Value: c.Title})
	}
	rows = append(rows, paper.Pair{Label: "text not read", Value: secondHand(m)},
		paper.Pair{Label: "fitter's own code", Blank: true})
	return []paper.Block{&paper.Pairs{Rows: rows}}
}

// secondHand lists the limits in use whose text nobody read, by how they are known.
func secondHand(m *Matter) string {
	clauses := map[report.Provenance][]string{}
	for _, f := range m.Report.Findings {
		for _, p := range f.Parts {
			if s := p.Source; s != nil && s.Provenance != "read" && s.Document != "" {
				clauses[s.Provenance] = append(clauses[s.Provenance], strings.TrimSpace(s.Document+" "+s.Clause))
			}
		}
	}
	var all []string
	for _, known := range slices.Sorted(maps.Keys(clauses)) {
		cited := slices.Compact(slices.Sorted(slices.Values(clauses[known])))
		all = append(all, saying.Provenance(known)+": "+strings.Join(cited, ", "))
	}
	if all == nil {
		return "of none of the limits that were judged by"
	}
	return strings.Join(all, "; ")
}

// asked counts what became of every question. It is no score.
func asked(c *report.Counts) string {
	return fmt.Sprintf("%s of %s: not met %d DANGER, %d WARNING, %d CAUTION, %d NOTICE; not known %d; within limit as stated %d, of which %d are for the fitter to prove; not covered %d; left to the fitter %d; not applicable %d",
		of(c.Checks, "check"), of(c.Subjects, "subject"), c.Danger, c.Warning, c.Caution, c.Notice, c.NotKnown, c.Within, c.ToProve, c.NotCovered, c.AskFitter, c.NoSubject+c.RuleExempts)
}

// waivers stand at the head, since each is a finding that somebody means to live with.
func waivers(m *Matter) paper.Block {
	t := &paper.Table{Caption: "Waivers: verified by nobody; a waived finding stands, and nothing that was found changes by it",
		Columns: columns([]string{"waiver", "of", "state", "decided by, until", "reason", "the fitter's word on it"}, 2, 3, 2, 3, 4, 3)}
	for _, w := range m.Report.Waivers {
		t.Rows = append(t.Rows, []paper.Cell{strong(w.ID), text(w.Check + " " + w.Subject), text(w.State), text(w.DecidedBy + ", until " + w.Until), text(w.Reason), blank()})
	}
	return t
}

// overlay is the local rules that were heeded.
func overlay(o *report.Overlay) paper.Block {
	t := &paper.Table{Caption: "Local rules from " + o.File + ", over the code " + o.Over + ": nobody has verified them, the fitter confirms them",
		Columns: columns([]string{"limit", "says", "document", "state", "may ask less than the code"}, 2, 4, 3, 2, 4)}
	for _, l := range o.Limits {
		less := "no"
		if l.Loosens {
			less = fmt.Sprintf("yes: by %s, licence %s, until %s: %s", l.By, l.Licence, l.Until, l.Reason)
		}
		t.Rows = append(t.Rows, []paper.Cell{strong(l.Term), text(l.Says), text(l.Document), text(l.State), text(less)})
	}
	return t
}

// Package handoff puts together what a builder hands to a licensed gas fitter: what was
// found, drawn and left open, and the pages on which the fitter works. It judges nothing,
// and says so on every page.
package handoff

import (
	"fmt"

	"lowvent.example/cmd/lowvent/internal/draw"
	"lowvent.example/cmd/lowvent/internal/paper"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

// Foot stands at the foot of every page.
const Foot = "Prepared by the owner from tape and plates. Not inspected. Not a certificate."

// Matter is what a hand-off is made from: one layout, and the report on it with all
// figures and workings.
type Matter struct {
	Layout  *layout.Layout
	Report  *report.FileReport
	Run     *report.Run
	Data    []byte             // the bytes of the layout file
	Old     *report.FileReport // of an older file, or nil
	Changes []report.Change    // since then
}

// Paper is the hand-off as a document.
func Paper(m *Matter) *paper.Document {
	d := &paper.Document{
		Title:    "For the licensed gas fitter",
		Subject:  name(m),
		Language: "en", Made: m.Run.On, Program: m.Run.Program.Name + " " + m.Run.Program.Version, Foot: Foot,
		Enclosed: []paper.Enclosure{{Name: "layout.json", About: "the layout file that these pages were made from, SHA-256 " + m.Report.SHA256, Data: m.Data}},
	}
	d.Parts = []paper.Part{builders(m), fitters(m), wall(m), annex(m)}
	return d
}

// Card is the card for the wall alone.
func Card(m *Matter) *paper.Document {
	return &paper.Document{Title: "Gas: a card for the wall", Subject: name(m), Language: "en", Made: m.Run.On,
		Program: m.Run.Program.Name + " " + m.Run.Program.Version, Foot: Foot, Parts: []paper.Part{wall(m)}}
}

func name(m *Matter) string {
	if m.Report.Title != "" {
		return m.Report.Title
	}
	return m.Report.File
}

// builders are the pages that tell what was found.
func builders(m *Matter) paper.Part {
	sections := append([]paper.Section{first(m), worst(m), schematic(m)}, drawings(m)...)
	sections = append(sections, notMet(m), notKnown(m))
	if m.Old != nil {
		sections = append(sections, changes(m))
	}
	sections = append(sections, charts(m), due(m))
	return paper.Part{ID: "builder", Title: "The builder's pages: what the file states, and what was found", Sections: sections}
}

// fitters are the pages that the fitter works on.
func fitters(m *Matter) paper.Part {
	sections := []paper.Section{unsafe(m), prove(m), unseen(m), hidden(m), joints(m), plates(m)}
	sections = append(sections, schedules(m)...)
	sections = append(sections, materials(m), manuals(m), tests(m), notes(m))
	return paper.Part{ID: "fitter", Title: "The fitter's pages: for the licensed gas fitter's use", Sections: sections}
}

// annex is all else that was asked and computed, so that nothing falls silent.
func annex(m *Matter) paper.Part {
	return paper.Part{ID: "annex", Title: "Annex: all else that was asked, computed and assumed",
		Sections: []paper.Section{withinLimit(m), notCovered(m), doesNotApply(m), figures(m), assumed(m)}}
}

// findings are those of the report that are so, in its order.
func (m *Matter) findings(so func(*report.Finding) bool) []*report.Finding {
	var all []*report.Finding
	for i := range m.Report.Findings {
		if f := &m.Report.Findings[i]; so(f) {
			all = append(all, f)
		}
	}
	return all
}

func ended(o report.Outcome) func(*report.Finding) bool {
	return func(f *report.Finding) bool { return f.Outcome == o }
}

// figure is the text of a figure of a thing, or that it is not known.
func (m *Matter) figure(id, subject string) string {
	for i := range m.Report.Figures {
		if f := &m.Report.Figures[i]; f.ID == id && f.Subject == subject {
			return valueOf(f)
		}
	}
	return notStated
}

// pictures puts drawings under a heading, or says why there is none.
func pictures(none string, drawings ...*draw.Drawing) []paper.Block {
	var blocks []paper.Block
	for _, d := range drawings {
		if d != nil {
			blocks = append(blocks, &paper.Picture{Drawing: d})
		}
	}
	if blocks == nil {
		return []paper.Block{&paper.Para{Text: none}}
	}
	return blocks
}

// of counts things: "3 findings".
func of(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return fmt.Sprintf("%d %ss", n, word)
}

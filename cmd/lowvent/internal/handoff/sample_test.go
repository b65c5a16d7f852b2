package handoff

import (
	"strings"
	"sync"
	"testing"

	"lowvent.example/cmd/lowvent/internal/demos"
	"lowvent.example/cmd/lowvent/internal/paper"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
)

// matterOf is what the papers of a demonstration are made from.
func matterOf(d demos.Demo) *Matter {
	run := &report.Run{Format: report.Format, Program: report.Program{Name: "lowvent", Version: "test"}, On: demos.On().String(),
		FailAt: report.Warning, Caution: report.Cautions(), Files: []report.FileReport{*d.Report}}
	return &Matter{Layout: d.Layout, Report: d.Report, Run: run, Data: []byte("{}\n")}
}

// since is the matter of a demonstration, with an older one.
func since(t *testing.T, old, now string) *Matter {
	t.Helper()
	m := matterOf(demos.One(t, now))
	m.Old = demos.One(t, old).Report
	m.Changes = report.Compare(m.Old, m.Report)
	return m
}

// made is a paper with what it was made from.
type made struct {
	matter *Matter
	paper  *paper.Document
}

// papers are those that were made, by the demonstration's name: each is drawn once.
var papers sync.Map

func paperOf(d demos.Demo) made {
	slot, _ := papers.LoadOrStore(d.Name, sync.OnceValue(func() made {
		m := matterOf(d)
		return made{m, Paper(m)}
	}))
	return slot.(func() made)()
}

// every runs a test on each demonstration. Neither matter nor paper may be changed.
func every(t *testing.T, f func(*testing.T, *Matter, *paper.Document)) {
	t.Helper()
	for _, d := range demos.All(t) {
		t.Run(d.Name, func(t *testing.T) {
			one := paperOf(d)
			f(t, one.matter, one.paper)
		})
	}
}

// tester is a test, or the check of a property.
type tester interface {
	Helper()
	Fatal(...any)
}

// edited is a demonstration with edits, judged anew, or nil where it does not load.
func edited(t tester, d demos.Demo, edits ...source.Edit) *Matter {
	t.Helper()
	m := reloaded(d, edits...)
	if m == nil {
		return nil
	}
	r, err := demos.Report(m.Layout)
	if err != nil {
		t.Fatal(err)
	}
	return matterOf(demos.Demo{Name: d.Name, Layout: m.Layout, Report: r})
}

// reloaded is a demonstration with edits and the report that it had before, for what shows
// only the layout; nil where it does not load.
func reloaded(d demos.Demo, edits ...source.Edit) *Matter {
	root := d.Layout.Root()
	file, err := source.Apply(root.File(), root, edits)
	if err != nil {
		return nil
	}
	l, faults := layout.Load(file)
	if faults != nil {
		return nil
	}
	return matterOf(demos.Demo{Name: d.Name, Layout: l, Report: d.Report})
}

// leaveOut takes a value out of a file, with the evidence that it may have.
func leaveOut(d demos.Demo, pointer string) []source.Edit {
	all := []source.Edit{{Pointer: pointer, Delete: true}}
	cut := strings.LastIndex(pointer, "/")
	if evidence := pointer[:cut] + "/evidence" + pointer[cut:]; d.Layout.Root().At(evidence) != nil {
		all = append(all, source.Edit{Pointer: evidence, Delete: true})
	}
	return all
}

// sectionOf is the section of that id.
func sectionOf(t *testing.T, d *paper.Document, id string) *paper.Section {
	t.Helper()
	for i := range d.Parts {
		for j := range d.Parts[i].Sections {
			if d.Parts[i].Sections[j].ID == id {
				return &d.Parts[i].Sections[j]
			}
		}
	}
	t.Fatalf("there is no section %q", id)
	return nil
}

func partOf(t *testing.T, d *paper.Document, id string) *paper.Part {
	t.Helper()
	for i := range d.Parts {
		if d.Parts[i].ID == id {
			return &d.Parts[i]
		}
	}
	t.Fatalf("there is no part %q", id)
	return nil
}

// blocksOf are the blocks of a kind in a section, those in frames too.
func blocksOf[B paper.Block](s *paper.Section) []B {
	var all []B
	d := paper.Document{Parts: []paper.Part{{Sections: []paper.Section{*s}}}}
	d.Walk(func(_ *paper.Section, b paper.Block) {
		if one, is := b.(B); is {
			all = append(all, one)
		}
	})
	return all
}

// rowsOf are the rows of every table of a section.
func rowsOf(s *paper.Section) [][]paper.Cell {
	var all [][]paper.Cell
	for _, t := range blocksOf[*paper.Table](s) {
		all = append(all, t.Rows...)
	}
	return all
}

// tableOf is the table of a section whose caption begins so.
func tableOf(t *testing.T, s *paper.Section, caption string) *paper.Table {
	t.Helper()
	for _, table := range blocksOf[*paper.Table](s) {
		if strings.HasPrefix(table.Caption, caption) {
			return table
		}
	}
	t.Fatalf("%s has no table %q", s.ID, caption)
	return nil
}

// pairsOf are the labelled values of a section.
func pairsOf(s *paper.Section) map[string]paper.Pair {
	all := map[string]paper.Pair{}
	for _, p := range blocksOf[*paper.Pairs](s) {
		for _, row := range p.Rows {
			all[row.Label] = row
		}
	}
	return all
}

// textsIn is all that a reader finds in sections.
func textsIn(sections ...paper.Section) string {
	d := paper.Document{Parts: []paper.Part{{Sections: sections}}}
	return strings.Join(d.Texts(), "\n")
}

// keyOf tells rows of one finding from those of another.
func keyOf(f *report.Finding) string { return f.Check + " | " + f.Label }

package handoff

import (
	"fmt"
	"slices"

	"lowvent.example/cmd/lowvent/internal/draw"
	"lowvent.example/cmd/lowvent/internal/paper"
)

// drawings are the drawings to scale: plan, side, and each locker.
func drawings(m *Matter) []paper.Section {
	const none = "Nothing could be drawn to scale: the file states no positions. That is a thing to measure, and no sign that there is nothing."
	plan, side := draw.Plan(m.Layout, m.Report), draw.Elevation(m.Layout, m.Report)
	sections := []paper.Section{
		{ID: "plan", Title: "Plan", NewPage: true, Blocks: pictures(none, plan)},
		{ID: "elevation", Title: "Side elevation, with the numbers and signs of the plan", NewPage: true, Blocks: pictures(none, without(side, plan))},
	}
	for _, k := range m.Layout.Lockers.All() {
		sections = append(sections, paper.Section{ID: "locker-" + k.ID(), Title: "Detail of " + k.Label() + ", with the signs of the plan", NewPage: true,
			Blocks: pictures(fmt.Sprintf("%s could not be drawn: its box is not stated.", k.Label()), without(draw.Locker(m.Layout, m.Report, k), plan))})
	}
	return sections
}

// without is a drawing whose legend leaves out what that of another has explained.
func without(d, explained *draw.Drawing) *draw.Drawing {
	if d == nil || explained == nil {
		return d
	}
	known := map[string]bool{}
	for _, each := range explained.Key {
		known[each.Means] = true
	}
	short := *d
	short.Key = slices.DeleteFunc(slices.Clone(d.Key), func(each draw.Explained) bool { return known[each.Means] })
	return &short
}

// schematic is the way of the gas, without the sizes that the program solved.
func schematic(m *Matter) paper.Section {
	return paper.Section{ID: "schematic", Title: "How the gas goes", NewPage: true,
		Blocks: pictures("The file lists nothing that gas flows from or to.", draw.Schematic(m.Layout, m.Report))}
}

// joints is the list of joints by the numbers of the schematic, with the pressure along
// the lines that they are in.
func joints(m *Matter) paper.Section {
	t := &paper.Table{Caption: "Joints, by their numbers on the schematic; a joint that nobody listed is not absent", Small: true,
		Columns: columns([]string{"no.", "line", "joint", "kind", "in", "to be seen", "sealant", "leak fluid"}, 0.8, 1.6, 2, 2, 2.4, 1.2, 1.6, 1.6)}
	for _, j := range draw.Joints(m.Layout) {
		t.Rows = append(t.Rows, []paper.Cell{strong(fmt.Sprint(j.Number)), text(j.Line.ID()), text(j.Joint.ID()), text(word(&j.Joint.Kind)), text(word(&j.Joint.In)),
			text(yes(&j.Joint.Visible)), text(word(&j.Joint.Sealant)), blank()})
	}
	blocks := []paper.Block{orNone(t, "The file lists no joint. Each line has two ends at least: they are not known.")}
	drawn, notDrawn := draw.Pressures(m.Layout, m.Report)
	for _, d := range drawn {
		blocks = append(blocks, &paper.Picture{Drawing: d})
	}
	for _, why := range notDrawn {
		blocks = append(blocks, &paper.Para{Text: why, Strong: true})
	}
	return paper.Section{ID: "joints", Title: "Joints, and the pressure along the lines", Blocks: blocks}
}

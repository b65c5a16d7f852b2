package pdf

import (
	"lowvent.example/cmd/lowvent/internal/letter"
	"lowvent.example/cmd/lowvent/internal/paper"
)

// The room within a cell, beside and above and below its text, and the least that a
// column is wide, in mm.
const (
	beside    = 1.3
	over      = 0.8
	narrowest = 8.0
)

// grid is what all rows of one table share.
type grid struct {
	setter
	style style
	edges []float64 // of the columns, one more than there are columns
}

// table sets the caption, then the headings, which stand again on each page, then the rows.
func (s setter) table(t *paper.Table) []row {
	rows := s.caption(t.Caption)
	if len(t.Columns) == 0 {
		return rows
	}
	g := grid{s, tableStyle, nil}
	if t.Small {
		g.style = smallStyle
	}
	if g.edges = s.columns(t, g.style); g.edges == nil {
		return nil
	}
	head := g.head(t)
	if head != nil {
		rows = append(rows, *head)
	}
	for _, cells := range t.Rows {
		rows = append(rows, g.row(t, cells, head))
	}
	return gapped(rows)
}

func (s setter) caption(text string) []row {
	if text == "" {
		return nil
	}
	rows := s.heading(captionStyle, "", text, 3)
	rows[len(rows)-1].high += 0.8
	return rows
}

// gapped is rows of a table with room above the first; the last is not bound to what follows.
func gapped(rows []row) []row {
	if len(rows) > 0 {
		rows[0].gap = 3
		rows[len(rows)-1].keep = false
	}
	return rows
}

// head is the row of headings; nil where no column has one.
func (g grid) head(t *paper.Table) *row {
	named := false
	cells := make([][]textLine, len(t.Columns))
	for i, c := range t.Columns {
		named = named || letter.Printable(c.Title) != ""
		cells[i] = g.lines(g.style.bold(), "", c.Title, g.room(i))
	}
	if !named {
		return nil
	}
	r := g.whole(cells, 0)
	g.underline(&r)
	r.parts = func() []row {
		parts := g.parted(cells, 0, nil)
		g.underline(&parts[len(parts)-1])
		return parts
	}
	return &r
}

// underline ends the headings: a stronger rule, and no parting from the first row.
func (g grid) underline(r *row) {
	r.pieces = append(r.pieces, rule(g.edges[0], r.high, g.edges[len(g.edges)-1], r.high, stroke))
	r.keep = true
}

func (g grid) room(column int) float64 { return g.edges[column+1] - g.edges[column] - 2*beside }

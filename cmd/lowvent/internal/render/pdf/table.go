package pdf

import (
	"math"

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
	if float64(len(t.Columns))*narrowest > s.wide {
		s.fail("the table %q has %d columns; a page has room for %d, so it must be parted into several", t.Caption, len(t.Columns), int(s.wide/narrowest))
		return nil
	}
	g := grid{s, tableStyle, nil}
	if t.Small {
		g.style = smallStyle
	}
	g.edges = s.columns(t, g.style)
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

// columns are the edges of the columns: by their shares, but none so narrow that a signal
// word has no room in it.
func (s setter) columns(t *paper.Table, st style) []float64 {
	least := make([]float64, len(t.Columns))
	for i := range t.Columns {
		least[i] = narrowest
		for _, cells := range t.Rows {
			if word := cells[i].Word; word != "" {
				least[i] = max(least[i], st.signalWidth(word)+2*beside+0.1)
			}
		}
		least[i] = min(least[i], s.wide/float64(len(t.Columns)))
	}
	edges := []float64{s.left}
	for _, wide := range shared(s.wide, shares(t.Columns), least) {
		edges = append(edges, edges[len(edges)-1]+wide)
	}
	edges[len(edges)-1] = s.left + s.wide
	return edges
}

func shares(columns []paper.Column) []float64 {
	out := make([]float64, len(columns))
	for i, c := range columns {
		out[i] = 1
		if c.Share > 0 && !math.IsInf(c.Share, 0) {
			out[i] = c.Share
		}
	}
	return out
}

// shared parts a width by shares; who would get less than its least gets that, and the
// others share the rest. The leasts must not come to more than the width.
func shared(wide float64, share, least []float64) []float64 {
	out := make([]float64, len(share))
	fixed := make([]bool, len(share))
	for {
		room, all := wide, 0.0
		for i := range share {
			if fixed[i] {
				room -= least[i]
			} else {
				all += share[i]
			}
		}
		again := false
		for i := range share {
			out[i] = least[i]
			if fixed[i] {
				continue
			}
			if out[i] = room * (share[i] / all); out[i] < least[i] {
				fixed[i], again = true, true
			}
		}
		if !again {
			return out
		}
	}
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

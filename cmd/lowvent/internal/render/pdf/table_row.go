package pdf

import (
	"lowvent.example/cmd/lowvent/internal/draw"
	"lowvent.example/cmd/lowvent/internal/letter"
	"lowvent.example/cmd/lowvent/internal/paper"
)

// row is a row of the table, whole, with what it falls into where no page has room for it.
func (g grid) row(t *paper.Table, cells []paper.Cell, head *row) row {
	lines := make([][]textLine, len(cells))
	least := 0.0
	for i, c := range cells {
		st := g.style
		if c.Strong || t.Columns[i].Head {
			st = st.bold()
		}
		lines[i] = g.lines(st, c.Word, c.Text, g.room(i))
		if c.Blank {
			least = max(least, g.toWrite(lines[i], g.room(i)))
		}
	}
	r := g.whole(lines, least)
	r.parts = func() []row { return g.parted(lines, least, head) }
	if repeats(head, g.body) {
		r.head = head
	}
	return r
}

// repeats tells whether a head leaves enough of a page to be set again on each.
func repeats(head *row, body area) bool { return head != nil && head.high < body.high/3 }

// toWrite is the height of a cell that is written in by hand: beside a short text there is
// room enough, else below it.
func (g grid) toWrite(lines []textLine, room float64) float64 {
	used := 0.0
	for _, p := range lines[len(lines)-1] {
		if t, is := p.mark.(*draw.Text); is {
			used = max(used, t.At.X+letter.Width(g.style.face, t.Content, t.Size))
		}
	}
	if used < room/2 {
		return float64(len(lines)-1)*g.style.lead + hand
	}
	return g.high(len(lines)) + hand
}

func (g grid) high(lines int) float64 { return float64(lines)*g.style.lead + 2*over }

// whole is a row of cells with a rule above and below it, at least so high.
func (g grid) whole(cells [][]textLine, least float64) row {
	r := g.blank()
	for i, lines := range cells {
		r.high = max(r.high, g.high(len(lines)))
		for n, l := range lines {
			r.pieces = append(r.pieces, moved(l, g.edges[i]+beside, over+float64(n)*g.style.lead)...)
		}
	}
	r.high = max(r.high, least)
	r.pieces = append(r.pieces, g.across(0), g.across(r.high))
	return r
}

// parted is the row line by line, open where it goes on.
func (g grid) parted(cells [][]textLine, least float64, head *row) []row {
	most := 0
	for _, lines := range cells {
		most = max(most, len(lines))
	}
	var rows []row
	for n := range most {
		r := g.blank()
		r.high = g.style.lead
		r.pieces = g.line(cells, n, 0)
		if repeats(head, g.body) {
			r.head = head
		}
		rows = append(rows, r)
	}
	first, last := &rows[0], &rows[len(rows)-1]
	first.pieces, first.high = append(moved(first.pieces, 0, over), g.across(0)), first.high+over
	last.high = max(last.high+over, least-float64(most-1)*g.style.lead)
	last.pieces = append(last.pieces, g.across(last.high))
	first.keep = most > 2
	return rows
}

// line is the nth line of every cell.
func (g grid) line(cells [][]textLine, n int, y float64) []piece {
	var out []piece
	for i, lines := range cells {
		if n < len(lines) {
			out = append(out, moved(lines[n], g.edges[i]+beside, y)...)
		}
	}
	return out
}

// blank is a row with the uprights of the columns and nothing in them.
func (g grid) blank() row {
	r := g.setter.row(0, 0)
	r.bars = r.bars[:len(r.bars):len(r.bars)]
	for _, x := range g.edges {
		r.bars = append(r.bars, bar{x, hairline})
	}
	return r
}

func (g grid) across(y float64) piece {
	return rule(g.edges[0], y, g.edges[len(g.edges)-1], y, hairline)
}

package pdf

import (
	"strconv"

	"lowvent.example/cmd/lowvent/internal/draw"
	"lowvent.example/cmd/lowvent/internal/letter"
	"lowvent.example/cmd/lowvent/internal/paper"
)

// hand is how high a line of handwriting is, in mm.
const hand = 8.5

// list sets the items behind their numbers, points or squares to tick.
func (s setter) list(l *paper.List) []row {
	indent := 5.0
	if l.Ordered {
		indent = letter.Width(letter.Regular, strconv.Itoa(len(l.Items))+".", bodyStyle.size) + 2
	}
	if l.Boxes {
		indent += 1
		if l.Ordered {
			indent += 4.5
		}
	}
	var rows []row
	for i, item := range l.Items {
		gap := 0.9
		if i == 0 {
			gap = 1.8
		}
		set := s.flow(s.lines(bodyStyle, "", item, s.wide-indent), bodyStyle.lead, s.left+indent, gap)
		set[0].pieces = append(s.before(l, i, s.left+indent), set[0].pieces...)
		rows = append(rows, set...)
	}
	return rows
}

// before is what stands before an item whose text begins at x.
func (s setter) before(l *paper.List, i int, x float64) []piece {
	var out []piece
	if l.Boxes {
		const side = 3.4
		top := (bodyStyle.lead - side) / 2
		out = append(out, rectangle(draw.Rectangle{Left: s.left + 0.3, Top: top, Right: s.left + 0.3 + side, Bottom: top + side}, draw.None, line))
	}
	switch {
	case l.Ordered:
		out = append(out, bodyStyle.ending(0, strconv.Itoa(i+1)+".", x-1.5, 0))
	case !l.Boxes:
		out = append(out, bodyStyle.words(0, "•", x-3.5, 0))
	}
	return out
}

// pairs sets labels in a column of their own, with what belongs to them beside.
func (s setter) pairs(p *paper.Pairs) []row {
	const between = 4
	labels := 0.0
	for _, pair := range p.Rows {
		labels = max(labels, letter.Width(letter.Bold, letter.Printable(pair.Label), bodyStyle.size))
	}
	labels = min(labels, 0.38*s.wide) + 0.01
	var rows []row
	for i, pair := range p.Rows {
		gap := 0.7
		if i == 0 {
			gap = 1.8
		}
		rows = append(rows, s.pair(pair, labels, labels+between, gap)...)
	}
	return rows
}

func (s setter) pair(p paper.Pair, labels, value, gap float64) []row {
	left := s.lines(strongStyle, "", p.Label, labels)
	right := s.lines(bodyStyle, "", p.Value, s.wide-value)
	if unseen(left) && unseen(right) && !p.Blank {
		return nil
	}
	var lines []textLine
	for i := range max(len(left), len(right)) {
		var l textLine
		if i < len(left) {
			l = append(l, left[i]...)
		}
		if i < len(right) {
			l = append(l, moved(right[i], value, 0)...)
		}
		lines = append(lines, l)
	}
	rows := s.flow(lines, bodyStyle.lead, s.left, gap)
	if last := &rows[len(rows)-1]; p.Blank {
		s.toWriteOn(last, s.left+value, p.Value != "")
	}
	return rows
}

// toWriteOn makes a row high enough for a hand, and puts a line to write on under it from
// x on: beside a label, or below what stands there already.
func (s setter) toWriteOn(r *row, x float64, below bool) {
	down := max(0, hand-r.high)
	if below {
		r.high, down = r.high+hand, 0
	}
	r.pieces = moved(r.pieces, 0, down)
	r.high += down
	r.pieces = append(r.pieces, rule(x, r.high-0.6, s.left+s.wide, r.high-0.6, line))
}

// empty sets a label with empty lines under it.
func (s setter) empty(l *paper.Lines) []row {
	var rows []row
	if l.Label != "" {
		rows = s.heading(strongStyle, "", l.Label, 1.8)
	}
	for range l.Count {
		rows = append(rows, s.row(hand, 0, rule(s.left, hand-0.3, s.left+s.wide, hand-0.3, line)))
	}
	return rows
}

// box sets blocks within a frame, which may go on over pages.
func (s setter) box(b *paper.Box) []row {
	const pad, least = 3.5, 60
	inner := s
	if s.wide-2*pad >= least {
		inner.left, inner.wide = s.left+pad, s.wide-2*pad
	}
	right := s.left + s.wide
	inner.bars = append(s.bars[:len(s.bars):len(s.bars)], bar{s.left, stroke}, bar{right, stroke})
	rows := inner.blocks(b.Blocks)
	top := inner.row(pad-1, 2.5, rule(s.left, 0, right, 0, stroke))
	top.gapBars, top.keep = s.bars, true
	foot := inner.row(pad-1, 0, rule(s.left, pad-1, right, pad-1, stroke))
	if len(rows) > 0 {
		rows[0].gap = 0
		rows[len(rows)-1].keep = true
	}
	return append(append([]row{top}, rows...), foot)
}

package draw

import (
	"slices"

	"lowvent.example/schema/report"
)

// trueIn tells whether a distance lies in a view's plane, so that it is seen at its length.
func (d *distance) trueIn(v *view) bool {
	from, to := d.ends(0.5)
	seen, real := v.length(from, to), distanceBetween(from, to)
	return seen > 0 && real-seen <= 1e-3*real
}

// distanceBetween is the straight distance of two places, in m.
func distanceBetween(a, b place) float64 { return hypot(b[0]-a[0], b[1]-a[1], b[2]-a[2]) }

// belongs tells in which of two views a distance is shown: where it lies in the plane; if
// in neither, where it is seen the longer.
func (d *distance) belongs(here, other *view) bool {
	mine, its := d.trueIn(here), d.trueIn(other)
	if mine != its {
		return mine
	}
	from, to := d.ends(0.5)
	a, b := here.length(from, to), other.length(from, to)
	if a == b {
		return here.near.of == 2
	}
	return a > b
}

// belonging are the distances that are shown in a view rather than in another.
func belonging(all []*distance, here, other view) []*distance {
	var some []*distance
	for _, d := range all {
		if d.belongs(&here, &other) {
			some = append(some, d)
		}
	}
	return some
}

// dimensioned is a distance on its way onto the paper.
type dimensioned struct {
	*distance
	line  segment
	real  bool // seen at its true length
	group *Group
	block block
	want  wanted
	place Rectangle
}

// dimensions draws the distances that are not as needed. All lines come before all that is
// said of them, so that what is said keeps off the lines.
func (w *work) dimensions() {
	var all []*dimensioned
	for _, d := range w.shown {
		x := &dimensioned{distance: d, line: w.apartFrom(d, all), real: d.trueIn(&w.view), group: &Group{Of: d.says[0].subject, Label: d.between}}
		w.drawLine(x)
		all = append(all, x)
	}
	var placed []*dimensioned
	for _, x := range all {
		x.block = saidOf(x)
		x.want = wanted{wide: x.block.wide, high: x.block.high, far: 110, off: weighed{w.body, w.offBody()}, finely: true, along: &x.line}
		x.want.of = around(Point{(x.line.a.X + x.line.b.X) / 2, (x.line.a.Y + x.line.b.Y) / 2}, 1, 1)
		r, _, ok := w.field.place(x.want)
		if !ok {
			w.omitted = append(w.omitted, "No room on the drawing for what is said of the distance of "+x.between+".")
			continue
		}
		x.place = r
		w.field.take(r)
		w.field.leads = append(w.field.leads, x.want.leader(r))
		placed = append(placed, x)
	}
	w.untangle(placed)
	for _, x := range placed {
		l := x.want.leader(x.place)
		x.group.Marks = append(x.group.Marks, line(Pen{Width: thin}, l.a, l.b), dot(l.b, 0.4), x.place.drawn(Pen{Width: thin}, White))
		x.group.Marks = append(x.group.Marks, x.block.at(Point{x.place.Left, x.place.Top})...)
	}
}

// offBody is how unwillingly what is said of a distance stands on what is drawn to scale:
// hardly, where little is drawn.
func (w *work) offBody() float64 {
	if len(w.scene.things) <= few {
		return 0.04
	}
	return 0.5
}

// apartFrom is where a distance is drawn so that it does not run along another.
func (w *work) apartFrom(d *distance, others []*dimensioned) segment {
	on := func(share float64) segment {
		from, to := d.ends(share)
		return segment{w.view.at(from), w.view.at(to)}
	}
	for _, share := range []float64{0.5, 0.3, 0.7, 0.15, 0.85} {
		s := on(share)
		if !slices.ContainsFunc(others, func(x *dimensioned) bool { return s.beside(x.line) }) {
			return s
		}
	}
	return on(0.5)
}

// drawLine draws the dimension line, and notes the distance where it is to scale.
func (w *work) drawLine(x *dimensioned) {
	pen := Pen{Width: medium}
	if !x.real {
		pen.Dash = Dashed
	}
	x.group.Marks = append(w.boxes(x.distance), dimension(x.line.a, x.line.b, pen)...)
	w.d.Marks = append(w.d.Marks, x.group)
	w.field.drawn(x.line.a, x.line.b, x.line.a) // twice: it counts for more than an outline
	if !x.real {
		return
	}
	for _, s := range x.says {
		w.d.Spans = append(w.d.Spans, Span{From: x.line.a.rounded(), To: x.line.b.rounded(), Metres: s.metres, Text: s.found, Check: s.check, Subject: s.subject})
	}
}

// boxes are the upright boxes round what is seen as a circle: to them distances are taken.
func (w *work) boxes(d *distance) []Mark {
	var marks []Mark
	for _, t := range w.scene.things {
		if w.round(t) && (t.solid == d.a || t.solid == d.b) {
			marks = append(marks, w.view.rect(t.solid).drawn(Pen{Width: hair, Dash: Dotted}, None))
		}
	}
	return marks
}

// block is what is said of a distance, in lines.
type block struct {
	rows       []row
	wide, high float64
}

type row struct {
	word report.Signal
	text string
	bold bool
}

const blockLead = 1.3 * small

// saidOf says of a distance which it is, and what each finding found and needs.
func saidOf(x *dimensioned) block {
	rows := []row{{text: x.short}}
	for _, s := range x.says {
		found, sense := s.found, "needed at least "
		if !x.real {
			found = "true length " + found
		}
		if s.atMost {
			sense = "needed at most "
		}
		if some := []row{{s.word, found, true}, {text: sense + s.needed}}; !slices.Contains(rows, some[1]) || !slices.Contains(rows, some[0]) {
			rows = append(rows, some...)
		}
	}
	return blockOf(rows)
}

// blockOf is a block with its size.
func blockOf(rows []row) block {
	b := block{rows: rows, high: blockLead*float64(len(rows)) + 0.8}
	r, _ := Extent(b.at(Point{}))
	b.wide = r.Right + 0.8
	return b
}

// at draws the block from a corner on.
func (b block) at(at Point) []Mark {
	var marks []Mark
	for i, r := range b.rows {
		base := at.plus(0.8, 0.5+blockLead*float64(i)+0.9*small)
		if r.word != "" {
			tag, wide := signalTag(base, r.word, small)
			marks, base.X = append(marks, tag...), base.X+wide+0.8
		}
		if r.text != "" {
			marks = append(marks, &Text{At: base, Size: small, Content: r.text, Bold: r.bold})
		}
	}
	return marks
}

package draw

import "lowvent.example/schema/report"

// trueIn tells whether a distance lies in a view's plane, so that it is seen at its length.
func (d *distance) trueIn(v *view) bool {
	seen, real := v.length(d.from, d.to), apart(d.from, d.to)
	return seen > 0 && real-seen <= 1e-3*real
}

func apart(a, b place) float64 {
	return hypot(b[0]-a[0], b[1]-a[1], b[2]-a[2])
}

// belongs tells in which of two views a distance is shown: where it lies in the plane; if
// in neither, where it is seen the longer.
func (d *distance) belongs(here, other *view) bool {
	mine, its := d.trueIn(here), d.trueIn(other)
	if mine != its {
		return mine
	}
	a, b := here.length(d.from, d.to), other.length(d.from, d.to)
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

// dimensions draws the distances that are not as needed.
func (w *work) dimensions() {
	for _, d := range w.shown {
		w.dimension(d)
	}
}

// dimension draws one of them, with what is said of it.
func (w *work) dimension(d *distance) {
	a, b := w.view.at(d.from), w.view.at(d.to)
	pen := Pen{Width: plain}
	real := d.trueIn(&w.view)
	if !real {
		pen.Dash = Dashed
	}
	g := &Group{Of: d.says[0].subject, Label: d.between, Marks: dimension(a, b, pen)}
	w.d.Marks = append(w.d.Marks, g)
	w.field.drawn(a, b)
	w.field.avoid(spanning(a, b).grown(0.6), 0.6)
	block, wide, high := d.block(real)
	want := wanted{of: around(Point{(a.X + b.X) / 2, (a.Y + b.Y) / 2}, 1, 1), wide: wide, high: high, far: 110, off: w.body}
	r, _, ok := w.field.place(want)
	if !ok {
		w.omitted = append(w.omitted, "No room for the distance of "+d.between+": "+d.says[0].found+".")
		return
	}
	w.field.take(r)
	l := want.leader(r)
	l.b = want.of.centre()
	w.field.leads = append(w.field.leads, l)
	g.Marks = append(g.Marks, line(Pen{Width: thin}, l.a, l.b), dot(l.b, 0.4), r.drawn(Pen{Width: thin}, White))
	g.Marks = append(g.Marks, block(Point{r.Left, r.Top})...)
	if real {
		w.span(d, a, b)
	}
}

// span notes a distance that is drawn to scale.
func (w *work) span(d *distance, a, b Point) {
	for _, s := range d.says {
		w.d.Spans = append(w.d.Spans, Span{From: a.rounded(), To: b.rounded(), Metres: s.metres, Text: s.found, Check: s.check, Subject: s.subject})
	}
}

// block is what is said of a distance, in lines, and how large it comes out.
func (d *distance) block(real bool) (draw func(at Point) []Mark, wide, high float64) {
	const lead = 1.3 * small
	type row struct {
		word report.Signal
		text string
	}
	var rows []row
	for _, s := range d.says {
		found := s.found
		if !real {
			found = "true length " + found
		}
		sense := "needed at least "
		if s.atMost {
			sense = "needed at most "
		}
		rows = append(rows, row{s.word, found}, row{"", sense + s.needed})
	}
	draw = func(at Point) []Mark {
		var marks []Mark
		for i, r := range rows {
			base := at.plus(0.8, 0.5+lead*float64(i)+0.9*small)
			if r.word != "" {
				tag, w := signalTag(base, r.word, small)
				marks, base.X = append(marks, tag...), base.X+w+0.8
			}
			t := &Text{At: base, Size: small, Content: r.text, Bold: r.word != ""}
			wide = max(wide, base.X+t.Wide()-at.X+0.8)
			marks = append(marks, t)
		}
		return marks
	}
	draw(Point{})
	return draw, wide, lead*float64(len(rows)) + 0.8
}

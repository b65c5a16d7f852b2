package draw

import (
	"cmp"
	"slices"

	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

// lockerView draws one of the two views of a locker.
func (w *work) lockerView(k *layout.Locker, own *thing, f *report.FileReport) {
	w.viewTitle()
	w.shell(k, own)
	for _, t := range w.order() {
		if t == own {
			continue
		}
		if g := w.clippedLooks(t); len(g.Marks) > 0 {
			w.d.Marks = append(w.d.Marks, g)
			w.know(t, g)
			if t.sort == isCylinder {
				w.know(t, g) // twice: nothing should cover a cylinder's outline
			}
		}
	}
	if w.view.near.of != 2 {
		w.lowest(k, own)
	}
	w.drains(k)
	w.sizes(own)
	w.dimensions()
	w.dangers(f)
	w.lockerNames(k, own)
}

// viewTitle writes which view it is.
func (w *work) viewTitle() {
	title := "plan, seen from above"
	if w.view.near.of != 2 {
		title = "section, seen from the " + string(w.wall)
	}
	a := w.field.area
	t := &Text{At: Point{(a.Left + a.Right) / 2, a.Top + 3.2}, Size: normal, Bold: true, Anchor: Middle, Content: title}
	w.d.Marks = append(w.d.Marks, t)
	w.field.take(t.Bounds())
	names := [3][2]string{{"front", "rear"}, {"left side", "right side"}, {"floor", "roof"}}
	left, right := ends(names, w.view.right)
	w.edge(left, Point{a.Left + 8, a.Top + 3.2}, Start, -1)
	w.edge(right, Point{a.Right - 8, a.Top + 3.2}, End, 1)
}

// shell draws the inner faces, and the liner outside of them.
func (w *work) shell(k *layout.Locker, own *thing) {
	r := w.view.rect(own.solid)
	g := &Group{Of: own.pointer(), Label: k.Label()}
	skin := 1.0
	if m, known := k.Liner.Thickness.Get(); known {
		skin = max(0.8, float64(m.Nominal)*w.view.scale)
	}
	g.Marks = append(g.Marks, r.grown(skin).drawn(Pen{Width: thin}, Pale), r.drawn(Pen{Width: bold}, White))
	w.field.outline(r)
	w.field.outline(r.grown(skin))
	w.d.Marks = append(w.d.Marks, g)
	w.door(k, r, skin)
}

// door marks the wall that the door is in. Where along the wall it is, the file does not
// state, so the whole wall is marked.
func (w *work) door(k *layout.Locker, r Rectangle, skin float64) {
	wall, known := k.Door.Wall.Get()
	if !known {
		return
	}
	a, b, seen := w.wallOnPaper(wall, r)
	if !seen {
		return
	}
	out := outward(wall, &w.view)
	off := skin + 0.9
	a, b = a.plus(out.X*off, out.Y*off), b.plus(out.X*off, out.Y*off)
	w.d.Marks = append(w.d.Marks, &Group{Of: k.Door.Spot().Pointer(), Label: "door of " + k.Label(), Marks: []Mark{line(Pen{Width: 0.7, Dash: LongDash}, a, b)}})
	w.field.drawn(a, b)
}

// wallOnPaper is a wall seen from its edge; false when it is seen flat.
func (w *work) wallOnPaper(wall layout.Wall, r Rectangle) (a, b Point, seen bool) {
	out := outward(wall, &w.view)
	switch {
	case out.X > 0:
		return Point{r.Right, r.Top}, Point{r.Right, r.Bottom}, true
	case out.X < 0:
		return Point{r.Left, r.Top}, Point{r.Left, r.Bottom}, true
	case out.Y > 0:
		return Point{r.Left, r.Bottom}, Point{r.Right, r.Bottom}, true
	case out.Y < 0:
		return Point{r.Left, r.Top}, Point{r.Right, r.Top}, true
	}
	return a, b, false
}

// outward is the way out through a wall, as seen on paper; nothing when it is seen flat.
func outward(wall layout.Wall, v *view) Point {
	of, sense := 0, 1.0
	switch wall {
	case layout.WallFront:
		sense = -1
	case layout.WallLeft:
		of, sense = 1, -1
	case layout.WallRight:
		of = 1
	case layout.WallFloor:
		of, sense = 2, -1
	case layout.WallCeiling:
		of = 2
	}
	switch of {
	case v.right.of:
		return Point{X: sense * v.right.sense}
	case v.up.of:
		return Point{Y: -sense * v.up.sense}
	}
	return Point{}
}

// clippedLooks draws a thing as far as it lies near the locker.
func (w *work) clippedLooks(t *thing) *Group {
	if t.sort == isLine {
		g := &Group{Of: t.pointer(), Label: t.item.Label()}
		for i := 1; i < len(t.way); i++ {
			if a, b, some := (segment{w.view.at(t.way[i-1]), w.view.at(t.way[i])}).clipped(w.body.grown(4)); some {
				g.Marks = append(g.Marks, zoneLine(layout.PressureZone(t.word), a, b)...)
			}
		}
		return g
	}
	near := *t
	near.ends = slices.DeleteFunc(slices.Clone(t.ends), func(e end) bool { return !w.bounds.holds(e.at) })
	return near.looks(&w.view, false)
}

// clipped is the part of a segment within a rectangle.
func (s segment) clipped(r Rectangle) (a, b Point, some bool) {
	from, to := s.shares(r)
	if from >= to {
		return a, b, false
	}
	at := func(share float64) Point { return Point{s.a.X + (s.b.X-s.a.X)*share, s.a.Y + (s.b.Y-s.a.Y)*share} }
	return at(from), at(to), true
}

// sizes dimensions the locker's box.
func (w *work) sizes(own *thing) {
	r := w.view.rect(own.solid)
	const off = 9
	if w.view.near.of == 2 {
		w.size(Point{r.Left, r.Top}, Point{r.Right, r.Top}, Point{0, -off}, own, w.view.right.of)
		w.size(Point{r.Left, r.Bottom}, Point{r.Left, r.Top}, Point{-off, 0}, own, w.view.up.of)
		return
	}
	w.size(Point{r.Right, r.Bottom}, Point{r.Right, r.Top}, Point{off, 0}, own, w.view.up.of)
	if w.view.right.of == 1 {
		w.size(Point{r.Left, r.Top}, Point{r.Right, r.Top}, Point{0, -off}, own, w.view.right.of)
	}
}

// size draws one dimension of the box beside it.
func (w *work) size(a, b, off Point, own *thing, axis int) {
	long := own.solid.size(axis)
	from, to := a.plus(off.X, off.Y), b.plus(off.X, off.Y)
	marks := append(dimension(from, to, Pen{Width: thin}), line(Pen{Width: hair}, a.plus(off.X/4, off.Y/4), from.plus(off.X/5, off.Y/5)), line(Pen{Width: hair}, b.plus(off.X/4, off.Y/4), to.plus(off.X/5, off.Y/5)))
	text := &Text{At: Point{(from.X + to.X) / 2, (from.Y+to.Y)/2 - 0.7}, Size: small, Anchor: Middle, Content: unit.Text(unit.Length(long))}
	if off.X != 0 {
		text.At, text.Turn = Point{(from.X+to.X)/2 - 0.7, (from.Y + to.Y) / 2}, -90
	}
	w.d.Marks = append(w.d.Marks, &Group{Of: own.pointer(), Label: own.item.Label(), Marks: append(marks, text)})
	w.field.take(text.Bounds())
	w.field.drawn(from, to)
	w.field.avoid(spanning(from, to).grown(0.8), 4)
	w.d.Spans = append(w.d.Spans, Span{From: from.rounded(), To: to.rounded(), Metres: long, Text: text.Content, Subject: own.pointer()})
}

// lockerNames labels what is in the locker; what of it is not known stands beside its name.
func (w *work) lockerNames(k *layout.Locker, own *thing) {
	all := slices.DeleteFunc(slices.Clone(w.scene.things), func(t *thing) bool { return t == own || t.sort == isLine })
	slices.SortStableFunc(all, func(a, b *thing) int { return cmp.Compare(rank(a.sort), rank(b.sort)) })
	for _, t := range all[:min(len(all), mostLabels)] {
		if r := w.aim(t); !r.centre().within(w.body.grown(2)) {
			continue
		}
		w.lines(t, append([]string{shortName(t.item)}, w.facts(t)...))
	}
}

func (p Point) within(r Rectangle) bool { return r.nearest(p) == p }

// lines writes some lines beside a thing.
func (w *work) lines(t *thing, lines []string) {
	const lead = 1.25 * small
	var texts []*Text
	wide := 0.0
	for i, content := range lines {
		text := &Text{Size: small, Content: content, Bold: i == 0}
		texts, wide = append(texts, text), max(wide, text.Wide())
	}
	want := wanted{of: w.aim(t), wide: wide + 0.8, high: lead*float64(len(lines)) + 0.2, inside: true, far: 60, finely: true, round: w.round(t)}
	r, _, ok := w.field.place(want)
	if !ok {
		w.balloon(t)
		return
	}
	marks := []Mark{}
	for i, text := range texts {
		text.At = Point{r.Left + 0.4, r.Top + lead*float64(i) + 0.95*small}
		marks = append(marks, text)
	}
	w.put(r, t, want, marks...)
}

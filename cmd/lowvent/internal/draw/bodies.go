package draw

import "lowvent.example/schema/layout"

// penOf is how the outline of a sort of thing is drawn.
func penOf(s sort) Pen {
	switch s {
	case isSpace:
		return Pen{Width: 0.35}
	case isLocker:
		return Pen{Width: 0.7}
	case isCylinder:
		return Pen{Width: bold}
	case isAppliance, isRegulator, isChangeover, isStove:
		return Pen{Width: 0.35}
	case isCombustible:
		return Pen{Width: thin, Dash: Dotted, Ink: Grey}
	}
	return Pen{Width: medium}
}

// fillOf is what a thing's body is filled with; most are left open, so that what lies
// below shows.
func fillOf(s sort) Ink {
	if s == isAppliance || s == isStove {
		return Pale
	}
	return None
}

// looks draws a thing as a view shows it.
func (t *thing) looks(v *view, hidden bool) *Group {
	pen := penOf(t.sort)
	if hidden {
		pen.Dash = Dashed
	}
	g := &Group{Of: t.pointer(), Label: t.item.Label()}
	switch {
	case t.sort == isLine:
		g.Marks = t.route(v)
	case t.point:
		g.Marks = t.ending(v, pen)
		if t.sort != isFlue {
			g.Marks = append(g.Marks, symbol(t.sort, t.word, v.at(t.solid.from), pen)...)
		}
	default:
		g.Marks = append(t.ending(v, pen), t.body(v, pen, hidden)...)
	}
	return g
}

// body draws a thing that has a size.
func (t *thing) body(v *view, pen Pen, hidden bool) []Mark {
	r := v.rect(t.solid)
	fill := fillOf(t.sort)
	if hidden {
		fill = None
	}
	if t.round > 0 && v.near.of == 2 {
		c := r.centre()
		return []Mark{&Circle{Centre: c, Radius: t.round / 2 * v.scale, Pen: pen, Fill: fill}, line(Pen{Width: hair}, c.plus(-1, 0), c.plus(1, 0)), line(Pen{Width: hair}, c.plus(0, -1), c.plus(0, 1))}
	}
	if t.sort == isOpening && min(r.wide(), r.high()) < 0.6 {
		return inWall(r, pen)
	}
	if max(r.wide(), r.high()) < 1.2 {
		return symbol(t.sort, t.word, r.centre(), pen)
	}
	marks := []Mark{r.drawn(pen, fill)}
	return append(marks, t.sign(r, pen)...)
}

// sign is what tells the sort of a body that is a plain box.
func (t *thing) sign(r Rectangle, pen Pen) []Mark {
	thinner := Pen{Width: thin, Dash: pen.Dash}
	a, b, c, d := Point{r.Left, r.Top}, Point{r.Right, r.Top}, Point{r.Right, r.Bottom}, Point{r.Left, r.Bottom}
	switch t.sort {
	case isLocker:
		return hatched(r, 3, Pen{Width: hair, Ink: Grey})
	case isOpening:
		return []Mark{line(thinner, a, c), line(thinner, b, d)}
	case isExhaust, isStored:
		return []Mark{line(thinner, a, c)}
	case isIgnition, isFan, isRegulator, isChangeover:
		return symbol(t.sort, t.word, r.centre(), Pen{Width: medium})
	case isStove:
		return []Mark{r.grown(-min(1, r.wide()/4, r.high()/4)).drawn(thinner, None)}
	}
	return nil
}

// inWall draws an opening that lies flat in a wall, seen from its edge: the wall is broken
// between two ticks.
func inWall(r Rectangle, pen Pen) []Mark {
	m := r.centre()
	a, b, x, y := Point{r.Left, m.Y}, Point{r.Right, m.Y}, 0.0, 0.9
	if r.high() > r.wide() {
		a, b, x, y = Point{m.X, r.Top}, Point{m.X, r.Bottom}, 0.9, 0
	}
	gap := Pen{Width: 1.3, Ink: White}
	edge := Pen{Width: medium, Dash: pen.Dash}
	return []Mark{line(gap, a, b), line(edge, a.plus(x/2, y/2), b.plus(x/2, y/2)), line(edge, a.plus(-x/2, -y/2), b.plus(-x/2, -y/2)),
		line(Pen{Width: 0.35}, a.plus(x, y), a.plus(-x, -y)), line(Pen{Width: 0.35}, b.plus(x, y), b.plus(-x, -y))}
}

// ending draws where a thing ends, with a line from it.
func (t *thing) ending(v *view, pen Pen) []Mark {
	var marks []Mark
	start := v.at(t.solid.middle())
	for _, e := range t.ends {
		at := v.at(e.at)
		if start.to(at) > 2.6 && t.sort == isLockerVent {
			marks = append(marks, line(Pen{Width: thin, Dash: DashDot}, start, at))
		}
		if t.sort != isLockerVent || start.to(at) > 2 {
			marks = append(marks, endSymbol(e.what, at, Pen{Width: medium, Dash: pen.Dash})...)
		}
	}
	return marks
}

// route draws a gas line.
func (t *thing) route(v *view) []Mark {
	var points []Point
	for _, w := range t.way {
		points = append(points, v.at(w))
	}
	if len(points) == 1 {
		return []Mark{dot(points[0], 0.6)}
	}
	return zoneLine(layout.PressureZone(t.word), points...)
}

package draw

import (
	"strings"

	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

// lowest marks the lowest point of the floor, and hatches what lies below every vent's edge.
func (w *work) lowest(k *layout.Locker, own *thing) {
	r := w.view.rect(own.solid)
	z, known := k.LowestPoint.Get()
	if !known {
		w.remark(k.LowestPoint.Spot().Pointer(), around(Point{r.centre().X, r.Bottom}, 1, 1), unknown+"lowest point not known")
		return
	}
	floor := place{own.solid.from[0], own.solid.from[1], float64(z.Nominal)}
	y := w.view.at(floor).Y
	mark := around(Point{r.Left + 0.16*r.wide(), y}, 1, 1)
	w.d.Marks = append(w.d.Marks, line(Pen{Width: medium, Dash: DashDot}, Point{r.Left - 4, y}, Point{r.Right + 4, y}))
	w.field.drawn(Point{r.Left - 4, y}, Point{r.Right + 4, y})
	w.remark(k.LowestPoint.Spot().Pointer(), mark, "lowest point, z "+unit.Text(z.Nominal))
	edge, some, sure := lowestEdge(k)
	switch {
	case !some || !sure:
		w.remark(k.Vents.Spot().Pointer(), around(Point{r.Right - 0.2*r.wide(), y}, 1, 1), unknown+"depth of gas that can't drain: not known")
	case edge > 0:
		w.trapped(k, r, floor, edge)
	}
}

// trapped hatches what never drains.
func (w *work) trapped(k *layout.Locker, r Rectangle, floor place, edge float64) {
	top := floor
	top[2] += edge
	band := Rectangle{r.Left, w.view.at(top).Y, r.Right, w.view.at(floor).Y}
	g := &Group{Of: k.Vents.Spot().Pointer(), Label: "what never drains from " + k.Label(), Marks: hatched(band, 1.1, Pen{Width: thin})}
	w.d.Marks = append(w.d.Marks, append([]Mark{g}, line(Pen{Width: thin}, Point{band.Left, band.Top}, Point{band.Right, band.Top}))...)
	w.remark(k.Vents.Spot().Pointer(), around(Point{r.Right - 0.2*r.wide(), band.Top}, 1, 1), "gas "+unit.Text(unit.Length(edge))+" deep never drains")
}

// remark writes a line beside a place.
func (w *work) remark(pointer string, at Rectangle, content string) {
	text := &Text{Size: small, Content: content}
	want := wanted{of: at, wide: text.Wide() + 0.8, high: 1.3 * small, far: 60}
	r, _, ok := w.field.place(want)
	if !ok {
		w.omitted = append(w.omitted, strings.TrimSpace(content)+".")
		return
	}
	text.At = Point{r.Left + 0.4, r.Bottom - 0.32*small}
	l := want.leader(r)
	l.b = at.centre()
	w.field.leads = append(w.field.leads, l)
	w.field.take(r)
	w.d.Marks = append(w.d.Marks, &Group{Of: pointer, Label: content, Marks: []Mark{line(Pen{Width: thin}, l.a, l.b), dot(l.b, 0.4), r.drawn(Pen{}, White), text}})
}

// drains draws the way of the gas out of each low vent.
func (w *work) drains(k *layout.Locker) {
	for _, v := range k.Vents.All() {
		level, _ := v.Level.Get()
		wall, known := v.Wall.Get()
		at, placed := v.At.Get()
		out := outward(wall, &w.view)
		if level != layout.VentLevelLow || !known || !placed || out == (Point{}) {
			continue
		}
		from := w.view.at(placeAt(at)).plus(out.X*1.5, out.Y*1.5)
		tip := from.plus(out.X*5.5, out.Y*5.5)
		w.d.Marks = append(w.d.Marks, &Group{Of: v.Spot().Pointer(), Label: "gas drains by " + v.Label(), Marks: []Mark{line(Pen{Width: bold}, from, tip), arrow(tip, from, 2.6)}})
		w.field.avoid(spanning(from, tip).grown(1), 2)
	}
}

// edgesOf are the findings on how high a vent's lower edge lies over the lowest point.
func edgesOf(k *layout.Locker, box solid, f *report.FileReport) []*distance {
	z, known := k.LowestPoint.Get()
	if f == nil || !known {
		return nil
	}
	var all []*distance
	for i := range f.Findings {
		g := &f.Findings[i]
		for j := range g.Parts {
			p := &g.Parts[j]
			owner, is := strings.CutSuffix(p.Place.Pointer, "/lowerEdgeOverLowest")
			if !is || p.Outcome != report.NotMet || p.Found == nil || p.Needed == nil || p.Found.SI == nil || *p.Found.SI <= 0 || !strings.HasPrefix(owner, k.Vents.Spot().Pointer()+"/") {
				continue
			}
			at := box.middle()
			if v := k.Vents.Get(strings.TrimPrefix(owner, k.Vents.Spot().Pointer()+"/")); v != nil && v.At.Known() {
				q, _ := v.At.Get()
				at = placeAt(q)
			}
			from, to := at, at
			from[2], to[2] = float64(z.Nominal), float64(z.Nominal)+*p.Found.SI
			says := saying{word: g.Word, check: g.Check, subject: g.Subject, found: p.Found.Text, needed: p.Needed.Text, metres: *p.Found.SI, atMost: true}
			all = joined(all, &distance{a: spot(from), b: spot(to), found: *p.Found.SI, says: []saying{says}, between: "the lowest point and the lower edge of " + p.About, short: "lower edge of " + p.About + " over the lowest point"})
		}
	}
	return all
}

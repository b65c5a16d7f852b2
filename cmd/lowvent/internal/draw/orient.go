package draw

import "math"

// orient writes at the drawing's edges which way is which, and marks the place from which
// the file's lengths are counted.
func (w *work) orient() {
	top, bottom := 0.5+0.9*small, w.field.area.Bottom-0.6
	names := [3][2]string{{"front", "rear"}, {"left side", "right side"}, {"floor", "roof"}}
	left, right := ends(names, w.view.right)
	w.edge(left, Point{8, top}, Start, -1)
	w.edge(right, Point{w.d.Width - 8, top}, End, 1)
	if w.view.near.of == 2 {
		low, high := ends(names, w.view.up)
		w.edge(high, Point{w.d.Width / 2, top}, Middle, 0)
		w.edge(low, Point{w.d.Width / 2, bottom}, Middle, 0)
	} else {
		w.edge("seen from the "+string(w.wall)+" side", Point{w.d.Width / 2, top}, Middle, 0)
	}
	w.origin()
}

// ends are the names of the two ends of an axis, as they come on paper.
func ends(names [3][2]string, a axis) (least, most string) {
	least, most = names[a.of][0], names[a.of][1]
	if a.sense < 0 {
		return most, least
	}
	return least, most
}

// edge writes the name of a side, with an arrow towards it where it is to the left or right.
func (w *work) edge(name string, at Point, anchor Anchor, toward float64) {
	text := &Text{At: at, Size: normal, Anchor: anchor, Bold: name == "front", Content: name}
	marks := []Mark{text}
	if toward != 0 {
		tail := at.plus(toward*1, -0.3*normal)
		tip := tail.plus(toward*5.5, 0)
		marks = append(marks, line(Pen{Width: 0.35}, tail, tip), arrow(tip, tail, 2.6))
		w.field.take(spanning(tip, tail).grown(1))
	}
	w.field.take(text.Bounds())
	w.d.Marks = append(w.d.Marks, &Group{Of: "", Label: "the " + name, Marks: marks})
}

// origin marks the place from which lengths are counted, where it is on the drawing.
func (w *work) origin() {
	at := w.view.at(place{})
	if w.body.nearest(at) != at {
		return
	}
	w.d.Marks = append(w.d.Marks, &Group{Label: "origin of the lengths", Marks: originMark(at)})
	w.field.avoid(around(at, 3, 3), 2)
	w.marked = true
}

// originMark is a ring with two quarters filled.
func originMark(at Point) []Mark {
	const r = 1.2
	marks := []Mark{&Circle{Centre: at, Radius: r, Pen: Pen{Width: thin}, Fill: White}}
	for _, turn := range []float64{0, math.Pi} {
		quarter := &Path{Points: []Point{at}, Closed: true, Fill: Black}
		for i := range 7 {
			sine, cosine := math.Sincos(turn + math.Pi/2*float64(i)/6)
			quarter.Points = append(quarter.Points, at.plus(r*cosine, r*sine))
		}
		marks = append(marks, quarter)
	}
	return marks
}

package draw

import "lowvent.example/schema/report"

// arrowLong is how long the arrow heads of dimension lines are, in mm.
const arrowLong = 2.2

// dimension is a dimension line between two points: arrows within it where there is room,
// else from outside.
func dimension(a, b Point, pen Pen) []Mark {
	marks := []Mark{line(pen, a, b)}
	if a.to(b) >= 3*arrowLong {
		return append(marks, arrow(a, b, arrowLong), arrow(b, a, arrowLong))
	}
	along := b
	if a.to(b) == 0 {
		along = a.plus(1, 0)
	}
	before, behind := a.toward(along, -2*arrowLong), b.plus(along.X-a.X, along.Y-a.Y)
	behind = b.toward(behind, 2*arrowLong)
	return append(marks, line(pen, before, a), line(pen, b, behind), arrow(a, before, arrowLong), arrow(b, behind, arrowLong))
}

// signalInks are the colour of a signal word's field and of its letters (ANSI Z535.1).
func signalInks(w report.Signal) (field, letters Ink) {
	switch w {
	case report.Danger:
		return Red, White
	case report.Warning:
		return Orange, Black
	case report.Caution:
		return Yellow, Black
	}
	return Blue, White
}

// signalTag is a signal word on its field, from the left end of its base line on, and how
// wide it comes out.
func signalTag(at Point, w report.Signal, size float64) ([]Mark, float64) {
	back, ink := signalInks(w)
	text := &Text{At: at.plus(0.6, 0), Size: size, Bold: true, Ink: ink, Content: string(w)}
	wide := text.Wide() + 1.2
	return []Mark{Rectangle{at.X, at.Y - 0.86*size, at.X + wide, at.Y + 0.27*size}.drawn(Pen{}, back), text}, wide
}

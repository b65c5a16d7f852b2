package draw

import "math"

// The sizes of what is written and drawn, in mm.
const (
	small  = 2.3 // the least body of letters on any drawing
	normal = 2.6
	large  = 3.2

	hair   = 0.13 // the pens
	thin   = 0.18
	medium = 0.25
	bold   = 0.5
)

func line(pen Pen, points ...Point) *Path { return &Path{Points: points, Pen: pen} }

func area(pen Pen, fill Ink, points ...Point) *Path {
	return &Path{Points: points, Closed: true, Pen: pen, Fill: fill}
}

func (r Rectangle) drawn(pen Pen, fill Ink) *Path {
	return area(pen, fill, Point{r.Left, r.Top}, Point{r.Right, r.Top}, Point{r.Right, r.Bottom}, Point{r.Left, r.Bottom})
}

func dot(at Point, radius float64) *Circle { return &Circle{Centre: at, Radius: radius, Fill: Black} }

func (r Rectangle) wide() float64 { return r.Right - r.Left }
func (r Rectangle) high() float64 { return r.Bottom - r.Top }

func (r Rectangle) centre() Point { return Point{(r.Left + r.Right) / 2, (r.Top + r.Bottom) / 2} }

// grown is the rectangle with a margin all round.
func (r Rectangle) grown(by float64) Rectangle {
	return Rectangle{r.Left - by, r.Top - by, r.Right + by, r.Bottom + by}
}

// nearest is the point of the rectangle that is nearest to another.
func (r Rectangle) nearest(p Point) Point {
	return Point{max(r.Left, min(p.X, r.Right)), max(r.Top, min(p.Y, r.Bottom))}
}

// around is the rectangle of a size about its middle.
func around(middle Point, wide, high float64) Rectangle {
	return Rectangle{middle.X - wide/2, middle.Y - high/2, middle.X + wide/2, middle.Y + high/2}
}

// spanning is the upright rectangle with two points for its corners.
func spanning(a, b Point) Rectangle {
	return Rectangle{min(a.X, b.X), min(a.Y, b.Y), max(a.X, b.X), max(a.Y, b.Y)}
}

// shared is the area that two rectangles have in common.
func (r Rectangle) shared(s Rectangle) float64 {
	return max(0, min(r.Right, s.Right)-max(r.Left, s.Left)) * max(0, min(r.Bottom, s.Bottom)-max(r.Top, s.Top))
}

func (p Point) plus(x, y float64) Point { return Point{p.X + x, p.Y + y} }

func (p Point) to(q Point) float64 { return math.Hypot(q.X-p.X, q.Y-p.Y) }

// toward is the point so far from p in the direction of q; p itself when they are one.
func (p Point) toward(q Point, far float64) Point {
	d := p.to(q)
	if d == 0 {
		return p
	}
	return Point{p.X + (q.X-p.X)*far/d, p.Y + (q.Y-p.Y)*far/d}
}

// arrow is a filled arrow head with its tip at one point, pointing away from another.
func arrow(tip, from Point, long float64) *Path {
	back := tip.toward(from, long)
	x, y := (back.Y-tip.Y)*0.28, -(back.X-tip.X)*0.28
	return area(Pen{}, Black, tip, back.plus(x, y), back.plus(-x, -y))
}

// ring is a circle as a line of many short parts.
func ring(centre Point, radius float64) []Point {
	var points []Point
	for i := range 25 {
		sine, cosine := math.Sincos(2 * math.Pi * float64(i) / 24)
		points = append(points, centre.plus(radius*cosine, radius*sine))
	}
	return points
}

// hatched is parallel lines at 45° within a rectangle, so far apart.
func hatched(r Rectangle, apart float64, pen Pen) []Mark {
	var marks []Mark
	for c := r.Left - r.high() + apart; c < r.Right && len(marks) < 400; c += apart {
		a, b := Point{c, r.Bottom}, Point{c + r.high(), r.Top}
		if a.X < r.Left {
			a = Point{r.Left, r.Bottom - (r.Left - c)}
		}
		if b.X > r.Right {
			b = Point{r.Right, r.Top + (b.X - r.Right)}
		}
		marks = append(marks, line(pen, a, b))
	}
	return marks
}

// rounded puts every coordinate of the marks onto a hundredth of a millimetre, so that
// the same drawing is the same bytes everywhere.
func rounded(marks []Mark) {
	for _, m := range marks {
		switch m := m.(type) {
		case *Path:
			for i := range m.Points {
				m.Points[i] = m.Points[i].rounded()
			}
		case *Circle:
			m.Centre, m.Radius = m.Centre.rounded(), hundredth(m.Radius)
		case *Text:
			m.At = m.At.rounded()
		case *Group:
			rounded(m.Marks)
		}
	}
}

func (p Point) rounded() Point { return Point{hundredth(p.X), hundredth(p.Y)} }

func hundredth(x float64) float64 { return math.Round(x*100)/100 + 0 }

package draw

import "math"

type segment struct{ a, b Point }

// leader is the line from a label to what it names.
func (w *wanted) leader(label Rectangle) segment {
	end := w.of.nearest(label.centre())
	switch reach := max(w.of.wide()/2-0.8, 0); {
	case w.along != nil:
		end = w.along.nearest(label.centre())
	case w.round && w.of.centre().to(end) > reach:
		end = w.of.centre().toward(end, reach)
	case w.of.wide() > 3 && w.of.high() > 3:
		end = w.of.grown(-1).nearest(label.centre())
	}
	return segment{label.landing(end), end}
}

// inside is how much of a segment lies in a rectangle, in mm.
func (s segment) inside(r Rectangle) float64 {
	from, to := s.shares(r)
	return max(0, to-from) * s.a.to(s.b)
}

// shares are where a segment enters a rectangle and leaves it, as shares of its length;
// the first is over the second when it does neither.
func (s segment) shares(r Rectangle) (from, to float64) {
	if max(s.a.X, s.b.X) < r.Left || min(s.a.X, s.b.X) > r.Right || max(s.a.Y, s.b.Y) < r.Top || min(s.a.Y, s.b.Y) > r.Bottom {
		return 1, 0 // most are far off
	}
	from, to = 0, 1
	for _, side := range [][3]float64{{s.a.X, s.b.X - s.a.X, r.Left}, {-s.a.X, s.a.X - s.b.X, -r.Right}, {s.a.Y, s.b.Y - s.a.Y, r.Top}, {-s.a.Y, s.a.Y - s.b.Y, -r.Bottom}} {
		start, run, least := side[0], side[1], side[2]
		switch {
		case run > 0:
			from = max(from, (least-start)/run)
		case run < 0:
			to = min(to, (least-start)/run)
		case start < least:
			return 1, 0
		}
	}
	return from, to
}

// crosses tells whether two segments cross, other than at their ends.
func (s segment) crosses(t segment) bool {
	turn := func(a, b, c Point) float64 { return (b.X-a.X)*(c.Y-a.Y) - (b.Y-a.Y)*(c.X-a.X) }
	return turn(s.a, s.b, t.a)*turn(s.a, s.b, t.b) < 0 && turn(t.a, t.b, s.a)*turn(t.a, t.b, s.b) < 0
}

// nearest is the point of the middle parts of a segment that is nearest to another.
func (s segment) nearest(p Point) Point {
	long := s.a.to(s.b)
	if long < 1 {
		return Point{(s.a.X + s.b.X) / 2, (s.a.Y + s.b.Y) / 2}
	}
	share := ((p.X-s.a.X)*(s.b.X-s.a.X) + (p.Y-s.a.Y)*(s.b.Y-s.a.Y)) / (long * long)
	share = max(0.2, min(share, 0.8))
	return Point{s.a.X + (s.b.X-s.a.X)*share, s.a.Y + (s.b.Y-s.a.Y)*share}
}

// landing is where on a label's edge a leader to a point begins: not at a corner of a wide
// one.
func (r Rectangle) landing(p Point) Point {
	if in := min(3, r.wide()/3); r.wide() > 6 && (p.Y < r.Top || p.Y > r.Bottom) {
		r.Left, r.Right = r.Left+in, r.Right-in
	}
	return r.nearest(p)
}

// beside tells whether two segments run along one another, so near that they would be
// taken for one.
func (s segment) beside(t segment) bool {
	long, other := s.a.to(s.b), t.a.to(t.b)
	if long == 0 || other == 0 {
		return false
	}
	turn := math.Abs((s.b.X-s.a.X)*(t.b.Y-t.a.Y)-(s.b.Y-s.a.Y)*(t.b.X-t.a.X)) / (long * other)
	near := func(p Point, s segment) bool {
		share := ((p.X-s.a.X)*(s.b.X-s.a.X) + (p.Y-s.a.Y)*(s.b.Y-s.a.Y)) / (s.a.to(s.b) * s.a.to(s.b))
		share = max(0, min(share, 1))
		return p.to(Point{s.a.X + (s.b.X-s.a.X)*share, s.a.Y + (s.b.Y-s.a.Y)*share}) < 1.6
	}
	return turn < 0.1 && (near(s.a, t) && near(s.b, t) || near(t.a, s) && near(t.b, s))
}

package draw

import (
	"math"

	"lowvent.example/cmd/lowvent/internal/letter"
)

// Rectangle is an upright rectangle on a drawing, in mm.
type Rectangle struct{ Left, Top, Right, Bottom float64 }

// Overlaps tells whether two rectangles share more than an edge.
func (r Rectangle) Overlaps(s Rectangle) bool {
	return r.Left < s.Right && s.Left < r.Right && r.Top < s.Bottom && s.Top < r.Bottom
}

// Within tells whether a rectangle lies in another.
func (r Rectangle) Within(s Rectangle) bool {
	return r.Left >= s.Left && r.Right <= s.Right && r.Top >= s.Top && r.Bottom <= s.Bottom
}

// How far letters go above and below their line, as shares of the body: those of the
// font's capitals with accents, and of its descenders.
const (
	above = 0.80
	below = 0.21
)

// Wide is how wide the text comes out, in mm.
func (t *Text) Wide() float64 {
	face := letter.Regular
	if t.Bold {
		face = letter.Bold
	}
	return letter.Width(face, t.Content, t.Size)
}

// Bounds is the upright rectangle that holds the text, turned as it is.
func (t *Text) Bounds() Rectangle {
	wide := t.Wide()
	left := -wide * float64(t.Anchor) / 2
	sine, cosine := math.Sincos(t.Turn * math.Pi / 180)
	var r Rectangle
	for i, corner := range []Point{{left, -above * t.Size}, {left + wide, -above * t.Size}, {left, below * t.Size}, {left + wide, below * t.Size}} {
		x, y := t.At.X+corner.X*cosine-corner.Y*sine, t.At.Y+corner.X*sine+corner.Y*cosine
		r = r.with(x, y, i == 0)
	}
	return r
}

func (r Rectangle) with(x, y float64, first bool) Rectangle {
	if first {
		return Rectangle{x, y, x, y}
	}
	return Rectangle{min(r.Left, x), min(r.Top, y), max(r.Right, x), max(r.Bottom, y)}
}

// Extent is the rectangle that holds all of the marks, but for the width of their lines;
// false when there are none.
func Extent(marks []Mark) (r Rectangle, some bool) {
	add := func(s Rectangle) {
		r = r.with(s.Left, s.Top, !some).with(s.Right, s.Bottom, false)
		some = true
	}
	for _, m := range marks {
		switch m := m.(type) {
		case *Text:
			add(m.Bounds())
		case *Circle:
			add(Rectangle{m.Centre.X - m.Radius, m.Centre.Y - m.Radius, m.Centre.X + m.Radius, m.Centre.Y + m.Radius})
		case *Path:
			for _, p := range m.Points {
				add(Rectangle{p.X, p.Y, p.X, p.Y})
			}
		case *Group:
			if inner, is := Extent(m.Marks); is {
				add(inner)
			}
		}
	}
	return r, some
}

package draw

import (
	"math"

	"lowvent.example/schema/layout"
	"lowvent.example/schema/unit"
	"lowvent.example/vent/box"
)

// place is a place in the dwelling in m: x from front to rear, y from left to right, z up.
type place [3]float64

// solid is the room that a thing takes, sides along the axes; flat, a line or a point too.
type solid struct{ from, to place }

func placeAt(p layout.Point) place {
	return place{float64(p[0].Nominal), float64(p[1].Nominal), float64(p[2].Nominal)}
}

func solidOf(from, to layout.Point) solid { return solid{placeAt(from), placeAt(to)} }

func spot(p place) solid { return solid{p, p} }

// box is the solid as the geometry of the checks takes it.
func (s solid) box() box.Box { return box.Box{From: s.from.point(), To: s.to.point()} }

func (p place) point() box.Point {
	return box.Point{X: unit.Exactly(unit.Length(p[0])), Y: unit.Exactly(unit.Length(p[1])), Z: unit.Exactly(unit.Length(p[2]))}
}

func (s solid) with(t solid) solid {
	for i := range s.from {
		s.from[i], s.to[i] = min(s.from[i], t.from[i]), max(s.to[i], t.to[i])
	}
	return s
}

func (s solid) middle() (m place) {
	for i := range m {
		m[i] = (s.from[i] + s.to[i]) / 2
	}
	return m
}

func (s solid) size(axis int) float64 { return s.to[axis] - s.from[axis] }

// axis is one axis of the dwelling, and whether it runs as the paper's does (1) or
// against it (-1).
type axis struct {
	of    int
	sense float64
}

// view is how a drawing looks at the dwelling.
type view struct {
	right, up, near axis // near grows towards who looks
	scale           float64
	zero            Point // where the dwelling's origin falls on paper
}

func fromAbove() view { return view{right: axis{0, 1}, up: axis{1, 1}, near: axis{2, 1}} }

// fromSide looks at a wall from outside.
func fromSide(w layout.Wall) view {
	switch w {
	case layout.WallLeft:
		return view{right: axis{0, 1}, up: axis{2, 1}, near: axis{1, -1}}
	case layout.WallRear:
		return view{right: axis{1, 1}, up: axis{2, 1}, near: axis{0, 1}}
	case layout.WallFront:
		return view{right: axis{1, -1}, up: axis{2, 1}, near: axis{0, -1}}
	}
	return view{right: axis{0, -1}, up: axis{2, 1}, near: axis{1, 1}}
}

// at is where a place falls on paper.
func (v *view) at(p place) Point {
	return Point{v.zero.X + v.right.sense*p[v.right.of]*v.scale, v.zero.Y - v.up.sense*p[v.up.of]*v.scale}
}

// rect is what a solid looks like.
func (v *view) rect(s solid) Rectangle { return spanning(v.at(s.from), v.at(s.to)) }

// depth is how near the far and the near side of a solid are.
func (v *view) depth(s solid) (far, near float64) {
	a, b := v.near.sense*s.from[v.near.of], v.near.sense*s.to[v.near.of]
	return min(a, b), max(a, b)
}

// length is how long a straight line comes out as seen, in m.
func (v *view) length(a, b place) float64 {
	return math.Hypot(b[v.right.of]-a[v.right.of], b[v.up.of]-a[v.up.of])
}

// hides tells whether a thing lies behind a cover, as far as the thing's middle goes, and
// more than so many m behind its far side: what is in that side is seen through the cover.
func (v *view) hides(cover, thing solid, behind float64) bool {
	const slack = 1e-6
	far, _ := v.depth(cover)
	_, near := v.depth(thing)
	m := thing.middle()
	inside := func(a axis) bool { return m[a.of] > cover.from[a.of]-slack && m[a.of] < cover.to[a.of]+slack }
	return far > near+behind && cover.size(v.right.of) > slack && cover.size(v.up.of) > slack && inside(v.right) && inside(v.up)
}

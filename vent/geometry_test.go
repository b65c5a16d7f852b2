package vent

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"lowvent.example/schema/layout"
	"lowvent.example/schema/unit"
	"lowvent.example/vent/box"
)

// banded makes a length with its band, in m.
func banded(low, nominal, high float64) unit.Value[unit.Length] {
	return unit.Value[unit.Length]{Low: unit.Length(low), Nominal: unit.Length(nominal), High: unit.Length(high)}
}

func boxAt(from, to unit.Value[unit.Length]) box.Box {
	zero := unit.Exactly(unit.Length(0))
	return box.Box{From: box.Point{X: zero, Y: zero, Z: from}, To: box.Point{X: zero, Y: zero, Z: to}}
}

// TestHeightAbove by hand: the ends of the band are the lowest alarm over the highest
// floor, and the other way about.
func TestHeightAbove(t *testing.T) {
	for _, c := range []struct{ floor, thing, want unit.Value[unit.Length] }{
		{banded(0, 0, 0), banded(0.3, 0.3, 0.3), banded(0.3, 0.3, 0.3)},
		{banded(0.1, 0.1, 0.1), banded(0.4048, 0.4048, 0.4048), banded(0.3048, 0.3048, 0.3048)},
		{banded(-0.01, 0, 0.01), banded(0.3, 0.3, 0.3), banded(0.29, 0.3, 0.31)},
		{banded(0, 0, 0), banded(0.28, 0.3, 0.33), banded(0.28, 0.3, 0.33)},
		{banded(-0.02, 0, 0.01), banded(0.28, 0.3, 0.33), banded(0.27, 0.3, 0.35)},
		{banded(-0.7, -0.7, -0.7), banded(-0.6, -0.6, -0.6), banded(0.1, 0.1, 0.1)},
	} {
		high := banded(5, 5, 5)
		if got := heightAbove(boxAt(c.floor, high), boxAt(c.thing, high)); got != c.want {
			t.Errorf("%v over %v: %v, want %v", c.thing, c.floor, got, c.want)
		}
	}
}

// TestLevelled by hand, with the triangle of 3, 4 and 5; and where a tape is shorter
// than the height, nothing is left in plan.
func TestLevelled(t *testing.T) {
	for _, c := range []struct{ straight, height, want unit.Value[unit.Length] }{
		{banded(5, 5, 5), banded(4, 4, 4), banded(3, 3, 3)},
		{banded(5, 5, 5), banded(0, 0, 0), banded(5, 5, 5)},
		{banded(3, 3, 3), banded(4, 4, 4), banded(0, 0, 0)},
		{banded(1.524, 1.524, 1.524), banded(1.2192, 1.2192, 1.2192), banded(0.9144, 0.9144, 0.9144)},
		{banded(5, 10, 13), banded(4, 6, 12), banded(0, 8, 12.369316877)},
		{banded(5, 13, 20), banded(0, 5, 4), banded(3, 12, 20)},
	} {
		if got := levelled(c.straight, c.height); got != c.want {
			t.Errorf("%v less %v: %v, want %v", c.straight, c.height, got, c.want)
		}
	}
}

// TestLevelledHoldsEveryCase: the band of the result holds what any two values inside
// the bands give.
func TestLevelledHoldsEveryCase(t *testing.T) {
	draw := func(rt *rapid.T, name string) (unit.Value[unit.Length], float64) {
		low, width := rapid.Float64Range(0, 5).Draw(rt, name), rapid.Float64Range(0, 2).Draw(rt, name+" width")
		inside := low + width*rapid.Float64Range(0, 1).Draw(rt, name+" inside")
		return banded(low, low+width/2, low+width), inside
	}
	rapid.Check(t, func(rt *rapid.T) {
		d, oneD := draw(rt, "straight")
		h, oneH := draw(rt, "height")
		got := levelled(d, h)
		one := math.Sqrt(max(0, oneD*oneD-oneH*oneH))
		if one < float64(got.Low)-1e-8 || one > float64(got.High)+1e-8 || got.Low > got.Nominal || got.Nominal > got.High {
			rt.Fatalf("%v less %v is %v, and %v lies outside", d, h, got, one)
		}
	})
}

// TestLeastDifference: two bands that share a value do not differ.
func TestLeastDifference(t *testing.T) {
	for _, c := range []struct {
		a, b unit.Value[unit.Length]
		want unit.Length
	}{
		{banded(2, 2, 2), banded(2, 2, 2), 0},
		{banded(2.2, 2.2, 2.2), banded(2.15, 2.15, 2.15), 0.05},
		{banded(2.15, 2.15, 2.15), banded(2.2, 2.2, 2.2), 0.05},
		{banded(1.9, 2, 2.1), banded(2.1, 2.2, 2.3), 0},
		{banded(1.9, 2, 2.1), banded(2.2, 2.3, 2.4), 0.1},
		{banded(2.2, 2.3, 2.4), banded(1.9, 2, 2.1), 0.1},
		{banded(1, 2, 3), banded(1.9, 2, 2.1), 0},
	} {
		if got := leastDifference(c.a, c.b); got != c.want {
			t.Errorf("%v and %v: %v, want %v", c.a, c.b, got, c.want)
		}
	}
}

// TestWidened moves all of a band.
func TestWidened(t *testing.T) {
	if got := widened(banded(1, 2, 3), -0.5); got != banded(0.5, 1.5, 2.5) {
		t.Errorf("%v", got)
	}
}

// TestOutsideOf: what only touches a space is outside it; what may reach in is not
// known to be.
func TestOutsideOf(t *testing.T) {
	point := func(x, y, z float64) layout.Point {
		return layout.Point{unit.Exactly(unit.Length(x)), unit.Exactly(unit.Length(y)), unit.Exactly(unit.Length(z))}
	}
	room := boxOf(point(0, 0, 0), point(4, 2, 2))
	slack := boxOf(layout.Point{banded(3.9, 4, 4.1), unit.Exactly(unit.Length(0)), unit.Exactly(unit.Length(0))}, point(5, 1, 1))
	for name, c := range map[string]struct {
		thing box.Box
		want  box.Answer
	}{
		"far off":           {boxOf(point(6, 0, 0), point(7, 1, 1)), box.Yes},
		"touching a wall":   {boxOf(point(4, 0, 0), point(5, 1, 1)), box.Yes},
		"reaching in":       {boxOf(point(3.9, 0, 0), point(5, 1, 1)), box.No},
		"all inside":        {boxOf(point(1, 1, 1), point(1.5, 1.5, 1.5)), box.No},
		"perhaps inside":    {slack, box.Unsure},
		"a point inside it": {boxOf(point(1, 1, 1), point(1, 1, 1)), box.No},
		"a point outside":   {boxOf(point(6, 1, 1), point(6, 1, 1)), box.Yes},
	} {
		if got := outsideOf(room, c.thing); got != c.want {
			t.Errorf("%s: %s, want %s", name, got, c.want)
		}
	}
}

// TestNoNegativeZero: what rounds to nothing is printed as "0 m" and not as "-0 m".
func TestNoNegativeZero(t *testing.T) {
	for _, x := range []float64{-1e-12, math.Copysign(0, -1), 0, 1e-12} {
		if got := nanometre(x); got != 0 || math.Signbit(float64(got)) {
			t.Errorf("%v becomes %v", x, got)
		}
	}
}

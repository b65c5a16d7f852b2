package vent

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"lowvent.example/schema/unit"
	"lowvent.example/vent/box"
)

func roomOfWalls(x0, y0, z0, x1, y1, z1 float64) box.Box {
	at := func(x, y, z float64) box.Point {
		return box.Point{X: unit.Exactly(unit.Length(x)), Y: unit.Exactly(unit.Length(y)), Z: unit.Exactly(unit.Length(z))}
	}
	return box.Box{From: at(x0, y0, z0), To: at(x1, y1, z1)}
}

// TestGaps by hand: how far a chest lies off a heater on each side, negative where
// it does not lie there.
func TestGaps(t *testing.T) {
	heater := roomOfWalls(1, 1, 0, 2, 1.5, 1)
	for _, c := range []struct {
		name                     string
		chest                    box.Box
		front, rear, left, right unit.Length
	}{
		{"in front of it in the dwelling", roomOfWalls(0.2, 1, 0, 0.6, 1.5, 1), 0.4, -1.8, -0.5, -0.5},
		{"behind it in the dwelling", roomOfWalls(2.25, 1, 0, 3, 1.5, 1), -2, 0.25, -0.5, -0.5},
		{"on its left", roomOfWalls(1, 0.1, 0, 2, 0.7, 1), -1, -1, 0.3, -1.4},
		{"on its right", roomOfWalls(1, 1.7, 0, 2, 2, 1), -1, -1, -1, 0.2},
		{"over a corner", roomOfWalls(2.1, 1.6, 0, 3, 2, 1), -2, 0.1, -1, 0.1},
		{"in the same place", heater, -1, -1, -0.5, -0.5},
	} {
		front, rear, left, right := gaps(heater, c.chest)
		got := []unit.Length{front.Nominal, rear.Nominal, left.Nominal, right.Nominal}
		if want := []unit.Length{c.front, c.rear, c.left, c.right}; !slices.Equal(got, want) {
			t.Errorf("%s: front, rear, left, right %v, want %v", c.name, got, want)
		}
	}
}

// TestGapsHoldEveryCase: whatever the true coordinates within their bands, the gap is
// within its own.
func TestGapsHoldEveryCase(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		length := func(name string, from float64) unit.Value[unit.Length] {
			mid, off := from+float64(rapid.IntRange(0, 3000).Draw(r, name))/1000, float64(rapid.IntRange(0, 50).Draw(r, name+" band"))/1000
			return banded(mid-off, mid, mid+off)
		}
		pick := func(name string, v unit.Value[unit.Length]) float64 {
			share := float64(rapid.IntRange(0, 10).Draw(r, name+" true")) / 10
			return float64(v.Low) + share*float64(v.High-v.Low)
		}
		a, b := roomOfWalls(0, 0, 0, 1, 1, 1), roomOfWalls(0, 0, 0, 1, 1, 1)
		a.To.X, b.From.X = length("to", 0), length("from", 0)
		_, rear, _, _ := gaps(a, b)
		if is := pick("from", b.From.X) - pick("to", a.To.X); is < float64(rear.Low)-1e-9 || is > float64(rear.High)+1e-9 {
			r.Errorf("a gap of %v is outside of %v", is, rear)
		}
	})
}

// TestBeyond holds which sides count: those on which a thing lies, and of one that
// touches or reaches in, the side on which it reaches in least.
func TestBeyond(t *testing.T) {
	sides := func(gaps ...float64) []side {
		var all []side
		for i, g := range gaps {
			all = append(all, side{name: string(rune('a' + i)), gap: unit.Exactly(unit.Length(g))})
		}
		return all
	}
	for _, c := range []struct {
		gaps []float64
		want string
	}{
		{[]float64{-1, -2, 0.3, -1}, "c"}, {[]float64{-1, 0.1, 0.3, -1}, "bc"}, {[]float64{0, -2, 0.3, -1}, "c"},
		{[]float64{0, -2, -0.3, -1}, "a"}, {[]float64{-0.5, -2, -0.3, -1}, "c"}, {[]float64{-0.5, -0.5}, "a"},
	} {
		got := ""
		for _, each := range beyond(sides(c.gaps...)) {
			got += each.name
		}
		if got != c.want {
			t.Errorf("%v: sides %q, want %q", c.gaps, got, c.want)
		}
	}
}

// TestDepthBelow by hand: the ends of the band are the highest alarm under the lowest
// ceiling, and the other way about.
func TestDepthBelow(t *testing.T) {
	floor := banded(0, 0, 0)
	for _, c := range []struct{ ceiling, top, want unit.Value[unit.Length] }{
		{banded(2, 2, 2), banded(1.9, 1.9, 1.9), banded(0.1, 0.1, 0.1)},
		{banded(1.98, 1.98, 1.98), banded(1.6752, 1.6752, 1.6752), banded(0.3048, 0.3048, 0.3048)},
		{banded(1.99, 2, 2.01), banded(1.88, 1.9, 1.91), banded(0.08, 0.1, 0.13)},
		{banded(2, 2, 2), banded(2.1, 2.1, 2.1), banded(-0.1, -0.1, -0.1)},
	} {
		if got := depthBelow(boxAt(floor, c.ceiling), boxAt(floor, c.top)); got != c.want {
			t.Errorf("%v under %v: %v, want %v", c.top, c.ceiling, got, c.want)
		}
	}
}

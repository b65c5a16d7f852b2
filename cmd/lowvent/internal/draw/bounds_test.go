package draw

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestBoundsOfTurnedText(t *testing.T) {
	level := (&Text{Size: 3, Content: "12 cm"}).Bounds()
	up := (&Text{Size: 3, Content: "12 cm", Turn: -90}).Bounds()
	if math.Abs((level.Right-level.Left)-(up.Bottom-up.Top)) > 1e-9 || up.Bottom > 1e-9 {
		t.Errorf("level %v, turned up %v", level, up)
	}
	middle := (&Text{Size: 3, Content: "12 cm", Anchor: Middle}).Bounds()
	if math.Abs(middle.Left+middle.Right) > 1e-9 {
		t.Errorf("a text about its middle: %v", middle)
	}
	if end := (&Text{Size: 3, Content: "12 cm", Anchor: End}).Bounds(); math.Abs(end.Right) > 1e-9 {
		t.Errorf("a text that ends at its place: %v", end)
	}
}

// TestExtentHoldsEachMark: whatever the marks, each of them lies in the extent of all, in
// groups or out of them.
func TestExtentHoldsEachMark(t *testing.T) {
	number := rapid.Float64Range(-500, 500)
	point := rapid.Custom(func(t *rapid.T) Point { return Point{number.Draw(t, "x"), number.Draw(t, "y")} })
	mark := rapid.OneOf(
		rapid.Map(rapid.SliceOfN(point, 1, 5), func(p []Point) Mark { return &Path{Points: p} }),
		rapid.Map(point, func(p Point) Mark { return &Circle{Centre: p, Radius: 2} }),
		rapid.Map(point, func(p Point) Mark { return &Text{At: p, Size: 3, Content: "low vent"} }))
	rapid.Check(t, func(t *rapid.T) {
		marks := rapid.SliceOfN(mark, 1, 8).Draw(t, "marks")
		all, some := Extent([]Mark{&Group{Marks: marks}})
		if !some {
			t.Fatal("no extent")
		}
		for _, m := range marks {
			if one, _ := Extent([]Mark{m}); !one.Within(all) {
				t.Fatalf("%v is not within %v", one, all)
			}
		}
	})
	if _, some := Extent([]Mark{&Group{}}); some {
		t.Error("an extent of nothing")
	}
}

func TestOverlaps(t *testing.T) {
	one := Rectangle{0, 0, 2, 2}
	for _, c := range []struct {
		other Rectangle
		want  bool
	}{{Rectangle{1, 1, 3, 3}, true}, {Rectangle{2, 0, 4, 2}, false}, {Rectangle{0, 3, 2, 4}, false}, {one, true}} {
		if one.Overlaps(c.other) != c.want || c.other.Overlaps(one) != c.want {
			t.Errorf("%v and %v: want %v", one, c.other, c.want)
		}
	}
}

// textsOf is every text of the marks, those in groups too.
func textsOf(marks []Mark) []*Text {
	var all []*Text
	for _, m := range marks {
		switch m := m.(type) {
		case *Text:
			all = append(all, m)
		case *Group:
			all = append(all, textsOf(m.Marks)...)
		}
	}
	return all
}

package box

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"lowvent.example/schema/unit"
)

// plainNear looks at every box.
func plainNear(boxes []Box, b Box, d unit.Length) []int {
	return slices.DeleteFunc(everyPlace(len(boxes)), func(i int) bool { return PlanGap(b, boxes[i]).Low > d })
}

// TestIndexFindsWhatAPlainLoopFinds, for any boxes, cell and distance: points, boxes of
// many cells, bands, and coordinates that are not numbers.
func TestIndexFindsWhatAPlainLoopFinds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		boxes := make([]Box, rapid.IntRange(0, 12).Draw(t, "boxes"))
		for i := range boxes {
			boxes[i] = drawBox(t, fmt.Sprint(i), 40)
			if rapid.IntRange(0, 9).Draw(t, "lost") == 0 {
				boxes[i].From.X = exact(math.NaN())
			}
		}
		x := NewIndex(boxes, unit.Length(rapid.SampledFrom([]float64{0, -1, math.Inf(1), 0.01, 0.5, 1.5, 20}).Draw(t, "cell")))
		b := drawBox(t, "b", 40)
		d := unit.Length(drawLength(t, "d", 3000))
		if d < 0 {
			d = -d
		}
		if got, want := x.Near(b, d), plainNear(boxes, b, d); !slices.Equal(got, want) {
			t.Fatalf("within %v: %v, by a plain loop %v", d, got, want)
		}
	})
}

// TestIndexAtTheEdge holds that a box just at the distance is near, also where its cell
// begins there, and that one a hair farther is not.
func TestIndexAtTheEdge(t *testing.T) {
	boxes := []Box{boxed(2, 2, 0, 0, 0, 0), boxed(2.0000000004, 2.0000000004, 0, 0, 0, 0), boxed(2.000000002, 2.000000002, 0, 0, 0, 0), boxed(-1, -1, 0, 0, 0, 0)}
	x := NewIndex(boxes, 1)
	if got := x.Near(boxed(1, 1, 0, 0, 0, 0), 1); !slices.Equal(got, []int{0, 1}) {
		t.Errorf("within 1 m: %v", got)
	}
	if got := x.Near(boxed(0, 0, 0, 0, 0, 0), 1); !slices.Equal(got, []int{3}) {
		t.Errorf("on the other side: %v", got)
	}
}

func field(n int) []Box {
	boxes := make([]Box, n)
	for i := range boxes {
		u, v := float64(i%100), float64(i/100)
		boxes[i] = boxed(u, u+0.2, v, v+0.2, 0, 1)
	}
	return boxes
}

// BenchmarkIndex makes an index and asks for the neighbours of every box in it.
func BenchmarkIndex(b *testing.B) {
	for _, n := range []int{100, 1000, 10000} {
		boxes := field(n)
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			for b.Loop() {
				x := NewIndex(boxes, 1.5)
				for _, each := range boxes {
					if len(x.Near(each, 1.5)) == 0 {
						b.Fatal("a box is not near itself")
					}
				}
			}
		})
	}
}

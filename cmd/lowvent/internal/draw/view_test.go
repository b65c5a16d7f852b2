package draw

import (
	"math"
	"strings"
	"testing"

	"lowvent.example/schema/layout"
)

// TestSidesOfTheViews: facing the front, the left is to the left. Seen from above with the
// front to the left, the right side is at the top; seen from the right, the front is to the
// right; seen from the rear, the right is to the right.
func TestSidesOfTheViews(t *testing.T) {
	front, left, low := place{0, 0, 0}, place{0, 0, 0}, place{0, 0, 0}
	rear, right, high := place{1, 0, 0}, place{0, 1, 0}, place{0, 0, 1}
	for _, c := range []struct {
		name           string
		view           view
		toRight, above [2]place // the second lies to the right of the first, or above it
	}{
		{"plan", fromAbove(), [2]place{front, rear}, [2]place{left, right}},
		{"right", fromSide(layout.WallRight), [2]place{rear, front}, [2]place{low, high}},
		{"left", fromSide(layout.WallLeft), [2]place{front, rear}, [2]place{low, high}},
		{"rear", fromSide(layout.WallRear), [2]place{left, right}, [2]place{low, high}},
		{"front", fromSide(layout.WallFront), [2]place{right, left}, [2]place{low, high}},
	} {
		v := c.view
		v.scale = 10
		if a, b := v.at(c.toRight[0]), v.at(c.toRight[1]); b.X-a.X != 10 || b.Y != a.Y {
			t.Errorf("%s: %v then %v", c.name, a, b)
		}
		if a, b := v.at(c.above[0]), v.at(c.above[1]); a.Y-b.Y != 10 || b.X != a.X {
			t.Errorf("%s: %v, and %v above it", c.name, a, b)
		}
	}
}

// TestWhatIsHidden: below a floor, or behind the far side of what stands before it; not what
// is in that side.
func TestWhatIsHidden(t *testing.T) {
	room := solid{place{0, 0, 0}, place{4, 2, 2}}
	plan, right := fromAbove(), fromSide(layout.WallRight)
	for _, c := range []struct {
		name   string
		view   view
		thing  solid
		behind float64
		want   bool
	}{
		{"below the floor", plan, solid{place{1, 1, -0.6}, place{2, 1.5, -0.1}}, 0, true},
		{"on the floor", plan, solid{place{1, 1, 0}, place{2, 1.5, 0.4}}, 0, false},
		{"over the roof", plan, spot(place{1, 1, 2.3}), 0, false},
		{"below, and outside in plan", plan, spot(place{5, 1, -0.5}), 0, false},
		{"behind the far wall", right, spot(place{1, -0.3, 1}), 0, true},
		{"in the far wall", right, spot(place{1, -0.03, 1}), 0.1, false},
		{"before the near wall", right, spot(place{1, 2.2, 1}), 0, false},
	} {
		if got := c.view.hides(room, c.thing, c.behind); got != c.want {
			t.Errorf("%s: hidden %v", c.name, got)
		}
	}
}

// TestScaleIsTheLargestThatFits, on a sheet upright or lying.
func TestScaleIsTheLargestThatFits(t *testing.T) {
	for _, c := range []struct{ wide, high, scale, on float64 }{
		{1.1, 0.7, 200, 250}, {1.1, 0.9, 100, 250}, {0.8, 1.1, 200, 180}, {10, 2, 20, 250}, {6, 3, 40, 250}, {4, 9, 20, 180}, {40, 40, 2, 250}, {3, 3, 50, 250},
	} {
		scale, on := fitting(func(scale, _ float64) (float64, float64) { return c.wide * scale, c.high * scale })
		if scale != c.scale || on.wide != c.on {
			t.Errorf("%v by %v m: %v on a sheet %v wide, want %v on %v", c.wide, c.high, scale, on.wide, c.scale, c.on)
		}
	}
	if got := ratioText(40); got != "1 : 25" {
		t.Error(got)
	}
}

// TestScaleBarsAreToScale: the bar is as long as the number at its end says, in metres and
// in feet. A foot is 0.3048 m (international yard and pound agreement, 1959).
func TestScaleBarsAreToScale(t *testing.T) {
	for step := range 12 {
		scale := 1000 / ratio(step)
		for unit, metre := range map[string]float64{"m": 1, "ft": 0.3048} {
			marks := bar(Point{}, scale*metre, unit)
			var long float64
			var last string
			for _, m := range marks {
				switch m := m.(type) {
				case *Path:
					for _, p := range m.Points {
						long = max(long, p.X)
					}
				case *Text:
					last = m.Content
				}
			}
			number, _ := strings.CutSuffix(last, " "+unit)
			if want := parsed(t, number) * metre * scale; math.Abs(long-want) > 1e-6 || long > 120 {
				t.Errorf("%s: the bar of %s is %v mm, want %v", ratioText(scale), last, long, want)
			}
		}
	}
}

// TestWhereADistanceIsShown: in the drawing in whose plane it lies, and in one only.
func TestWhereADistanceIsShown(t *testing.T) {
	plan, elevation := fromAbove(), fromSide(layout.WallRight)
	for _, c := range []struct {
		name   string
		to     place
		inPlan bool
		real   bool
	}{
		{"along", place{1, 0, 0}, true, true}, {"across", place{0, 1, 0}, true, true}, {"aslant on the floor", place{1, 1, 0}, true, true},
		{"up", place{0, 0, 1}, false, true}, {"up and along", place{1, 0, 1}, false, true}, {"up and across, mostly across", place{0, 2, 1}, true, false},
		{"mostly up", place{0.1, 0.5, 3}, false, false},
	} {
		d := &distance{a: spot(place{}), b: spot(c.to)}
		if d.belongs(&plan, &elevation) != c.inPlan || d.belongs(&elevation, &plan) == c.inPlan {
			t.Errorf("%s: in the wrong drawing, or in both", c.name)
		}
		here := &elevation
		if c.inPlan {
			here = &plan
		}
		if d.trueIn(here) != c.real {
			t.Errorf("%s: seen at its true length: %v", c.name, !c.real)
		}
	}
}

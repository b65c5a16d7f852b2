package draw

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"lowvent.example/schema/layout"
)

// aPoint draws a point of a sheet.
func aPoint(t *rapid.T, name string) Point {
	return Point{rapid.Float64Range(0, 200).Draw(t, name+" x"), rapid.Float64Range(0, 200).Draw(t, name+" y")}
}

// aRectangle draws one with some size.
func aRectangle(t *rapid.T, name string) Rectangle {
	a := aPoint(t, name)
	return Rectangle{a.X, a.Y, a.X + rapid.Float64Range(0.1, 60).Draw(t, name+" wide"), a.Y + rapid.Float64Range(0.1, 60).Draw(t, name+" high")}
}

// TestDimensionLinesReachTheirEnds: the line goes from one end to the other, and a filled
// arrow has its tip at each; where it is short the arrows come from outside.
func TestDimensionLinesReachTheirEnds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := aPoint(t, "a")
		long, turn := rapid.Float64Range(0, 40).Draw(t, "long"), rapid.Float64Range(0, 2*math.Pi).Draw(t, "turn")
		b := a.plus(long*math.Cos(turn), long*math.Sin(turn))
		marks := dimension(a, b, Pen{Width: medium, Dash: Dashed})
		var tips []Point
		for i, m := range marks {
			p := m.(*Path)
			for _, q := range p.Points {
				if math.IsNaN(q.X) || math.IsNaN(q.Y) {
					t.Fatalf("mark %d has no place: %v", i, p.Points)
				}
			}
			switch {
			case p.Closed && p.Fill == Black:
				tips = append(tips, p.Points[0])
				back := Point{(p.Points[1].X + p.Points[2].X) / 2, (p.Points[1].Y + p.Points[2].Y) / 2}
				inward := back.to(Point{(a.X + b.X) / 2, (a.Y + b.Y) / 2}) < p.Points[0].to(Point{(a.X + b.X) / 2, (a.Y + b.Y) / 2})
				if within := a.to(b) >= 3*arrowLong; inward != within {
					t.Fatalf("%v mm long, and an arrow stands within: %v", a.to(b), inward)
				}
				if math.Abs(p.Points[0].to(back)-arrowLong) > 1e-9 {
					t.Fatalf("an arrow %v mm long", p.Points[0].to(back))
				}
			case p.Pen.Dash != Dashed || p.Pen.Width != medium:
				t.Fatalf("a line drawn with %+v", p.Pen)
			}
		}
		if first := marks[0].(*Path).Points; first[0] != a || first[1] != b {
			t.Fatalf("the line goes from %v to %v, want %v to %v", first[0], first[1], a, b)
		}
		if len(tips) != 2 || tips[0] != a || tips[1] != b {
			t.Fatalf("the arrows' tips are %v, want %v and %v", tips, a, b)
		}
		if r, _ := Extent(marks); !r.Within(spanning(a, b).grown(2*arrowLong + 1e-9)) {
			t.Fatalf("from %v to %v, and it takes %v", a, b, r)
		}
	})
}

// TestClearancesLieWhereTheApplianceFaces: what its plate asks for in front of it lies on
// the side that it faces, and so on round; above and below never hang on that.
func TestClearancesLieWhereTheApplianceFaces(t *testing.T) {
	body := solid{place{1, 1, 0}, place{2, 2, 1}}
	const asked = `"clearances": { "front": "0.1 m", "rear": "0.2 m", "sides": "0.3 m", "above": "0.4 m", "below": "0.5 m" }`
	for faces, want := range map[string]solid{ // x from front to rear, y from left to right, z up
		`"faces": "front"`: {place{1 - 0.1, 1 - 0.3, -0.5}, place{2 + 0.2, 2 + 0.3, 1.4}},
		`"faces": "rear"`:  {place{1 - 0.2, 1 - 0.3, -0.5}, place{2 + 0.1, 2 + 0.3, 1.4}},
		`"faces": "left"`:  {place{1 - 0.3, 1 - 0.1, -0.5}, place{2 + 0.3, 2 + 0.2, 1.4}},
		`"faces": "right"`: {place{1 - 0.3, 1 - 0.2, -0.5}, place{2 + 0.3, 2 + 0.1, 1.4}},
		`"kind": "oven"`:   {place{1, 1, -0.5}, place{2, 2, 1.4}}, // which way it faces is not stated
	} {
		l := loaded(t, `"appliances": { "x": { "box": { "from": ["1 m", "1 m", "0 m"], "to": ["2 m", "2 m", "1 m"] }, `+faces+`, `+asked+` } }`)
		room, some := clearanceRoom(l.Appliances.All()[0], body)
		for i := range room.from {
			if !some || math.Abs(room.from[i]-want.from[i]) > 1e-9 || math.Abs(room.to[i]-want.to[i]) > 1e-9 {
				t.Errorf("%s: %v, want %v", faces, room, want)
				break
			}
		}
		for _, g := range []*Drawing{Plan(l, nil), Elevation(l, nil)} {
			of := groups(g.Marks)["/appliances/x/clearances"]
			if len(of) != 1 {
				t.Fatalf("%s, %s: %d outlines", faces, g.ID, len(of))
			}
			r, _ := Extent(of[0].Marks)
			wide, high := want.size(0), want.size(1)
			if g.ID == "elevation" {
				high = want.size(2)
			}
			if math.Abs(r.wide()-wide*g.Scale) > 0.03 || math.Abs(r.high()-high*g.Scale) > 0.03 || of[0].Marks[0].(*Path).Pen.Dash != DashDot {
				t.Errorf("%s, %s: the room takes %v mm at %v a metre, want %v by %v m", faces, g.ID, r, g.Scale, wide, high)
			}
		}
	}
	l := loaded(t, `"appliances": { "x": { "box": { "from": ["1 m", "1 m", "0 m"], "to": ["2 m", "2 m", "1 m"] }, "faces": "left" } }`)
	if _, some := clearanceRoom(l.Appliances.All()[0], body); some || len(groups(Plan(l, nil).Marks)["/appliances/x/clearances"]) > 0 {
		t.Error("an appliance whose plate asks for nothing has room drawn about it")
	}
}

// TestHatchingFillsItsRectangleAndNoMore: lines at 45°, evenly apart, all within it, from
// edge to edge.
func TestHatchingFillsItsRectangleAndNoMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, apart := aRectangle(t, "r"), rapid.Float64Range(0.8, 5).Draw(t, "apart")
		marks := hatched(r, apart, Pen{Width: thin})
		if want := int((r.wide() + r.high()) / apart); len(marks) < want-1 || len(marks) > want {
			t.Fatalf("%d lines in %v by %v, %v apart", len(marks), r.wide(), r.high(), apart)
		}
		last := math.Inf(-1)
		for _, m := range marks {
			p := m.(*Path).Points
			for _, q := range p {
				if !q.within(r.grown(1e-9)) {
					t.Fatalf("%v lies beyond %v", q, r)
				}
				if on := r.grown(-1e-9); q.within(on) {
					t.Fatalf("%v lies within %v and not on its edge", q, r)
				}
			}
			if run, rise := p[1].X-p[0].X, p[0].Y-p[1].Y; math.Abs(run-rise) > 1e-9 || run < -1e-9 {
				t.Fatalf("from %v to %v is not 45°", p[0], p[1])
			}
			along := p[0].X + p[0].Y
			if step := along - last; !math.IsInf(last, -1) && math.Abs(step-apart) > 1e-6 {
				t.Fatalf("lines %v apart, want %v", step, apart)
			}
			last = along
		}
	})
}

// TestWhatOfALineIsInARectangle: of many points along a segment, those between the two
// shares lie within, and no others.
func TestWhatOfALineIsInARectangle(t *testing.T) {
	in, out := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		s, r := segment{aPoint(t, "a"), aPoint(t, "b")}, aRectangle(t, "r")
		if rapid.IntRange(0, 4).Draw(t, "upright") == 0 {
			s.b.X = s.a.X
		}
		from, to := s.shares(r)
		for i := range 101 {
			share := float64(i) / 100
			p := Point{s.a.X + (s.b.X-s.a.X)*share, s.a.Y + (s.b.Y-s.a.Y)*share}
			switch {
			case share > from+1e-6 && share < to-1e-6:
				in++
				if !p.within(r.grown(1e-6)) {
					t.Fatalf("%v of %v is in %v, by the shares %v to %v", p, s, r, from, to)
				}
			case share < from-1e-6 || share > to+1e-6:
				out++
				if p.within(r.grown(-1e-6)) {
					t.Fatalf("%v of %v is not in %v, by the shares %v to %v", p, s, r, from, to)
				}
			}
		}
		if a, b, some := s.clipped(r); some != (from < to) || some && (!a.within(r.grown(1e-6)) || !b.within(r.grown(1e-6))) {
			t.Fatalf("%v in %v: clipped to %v and %v, %v", s, r, a, b, some)
		}
		if length := s.inside(r); math.Abs(length-max(0, to-from)*s.a.to(s.b)) > 1e-6 {
			t.Fatalf("%v mm of %v in %v", length, s, r)
		}
	})
	if in < 100 || out < 1000 {
		t.Errorf("%d points within, %d without: the test says little", in, out)
	}
}

// TestSegmentsThatCross: by the sides on which the ends of one lie of the other; it does not
// hang on which is named first, nor on which end is.
func TestSegmentsThatCross(t *testing.T) {
	for _, c := range []struct {
		name string
		s, t segment
		want bool
	}{
		{"a cross", segment{Point{0, 0}, Point{10, 10}}, segment{Point{0, 10}, Point{10, 0}}, true},
		{"side by side", segment{Point{0, 0}, Point{10, 0}}, segment{Point{0, 1}, Point{10, 1}}, false},
		{"one after the other", segment{Point{0, 0}, Point{4, 0}}, segment{Point{6, 0}, Point{9, 0}}, false},
		{"touching at an end", segment{Point{0, 0}, Point{10, 0}}, segment{Point{5, 0}, Point{5, 9}}, false},
		{"with one end in common", segment{Point{0, 0}, Point{10, 0}}, segment{Point{0, 0}, Point{0, 9}}, false},
		{"short of it", segment{Point{0, 0}, Point{10, 0}}, segment{Point{5, 1}, Point{5, 9}}, false},
	} {
		for _, one := range []segment{c.s, {c.s.b, c.s.a}} {
			for _, other := range []segment{c.t, {c.t.b, c.t.a}} {
				if one.crosses(other) != c.want || other.crosses(one) != c.want {
					t.Errorf("%s: %v and %v cross: %v", c.name, one, other, !c.want)
				}
			}
		}
	}
}

// TestSegmentsBesideOneAnother would be taken for one: alike in direction, and near along
// all of the shorter.
func TestSegmentsBesideOneAnother(t *testing.T) {
	long := segment{Point{0, 0}, Point{40, 0}}
	for _, c := range []struct {
		name string
		t    segment
		want bool
	}{
		{"the same", long, true}, {"turned about", segment{Point{40, 0}, Point{0, 0}}, true}, {"a part of it", segment{Point{10, 0.5}, Point{20, 0.5}}, true},
		{"far beside it", segment{Point{0, 3}, Point{40, 3}}, false}, {"across", segment{Point{20, -5}, Point{20, 5}}, false}, {"beyond its end", segment{Point{45, 0}, Point{60, 0}}, false},
		{"half beyond", segment{Point{30, 0}, Point{60, 0}}, false}, {"a point", segment{Point{3, 0}, Point{3, 0}}, false}, {"a little aslant", segment{Point{10, 0}, Point{30, 1}}, true}, {"aslant", segment{Point{10, -1}, Point{15, 1}}, false},
	} {
		if long.beside(c.t) != c.want || c.t.beside(long) != c.want {
			t.Errorf("%s: taken for one: %v", c.name, !c.want)
		}
	}
}

// TestLeadersJoinLabelAndThing: they begin on the label's edge and end in or on what it
// names; on a round thing within its circle.
func TestLeadersJoinLabelAndThing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := &wanted{of: aRectangle(t, "of"), round: rapid.Bool().Draw(t, "round")}
		if w.round {
			w.of.Bottom = w.of.Top + w.of.wide()
		}
		label := aRectangle(t, "label")
		if label.Overlaps(w.of) {
			return
		}
		l := w.leader(label)
		if !l.a.within(label.grown(1e-9)) || l.a.within(label.grown(-1e-9)) {
			t.Fatalf("the leader begins at %v, the label is %v", l.a, label)
		}
		if !l.b.within(w.of.grown(1e-9)) {
			t.Fatalf("the leader ends at %v, and it names %v", l.b, w.of)
		}
		if w.round && w.of.wide() > 2 && w.of.centre().to(l.b) > w.of.wide()/2 {
			t.Fatalf("the leader ends at %v, without the circle in %v", l.b, w.of)
		}
		along := segment{aPoint(t, "from"), aPoint(t, "to")}
		w.along = &along
		if end := w.leader(label).b; distanceTo(along, end) > 1e-6 {
			t.Fatalf("the leader to %v ends at %v, beside it", along, end)
		}
	})
}

// distanceTo is how far a point is off a segment.
func distanceTo(s segment, p Point) float64 {
	least := math.Inf(1)
	for i := range 2001 {
		share := float64(i) / 2000
		least = min(least, p.to(Point{s.a.X + (s.b.X-s.a.X)*share, s.a.Y + (s.b.Y-s.a.Y)*share}))
	}
	return least - s.a.to(s.b)/2000
}

// TestRoundingIsToAHundredth of a millimetre, for every coordinate of every kind of mark,
// and makes no minus nought.
func TestRoundingIsToAHundredth(t *testing.T) {
	marks := []Mark{&Group{Marks: []Mark{line(Pen{}, Point{1.23456, -0.001}), &Circle{Centre: Point{2.005001, 3.999}, Radius: 1.2349}, &Text{At: Point{-0.004, 7.7777}}}}}
	rounded(marks)
	want := []Point{{1.23, 0}, {2.01, 4}, {0, 7.78}}
	got := pointsOf(marks)
	if !slices.Equal(got, want) || marks[0].(*Group).Marks[1].(*Circle).Radius != 1.23 {
		t.Errorf("%v, want %v", got, want)
	}
	for _, p := range got {
		if math.Signbit(p.X) || math.Signbit(p.Y) {
			t.Errorf("minus nought in %v", p)
		}
	}
}

// TestOutwardIsAwayFromTheMiddle: for each wall and each view, the way out through it leads
// away from the middle of the box, and nowhere where the wall is seen flat.
func TestOutwardIsAwayFromTheMiddle(t *testing.T) {
	box := solid{place{0, 0, 0}, place{2, 2, 2}}
	out := map[layout.Wall]place{layout.WallFront: {-1, 1, 1}, layout.WallRear: {3, 1, 1}, layout.WallLeft: {1, -1, 1}, layout.WallRight: {1, 3, 1}, layout.WallFloor: {1, 1, -1}, layout.WallCeiling: {1, 1, 3}}
	views := []view{fromAbove(), fromSide(layout.WallLeft), fromSide(layout.WallRight), fromSide(layout.WallFront), fromSide(layout.WallRear)}
	for i := range views {
		v := &views[i]
		v.scale = 10
		for wall, p := range out {
			from, to := v.at(box.middle()), v.at(p)
			want := Point{}
			if d := from.to(to); d > 0 {
				want = Point{(to.X - from.X) / d, (to.Y - from.Y) / d}
			}
			if got := outward(wall, v); got.to(want) > 1e-9 {
				t.Errorf("view %d: out by the %s is %v, want %v", i, wall, got, want)
			}
			w := &work{view: *v}
			a, b, seen := w.wallOnPaper(wall, v.rect(box))
			if seen != (want != Point{}) {
				t.Errorf("view %d: the %s wall is seen from its edge: %v", i, wall, seen)
			}
			middle := Point{(a.X + b.X) / 2, (a.Y + b.Y) / 2}
			if edge := from.plus(want.X*10, want.Y*10); seen && (middle.to(edge) > 1e-9 || math.Abs(a.to(b)-20) > 1e-9) {
				t.Errorf("view %d: the %s wall goes from %v to %v, its middle should be %v", i, wall, a, b, edge)
			}
		}
	}
}

// TestRoundScaleFields: a field of a scale bar is a round length, at least 9 mm, and never
// so long that the next smaller would do.
func TestRoundScaleFields(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		scale := rapid.Float64Range(0.001, 500).Draw(t, "scale")
		field := fieldOf(scale)
		digits := field / math.Pow(10, math.Floor(math.Log10(field)+1e-9))
		if !slices.ContainsFunc([]float64{1, 2.5, 5, 10}, func(d float64) bool { return math.Abs(d-digits) < 1e-9 }) {
			t.Fatalf("a field of %v m", field)
		}
		if field*scale < 9-1e-9 || field*scale >= 9*2.5+1e-9 {
			t.Fatalf("a field of %v m is %v mm on paper", field, field*scale)
		}
	})
	last := 0.0
	for step := range 40 {
		if ratio(step) <= last {
			t.Fatalf("1 : %v is followed by 1 : %v", last, ratio(step))
		}
		last = ratio(step)
	}
}

// TestPlacesAlongAWay: the nearest place on it to a point, against many along it.
func TestPlacesAlongAWay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string) (p place) {
			for i := range p {
				p[i] = rapid.Float64Range(-5, 5).Draw(t, name)
			}
			return p
		}
		a, b, p := draw("a"), draw("b"), draw("p")
		if rapid.IntRange(0, 9).Draw(t, "no way") == 0 {
			b = a
		}
		share, off, long := nearest(a, b, p)
		if share < 0 || share > 1 || math.Abs(long-distanceBetween(a, b)) > 1e-9 {
			t.Fatalf("share %v of %v m", share, long)
		}
		least := math.Inf(1)
		for i := range 1001 {
			at := float64(i) / 1000
			least = min(least, distanceBetween(p, place{a[0] + at*(b[0]-a[0]), a[1] + at*(b[1]-a[1]), a[2] + at*(b[2]-a[2])}))
		}
		if off > least+1e-9 || off < least-long/1000-1e-9 {
			t.Fatalf("%v off, and the least of many is %v", off, least)
		}
	})
}

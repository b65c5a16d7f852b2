package draw

import (
	"fmt"
	"math"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

func parsed(t *testing.T, text string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

// TestLabelsFindPlaces: wherever things lie, no two labels share a place, and each lies on
// the paper.
func TestLabelsFindPlaces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := field{area: Rectangle{0, 0, 100, 60}}
		var taken []Rectangle
		for range rapid.IntRange(1, 30).Draw(t, "labels") {
			of := around(Point{rapid.Float64Range(0, 100).Draw(t, "x"), rapid.Float64Range(0, 60).Draw(t, "y")}, 3, 3)
			f.avoid(of, 3)
			r, _, ok := f.place(wanted{of: of, wide: rapid.Float64Range(2, 15).Draw(t, "wide"), high: 3, far: 60})
			if !ok {
				continue
			}
			for _, s := range taken {
				if r.Overlaps(s) {
					t.Fatalf("%v lies over %v", r, s)
				}
			}
			if !r.Within(f.area) {
				t.Fatalf("%v lies beyond the paper", r)
			}
			f.take(r)
			taken = append(taken, r)
		}
		if len(taken) == 0 {
			t.Fatal("no label found a place on an empty paper")
		}
	})
}

// TestAFullFieldGivesNoPlace: it does not give a place that is taken.
func TestAFullFieldGivesNoPlace(t *testing.T) {
	f := field{area: Rectangle{0, 0, 20, 20}}
	f.take(Rectangle{0, 0, 20, 20})
	if r, _, ok := f.place(wanted{of: around(Point{10, 10}, 2, 2), wide: 4, high: 3, far: 50}); ok {
		t.Errorf("a place at %v", r)
	}
}

func TestSegments(t *testing.T) {
	box := Rectangle{2, 2, 6, 6}
	for _, c := range []struct {
		s      segment
		inside float64
	}{{segment{Point{0, 4}, Point{10, 4}}, 4}, {segment{Point{3, 3}, Point{5, 3}}, 2}, {segment{Point{0, 0}, Point{10, 1}}, 0}, {segment{Point{4, 0}, Point{4, 4}}, 2}, {segment{Point{7, 7}, Point{9, 9}}, 0}} {
		if got := c.s.inside(box); math.Abs(got-c.inside) > 1e-9 {
			t.Errorf("%v: %v mm inside, want %v", c.s, got, c.inside)
		}
	}
	cross, apart := segment{Point{0, 0}, Point{4, 4}}, segment{Point{0, 4}, Point{4, 0}}
	if !cross.crosses(apart) || cross.crosses(segment{Point{5, 0}, Point{9, 1}}) {
		t.Error("crossing is told wrongly")
	}
	along := segment{Point{0, 0}, Point{10, 0}}
	if !along.beside(segment{Point{2, 0.5}, Point{8, 0.5}}) || along.beside(segment{Point{2, 3}, Point{8, 3}}) || along.beside(segment{Point{5, 0}, Point{5, 8}}) {
		t.Error("running along one another is told wrongly")
	}
}

// TestDimensionLinesEndWhereTheyShould: short or long, the two tips are at the two points.
func TestDimensionLinesEndWhereTheyShould(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := Point{rapid.Float64Range(0, 50).Draw(t, "x"), rapid.Float64Range(0, 50).Draw(t, "y")}
		sine, cosine := math.Sincos(rapid.Float64Range(0, 6).Draw(t, "turn"))
		long := rapid.Float64Range(0.1, 40).Draw(t, "long")
		b := a.plus(long*cosine, long*sine)
		tips := map[Point]bool{}
		for _, m := range dimension(a, b, Pen{Width: thin}) {
			if p := m.(*Path); p.Closed {
				tips[p.Points[0]] = true
			}
		}
		if !tips[a] || !tips[b] || len(tips) != 2 {
			t.Fatalf("tips at %v, want %v and %v", tips, a, b)
		}
	})
}

// TestZonesAreToldByTheirLines: no two pressures are drawn alike, and none by colour.
func TestZonesAreToldByTheirLines(t *testing.T) {
	seen := map[Pen]layout.PressureZone{}
	for _, zone := range append([]layout.PressureZone{""}, layout.PressureZoneHigh, layout.PressureZoneMiddle, layout.PressureZoneLow) {
		pen := zonePen(zone)
		if other, twice := seen[pen]; twice || pen.Ink != None || pen.Width == 0 {
			t.Errorf("%q is drawn as %v, like %q", zone, pen, other)
		}
		seen[pen] = zone
		if zoneMeans(zone) == "" {
			t.Errorf("%q is not explained", zone)
		}
	}
}

// TestSignalWordsHaveTheirColours, as ANSI Z535.1 has them (from memory), with letters that
// can be read on them.
func TestSignalWordsHaveTheirColours(t *testing.T) {
	for word, want := range map[report.Signal]Ink{report.Danger: Red, report.Warning: Orange, report.Caution: Yellow, report.Notice: Blue} {
		marks, wide := signalTag(Point{}, word, small)
		text := marks[1].(*Text)
		back := marks[0].(*Path)
		if back.Fill != want || text.Content != string(word) || text.Ink == back.Fill {
			t.Errorf("%s: on %v in %v", word, back.Fill, text.Ink)
		}
		if r, _ := Extent(marks[:1]); !text.Bounds().Within(r.grown(0.15)) || math.Abs(r.wide()-wide) > 1e-9 {
			t.Errorf("%s: letters %v on a field %v", word, text.Bounds(), r)
		}
	}
}

// TestSymbolsFitTheLegend: each sort of thing has a symbol of its own that goes into a
// legend, and that differs from every other.
func TestSymbolsFitTheLegend(t *testing.T) {
	shapes := map[string]string{}
	for _, s := range signs {
		marks := symbol(s.sort, s.word, middle, Pen{Width: medium})
		if r, some := Extent(marks); !some || !r.Within(Rectangle{0, 0, 12, 6}) {
			t.Errorf("%s takes %v", s.means, r)
		}
		shape := shapeOf(marks)
		if other, twice := shapes[shape]; twice && other != s.means {
			t.Errorf("%s looks like %s", s.means, other)
		}
		shapes[shape] = s.means
	}
}

// TestClearancesGrowTheWayAnApplianceFaces: to the front is towards the wall it faces.
func TestClearancesGrowTheWayAnApplianceFaces(t *testing.T) {
	body := solid{place{1, 1, 1}, place{2, 2, 2}}
	for _, c := range []struct {
		faces    string
		from, to place
	}{
		{`"faces": "rear",`, place{0.8, 0.9, 0.95}, place{2.5, 2.1, 2.75}},
		{`"faces": "front",`, place{0.5, 0.9, 0.95}, place{2.2, 2.1, 2.75}},
		{`"faces": "right",`, place{0.9, 0.8, 0.95}, place{2.1, 2.5, 2.75}},
		{`"faces": "left",`, place{0.9, 0.5, 0.95}, place{2.1, 2.2, 2.75}},
		{``, place{1, 1, 0.95}, place{2, 2, 2.75}},
	} {
		l := loaded(t, `"appliances": { "hob": { `+c.faces+` "clearances": { "above": "0.75 m", "below": "0.05 m", "front": "0.5 m", "rear": "0.2 m", "sides": "0.1 m" } } }`)
		room, some := clearanceRoom(l.Appliances.Get("hob"), body)
		for i := range room.from {
			if !some || math.Abs(room.from[i]-c.from[i]) > 1e-9 || math.Abs(room.to[i]-c.to[i]) > 1e-9 {
				t.Errorf("%s: %v, want %v to %v", c.faces, room, c.from, c.to)
				break
			}
		}
	}
	bare := loaded(t, `"appliances": { "hob": {} }`)
	if _, some := clearanceRoom(bare.Appliances.Get("hob"), body); some {
		t.Error("a clearance that nobody stated")
	}
}

// shapeOf is what a drawing looks like, as a text.
func shapeOf(marks []Mark) string {
	rounded(marks)
	text := ""
	for _, m := range flat(marks) {
		switch m := m.(type) {
		case Path:
			m.Pen.Width = 0
			text += fmt.Sprint(m)
		case Circle:
			m.Pen.Width = 0
			text += fmt.Sprint(m)
		}
	}
	return text
}

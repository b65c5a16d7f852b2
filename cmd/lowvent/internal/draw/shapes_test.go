package draw

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"lowvent.example/schema/report"
)

// signsDrawn is every sign that stands for something without a size, by what it means, drawn
// about a point.
func signsDrawn(at Point) map[string][]Mark {
	all := map[string][]Mark{}
	for _, s := range signs {
		all[s.means] = symbol(s.sort, s.word, at, Pen{Width: medium})
	}
	all["appliance"] = symbol(isAppliance, "", at, Pen{Width: medium})
	all["exhaust"] = symbol(isExhaust, "", at, Pen{Width: medium})
	all["cylinder"] = symbol(isCylinder, "", at, Pen{Width: medium})
	all["stored"] = symbol(isStored, "", at, Pen{Width: medium})
	all["end of a vent"] = endSymbol("end", at, Pen{Width: medium})
	all["end of a flue"] = endSymbol("terminal", at, Pen{Width: medium})
	all["intake"] = endSymbol("intake", at, Pen{Width: medium})
	all["end of an exhaust"] = endSymbol("exhaust outlet", at, Pen{Width: medium})
	all["origin"] = originMark(at)
	return all
}

// schematicSigns is every sign of the schematic, by the section of what it stands for.
func schematicSigns(at Point) map[string][]Mark {
	all := map[string][]Mark{"shut-off": valveMark(at), "joint": jointMark(at, 7)}
	for _, section := range []string{"cylinders", "changeovers", "regulators", "junctions", "openEnds", "outdoorOutlets", "appliances"} {
		all[section] = symbolOf(section, at)
	}
	return all
}

// TestEachSignHasItsOwnShape, and stays small, about its place.
func TestEachSignHasItsOwnShape(t *testing.T) {
	for _, c := range []struct {
		name  string
		signs map[string][]Mark
		reach float64 // mm
	}{{"to scale", signsDrawn(Point{}), 1.9}, {"schematic", schematicSigns(Point{}), 4.6}} {
		seen := map[string]string{}
		for means, marks := range c.signs {
			text := fmt.Sprintf("%+v", flat(marks))
			if other, is := seen[text]; is {
				t.Errorf("%s: %q is drawn like %q", c.name, means, other)
			}
			seen[text] = means
			r, some := Extent(marks)
			if !some || !r.Within(around(Point{}, 2*c.reach, 2*c.reach)) || !(Point{}).within(r) {
				t.Errorf("%s: %q takes %v about its place", c.name, means, r)
			}
		}
	}
}

// TestASignIsTheSameEverywhere: wherever it stands, its shape is the same.
func TestASignIsTheSameEverywhere(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := Point{float64(rapid.IntRange(0, 400).Draw(t, "x")) / 2, float64(rapid.IntRange(0, 400).Draw(t, "y")) / 2}
		for name, make := range map[string]func(Point) map[string][]Mark{"to scale": signsDrawn, "schematic": schematicSigns} {
			here, there := make(Point{}), make(at)
			for means, marks := range here {
				moved := pointsOf(there[means])
				for i, p := range pointsOf(marks) {
					if p.plus(at.X, at.Y).to(moved[i]) > 1e-9 {
						t.Fatalf("%s: %q is another shape at %v: %v, then %v", name, means, at, p, moved[i])
					}
				}
			}
		}
	})
}

// pointsOf is every point of some marks.
func pointsOf(marks []Mark) []Point {
	var all []Point
	for _, m := range marks {
		switch m := m.(type) {
		case *Path:
			all = append(all, m.Points...)
		case *Circle:
			all = append(all, m.Centre)
		case *Text:
			all = append(all, m.At)
		case *Group:
			all = append(all, pointsOf(m.Marks)...)
		}
	}
	return all
}

// TestSignsLeanToNoSide: they are as wide to the left of their place as to the right, but
// for those that point somewhere.
func TestSignsLeanToNoSide(t *testing.T) {
	for _, all := range []map[string][]Mark{signsDrawn(Point{}), schematicSigns(Point{})} {
		for means, marks := range all {
			r, _ := Extent(marks)
			if math.Abs(r.Left+r.Right) > 0.01 && means != "outdoor gas outlet" {
				t.Errorf("%q reaches %v to the left and %v to the right", means, -r.Left, r.Right)
			}
			if upright := []string{"changeovers", "junctions", "regulators", "appliances", "shut-off", "changeover", "regulator", "ignition source", "fan", "origin"}; slices.Contains(upright, means) && math.Abs(r.Top+r.Bottom) > 0.01 {
				t.Errorf("%q reaches %v up and %v down", means, -r.Top, r.Bottom)
			}
		}
	}
}

// TestOnlyWhatBurnsGasOrWoodIsFilled: of bodies, appliances and stoves alone, so that what
// lies below the others shows.
func TestOnlyWhatBurnsGasOrWoodIsFilled(t *testing.T) {
	for s := range isShutoff + 1 {
		if want := map[bool]Ink{true: Pale, false: None}[s == isAppliance || s == isStove]; fillOf(s) != want {
			t.Errorf("a body of the sort %d is filled with %d, want %d", s, fillOf(s), want)
		}
	}
}

// TestWhichWaySignsPoint: a low vent down and a high one up, propane is heard below and
// smoke above, a cylinder has its neck on top, a regulator points along the gas.
func TestWhichWaySignsPoint(t *testing.T) {
	tip := func(marks []Mark) Point { p := marks[0].(*Path).Points; return p[len(p)-1] }
	at := signsDrawn(Point{})
	if low, high := tip(at["vent, low"]), tip(at["vent, high"]); low.X != 0 || low.Y < 1 || high.X != 0 || high.Y > -1 {
		t.Errorf("a low vent points to %v, a high one to %v", low, high)
	}
	if low, high := at["vent, low"][0].(*Path).Fill, at["vent, high"][0].(*Path).Fill; low != Black || high != White {
		t.Error("a low vent is not the dark one")
	}
	for means, below := range map[string]bool{"alarm, propane": true, "alarm, smoke": false} {
		half, _ := Extent(at[means][1:])
		if below && (half.Top < -1e-9 || half.Bottom < 1) || !below && (half.Bottom > 1e-9 || half.Top > -1) {
			t.Errorf("%s: its dark half is %v", means, half)
		}
	}
	of := schematicSigns(Point{})
	bottle, _ := Extent(of["cylinders"][:1])
	neck, _ := Extent(of["cylinders"][1:])
	if neck.Top >= bottle.Top || neck.Bottom > bottle.Top+1e-9 || neck.Left <= bottle.Left || neck.Right >= bottle.Right {
		t.Errorf("the neck %v of the cylinder %v", neck, bottle)
	}
	inlet := of["regulators"][1].(*Path).Points
	if box, _ := Extent(of["regulators"][:1]); inlet[1].X != box.Right || inlet[0].X != box.Left || inlet[2].X != box.Left || inlet[1].Y != 0 || inlet[0].Y != box.Top || inlet[2].Y != box.Bottom {
		t.Errorf("a regulator points by %v in %v", inlet, box)
	}
	valve := of["shut-off"][0].(*Path).Points
	if len(valve) != 4 || !(segment{valve[0], valve[3]}).crosses(segment{valve[1], valve[2]}) {
		t.Errorf("the two triangles of a shut-off do not meet: %v", valve)
	}
}

// TestBodiesDifferAsTheirSortsDo: of bodies that are drawn as boxes, what tells the sort is
// the line, the filling or what is drawn in it.
func TestBodiesDifferAsTheirSortsDo(t *testing.T) {
	v := fromAbove()
	v.scale = 50
	seen := map[string]sort{}
	for _, s := range []sort{isSpace, isLocker, isCombustible, isAppliance, isStove, isIgnition, isFan, isOpening, isRegulator, isChangeover, isCylinder, isStored} {
		one := &thing{sort: s, solid: solid{place{0, 0, 0}, place{1, 1, 1}}}
		plain, hidden := one.body(&v, penOf(s), false), one.body(&v, Pen{Width: penOf(s).Width, Dash: Dashed}, true)
		text := fmt.Sprintf("%+v", flat(plain))
		if other, is := seen[text]; is {
			t.Errorf("a body of the sort %d is drawn like one of %d", s, other)
		}
		seen[text] = s
		outline := hidden[0].(*Path)
		if outline.Pen.Dash != Dashed || outline.Fill != None || !outline.Closed {
			t.Errorf("a hidden body of the sort %d is drawn with %+v", s, *outline)
		}
	}
}

// TestAnOpeningBreaksItsWall: seen from its edge it is a gap along the longer side, closed
// by a tick at each end.
func TestAnOpeningBreaksItsWall(t *testing.T) {
	for _, c := range []struct {
		r        Rectangle
		from, to Point
	}{
		{Rectangle{10, 20, 30, 20.2}, Point{10, 20.1}, Point{30, 20.1}},
		{Rectangle{10, 20, 10.2, 44}, Point{10.1, 20}, Point{10.1, 44}},
	} {
		marks := inWall(c.r, Pen{Width: medium, Dash: Dashed})
		gap := marks[0].(*Path)
		if gap.Pen.Ink != White || gap.Points[0] != c.from || gap.Points[1] != c.to {
			t.Errorf("%v: the gap is %+v", c.r, *gap)
		}
		for i, at := range map[int]Point{3: c.from, 4: c.to} {
			tick := marks[i].(*Path).Points
			if middle := (Point{(tick[0].X + tick[1].X) / 2, (tick[0].Y + tick[1].Y) / 2}); middle.to(at) > 1e-9 || tick[0].to(tick[1]) < 1.5 {
				t.Errorf("%v: a tick from %v to %v", c.r, tick[0], tick[1])
			}
			along := (c.to.X-c.from.X)*(tick[1].X-tick[0].X) + (c.to.Y-c.from.Y)*(tick[1].Y-tick[0].Y)
			if math.Abs(along) > 1e-9 {
				t.Errorf("%v: the tick runs along the wall", c.r)
			}
		}
		for _, i := range []int{1, 2} {
			if edge := marks[i].(*Path); edge.Pen.Dash != Dashed || edge.Points[0].to(edge.Points[1]) != c.from.to(c.to) {
				t.Errorf("%v: an edge %+v", c.r, *edge)
			}
		}
	}
}

// TestDashesAreTold: each pattern has lengths of its own, in pairs, none of them nothing.
func TestDashesAreTold(t *testing.T) {
	seen := map[string]bool{}
	for d := Solid; d <= LongDash; d++ {
		lengths := d.Lengths()
		if text := fmt.Sprint(lengths); seen[text] || len(lengths)%2 != 0 || (d == Solid) != (len(lengths) == 0) {
			t.Errorf("pattern %d: %v", d, lengths)
		}
		seen[fmt.Sprint(lengths)] = true
		for _, l := range lengths {
			if l < 0.3 || l > 10 {
				t.Errorf("pattern %d has %v mm", d, l)
			}
		}
	}
}

// TestInksCanBeRead: black, grey and white against one another, by the contrast of WCAG 2.2,
// 1.4.3 and its relative luminance, from memory: grey has 7 to 1 on white, and the
// letters of each signal word have 4.5 to 1 on their field.
func TestInksCanBeRead(t *testing.T) {
	if got := contrast(Grey, White); got < 7 {
		t.Errorf("grey on white: %v", got)
	}
	if got := contrast(Black, Pale); got < 7 {
		t.Errorf("black on pale: %v", got)
	}
	for _, word := range []string{"DANGER", "WARNING", "CAUTION", "NOTICE"} {
		tag, wide := signalTag(Point{}, report.Signal(word), small)
		field, letters := tag[0].(*Path), tag[1].(*Text)
		if got := contrast(field.Fill, letters.Ink); got < 4.5 {
			t.Errorf("%s: letters on their field: %v", word, got)
		}
		if r, _ := Extent(tag[:1]); !letters.Bounds().Within(r.grown(0.1)) || math.Abs(r.wide()-wide) > 1e-9 || letters.Content != word {
			t.Errorf("%s: %v does not hold the letters %v, or is not %v wide", word, r, letters.Bounds(), wide)
		}
	}
}

func contrast(a, b Ink) float64 {
	one, other := luminance(a), luminance(b)
	return (max(one, other) + 0.05) / (min(one, other) + 0.05)
}

func luminance(i Ink) float64 {
	red, green, blue := i.RGB()
	linear := func(c uint8) float64 {
		s := float64(c) / 255
		if s <= 0.04045 {
			return s / 12.92
		}
		return math.Pow((s+0.055)/1.055, 2.4)
	}
	return 0.2126*linear(red) + 0.7152*linear(green) + 0.0722*linear(blue)
}

// TestAHiddenThingIsDashed: a switch behind the far wall of a cabin, and one in it; below the
// floor in plan. A small symbol is never dashed, since it could not be told then.
func TestAHiddenThingIsDashed(t *testing.T) {
	const cabin = `"spaces": { "cabin": { "box": { "from": ["0 m", "0 m", "0 m"], "to": ["4 m", "2 m", "2 m"] } } }, "regulators": { "r": { "at": ["1 m", "1.9 m", "1 m"] } }, `
	box := func(from, to string) string {
		return cabin + `"storedGoods": { "x": { "box": { "from": [` + from + `], "to": [` + to + `] } } }`
	}
	for _, c := range []struct {
		members string
		plan    bool // hidden in the plan
		side    bool // and in the elevation, which is seen from the right
	}{
		{box(`"1 m", "1 m", "0.2 m"`, `"2 m", "1.5 m", "0.5 m"`), false, false},
		{box(`"1 m", "1 m", "-0.6 m"`, `"2 m", "1.5 m", "-0.1 m"`), true, false},
		{box(`"1 m", "-0.6 m", "0.2 m"`, `"2 m", "-0.1 m", "0.5 m"`), false, true},
		{box(`"5 m", "-0.6 m", "-0.6 m"`, `"6 m", "-0.1 m", "-0.1 m"`), false, false},
	} {
		l := loaded(t, c.members)
		for g, want := range map[*Drawing]bool{Plan(l, nil): c.plan, Elevation(l, nil): c.side} {
			dashed := groups(g.Marks)["/storedGoods/x"][0].Marks[0].(*Path).Pen.Dash == Dashed
			if dashed != want {
				t.Errorf("%s, %s: hidden %v, want %v", strings.TrimPrefix(c.members, cabin), g.ID, dashed, want)
			}
		}
	}
}

package draw

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"lowvent.example/cmd/lowvent/internal/demos"
	"lowvent.example/schema/layout"
)

// metresOf is the room that a thing of a world takes, by its statement alone: a foot is
// 0.3048 m and an inch a twelfth of it (international yard and pound agreement, 1959).
func (w world) metresOf(m made) (from, to [3]float64) {
	for axis, move := range []int{w.moveX, w.moveY, w.moveZ} {
		from[axis], to[axis] = float64(m.from[axis]+move)/8, float64(m.to[axis]+move)/8
	}
	if !m.box {
		to = from
	}
	if m.section == "cylinders" {
		const inch = 0.3048 / 12
		for axis := range 2 {
			from[axis], to[axis] = from[axis]-12.5*inch/2, to[axis]+12.5*inch/2
		}
		to[2] += 18 * inch
	}
	return from, to
}

// onPaper is where a room comes out, in m from where the lengths begin, right and down: in
// the plan the front is to the left and the right side at the top.
func onPaper(title string, from, to [3]float64) Rectangle {
	switch title {
	case "Plan, seen from above":
		return Rectangle{from[0], -to[1], to[0], -from[1]}
	case "Elevation, seen from the left":
		return Rectangle{from[0], -to[2], to[0], -from[2]}
	case "Elevation, seen from the right":
		return Rectangle{-to[0], -to[2], -from[0], -from[2]}
	}
	panic("no such drawing: " + title)
}

// bodyOf is the extent of what a thing is drawn as: of its outline, without the sign in it,
// where it has one; false when it is not drawn.
func bodyOf(g *Drawing, m made) (Rectangle, bool) {
	of := groups(g.Marks)["/"+m.section+"/"+m.id]
	if len(of) == 0 {
		return Rectangle{}, false
	}
	if m.box && m.section != "openings" || m.section == "cylinders" {
		return Extent(of[0].Marks[:1])
	}
	return Extent(of[0].Marks)
}

// sized tells whether a room is drawn as a body and not as a symbol about its middle.
func sized(m made, r Rectangle) bool {
	return (m.box && m.section != "openings" || m.section == "cylinders") && max(r.wide(), r.high()) > 1.2
}

// TestEverythingStandsWhereItIs: whatever lies where, each body is as far from each other on
// paper as the file and the scale say, and what has no size has its symbol about its place.
func TestEverythingStandsWhereItIs(t *testing.T) {
	bodies, symbols := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		w := aWorld(t)
		l := w.layout(t)
		for _, g := range []*Drawing{Plan(l, nil), Elevation(l, nil)} {
			if g == nil {
				continue
			}
			var zero Point
			found := false
			for _, m := range w.things {
				r, drawn := bodyOf(g, m)
				if drawn != m.placed {
					t.Fatalf("%s: %s %s has a place: %v; it is drawn: %v", g.ID, m.section, m.id, m.placed, drawn)
				}
				if !drawn {
					continue
				}
				want := onPaper(g.Title, firstOf(w.metresOf(m)), secondOf(w.metresOf(m)))
				want = Rectangle{want.Left * g.Scale, want.Top * g.Scale, want.Right * g.Scale, want.Bottom * g.Scale}
				if !sized(m, want) {
					continue
				}
				if !found {
					zero, found = Point{r.Left - want.Left, r.Top - want.Top}, true
				}
				bodies++
				if away := apart(r, want, zero); away > 0.025 {
					t.Fatalf("%s: %s %s is drawn at %v, %.3f mm from where it is", g.ID, m.section, m.id, r, away)
				}
			}
			for _, m := range w.things {
				r, drawn := bodyOf(g, m)
				if !drawn || !found || m.box || m.section == "cylinders" {
					continue
				}
				p := onPaper(g.Title, firstOf(w.metresOf(m)), secondOf(w.metresOf(m)))
				at := Point{p.Left*g.Scale + zero.X, p.Top*g.Scale + zero.Y}
				symbols++
				if !at.within(r.grown(0.03)) || r.wide() > 4 || r.high() > 4 {
					t.Fatalf("%s: the symbol of %s %s takes %v, and it stands at %v", g.ID, m.section, m.id, r, at)
				}
			}
		}
	})
	if bodies < 200 || symbols < 200 {
		t.Errorf("%d bodies and %d symbols: the test says little", bodies, symbols)
	}
}

func firstOf(a, _ [3]float64) [3]float64  { return a }
func secondOf(_, b [3]float64) [3]float64 { return b }

// apart is the most that an edge of a rectangle is from where it should be.
func apart(r, want Rectangle, zero Point) float64 {
	return max(math.Abs(r.Left-want.Left-zero.X), math.Abs(r.Right-want.Right-zero.X), math.Abs(r.Top-want.Top-zero.Y), math.Abs(r.Bottom-want.Bottom-zero.Y))
}

// TestAMirroredDwellingIsDrawnMirrored: its plan is turned over top to bottom. Its elevation
// is seen from the other side, with front and rear changed over; where neither side has more
// of the gas, from the same side, and then nothing changes.
func TestAMirroredDwellingIsDrawnMirrored(t *testing.T) {
	turned, same := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		w := aWorld(t)
		other := w
		other.mirrored = true
		a, b := w.layout(t), other.layout(t)
		for i, pair := range [][2]*Drawing{{Plan(a, nil), Plan(b, nil)}, {Elevation(a, nil), Elevation(b, nil)}} {
			one, two := pair[0], pair[1]
			if one == nil {
				continue
			}
			var sums []Point
			for _, m := range w.things {
				r, drawn := bodyOf(one, m)
				s, _ := bodyOf(two, m)
				if !drawn || !sized(m, r) {
					continue
				}
				switch {
				case i == 0: // the plan
					sums = append(sums, Point{r.Left - s.Left, r.Top + s.Bottom})
				case one.Title != two.Title:
					turned++
					sums = append(sums, Point{r.Left + s.Right, r.Top - s.Top})
				default:
					same++
					sums = append(sums, Point{r.Left - s.Left, r.Top - s.Top})
				}
			}
			for _, p := range sums {
				if p.to(sums[0]) > 0.05 {
					t.Fatalf("%s, then %s: not mirrored, %v", one.Title, two.Title, sums)
				}
			}
		}
	})
	if turned == 0 || same == 0 {
		t.Errorf("%d bodies seen from the other side, %d from the same: the test says little", turned, same)
	}
}

// TestEveryThingIsNamedOnce: each thing that is drawn has its name or its number beside it
// just once, or the words tell that there was no room; each number stands in the legend with
// what it is.
func TestEveryThingIsNamedOnce(t *testing.T) {
	names, numbers := 0, 0
	for _, d := range demos.All(t) {
		for _, g := range []*Drawing{Plan(d.Layout, nil), Elevation(d.Layout, nil)} {
			if g == nil {
				continue
			}
			for _, item := range itemsOf(d.Layout) {
				of := groups(g.Marks)[item.Spot().Pointer()]
				if _, is := item.(*layout.Line); is || len(of) == 0 {
					continue
				}
				var beside []*Text
				for _, each := range of[1:] {
					beside = append(beside, textsOf(each.Marks)...)
				}
				switch {
				case len(of) == 1:
					if !strings.Contains(g.Alt, "No room for the number of "+item.Label()+".") && !strings.Contains(g.Alt, "more things are drawn and not named") {
						t.Errorf("%s, %s: %s has no name, and the words do not say so", d.Name, g.ID, item.Label())
					}
				case len(of) > 2:
					t.Errorf("%s, %s: %s is drawn or named %d times", d.Name, g.ID, item.Label(), len(of))
				case strings.Contains(item.Label(), beside[0].Content) && beside[0].Content == item.ID() || beside[0].Content == item.Label():
					names++
				default:
					numbers++
					if means, found := numbered(g, beside[0].Content); !found || !strings.HasPrefix(means, item.Label()) {
						t.Errorf("%s, %s: %s has the number %s, in the legend %q", d.Name, g.ID, item.Label(), beside[0].Content, means)
					}
				}
			}
		}
	}
	if names < 50 || numbers < 100 {
		t.Errorf("%d names and %d numbers: the test says little", names, numbers)
	}
}

// numbered is what the legend says of a number.
func numbered(g *Drawing, number string) (means string, found bool) {
	for _, k := range g.Key {
		if texts := textsOf(k.Marks); len(texts) == 1 && texts[0].Content == number {
			if found {
				return "two lines with one number", false
			}
			means, found = k.Means, true
		}
	}
	return means, found
}

// TestANumberIsTheSameOnEveryDrawing: whoever goes from the plan to the elevation finds the
// same thing under it.
func TestANumberIsTheSameOnEveryDrawing(t *testing.T) {
	shared := 0
	for _, d := range demos.All(t) {
		told := map[string]string{}
		for _, g := range drawings(d) {
			for _, k := range g.Key {
				texts := textsOf(k.Marks)
				if len(texts) != 1 || g.ID != "plan" && g.ID != "elevation" || texts[0].Content == "DANGER" {
					continue
				}
				if before, is := told[texts[0].Content]; is {
					shared++
					if before != k.Means {
						t.Errorf("%s: %s is %q, then %q", d.Name, texts[0].Content, before, k.Means)
					}
				}
				told[texts[0].Content] = k.Means
			}
		}
	}
	if shared < 20 {
		t.Errorf("%d numbers on two drawings: the test says little", shared)
	}
}

// TestTheTallyCountsEachThing: the numbers in the words add up to the things that have a
// place, and every sort that is drawn has a word.
func TestTheTallyCountsEachThing(t *testing.T) {
	for _, d := range demos.All(t) {
		g := Plan(d.Layout, nil)
		if g == nil {
			continue
		}
		_, rest, _ := strings.Cut(g.Alt, "It shows ")
		said, _, _ := strings.Cut(rest, ".")
		sum := 0
		for part := range strings.SplitSeq(strings.ReplaceAll(said, " and ", ", "), ", ") {
			var n int
			if _, err := fmt.Sscan(part, &n); err == nil {
				sum += n
			}
		}
		drawn := 0
		for of := range groups(g.Marks) {
			if of != "" && !strings.HasSuffix(of, "/clearances") {
				drawn++
			}
		}
		if sum != drawn {
			t.Errorf("%s: the words count %d things, %d are drawn: %s", d.Name, sum, drawn, said)
		}
	}
	for s := range isShutoff + 1 {
		if !slices.ContainsFunc(nouns, func(n struct {
			sort      sort
			one, many string
		}) bool {
			return n.sort == s && n.one != "" && n.many != n.one
		}) {
			t.Errorf("no word for things of the sort %d", s)
		}
	}
}

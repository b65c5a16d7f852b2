package draw

import (
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"lowvent.example/schema/layout"
	"lowvent.example/schema/source"
)

// world is an invented dwelling: things with places in eighths of a metre, so that moving it
// by whole eighths changes no digit.
type world struct {
	things              []made
	moveX, moveY, moveZ int
	mirrored            bool
}

type made struct {
	section, id string
	members     map[string]any
	box         bool
	from, to    [3]int // eighths
	placed      bool
}

// kindsMade are what is drawn into a world, with the members that its list asks for.
var kindsMade = []struct {
	section string
	box     bool
	members map[string]any
}{
	{"spaces", true, map[string]any{"use": "living"}},
	{"lockers", true, nil},
	{"cylinders", false, map[string]any{"diameter": "12.5 in", "height": "18 in", "role": "in-service"}},
	{"regulators", false, nil},
	{"appliances", true, map[string]any{"kind": "cooktop", "faces": "rear", "clearances": map[string]any{"above": "0.75 m", "sides": "0.10 m"}}},
	{"openings", true, map[string]any{"kind": "window"}},
	{"openings", false, map[string]any{"kind": "floor-drain"}},
	{"ignitionSources", false, map[string]any{"kind": "switch", "in": "open-air"}},
	{"ignitionSources", true, map[string]any{"kind": "battery"}},
	{"alarms", false, map[string]any{"kind": "propane"}},
	{"fixedVents", false, map[string]any{"level": "low"}},
	{"fillPoints", false, nil},
	{"outdoorOutlets", false, nil},
	{"storedGoods", true, map[string]any{"kind": "solvent"}},
	{"stoves", true, map[string]any{"fuel": "wood"}},
	{"extinguishers", false, nil},
	{"combustibles", true, map[string]any{"kind": "shelf"}},
}

// aWorld draws a dwelling.
func aWorld(t *rapid.T) world {
	var w world
	for i := range rapid.IntRange(1, 40).Draw(t, "things") {
		k := rapid.SampledFrom(kindsMade).Draw(t, "kind")
		m := made{section: k.section, id: fmt.Sprintf("t%d", i), members: k.members, box: k.box, placed: rapid.IntRange(0, 5).Draw(t, "placed") > 0}
		for axis := range m.from {
			m.from[axis] = rapid.IntRange(-8, 60).Draw(t, "from")
			m.to[axis] = m.from[axis] + rapid.IntRange(1, 24).Draw(t, "size")
		}
		w.things = append(w.things, m)
	}
	return w
}

// layout is the world as a file states it.
func (w world) layout(t *rapid.T) *layout.Layout {
	root := map[string]any{"format": layout.Format}
	for _, m := range w.things {
		section, _ := root[m.section].(map[string]any)
		if section == nil {
			section = map[string]any{}
			root[m.section] = section
		}
		section[m.id] = w.stated(m)
	}
	text, err := json.Marshal(root)
	if err != nil {
		t.Fatal(err)
	}
	l, faults := layout.Load(source.NewFile("drawn.json", text))
	if faults != nil {
		t.Fatalf("%v\n%s", faults, text)
	}
	return l
}

func (w world) stated(m made) map[string]any {
	out := map[string]any{}
	for key, value := range m.members {
		out[key] = value
	}
	if !m.placed {
		return out
	}
	from, to := m.from, m.to
	if w.mirrored {
		from[1], to[1] = -m.to[1], -m.from[1]
		if !m.box {
			from[1] = -m.from[1]
		}
	}
	point := func(p [3]int) []string {
		var texts []string
		for axis, move := range []int{w.moveX, w.moveY, w.moveZ} {
			texts = append(texts, fmt.Sprintf("%v m", float64(p[axis]+move)/8))
		}
		return texts
	}
	if m.box {
		out["box"] = map[string]any{"from": point(from), "to": point(to)}
	} else {
		out["at"] = point(from)
	}
	return out
}

// TestAnyDwellingIsDrawnWell: whatever stands wherever, marks stay on the paper, labels keep
// off one another, what has a place is drawn, and what has none is told.
func TestAnyDwellingIsDrawnWell(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := aWorld(t).layout(t)
		for _, g := range []*Drawing{Plan(l, nil), Elevation(l, nil)} {
			if g == nil {
				continue
			}
			if r, _ := Extent(g.Marks); !r.Within(Rectangle{0, 0, g.Width, g.Height}) {
				t.Fatalf("%s: marks reach over %v of %v by %v", g.ID, r, g.Width, g.Height)
			}
			noTwoTextsOverlap(t, g)
			of := groups(g.Marks)
			for _, item := range itemsOf(l) {
				if _, ok := solidAt(item, "at"); ok && len(of[item.Spot().Pointer()]) == 0 {
					t.Fatalf("%s: %s is not drawn", g.ID, item.Label())
				}
			}
		}
	})
}

func noTwoTextsOverlap(t *rapid.T, g *Drawing) {
	texts := textsOf(g.Marks)
	for i, a := range texts {
		for _, b := range texts[:i] {
			if a.Bounds().Overlaps(b.Bounds()) {
				t.Fatalf("%s: %q lies over %q", g.ID, a.Content, b.Content)
			}
		}
	}
}

// TestMovedAndMirrored: where the origin lies, and which side is which, changes neither the
// scale nor the size of a drawing, nor how large anything on it is.
func TestMovedAndMirrored(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := aWorld(t)
		other := w
		other.moveX, other.moveY, other.moveZ = rapid.IntRange(-80, 80).Draw(t, "x"), rapid.IntRange(-80, 80).Draw(t, "y"), rapid.IntRange(-80, 80).Draw(t, "z")
		other.mirrored = rapid.Bool().Draw(t, "mirrored")
		a, b := w.layout(t), other.layout(t)
		for i, make := range []func(*layout.Layout) *Drawing{func(l *layout.Layout) *Drawing { return Plan(l, nil) }, func(l *layout.Layout) *Drawing { return Elevation(l, nil) }} {
			one, two := make(a), make(b)
			if (one == nil) != (two == nil) {
				t.Fatalf("drawing %d: only one of them is drawn", i)
			}
			if one == nil {
				continue
			}
			if one.Scale != two.Scale || one.Width != two.Width || math.Abs(one.Height-two.Height) > 0.011 {
				t.Fatalf("%s: %v by %v at %v, then %v by %v at %v", one.ID, one.Width, one.Height, one.Scale, two.Width, two.Height, two.Scale)
			}
			sameSizes(t, a, one, two)
		}
	})
}

// sameSizes holds that the body of each thing is as large on one drawing as on the other.
func sameSizes(t *rapid.T, l *layout.Layout, one, two *Drawing) {
	first, second := groups(one.Marks), groups(two.Marks)
	for _, item := range itemsOf(l) {
		pointer := item.Spot().Pointer()
		if len(first[pointer]) == 0 {
			continue
		}
		a, _ := Extent(first[pointer][0].Marks)
		b, _ := Extent(second[pointer][0].Marks)
		if math.Abs(a.wide()-b.wide()) > 0.03 || math.Abs(a.high()-b.high()) > 0.03 {
			t.Fatalf("%s: %s is %v by %v, then %v by %v", one.ID, item.Label(), a.wide(), a.high(), b.wide(), b.high())
		}
	}
}

// TestAMirroredDwellingIsSeenFromTheOtherSide: the elevation follows the gas.
func TestAMirroredDwellingIsSeenFromTheOtherSide(t *testing.T) {
	w := world{things: []made{
		{section: "spaces", id: "cabin", box: true, to: [3]int{24, 16, 16}, placed: true},
		{section: "cylinders", id: "A", from: [3]int{20, 14, 0}, placed: true},
	}}
	rapid.Check(t, func(t *rapid.T) {
		w.mirrored = rapid.Bool().Draw(t, "mirrored")
		want := map[bool]string{false: "Elevation, seen from the right", true: "Elevation, seen from the left"}[w.mirrored]
		if g := Elevation(w.layout(t), nil); g.Title != want {
			t.Fatalf("%q, want %q", g.Title, want)
		}
	})
}

// TestEveryDistanceOfAnyDwelling: for any two things, whichever way a report measured
// between them, the ends that are drawn lie as far apart as it found.
func TestEveryDistanceOfAnyDwelling(t *testing.T) {
	coordinate := rapid.Float64Range(-5, 5)
	solids := rapid.Custom(func(t *rapid.T) (s solid) {
		for i := range s.from {
			s.from[i] = coordinate.Draw(t, "from")
			s.to[i] = s.from[i] + rapid.Float64Range(0, 2).Draw(t, "size")
		}
		return s
	})
	seen := map[measure]int{}
	rapid.Check(t, func(t *rapid.T) {
		a, b, share := solids.Draw(t, "a"), solids.Draw(t, "b"), rapid.Float64Range(0, 1).Draw(t, "share")
		for how := range overFoot + 1 {
			d := &distance{a: a, b: b, how: how}
			from, to := d.ends(share)
			long := distanceBetween(from, to)
			if long < 1e-3 {
				continue
			}
			got, ok := measureOf(a, b, long)
			if !ok {
				t.Fatalf("%v long, and by no measure between %v and %v", long, a, b)
			}
			seen[got]++
			again := &distance{a: a, b: b, how: got}
			if from, to := again.ends(1 - share); math.Abs(distanceBetween(from, to)-long) > agrees*long {
				t.Fatalf("measure %d gives %v, then %v", got, long, distanceBetween(from, to))
			}
		}
		if _, ok := measureOf(a, b, 1000); ok {
			t.Fatal("a kilometre between neighbours")
		}
	})
	for _, how := range []measure{straight, level, height, overFoot} {
		if seen[how] == 0 {
			t.Errorf("measure %d never occurred", how)
		}
	}
}

// TestManyThings: a file with far more things than a drawing can name still gives a drawing
// that tells so.
func TestManyThings(t *testing.T) {
	things := map[string]any{}
	for i := range 3000 {
		things[fmt.Sprintf("s%d", i)] = map[string]any{"kind": "switch", "at": []string{fmt.Sprintf("%d mm", i*3%7000), fmt.Sprintf("%d mm", i*7%2000), "1 m"}}
	}
	text, err := json.Marshal(map[string]any{"format": layout.Format, "ignitionSources": things})
	if err != nil {
		t.Fatal(err)
	}
	l, faults := layout.Load(source.NewFile("many.json", text))
	if faults != nil {
		t.Fatal(faults)
	}
	g := Plan(l, nil)
	var numbered []string
	for _, k := range g.Key {
		numbered = append(numbered, k.Means)
	}
	if len(groups(g.Marks)) < 3000 || len(numbered) > mostLabels+40 || !slices.Contains(numbered, "ignition source s0: switch") {
		t.Errorf("%d groups, %d lines of legend", len(groups(g.Marks)), len(numbered))
	}
}

// TestSomebodyWroteKilometres: a slip of the pen gives a tiny drawing and no wrong one.
func TestSomebodyWroteKilometres(t *testing.T) {
	for _, far := range []string{"100 km", "40 m", "1000000 ft", "999999 m"} {
		text := `{ "format": "lowvent-layout/1", "cylinders": { "A": { "at": ["0 m", "0 m", "0 m"] }, "B": { "at": ["` + far + `", "0 m", "0 m"] } } }`
		l, faults := layout.Load(source.NewFile("far.json", []byte(text)))
		if faults != nil {
			continue // no such length can be written
		}
		for _, g := range []*Drawing{Plan(l, nil), Elevation(l, nil)} {
			if r, _ := Extent(g.Marks); !r.Within(Rectangle{0, 0, g.Width, g.Height}) || len(groups(g.Marks)["/cylinders/B"]) == 0 {
				t.Errorf("%s away: %s, marks over %v of %v by %v", far, g.ID, r, g.Width, g.Height)
			}
		}
	}
}

package vent

import (
	"context"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/source"
	"lowvent.example/schema/unit"
	"lowvent.example/vent/box"
)

const drawnThings = `{ "format": "lowvent-layout/1",
	"spaces": { "cabin": { "use": "living" } },
	"lockers": { "k": { "vents": {
		"piped": { "at": ["1 m", "1 m", "1 m"], "endsAt": ["5 m", "5 m", "5 m"] }, "plain": { "at": ["1 m", "1 m", "1 m"] }, "nowhere": {} } } },
	"fixedVents": { "roof": { "of": "spaces/cabin", "at": ["2 m", "2 m", "2 m"] } },
	"cylinders": {
		"round": { "in": "open-air", "at": ["3 m", "3 m", "0 m"], "diameter": "0.4 m ± 20 cm", "height": "0.5 m ± 10 cm" },
		"boxed": { "in": "open-air", "box": { "from": ["3 m", "3 m", "0 m"], "to": ["4 m", "4 m", "1 m"] }, "diameter": "0.4 m", "height": "0.5 m" },
		"slim": { "in": "open-air", "at": ["3 m", "3 m", "0 m"], "height": "0.5 m" },
		"flat": { "in": "open-air", "at": ["3 m", "3 m", "0 m"], "diameter": "0.4 m" } },
	"openings": { "hatch": { "of": "spaces/cabin", "box": { "from": ["6 m", "6 m", "1 m"], "to": ["7 m", "7 m", "2 m"] } }, "lost": { "of": "spaces/cabin" } },
	"changeovers": {}, "signs": { "any": {} } }`

// TestDrawn: where things are by the file as it stands, without a sheet: the outer end of
// a vent's pipe, the widest that a cylinder may be, and nowhere if anything lacks.
func TestDrawn(t *testing.T) {
	l, faults := layout.Load(source.NewFile("drawn.json", []byte(drawnThings)))
	if faults != nil {
		t.Fatal(faults)
	}
	vents, cylinders := l.Lockers.Get("k").Vents, l.Cylinders
	for name, c := range map[string]struct {
		item     layout.Item
		known    bool
		from, to [3]unit.Length
	}{
		"a vent with a pipe":       {vents.Get("piped"), true, [3]unit.Length{5, 5, 5}, [3]unit.Length{5, 5, 5}},
		"a vent in the wall":       {vents.Get("plain"), true, [3]unit.Length{1, 1, 1}, [3]unit.Length{1, 1, 1}},
		"a vent that is not drawn": {vents.Get("nowhere"), false, [3]unit.Length{}, [3]unit.Length{}},
		"a fixed vent":             {l.FixedVents.Get("roof"), true, [3]unit.Length{2, 2, 2}, [3]unit.Length{2, 2, 2}},
		"a round cylinder":         {cylinders.Get("round"), true, [3]unit.Length{2.7, 2.7, 0}, [3]unit.Length{3.3, 3.3, 0.6}},
		"a cylinder in a box":      {cylinders.Get("boxed"), true, [3]unit.Length{3, 3, 0}, [3]unit.Length{4, 4, 1}},
		"one of no diameter":       {cylinders.Get("slim"), false, [3]unit.Length{}, [3]unit.Length{}},
		"one of no height":         {cylinders.Get("flat"), false, [3]unit.Length{}, [3]unit.Length{}},
		"an opening":               {l.Openings.Get("hatch"), true, [3]unit.Length{6, 6, 1}, [3]unit.Length{7, 7, 2}},
		"one that is not drawn":    {l.Openings.Get("lost"), false, [3]unit.Length{}, [3]unit.Length{}},
		"what has no place":        {l.Signs.Get("any"), false, [3]unit.Length{}, [3]unit.Length{}},
	} {
		b, known := drawn(c.item)
		if known != c.known {
			t.Errorf("%s: known %t, want %t", name, known, c.known)
		}
		from, to := [3]unit.Length{b.From.X.Nominal, b.From.Y.Nominal, b.From.Z.Nominal}, [3]unit.Length{b.To.X.Nominal, b.To.Y.Nominal, b.To.Z.Nominal}
		if known && (from != c.from || to != c.to) {
			t.Errorf("%s: from %v to %v, want %v to %v", name, from, to, c.from, c.to)
		}
	}
}

// TestTheFirstOfASort: what may lie lowest stands for what lies higher, and the other way
// round, by the ends of their bands.
func TestTheFirstOfASort(t *testing.T) {
	at := func(low, high float64) box.Box { return box.At(box.Point{Z: banded(low, (low+high)/2, high)}) }
	sure, unsure := at(1, 1.2), at(0.9, 1.3)
	if lowestFirst(unsure, sure) >= 0 || lowestFirst(sure, unsure) <= 0 || highestFirst(unsure, sure) >= 0 || highestFirst(sure, unsure) <= 0 {
		t.Error("what may lie farther out does not come first")
	}
	below, over := at(-2, -1), at(3, 4)
	if lowestFirst(below, over) >= 0 || lowestFirst(over, below) <= 0 || highestFirst(over, below) >= 0 || highestFirst(below, over) <= 0 {
		t.Error("what lies farther out does not come first")
	}
	if inOrder(below, over) != 0 {
		t.Error("what has no order is put in order")
	}
}

// TestWhatIsLeftOfACrowd: what is near, what nobody drew or sorted, what a tape leads to,
// and of each sort the first of what is far.
func TestWhatIsLeftOfACrowd(t *testing.T) {
	var things []string
	add := func(id, text string) { things = append(things, fmt.Sprintf("%q: { %s }", id, text)) }
	for i := range crowd {
		add(fmt.Sprintf("far-%03d", i), fmt.Sprintf(`"kind": "wall", "at": ["50 m", "0 m", "%d.5 m"]`, i%7+2))
	}
	add("far-lowest", `"kind": "wall", "at": ["50 m", "0 m", "1 m"]`)
	add("far-other", `"kind": "curtain", "at": ["50 m", "0 m", "9 m"]`)
	add("near-lowest", `"kind": "wall", "at": ["1 m", "0 m", "0 m"]`)
	add("near", `"kind": "wall", "at": ["0 m", "1 m", "5 m"]`)
	add("unplaced", `"kind": "wall"`)
	add("unsorted", `"at": ["50 m", "0 m", "8 m"]`)
	add("taped-to", `"kind": "wall", "at": ["50 m", "0 m", "8 m"]`)
	add("taped-from", `"kind": "wall", "at": ["50 m", "0 m", "8 m"]`)
	l, faults := layout.Load(source.NewFile("crowd.json", []byte(`{ "format": "lowvent-layout/1",
		"appliances": { "hob": { "in": "open-air", "box": { "from": ["0 m", "0 m", "0 m"], "to": ["0.5 m", "0.5 m", "0.5 m"] } } },
		"tapeMeasures": { "one": { "from": "appliances/hob", "to": "combustibles/taped-to", "is": "1 m" }, "two": { "from": "combustibles/taped-from", "to": "appliances/hob", "is": "1 m" } },
		"combustibles": {`+strings.Join(things, ",")+`} }`)))
	if faults != nil {
		t.Fatal(faults)
	}
	codes, err := code.Use("")
	if err != nil {
		t.Fatal(err)
	}
	of := sorts{"crowd", func(item layout.Item) (string, bool) { return stated(&item.(*layout.Combustible).Kind) }, lowestFirst}
	var kept []string
	ask := check.ForDwelling(check.Descriptor{ID: "crowd.kept"}, func(s *check.Sheet, l *layout.Layout) check.Ruling {
		kept = nil
		for _, c := range withinReach(s, of, l.Combustibles.All(), l.Appliances.Get("hob"), 2) {
			kept = append(kept, c.ID())
		}
		return check.NotApplicable(s, "it only looks")
	})
	if _, err := check.Run(context.Background(), check.Set{Checks: []check.Check{ask}}, l, codes, check.Options{On: unit.Date{Year: 2026, Month: 11, Day: 25}, Workers: 1}); err != nil {
		t.Fatal(err)
	}
	slices.Sort(kept)
	if want := []string{"far-lowest", "far-other", "near", "near-lowest", "taped-from", "taped-to", "unplaced", "unsorted"}; !slices.Equal(kept, want) {
		t.Errorf("kept %v, want %v", kept, want)
	}
}

// loaded is a layout with little in it.
func loaded(t *testing.T, text string) *layout.Layout {
	t.Helper()
	l, faults := layout.Load(source.NewFile("little.json", []byte(`{ "format": "lowvent-layout/1", `+text+` }`)))
	if faults != nil {
		t.Fatal(faults)
	}
	return l
}

// TestFuelSorts: what can burn has a sort only if the file tells all that makes it.
func TestFuelSorts(t *testing.T) {
	l := loaded(t, `"spaces": { "cabin": {} }, "combustibles": { "all": { "in": "spaces/cabin", "surface": "wood", "moves": true }, "no-place": { "surface": "wood", "moves": true },
		"no-surface": { "in": "spaces/cabin", "moves": true }, "no-movement": { "in": "spaces/cabin", "surface": "wood" } }`)
	for _, c := range l.Combustibles.All() {
		if _, told := fuelSorts.of(c); told != (c.ID() == "all") {
			t.Errorf("%s: told %t", c.ID(), told)
		}
	}
}

// TestFarthest: the farthest that a plate asks for, half as much again, by the end of its
// band; what the plate leaves out counts for nothing.
func TestFarthest(t *testing.T) {
	l := loaded(t, `"appliances": { "hob": { "clearances": { "above": "1 m ± 20 cm", "sides": "0.5 m", "below": "0.1 m" } }, "bare": { "clearances": {} } }`)
	for id, want := range map[string]float64{"hob": 1.8, "bare": 0} {
		if got := float64(farthest(&l.Appliances.Get(id).Clearances)); math.Abs(got-want) > 1e-12 {
			t.Errorf("%s: %v, want %v", id, got, want)
		}
	}
}

// TestRisesAbove: whatever may reach over the least that the other may be counts.
func TestRisesAbove(t *testing.T) {
	at := func(low, high float64) box.Box { return box.At(box.Point{Z: banded(low, (low+high)/2, high)}) }
	for _, c := range []struct {
		lower, thing box.Box
		want         bool
	}{{at(1, 1), at(2, 2), true}, {at(1, 1), at(1, 1), false}, {at(1, 1), at(0.8, 1.1), true}, {at(0.8, 1.2), at(1, 1), true}, {at(1, 1.2), at(0.8, 1), false}} {
		if got := risesAbove(c.lower, c.thing); got != c.want {
			t.Errorf("%v over %v: %t, want %t", c.thing.To.Z, c.lower.To.Z, got, c.want)
		}
	}
}

// TestWhatIsFired: a file without a list of appliances does not tell what burns.
func TestWhatIsFired(t *testing.T) {
	for text, want := range map[string]bool{`"appliances": {}, "stoves": {}`: true, `"stoves": {}`: false, `"appliances": {}`: false} {
		if _, _, known := fired(loaded(t, text)); known != want {
			t.Errorf("%s: known %t, want %t", text, known, want)
		}
	}
}

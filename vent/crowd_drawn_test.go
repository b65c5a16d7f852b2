package vent

import (
	"testing"

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

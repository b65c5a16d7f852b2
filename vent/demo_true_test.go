package vent_test

import (
	"math"
	"path/filepath"
	"testing"

	"lowvent.example/schema/layout"
	"lowvent.example/schema/unit"
	"lowvent.example/vent/box"
)

// wall is how far beyond the inner faces of its space a thing may be drawn: in
// the thickness of a wall or on its outer face.
const wall = 0.15

// TestDemosAreDrawnTrue holds the geometry of the demos together: no two
// enclosures overlap, and everything lies where it is said to be.
func TestDemosAreDrawnTrue(t *testing.T) {
	for _, path := range []string{sorrelFile, tealFile, faultyFile} {
		t.Run(filepath.Base(path), func(t *testing.T) {
			l := readDemo(t, path)
			rooms := enclosures(t, l)
			apart(t, rooms)
			for _, thing := range positionedThings(l) {
				if ref, known := thing.in.Get(); known && ref != layout.OpenAir {
					holds(t, rooms[ref], ref, thing)
				}
			}
			for _, line := range l.Lines.All() {
				routed(t, l, line)
			}
		})
	}
}

func enclosures(t *testing.T, l *layout.Layout) map[layout.Ref]box.Box {
	t.Helper()
	rooms := map[layout.Ref]box.Box{}
	for _, s := range l.Spaces.All() {
		rooms[s.Ref()] = cornersOf(t, s.Label(), &s.Box)
	}
	for _, k := range l.Lockers.All() {
		rooms[k.Ref()] = cornersOf(t, k.Label(), &k.Box)
	}
	return rooms
}

func cornersOf(t *testing.T, label string, b *layout.Box) box.Box {
	t.Helper()
	from, known := b.From.Get()
	to, both := b.To.Get()
	if !known || !both {
		t.Fatalf("%s has no box", label)
	}
	return between(from, to)
}

func between(from, to layout.Point) box.Box {
	return box.Box{From: box.Point{X: from[0], Y: from[1], Z: from[2]}, To: box.Point{X: to[0], Y: to[1], Z: to[2]}}
}

func apart(t *testing.T, rooms map[layout.Ref]box.Box) {
	t.Helper()
	for a, one := range rooms {
		for b, other := range rooms {
			if a < b && box.Overlap(one, other).High > 0 {
				t.Errorf("%s and %s overlap", a, b)
			}
		}
	}
}

// located is a thing with the key that says what it stands in.
type located struct {
	item layout.Item
	in   *layout.Given[layout.Ref]
	at   *layout.Position
}

func positionedThings(l *layout.Layout) []located {
	var things []located
	add := func(item layout.Item, in *layout.Given[layout.Ref], at *layout.Position) {
		things = append(things, located{item, in, at})
	}
	for _, x := range l.Cylinders.All() {
		add(x, &x.In, &x.Position)
	}
	for _, x := range l.Regulators.All() {
		add(x, &x.In, &x.Position)
	}
	for _, x := range l.Changeovers.All() {
		add(x, &x.In, &x.Position)
	}
	for _, x := range l.OpenEnds.All() {
		add(x, &x.In, &x.Position)
	}
	for _, x := range l.Appliances.All() {
		add(x, &x.In, &x.Position)
	}
	for _, x := range l.Stoves.All() {
		add(x, &x.In, &x.Position)
	}
	for _, x := range l.Exhausts.All() {
		add(x, &x.In, &x.Position)
	}
	for _, x := range l.Openings.All() {
		add(x, &x.Of, &x.Position)
	}
	for _, x := range l.FixedVents.All() {
		add(x, &x.Of, &layout.Position{At: x.At})
	}
	for _, x := range l.Fans.All() {
		add(x, &x.In, &x.Position)
	}
	for _, x := range l.IgnitionSources.All() {
		add(x, &x.In, &x.Position)
	}
	for _, x := range l.Combustibles.All() {
		add(x, &x.In, &x.Position)
	}
	for _, x := range l.Stored.All() {
		add(x, &x.In, &x.Position)
	}
	for _, x := range l.Alarms.All() {
		add(x, &x.In, &x.Position)
	}
	for _, x := range l.Extinguishers.All() {
		add(x, &x.In, &x.Position)
	}
	return things
}

func holds(t *testing.T, room box.Box, ref layout.Ref, thing located) {
	t.Helper()
	from, to, known := thing.at.Corners()
	if !known {
		t.Errorf("%s has no place", thing.item.Label())
		return
	}
	for _, axis := range []*unit.Value[unit.Length]{&room.From.X, &room.From.Y, &room.From.Z} {
		*axis = unit.Exactly(axis.Nominal - wall)
	}
	for _, axis := range []*unit.Value[unit.Length]{&room.To.X, &room.To.Y, &room.To.Z} {
		*axis = unit.Exactly(axis.Nominal + wall)
	}
	if box.Encloses(room, between(from, to)) != box.Yes {
		t.Errorf("%s lies outside %s, in which it is said to be", thing.item.Label(), ref)
	}
}

// routed asks that a line begins and ends at the things that it joins, and is
// about as long as its route.
func routed(t *testing.T, l *layout.Layout, line *layout.Line) {
	t.Helper()
	route, known := line.Route.Get()
	if !known {
		return
	}
	const reach = 0.30
	for end, point := range map[*layout.Given[layout.Ref]]layout.Point{&line.From: route[0], &line.To: route[len(route)-1]} {
		ref, _ := end.Get()
		from, to, placed := layout.PositionOf(l.Find(ref)).Corners()
		if !placed || box.Gap(between(from, to), between(point, point)).Nominal > reach {
			t.Errorf("%s has an end that is not at %s", line.Label(), ref)
		}
	}
	var along float64
	for i := range route[1:] {
		var square float64
		for axis := range route[i] {
			square += math.Pow(float64(route[i+1][axis].Nominal-route[i][axis].Nominal), 2)
		}
		along += math.Sqrt(square)
	}
	length, stated := line.Length.Get()
	if !stated || math.Abs(float64(length.Nominal)-along) > 0.05+0.10*along {
		t.Errorf("%s is stated %v long, and its route is %.2f m", line.Label(), length.Written, along)
	}
}

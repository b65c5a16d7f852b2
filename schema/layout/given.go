package layout

import (
	"lowvent.example/schema/source"
	"lowvent.example/schema/unit"
)

// Spot is where a value stands in the file, or where it would stand if it had
// been written. A key that was left out still has a Spot, so that a finding can
// name what to add and where.
type Spot struct {
	up   *Spot
	key  string
	node *source.Node
}

// Pointer is the RFC 6901 JSON Pointer of the value, written or not.
func (s *Spot) Pointer() string {
	var room [128]byte // pointers are made very often, and are seldom longer
	return string(s.appendPointer(room[:0]))
}

func (s *Spot) appendPointer(b []byte) []byte {
	if s == nil || s.up == nil {
		return b
	}
	return source.AppendToken(s.up.appendPointer(b), s.key)
}

// Key is the member name under which the value stands.
func (s *Spot) Key() string { return s.key }

// Written tells whether the file has a value there.
func (s *Spot) Written() bool { return s.node != nil }

// Place is the value's place in the file. For a value that was left out it is
// the key of the nearest enclosing object that was written (the first brace
// for the file itself), under the pointer of the value itself.
func (s *Spot) Place() source.Place {
	for up := s; up != nil; up = up.up {
		if up.node == nil {
			continue
		}
		place := up.node.Place()
		if up != s {
			place = head(up.node)
		}
		place.Pointer = s.Pointer()
		return place
	}
	return source.Place{Pointer: s.Pointer()}
}

// Head is the place at which a thing begins to be read: its key. A thing of many
// lines is pointed at there.
func (s *Spot) Head() source.Place {
	if s.node == nil {
		return s.Place()
	}
	return head(s.node)
}

// Stated is what every value of a layout has in common, whatever its type.
type Stated interface {
	Spot() *Spot
	Known() bool
	Evidence() Evidence
}

// Given is one statement that the file may make. The value leaves only through
// Get, which tells whether it was made: there is no way to take a value that
// was left out for a zero, a false or a "none".
type Given[T any] struct {
	val      T
	known    bool
	spot     Spot
	evidence *Evidence
}

// Get returns the value and whether the file states it.
func (g *Given[T]) Get() (T, bool) { return g.val, g.known }

// Known tells whether the file states the value.
func (g *Given[T]) Known() bool { return g.known }

// Spot is where the value stands or would stand.
func (g *Given[T]) Spot() *Spot { return &g.spot }

// Evidence is what the statement rests on; "stated" unless the file says more.
func (g *Given[T]) Evidence() Evidence {
	if g.evidence == nil {
		return Evidence{Basis: BasisStated}
	}
	return *g.evidence
}

func (g *Given[T]) setEvidence(e Evidence) { g.evidence = &e }

// Measure is a quantity that the file may state, with the band of its tolerance.
type Measure[Q unit.Quantity] struct {
	Given[unit.Value[Q]]
}

// Point is a position in the dwelling: x from front to rear, y from left to
// right, z up from the floor of the main living space, all in metres.
type Point [3]unit.Value[unit.Length]

package vent

import (
	"cmp"
	"slices"

	"lowvent.example/schema/check"
	"lowvent.example/schema/layout"
)

// outReads are the keys by which the ways out of a space are found.
var outReads = []string{"/spaces/*/openTo", "/openings", "/openings/*/kind", "/openings/*/of", "/openings/*/wayOut",
	"/openings/*/at", "/openings/*/box/from", "/openings/*/box/to"}

// withNeighbours lists a space and those that it is open to.
func withNeighbours(s *check.Sheet, space *layout.Space) []layout.Ref {
	rooms := []layout.Ref{space.Ref()}
	for _, way := range check.List(s, &space.OpenTo) {
		rooms = append(rooms, layout.Ref("spaces/"+way.ID()))
	}
	return rooms
}

// waysOut takes the openings of some spaces by which a person gets out in a fire, in
// the order of their places. What is neither door, window, hatch nor roof vent is
// none.
func waysOut(s *check.Sheet, rooms []layout.Ref) []*layout.Opening {
	var found []*layout.Opening
	for _, o := range check.List(s, &s.Layout().Openings) {
		switch check.Read(s, &o.Kind) {
		case layout.OpeningKindDoor, layout.OpeningKindWindow, layout.OpeningKindHatch, layout.OpeningKindRoofVent:
			if slices.Contains(rooms, check.Read(s, &o.Of)) && check.Read(s, &o.Exit) {
				at(s, o, &o.Position)
				found = append(found, o)
			}
		}
	}
	slices.SortStableFunc(found, func(a, b *layout.Opening) int { return byPlace(&a.Position, &b.Position) })
	return found
}

// byPlace orders things by where they stand, so that of several that will do the
// same one is named whatever they are called.
func byPlace(a, b *layout.Position) int {
	p, _, _ := a.Corners()
	q, _, _ := b.Corners()
	for axis := range p {
		if order := cmp.Compare(p[axis].Nominal, q[axis].Nominal); order != 0 {
			return order
		}
	}
	return 0
}

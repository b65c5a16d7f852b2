package pool

import (
	"fmt"

	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

// Room is a box with a level floor. Its levels are heights in m over one plane for the
// whole [Space], best the lowest floor of all.
type Room struct {
	Floor, Top unit.Length
	Area       unit.Area // of floor that gas can cover, m²
}

// Opening joins two rooms: a doorway, a step, a hole in a bulkhead, a hatch in the floor
// that is the way into a bay below. Gas runs over it from Sill upward, or from the
// higher of both floors if that lies above Sill.
type Opening struct {
	A, B  int         // rooms, by their place in the space; which is which does not matter
	Sill  unit.Length // level of its lower edge, m
	Width unit.Length // m; gas shares out by it among openings at one level
}

// Drain is a way out of the dwelling: a floor drain, a low vent, the gap under an
// outer door. From Level upward it carries off the mixture that comes to it, at most
// Carries, in m³/s: the most that the balance of flows lets out of a space full of that
// mixture. Give none for the cautious case: a drain is choked by leaves, mud, snow, a
// mat or a breeze, and each one given makes everything later, the wrong side for what
// lights gas.
type Drain struct {
	Room    int
	Level   unit.Length
	Carries unit.VolumeFlow // of mixture, not of gas
}

// Leak is gas that comes into a room: from a joint, an unlit burner, or the doorway of
// a locker or a bay that is not sealed.
type Leak struct {
	Room  int
	Level unit.Length     // where it comes in, m; gas falls from there
	Gas   unit.VolumeFlow // undiluted, m³/s
}

// Point is something that lights gas, or an alarm.
type Point struct {
	Room  int
	Level unit.Length
}

// Space is rooms joined by openings. A locker or an underfloor bay is a room as well.
type Space struct {
	Rooms    []Room
	Openings []Opening
	Drains   []Drain
	Leaks    []Leak
	Points   []Point
}

// RoomError says that a part of a space names a room that is not there, or lies outside
// the room that it names.
type RoomError struct {
	Part  string // "opening", "drain", "leak" or "point"
	Index int    // its place in its list
	Room  int    // the room that it names
	Want  string // what was expected
}

// Error tells the part, the room and what was expected.
func (e *RoomError) Error() string {
	return fmt.Sprintf("%s %d in room %d: expected %s", e.Part, e.Index, e.Room, e.Want)
}

// sill returns the level from which gas runs over an opening.
func (s *Space) sill(o Opening) float64 {
	return float64(max(o.Sill, s.Rooms[o.A].Floor, s.Rooms[o.B].Floor))
}

// valid reports the first thing that is wrong with the space.
func (s *Space) valid() error {
	for i, r := range s.Rooms {
		err := first(validLevel(r.Floor), validLevel(r.Top), validArea(r.Area),
			propane.Within("height of the room", float64(r.Top-r.Floor), least, 2*mostLength, "m"))
		if err != nil {
			return fmt.Errorf("room %d: %w", i, err)
		}
	}
	return first(s.validOpenings(), s.validDrains(), s.validLeaks(), s.validPoints())
}

func (s *Space) validOpenings() error {
	for i, o := range s.Openings {
		if err := first(s.has("opening", i, o.A), s.has("opening", i, o.B)); err != nil {
			return err
		}
		if err := first(validLevel(o.Sill), validWidth(o.Width)); err != nil {
			return fmt.Errorf("opening %d: %w", i, err)
		}
		if o.A == o.B {
			return &RoomError{"opening", i, o.A, "two different rooms"}
		}
		for _, room := range []int{o.A, o.B} {
			r, other := s.Rooms[room], s.Rooms[o.A+o.B-room]
			if s.sill(o) >= float64(r.Top) && other.Floor < r.Top {
				return &RoomError{"opening", i, room, "a sill below the top of the room, or the other room above it"}
			}
		}
	}
	return nil
}

func (s *Space) validDrains() error {
	for i, d := range s.Drains {
		if err := s.inside("drain", i, d.Room, d.Level); err != nil {
			return err
		}
		if err := propane.Within("flow that a drain carries off", float64(d.Carries), 0, mostFlow, "m³/s"); err != nil {
			return fmt.Errorf("drain %d: %w", i, err)
		}
	}
	return nil
}

func (s *Space) validLeaks() error {
	for i, l := range s.Leaks {
		if err := s.inside("leak", i, l.Room, l.Level); err != nil {
			return err
		}
		if err := validGas(l.Gas); err != nil {
			return fmt.Errorf("leak %d: %w", i, err)
		}
	}
	return nil
}

func (s *Space) validPoints() error {
	for i, p := range s.Points {
		if err := s.inside("point", i, p.Room, p.Level); err != nil {
			return err
		}
	}
	return nil
}

// has reports a RoomError unless there is such a room.
func (s *Space) has(part string, index, room int) error {
	if room >= 0 && room < len(s.Rooms) {
		return nil
	}
	return &RoomError{part, index, room, fmt.Sprintf("one of %d rooms, counted from 0", len(s.Rooms))}
}

// inside reports what is wrong with the place of a part in its room.
func (s *Space) inside(part string, index, room int, level unit.Length) error {
	if err := s.has(part, index, room); err != nil {
		return err
	}
	if err := validLevel(level); err != nil {
		return fmt.Errorf("%s %d: %w", part, index, err)
	}
	if r := s.Rooms[room]; level < r.Floor || level > r.Top {
		return &RoomError{part, index, room, fmt.Sprintf("a level from its floor at %.6g m to its top at %.6g m, found %.6g m", float64(r.Floor), float64(r.Top), float64(level))}
	}
	return nil
}

func validLevel(z unit.Length) error {
	return propane.Within("level", float64(z), -mostLength, mostLength, "m")
}

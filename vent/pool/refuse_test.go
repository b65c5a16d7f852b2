package pool

import (
	"errors"
	"testing"

	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

// TestFormulasRefuse: whatever is no figure, or none of a dwelling, gives no answer.
func TestFormulasRefuse(t *testing.T) {
	propaneAir := Densities{1.865, 1.204}
	bad := func(more ...float64) []float64 { return append(more, notNumbers...) }
	for _, v := range bad(0, -1, 2e5) {
		refused[unit.Duration](t, "floor area")(LayerTime(unit.Area(v), 1, 0.017, 1e-5))
		refused[Hearing](t, "floor area")(Alarm{0.1, 0.004}.Latest(unit.Area(v), 10, 1e-5, 0))
	}
	for _, v := range bad(-1, 2e3) {
		refused[unit.Duration](t, "height over the floor")(LayerTime(10, unit.Length(v), 0.017, 1e-5))
		refused[unit.Duration](t, "height over the floor")(Soonest(10, unit.Length(v), 1, 0.017, 1e-5))
		refused[unit.Duration](t, "height over the floor")(Soonest(10, 1, unit.Length(v), 0.017, 1e-5))
		refused[Hearing](t, "height over the floor")(Alarm{unit.Length(v), 0.004}.Latest(10, 10, 1e-5, 0))
		refused[unit.Speed](t, "height over the floor")(FrontSpeed(propaneAir, 1, 1, unit.Length(v)))
		refused[Moment](t, "height over the floor")(Stream{1, 1}.Reach(1, unit.Length(v)))
		refused[Moment](t, "distance along the floor")(Stream{1, 1}.Reach(unit.Length(v), 1))
		refused[Moment](t, "flow of fresh air")(Mixed(10, 1e-5, unit.VolumeFlow(v), 0.017))
	}
	for _, v := range bad(0, -1, 1.01) {
		refused[unit.Duration](t, "share of gas by volume")(LayerTime(10, 1, unit.Ratio(v), 1e-5))
		refused[Moment](t, "share of gas by volume")(Mixed(10, 1e-5, 0, unit.Ratio(v)))
		refused[Hearing](t, "share of gas by volume")(Alarm{0.1, unit.Ratio(v)}.Latest(10, 10, 1e-5, 0))
		refused[unit.Duration](t, "share of gas by volume")(Purge(10, 1, unit.Ratio(v), 0.5, 1))
		refused[unit.Duration](t, "share of gas by volume")(Purge(10, 1, 0.5, unit.Ratio(v), 1))
		refused[Whole](t, "share of gas by volume")(Flammable(10, unit.Ratio(v), 1.8, 5))
		refused[unit.Speed](t, "share of gas by volume")(FrontSpeed(propaneAir, 1, unit.Ratio(v), 1))
		refused[Stream](t, "share of gas by volume")(StreamOf(propaneAir, 1, unit.Ratio(v), 1e-5, 1))
		refused[unit.Length](t, "share of gas by volume")(SpillDepth(propaneAir, unit.Ratio(v), 1e-5, 1))
	}
	for _, v := range bad(0, -1, 1e4) {
		q := unit.VolumeFlow(v)
		refused[unit.Duration](t, "flow of gas")(LayerTime(10, 1, 0.017, q))
		refused[unit.Duration](t, "flow of gas")(Soonest(10, 2, 1, 0.017, q))
		refused[unit.Ratio](t, "flow of gas")(Concentration(10, q, 0, 1))
		refused[Moment](t, "flow of gas")(Mixed(10, q, 0, 0.017))
		refused[Stream](t, "flow of gas")(StreamOf(propaneAir, 1, 1, q, 1))
		refused[unit.Length](t, "flow of gas")(SpillDepth(propaneAir, 1, q, 1))
		refused[unit.Duration](t, "flow of fresh air")(Purge(10, q, 0.5, 0.1, 1))
	}
	for _, v := range bad(0, -1, 2e6) {
		V := unit.Volume(v)
		refused[unit.Ratio](t, "volume of the space")(Concentration(V, 1, 0, 1))
		refused[Moment](t, "volume of the space")(Mixed(V, 1, 0, 0.017))
		refused[unit.Duration](t, "volume of the space")(Purge(V, 1, 0.5, 0.1, 1))
		refused[Whole](t, "volume of the space")(Flammable(V, 0.017, 1.8, 5))
		refused[Whole](t, "mass of gas held")(Flammable(10, 0.017, 1.8, unit.PropaneMass(v)))
		refused[Whole](t, "density of the gas")(Flammable(10, 0.017, unit.Density(v), 5))
		refused[unit.Speed](t, "density of the air")(FrontSpeed(Densities{1.8, unit.Density(v)}, 1, 1, 1))
		refused[Stream](t, "width")(StreamOf(propaneAir, 1, 1, 1e-5, unit.Length(v)))
		refused[unit.Length](t, "width")(SpillDepth(propaneAir, 1, 1e-5, unit.Length(v)))
		refused[Moment](t, "speed of the front")(Stream{unit.Speed(v), 1}.Reach(1, 0))
		refused[unit.Speed](t, "Froude number")(FrontSpeed(propaneAir, unit.Ratio(v), 1, 1))
		refused[Stream](t, "Froude number")(StreamOf(propaneAir, unit.Ratio(v), 1, 1e-5, 1))
	}
	for _, v := range bad(-1, 2e12) {
		refused[unit.Ratio](t, "time")(Concentration(10, 1, 0, unit.Duration(v)))
	}
	for _, v := range bad(0.9, 5.1, -1) {
		refused[unit.Duration](t, "factor of imperfect mixing")(Purge(10, 1, 0.5, 0.1, unit.Ratio(v)))
	}
	for _, v := range bad(1.204, 0.18, 0, -1) { // air, helium
		refused[unit.Speed](t, "density of the gas over that of air")(FrontSpeed(Densities{unit.Density(v), 1.204}, 1, 1, 1))
	}
}

// house is a room, a lower one behind a sill of 0.1 m, and a bay under the second.
func house() Space {
	return Space{
		Rooms:    []Room{{0, 2, 10}, {-0.2, 2, 5}, {-0.8, -0.2, 1}},
		Openings: []Opening{{0, 1, 0.1, 0.6}, {1, 2, -0.3, 0.5}},
		Drains:   []Drain{{1, 0, 1e-3}},
		Leaks:    []Leak{{0, 0.9, 1e-4}},
		Points:   []Point{{0, 0.05}, {1, 0.4}, {2, -0.8}},
	}
}

// TestFillRefuses: every part of a space is looked at, and named if it is wrong.
func TestFillRefuses(t *testing.T) {
	for name, c := range map[string]struct {
		spoil   func(*Space)
		part    string // of a RoomError; else a RangeError
		message string
	}{
		"area":                  {func(s *Space) { s.Rooms[1].Area = 0 }, "", "room 1: floor area of 0 m² lies outside the range 1e-09 to 100000 m² in which the formula is valid"},
		"floor over top":        {func(s *Space) { s.Rooms[1].Top = -1 }, "", "room 1: height of the room of -0.8 m lies outside the range 1e-09 to 2000 m in which the formula is valid"},
		"opening to nowhere":    {func(s *Space) { s.Openings[1].B = 3 }, "opening", "opening 1 in room 3: expected one of 3 rooms, counted from 0"},
		"opening from nowhere":  {func(s *Space) { s.Openings[1].A = -1 }, "opening", ""},
		"opening to itself":     {func(s *Space) { s.Openings[0].B = 0 }, "opening", ""},
		"sill over the top":     {func(s *Space) { s.Openings[0].Sill = 2 }, "opening", "opening 0 in room 0: expected a sill below the top of the room, or the other room above it"},
		"no width":              {func(s *Space) { s.Openings[0].Width = 0 }, "", ""},
		"drain nowhere":         {func(s *Space) { s.Drains[0].Room = 9 }, "drain", ""},
		"drain below the floor": {func(s *Space) { s.Drains[0].Level = -0.3 }, "drain", ""},
		"drain that lets in":    {func(s *Space) { s.Drains[0].Carries = -1 }, "", ""},
		"leak nowhere":          {func(s *Space) { s.Leaks[0].Room = -1 }, "leak", ""},
		"leak over the roof":    {func(s *Space) { s.Leaks[0].Level = 3 }, "leak", ""},
		"leak of nothing":       {func(s *Space) { s.Leaks[0].Gas = 0 }, "", ""},
		"point nowhere":         {func(s *Space) { s.Points[2].Room = 4 }, "point", ""},
		"point outside":         {func(s *Space) { s.Points[2].Level = 0.5 }, "point", "point 2 in room 2: expected a level from its floor at -0.8 m to its top at -0.2 m, found 0.5 m"},
	} {
		s := house()
		c.spoil(&s)
		got, err := s.Fill(Layer{Share: 0.017}, week)
		var room *RoomError
		var out *propane.RangeError
		if got.Arrivals != nil || (c.part != "" && (!errors.As(err, &room) || room.Part != c.part)) || (c.part == "" && !errors.As(err, &out)) {
			t.Errorf("%s: %+v, %v", name, got, err)
		}
		if c.message != "" && (err == nil || err.Error() != c.message) {
			t.Errorf("%s: the message is %q, want %q", name, err, c.message)
		}
	}
	for _, v := range append([]float64{-2e3, 2e3}, notNumbers...) {
		for name, spoil := range map[string]func(*Space, unit.Length){
			"floor": func(s *Space, z unit.Length) { s.Rooms[0].Floor = z }, "top": func(s *Space, z unit.Length) { s.Rooms[0].Top = z },
			"sill": func(s *Space, z unit.Length) { s.Openings[0].Sill = z }, "drain": func(s *Space, z unit.Length) { s.Drains[0].Level = z },
			"leak": func(s *Space, z unit.Length) { s.Leaks[0].Level = z }, "point": func(s *Space, z unit.Length) { s.Points[0].Level = z },
		} {
			s := house()
			spoil(&s, unit.Length(v))
			if _, err := s.Fill(Layer{Share: 0.017}, week); err == nil {
				t.Errorf("%s at %v is accepted", name, v)
			}
		}
	}
	s := house()
	for _, v := range append([]float64{-1, 2e12}, notNumbers...) {
		if _, err := s.Fill(Layer{Share: 0.017}, unit.Duration(v)); err == nil {
			t.Errorf("until %v is accepted", v)
		}
		if _, err := s.Fill(Layer{Share: 0.017, Stand: unit.Length(v)}, week); err == nil {
			t.Errorf("stand %v is accepted", v)
		}
		if _, err := s.Fill(Layer{Share: unit.Ratio(v)}, week); err == nil {
			t.Errorf("share %v is accepted", v)
		}
	}
	if _, err := s.Fill(Layer{Share: 0.017}, week); err != nil {
		t.Errorf("the house itself: %v", err)
	}
}

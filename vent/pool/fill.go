package pool

import (
	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

// Arrival is when gas comes to a point, as each way of lying that gas has would have it.
type Arrival struct {
	// Stream: gas falls past it, from a leak in its room or over a sill into its room
	// that lies no lower. Whether it falls just there is not known.
	Stream Moment
	// Alone: the layer stands at it with the doors of its room shut and nothing drained.
	Alone Moment
	// Layer: the layer stands at it, openings open, drains at work unless EachWay.
	Layer Moment
}

// Soonest returns the earliest of the three: for what lights gas.
func (a Arrival) Soonest() Moment { return Sooner(a.Stream, Sooner(a.Alone, a.Layer)) }

// Filling is what came of a leak into a [Space].
type Filling struct {
	Arrivals []Arrival     // one for each point, in their order
	Levels   []unit.Length // where the layer stands in each room in the end; its floor if there is none

	// The gas at the end, undiluted, in m³. Together they are what has leaked, or more
	// with EachWay.
	Held       unit.Volume // in layers
	Drained    unit.Volume // by drains
	PressedOut unit.Volume // through cracks, by rooms that are full
}

// Layer says how the gas lies, for [Space.Fill].
type Layer struct {
	// Share is the share of gas throughout the layer, by volume: the lower flammable
	// limit for what lights it, 1 for how late an alarm hears undiluted gas.
	Share unit.Ratio
	// Stand is how much higher than reckoned the layer may lie, such as [SpillDepth]; a
	// point counts as reached so much early. 0 for alarms.
	Stand unit.Length
	// EachWay lets all of the gas go each way where it runs over several sills at just
	// one level, as it may on a floor that is out of level, and lets no drain work. It
	// makes the moments the soonest of all, and more gas than has leaked. Without it the
	// gas parts by the widths of the openings and drains work.
	EachWay bool
}

// Fill follows a layer from room to room until a time is over. All gas that leaks lies
// in the layer; it rises in the room of the leak to the lowest sill, runs over into the
// neighbour, on from there, and rises further once the neighbour stands as high. Rooms
// at one level are one pool. A room that is full up to its top sends what still comes
// up its hatch, if it has one, or presses it out.
//
// For what lights gas, ask with the lower flammable limit, a stand and EachWay, and
// take [Arrival.Soonest]. For an alarm, ask with a share of 1 and neither, and take
// Arrival.Layer; never is a true answer, behind a sill or in another room. Moments
// after until are told as never.
//
// Valid for a share from 1e-6 to 1, a stand from 0 to 1000 m, until from 0 to 1e12 s,
// rooms of at least 1e-9 m height, levels within 1000 m, widths from 1e-9 to 1000 m,
// else [*propane.RangeError]; a part that names no room or lies outside it is a
// [*RoomError].
//
// Error: none of arithmetic: nothing is stepped, each change of flow is met exactly.
// With EachWay more gas, less floor or a lower point makes nothing later; without,
// where several sills lie at one level, more gas can fill one way and take from
// another. A drain errs late, the wrong side for ignition. Gas wets the floor of a
// pool throughout at once, which errs early by the time of the [Stream]. The stream
// that falls over a sill counts for the room into which it falls, not for those that
// lie open to it at one level.
//
// Source: balance of volume over a graph; common practice, no source.
func (s Space) Fill(layer Layer, until unit.Duration) (Filling, error) {
	err := first(s.valid(), validShare(layer.Share), propane.Within("stand of the layer", float64(layer.Stand), 0, mostLength, "m"),
		propane.Within("time", float64(until), 0, mostTime, "s"))
	if err != nil {
		return Filling{}, err
	}
	f := newFiller(&s, layer)
	f.run(float64(until))
	return f.result(float64(until)), nil
}

// run goes from one change to the next. Each round passes one mark at least, or comes
// to the end, so that there are no more rounds than marks and a few.
func (f *filler) run(until float64) {
	for i := range f.space.Rooms {
		f.hit = append(f.hit, i)
	}
	for {
		f.settle()
		f.spread()
		if f.time >= until {
			return
		}
		dt := f.next()
		f.advance(min(dt, until-f.time), dt)
	}
}

func (f *filler) result(until float64) Filling {
	s := f.space
	out := Filling{Arrivals: make([]Arrival, len(s.Points)), Levels: make([]unit.Length, len(s.Rooms))}
	gas := f.thin
	for i := range s.Rooms {
		if f.parent[i] == i {
			f.count(i)
		}
	}
	out.Drained, out.PressedOut = unit.Volume(f.drained*gas), unit.Volume(f.pressed*gas)
	held := 0.0
	for i, r := range s.Rooms {
		out.Levels[i] = min(unit.Length(f.level[f.pool(i)]), r.Top)
		held += float64(out.Levels[i]-r.Floor) * float64(r.Area)
	}
	out.Held = unit.Volume(held * gas)
	for i := range s.Points {
		out.Arrivals[i] = Arrival{Stream: f.stream(i, until), Alone: f.alone(i, until), Layer: moment(f.reached[i], until)}
	}
	return out
}

// moment is a time in s as a Moment, never if it lies after until.
func moment(t, until float64) Moment {
	if t <= until {
		return Moment{After: unit.Duration(t)}
	}
	return Moment{Never: true}
}

// alone is when the layer stands at a point with the doors of its room shut.
func (f *filler) alone(point int, until float64) Moment {
	p := f.space.Points[point]
	q := f.leaks[p.Room]
	if q == 0 {
		return Moment{Never: true}
	}
	r := f.space.Rooms[p.Room]
	return moment(max(0, float64(p.Level-r.Floor)-f.stand)*float64(r.Area)/q, until)
}

// stream is when gas first falls past a point.
func (f *filler) stream(point int, until float64) Moment {
	p := f.space.Points[point]
	if f.leakTop[p.Room] >= float64(p.Level) {
		return Moment{}
	}
	t := forever
	for _, m := range f.marksOf(p.Room) {
		if m.kind == sillMark && m.level >= float64(p.Level) && f.into[m.index] == p.Room {
			t = min(t, f.spilled[m.index])
		}
	}
	return moment(t, until)
}

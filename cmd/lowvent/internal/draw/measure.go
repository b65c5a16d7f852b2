package draw

import (
	"math"

	"lowvent.example/schema/unit"
	"lowvent.example/vent/box"
)

// measure is how a distance between two things was taken.
type measure int

const (
	straight measure = iota // the least straight distance
	level                   // the least distance in plan
	height                  // the free height between them
	overFoot                // how high the foot of one is over the foot of the other
)

// agrees is how much a distance as drawn may differ from the one of the report, as a
// share: by a tape, say.
const agrees = 0.005

// measureOf finds by which measure two things lie as far apart as a report found; false
// when by none.
func measureOf(a, b solid, found float64) (measure, bool) {
	is := func(v unit.Value[unit.Length]) bool {
		return found > 0 && math.Abs(float64(v.Nominal)-found) <= agrees*found
	}
	switch {
	case is(box.Gap(a.box(), b.box())):
		return straight, true
	case is(box.PlanGap(a.box(), b.box())):
		return level, true
	case is(box.VerticalGap(a.box(), b.box())):
		return height, true
	case is(unit.Exactly(unit.Length(math.Abs(b.from[2] - a.from[2])))):
		return overFoot, true
	}
	return 0, false
}

// ends are the two points between which a distance lies. Where the things lie side by side
// there is a choice of them; share says where in it, from 0 to 1.
func (d *distance) ends(share float64) (from, to place) {
	from, to = facing(d.a, d.b, share)
	switch d.how {
	case level:
		to[2] = from[2]
	case height:
		from[0], from[1] = to[0], to[1]
	case overFoot:
		high, low := d.b, d.a.from[2]
		if d.a.from[2] > d.b.from[2] {
			high, low = d.a, d.b.from[2]
		}
		to = high.middle()
		from, to[2] = to, high.from[2]
		from[2] = low
	}
	return from, to
}

// facing are the nearest points of two solids; where they lie side by side, a share along
// what they have in common.
func facing(a, b solid, share float64) (p, q place) {
	for i := range p {
		switch {
		case b.from[i] > a.to[i]:
			p[i], q[i] = a.to[i], b.from[i]
		case a.from[i] > b.to[i]:
			p[i], q[i] = a.from[i], b.to[i]
		default:
			from, to := max(a.from[i], b.from[i]), min(a.to[i], b.to[i])
			p[i] = from + (to-from)*share
			q[i] = p[i]
		}
	}
	return p, q
}

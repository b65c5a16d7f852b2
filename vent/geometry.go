package vent

import (
	"math"
	"strings"

	"lowvent.example/schema/check"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/unit"
	"lowvent.example/vent/box"
)

// thing is something with a position in the dwelling.
type thing struct {
	item layout.Item
	box  box.Box
}

func pointOf(p layout.Point) box.Point { return box.Point{X: p[0], Y: p[1], Z: p[2]} }

func boxOf(from, to layout.Point) box.Box { return box.Box{From: pointOf(from), To: pointOf(to)} }

// at takes where a thing stands.
func at(s *check.Sheet, item layout.Item, p *layout.Position) thing {
	return thing{item: item, box: boxOf(check.Where(s, item, p))}
}

// ventAt takes where the outer end of a locker's vent is: where its pipe ends, or
// where it goes through the wall.
func ventAt(s *check.Sheet, v *layout.LockerVent) thing {
	end := &v.At
	if v.EndsAt.Known() {
		end = &v.EndsAt
	}
	return thing{item: v, box: box.At(pointOf(check.Read(s, end)))}
}

// cylinderAt takes the room that a cylinder fills: a box, or the circle and
// height around the middle of its foot.
func cylinderAt(s *check.Sheet, c *layout.Cylinder) thing {
	t := at(s, c, &c.Position)
	if c.Box.Present() {
		return t
	}
	t.box = standingOn(t.box, check.Measure(s, "D", &c.Diameter), check.Measure(s, "h", &c.Height))
	return t
}

// standingOn is the room that a round thing fills that stands on a place.
func standingOn(place box.Box, diameter, height unit.Length) box.Box {
	half := unit.Length(float64(diameter) / 2)
	place.From.X, place.To.X = widened(place.From.X, -half), widened(place.To.X, half)
	place.From.Y, place.To.Y = widened(place.From.Y, -half), widened(place.To.Y, half)
	place.To.Z = widened(place.To.Z, height)
	return place
}

func widened(v unit.Value[unit.Length], by unit.Length) unit.Value[unit.Length] {
	return unit.Value[unit.Length]{Nominal: v.Nominal + by, Low: v.Low + by, High: v.High + by}
}

// apart takes the least straight distance that the coordinates of two things give.
func apart(s *check.Sheet, symbol string, a, b thing) unit.Length {
	return check.Band(s, symbol, between(a, b, "least distance"), box.Gap(a.box, b.box))
}

// apartInPlan takes the least distance between two things as seen from above. A
// tape is held straight from one to the other, so their difference in height is
// taken out of it.
func apartInPlan(s *check.Sheet, symbol string, a, b thing) unit.Length {
	t := tape(s, a.item, b.item)
	if t == nil {
		return check.Band(s, symbol, between(a, b, "distance in plan"), box.PlanGap(a.box, b.box))
	}
	check.Read(s, &t.Is.Given)
	straight, _ := t.Is.Get()
	return check.Band(s, symbol, between(a, b, "distance in plan by tape"), levelled(straight, box.VerticalGap(a.box, b.box)))
}

// levelled takes a height out of a straight distance:
//
//	d_plan = √(d² − h²)
//
// in m, 0 where the height is the whole distance. The band holds every case
// inside both bands. Source: Pythagoras.
func levelled(straight, height unit.Value[unit.Length]) unit.Value[unit.Length] {
	leg := func(d, h unit.Length) unit.Length {
		return nanometre(math.Sqrt(max(0, float64(d)*float64(d)-float64(h)*float64(h))))
	}
	return unit.Value[unit.Length]{Nominal: leg(straight.Nominal, height.Nominal), Low: leg(straight.Low, height.High), High: leg(straight.High, height.Low)}
}

func between(a, b thing, what string) string {
	return what + " from " + a.item.Spot().Pointer() + " to " + b.item.Spot().Pointer()
}

// tape finds a tape measure between two things, taken either way.
func tape(s *check.Sheet, a, b layout.Item) *layout.TapeMeasure {
	return s.Layout().TapeBetween(refOf(a), refOf(b))
}

func refOf(item layout.Item) layout.Ref {
	return layout.Ref(strings.TrimPrefix(item.Spot().Pointer(), "/"))
}

// heightAbove is how far the lowest point of a thing lies over the floor of a
// space.
func heightAbove(space, thing box.Box) unit.Value[unit.Length] {
	floor, _ := box.LowestPoint(space)
	lowest, _ := box.LowestPoint(thing)
	return less(lowest, floor)
}

// less is how far one coordinate lies beyond another, with the band of both.
func less(a, b unit.Value[unit.Length]) unit.Value[unit.Length] {
	take := func(a, b unit.Length) unit.Length { return nanometre(float64(a) - float64(b)) }
	return unit.Value[unit.Length]{Nominal: take(a.Nominal, b.Nominal), Low: take(a.Low, b.High), High: take(a.High, b.Low)}
}

// nanometre rounds a length, given in m, as package box rounds all of its own: so
// that what is exactly at a limit is not over it by the last digit of a float.
func nanometre(x float64) unit.Length { return unit.Length(math.Round(x*1e9)/1e9 + 0) }

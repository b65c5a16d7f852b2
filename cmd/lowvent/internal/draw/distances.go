package draw

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
	"lowvent.example/schema/unit"
	"lowvent.example/vent/box"
)

// distance is a distance of which a finding says that it is not what is needed.
type distance struct {
	from, to place // the nearest points of the two things
	found    float64
	says     []saying // what one or more findings say of it
	between  string   // for people: "cylinder B and ignition source side-marker"
}

// saying is what one finding says of a distance.
type saying struct {
	word           report.Signal
	check, subject string
	found, needed  string // in both systems of units
	metres         float64
	atMost         bool
}

// agrees is how much a distance as drawn may differ from the one of the report, as a
// share: by a tape, say.
const agrees = 0.005

// distancesOf takes from the findings that are not met every distance between two things
// whose places are stated, the gravest word and then the shortest first.
func distancesOf(l *layout.Layout, f *report.FileReport) []*distance {
	var all []*distance
	if f == nil {
		return nil
	}
	for i := range f.Findings {
		g := &f.Findings[i]
		if g.Outcome != report.NotMet {
			continue
		}
		for j := range g.Parts {
			if d := distanceOf(l, g, &g.Parts[j]); d != nil {
				all = joined(all, d)
			}
		}
	}
	for _, d := range all {
		slices.SortStableFunc(d.says, func(a, b saying) int { return cmp.Compare(b.word.Rank(), a.word.Rank()) })
	}
	slices.SortStableFunc(all, func(a, b *distance) int {
		return cmp.Or(cmp.Compare(b.says[0].word.Rank(), a.says[0].word.Rank()), cmp.Compare(a.found, b.found))
	})
	return all
}

// joined adds a distance, or what is said of it to the same distance that is there.
func joined(all []*distance, d *distance) []*distance {
	for _, e := range all {
		if e.from == d.from && e.to == d.to || e.from == d.to && e.to == d.from {
			if !slices.Contains(e.says, d.says[0]) {
				e.says = append(e.says, d.says...)
			}
			return all
		}
	}
	return append(all, d)
}

// distanceOf is the distance that a part of a finding speaks of, or nil: it has to be one
// of length, not as it should be, between two things that stand somewhere.
func distanceOf(l *layout.Layout, g *report.Finding, p *report.Part) *distance {
	if p.Outcome != report.NotMet || p.Found == nil || p.Needed == nil || p.Found.SI == nil || p.Needed.SI == nil || p.Found.Kind != unit.KindLength.String() {
		return nil
	}
	ends := endsRead(l, p)
	if len(ends) != 2 {
		return nil
	}
	found := *p.Found.SI
	from, to, ok := nearestPoints(ends[0].solid, ends[1].solid, found)
	if !ok {
		return nil
	}
	says := saying{word: g.Word, check: g.Check, subject: g.Subject, found: p.Found.Text, needed: p.Needed.Text, metres: found, atMost: found > *p.Needed.SI}
	return &distance{from: from, to: to, found: found, says: []saying{says}, between: ends[0].label + " and " + ends[1].label}
}

// read is a thing by the place of it that an answer rests on.
type read struct {
	label, pointer string
	solid          solid
}

// endsRead are the things whose places a part of a finding read, in the order in which it
// read them: the two that it compares.
func endsRead(l *layout.Layout, p *report.Part) []read {
	var all []read
	for _, in := range p.Inputs {
		owner, key := ownerOf(in.Pointer)
		if key == "" || slices.ContainsFunc(all, func(r read) bool { return r.pointer == owner }) {
			continue
		}
		item := l.Find(layout.Ref(strings.TrimPrefix(owner, "/")))
		if item == nil {
			continue
		}
		if s, ok := solidAt(item, key); ok {
			all = append(all, read{item.Label(), owner, s})
		}
	}
	return all
}

// placeKeys are the keys under which a file gives places.
var placeKeys = []string{"at", "endsAt", "outlet", "terminal/at", "intake/at", "box/from", "box/to"}

// ownerOf parts the pointer of a place into that of the thing and the key; the key is ""
// for what is no place.
func ownerOf(pointer string) (owner, key string) {
	for _, key := range placeKeys {
		if owner, is := strings.CutSuffix(pointer, "/"+key); is && len(source.Split(owner)) >= 2 {
			owner = strings.TrimSuffix(strings.TrimSuffix(owner, "/terminal"), "/intake")
			return owner, strings.TrimPrefix(pointer, owner+"/")
		}
	}
	return "", ""
}

// solidAt is the room of a thing, or its place under one of its keys.
func solidAt(item layout.Item, key string) (s solid, ok bool) {
	at := func(p *layout.Given[layout.Point]) (solid, bool) { q, known := p.Get(); return spot(placeAt(q)), known }
	switch item := item.(type) {
	case *layout.Space:
		return boxOf(&item.Box)
	case *layout.Locker:
		return boxOf(&item.Box)
	case *layout.LockerVent:
		if key == "endsAt" {
			return at(&item.EndsAt)
		}
		return at(&item.At)
	case *layout.FixedVent:
		return at(&item.At)
	case *layout.Flue:
		if key == "intake/at" {
			return at(&item.Intake.At)
		}
		return at(&item.Terminal.At)
	case *layout.Exhaust:
		if key == "outlet" {
			return at(&item.Outlet)
		}
	case *layout.Cylinder:
		some := &scene{}
		some.cylinder(item)
		if len(some.things) == 0 {
			return solid{}, false
		}
		return some.things[0].solid, true
	}
	p := layout.PositionOf(item)
	if p == nil {
		return solid{}, false
	}
	from, to, ok := p.Corners()
	return solidOf(from, to), ok
}

func boxOf(b *layout.Box) (s solid, ok bool) {
	from, known := b.From.Get()
	to, both := b.To.Get()
	if !known || !both {
		return solid{}, false
	}
	return solidOf(from, to), true
}

// nearestPoints are the two points between which a distance lies that a report found: the
// straight one, the one in plan or the height, whichever the places give; the height over
// the foot of what a thing stands in, where none of these is it.
func nearestPoints(a, b solid, found float64) (from, to place, ok bool) {
	from, to = facing(a, b)
	is := func(v unit.Value[unit.Length]) bool {
		return found > 0 && math.Abs(float64(v.Nominal)-found) <= agrees*found
	}
	level, above := from, from
	level[0], level[1], level[2] = to[0], to[1], from[2]
	above[2] = to[2]
	switch {
	case is(box.PlanGap(a.box(), b.box())) && !is(box.Gap(a.box(), b.box())):
		return from, level, true
	case is(box.Gap(a.box(), b.box())):
		return from, to, true
	case is(box.VerticalGap(a.box(), b.box())):
		return to, place{to[0], to[1], from[2]}, true
	}
	return footHeight(a, b, found)
}

// footHeight is the height of one thing's foot over the other's.
func footHeight(a, b solid, found float64) (from, to place, ok bool) {
	if math.Abs(math.Abs(b.from[2]-a.from[2])-found) > agrees*found || found <= 0 {
		return from, to, false
	}
	high := b
	if a.from[2] > b.from[2] {
		high = a
	}
	m := high.middle()
	low := min(a.from[2], b.from[2])
	return place{m[0], m[1], low}, place{m[0], m[1], high.from[2]}, true
}

// facing are the nearest points of two solids; where they lie side by side, in the middle
// of what they have in common.
func facing(a, b solid) (p, q place) {
	for i := range p {
		switch {
		case b.from[i] > a.to[i]:
			p[i], q[i] = a.to[i], b.from[i]
		case a.from[i] > b.to[i]:
			p[i], q[i] = a.from[i], b.to[i]
		default:
			p[i] = (max(a.from[i], b.from[i]) + min(a.to[i], b.to[i])) / 2
			q[i] = p[i]
		}
	}
	return p, q
}

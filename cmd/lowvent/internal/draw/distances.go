package draw

import (
	"cmp"
	"slices"
	"strings"

	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
	"lowvent.example/schema/unit"
)

// distance is a distance of which a finding says that it is not what is needed.
type distance struct {
	a, b    solid // the two things
	how     measure
	found   float64
	says    []saying // what one or more findings say of it
	between string   // for people: "cylinder B and ignition source side-marker"
	short   string   // for the drawing: "cylinder B to side-marker"
}

// saying is what one finding says of a distance.
type saying struct {
	word           report.Signal
	check, subject string
	found, needed  string // in both systems of units
	metres         float64
	atMost         bool
}

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
		if e.how == d.how && (e.a == d.a && e.b == d.b || e.a == d.b && e.b == d.a) {
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
	how, ok := measureOf(ends[0].solid, ends[1].solid, found)
	if !ok {
		return nil
	}
	says := saying{word: g.Word, check: g.Check, subject: g.Subject, found: p.Found.Text, needed: p.Needed.Text, metres: found, atMost: found > *p.Needed.SI}
	d := &distance{a: ends[0].solid, b: ends[1].solid, how: how, found: found, says: []saying{says},
		between: ends[0].item.Label() + " and " + ends[1].item.Label(), short: shortName(ends[0].item) + " to " + shortName(ends[1].item)}
	if how == overFoot {
		low, high := ends[0].item, ends[1].item
		if d.a.from[2] > d.b.from[2] {
			low, high = high, low
		}
		d.between, d.short = high.Label()+" over the floor of "+low.Label(), shortName(high)+" over the floor of "+shortName(low)
	}
	return d
}

// read is a thing by the place of it that an answer rests on.
type read struct {
	item    layout.Item
	pointer string
	solid   solid
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
			all = append(all, read{item, owner, s})
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

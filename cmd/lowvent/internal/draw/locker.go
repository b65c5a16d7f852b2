package draw

import (
	"fmt"
	"slices"
	"strings"

	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

// gutter is the room at each side of a locker's two views, for labels, in mm.
const gutter = 16.0

// Locker draws a locker from above and in section, side by side, to scale: what stands in
// it, where its vents are and where they end, and what of it is not known. It is nil when
// the file does not state the locker's box.
func Locker(l *layout.Layout, f *report.FileReport, k *layout.Locker) *Drawing {
	all := sceneOf(l)
	own := all.byItem[k.Spot().Pointer()]
	if own == nil {
		return nil
	}
	s := all.lockerScene(k, own)
	wall := sectionFrom(k, own.solid)
	d := &Drawing{ID: "locker-" + k.ID(), Title: "Locker " + k.ID() + ": plan and section, seen from the " + string(wall)}
	notes := append(s.warnings(), lockerFacts(k, f)...)
	if none := notDrawn(s.unplaced); none != "" {
		notes = append(notes, none)
	}
	left, right := frameLocker(d, s, own, wall, notes)
	found := within(append(edgesOf(k, own.solid, f), distancesOf(l, f)...), left.bounds)
	for _, w := range []*work{left, right} {
		other := right
		if w == right {
			other = left
		}
		w.shown = belonging(found, w.view, other.view)
		w.shown = w.shown[:min(len(w.shown), 5)]
		w.lockerView(k, own, f)
	}
	left.below()
	left.shown = append(left.shown, right.shown...)
	left.balloons = merged(left.balloons, right.balloons)
	left.omitted = append(left.omitted, right.omitted...)
	left.dangerous = mergedWords(left.dangerous, right.dangerous)
	left.lockerKey(k)
	rounded(d.Marks)
	d.Alt = left.alt(fmt.Sprintf("Locker %s from above and, beside it, in section as seen from the %s", k.ID(), wall)) + " " + strings.Join(strings.Fields(strings.Join(lockerFacts(k, f), " ")), " ")
	return d
}

// merged joins two lists of things without doubles.
func merged(a, b []*thing) []*thing {
	for _, t := range b {
		if !slices.Contains(a, t) {
			a = append(a, t)
		}
	}
	return a
}

// mergedWords joins two lists of words without doubles.
func mergedWords(a, b []string) []string {
	for _, word := range b {
		if !slices.Contains(a, word) {
			a = append(a, word)
		}
	}
	return a
}

// lockerScene is the part of a scene that stands in a locker or belongs to it.
func (s *scene) lockerScene(k *layout.Locker, own *thing) *scene {
	in := &scene{byItem: s.byItem, zones: s.zones}
	for _, t := range s.things {
		switch {
		case t == own, belongsTo(t.item, k):
			in.things = append(in.things, t)
		case t.sort == isLine && slices.ContainsFunc(t.way, own.solid.holds):
			in.things = append(in.things, t)
		}
	}
	for _, item := range s.unplaced {
		if belongsTo(item, k) {
			in.unplaced = append(in.unplaced, item)
		}
	}
	number := len(s.things)
	for _, p := range k.Penetrations.All() {
		number++
		in.pointed(&thing{item: p, sort: isPenetration, number: number, means: suffix(stated("gland", &p.Gland))}, &p.At)
	}
	return in
}

// belongsTo tells whether the file says that a thing stands in a locker or is part of it.
func belongsTo(item layout.Item, k *layout.Locker) bool {
	switch item := item.(type) {
	case *layout.LockerVent:
		return k.Vents.Get(item.ID()) == item
	case *layout.Opening:
		of, _ := item.Of.Get()
		return of == k.Ref()
	}
	at := layout.PlaceOf(item)
	if at == nil {
		return false
	}
	in, _ := at.Get()
	return in == k.Ref()
}

// holds tells whether a place lies in a solid.
func (s solid) holds(p place) bool {
	for i := range p {
		if p[i] < s.from[i]-1e-9 || p[i] > s.to[i]+1e-9 {
			return false
		}
	}
	return true
}

// grown is the solid with a margin all round, in m.
func (s solid) grown(by float64) solid {
	for i := range s.from {
		s.from[i], s.to[i] = s.from[i]-by, s.to[i]+by
	}
	return s
}

// within are the distances of which both ends lie in a solid.
func within(all []*distance, s solid) []*distance {
	return slices.DeleteFunc(all, func(d *distance) bool { from, to := d.ends(0.5); return !s.holds(from) || !s.holds(to) })
}

// sectionFrom chooses from where the section is seen: from the door's side; from a long
// side where the door is a lid or not known.
func sectionFrom(k *layout.Locker, box solid) layout.Wall {
	wall, known := k.Door.Wall.Get()
	if known && wall != layout.WallCeiling && wall != layout.WallFloor {
		return wall
	}
	if box.size(0) < box.size(1) {
		return layout.WallRear
	}
	return layout.WallRight
}

// frameLocker chooses the scale and sets out the two views.
func frameLocker(d *Drawing, s *scene, own *thing, wall layout.Wall, notes []string) (left, right *work) {
	left = &work{d: d, scene: s, view: fromAbove(), bounds: own.solid.nearby(s)}
	right = &work{d: d, scene: s, wall: wall, view: fromSide(wall), bounds: left.bounds}
	size := func(w *work, scale float64) (float64, float64) {
		return w.bounds.size(w.view.right.of) * scale, w.bounds.size(w.view.up.of) * scale
	}
	fixed := func(across float64) float64 { return barHigh + noteHigh*float64(len(wrapped(notes, across-4))) + 3 }
	scale, on := fitting(func(scale, across float64) (float64, float64) {
		w1, h1 := size(left, scale)
		w2, h2 := size(right, scale)
		return w1 + w2 + 4*gutter, max(h1, h2) + 2*lockerBand + fixed(across)
	})
	w1, h1 := size(left, scale)
	w2, h2 := size(right, scale)
	d.Scale, d.Width = scale, on.wide
	bottom := max(h1, h2) + 2*lockerBand
	d.Height = hundredth(bottom + fixed(on.wide))
	left.notes = wrapped(notes, on.wide-4)
	spare := (on.wide - w1 - w2) / 4
	middle := 2*spare + w1
	left.set(Point{spare + w1/2, bottom / 2}, Rectangle{0.5, 0.5, middle, bottom})
	right.set(Point{middle + spare + w2/2, bottom / 2}, Rectangle{middle + 0.5, 0.5, on.wide - 0.5, bottom})
	return left, right
}

// lockerBand is the room above and below a locker's views, in mm.
const lockerBand = 24.0

// set puts the middle of a view's bounds onto a point of the paper.
func (w *work) set(middle Point, area Rectangle) {
	w.view.scale, w.view.zero = w.d.Scale, Point{}
	c := w.view.rect(w.bounds).centre()
	w.view.zero = Point{middle.X - c.X, middle.Y - c.Y}
	w.body, w.field.area = w.view.rect(w.bounds), area
}

// nearby is the locker's box with what of its vents and holes lies close to it.
func (s solid) nearby(sc *scene) solid {
	reach := s.grown(0.25)
	all := s
	for _, t := range sc.things {
		if t.sort == isLine {
			continue
		}
		for _, p := range append([]place{t.solid.from, t.solid.to}, t.outlets()...) {
			if reach.holds(p) {
				all = all.with(spot(p))
			}
		}
	}
	return all
}

func (t *thing) outlets() []place {
	var all []place
	for _, e := range t.ends {
		all = append(all, e.at)
	}
	return all
}

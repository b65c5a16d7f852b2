package draw

import (
	"cmp"
	"fmt"
	"slices"

	"lowvent.example/schema/layout"
)

// names labels everything: what a fitter looks for first with its name, the rest with
// names where there is room and numbers in balloons where there is not.
func (w *work) names() {
	all := slices.DeleteFunc(slices.Clone(w.scene.things), func(t *thing) bool { return t.sort == isLine })
	slices.SortStableFunc(all, func(a, b *thing) int { return cmp.Compare(rank(a.sort), rank(b.sort)) })
	if more := len(all) - mostLabels; more > 0 {
		all = all[:mostLabels]
		w.omitted = append(w.omitted, fmt.Sprintf("%d more things are drawn and not named.", more))
	}
	for _, t := range all {
		switch {
		case t.sort == isSpace:
			w.nameSpace(t)
		case len(all) <= few || rank(t.sort) < 2:
			if !w.name(t) {
				w.balloon(t)
			}
		default:
			w.balloon(t)
		}
	}
}

// few is how many things can all have their names beside them.
const few = 24

// rank is in which order things are labelled.
func rank(s sort) int {
	switch s {
	case isSpace, isLocker, isAppliance:
		return 0
	case isCylinder, isRegulator, isStove:
		return 1
	case isPenetration, isShutoff:
		return 2
	case isLockerVent, isFlue, isChangeover, isFillPoint, isOutlet, isOpenEnd:
		return 2
	case isIgnition, isOpening, isFixedVent, isExhaust, isStored:
		return 3
	}
	return 4
}

// aim is the rectangle that a thing's label has to stand by.
func (w *work) aim(t *thing) Rectangle {
	r := w.view.rect(t.solid)
	if t.point || max(r.wide(), r.high()) < 2*symbolReach {
		return around(r.centre(), 2.4, 2.4)
	}
	return r
}

// nameSpace writes a space's name and use into it.
func (w *work) nameSpace(t *thing) {
	name := &Text{Size: large, Bold: true, Anchor: Middle, Content: t.item.ID()}
	use := &Text{Size: small, Anchor: Middle, Content: t.word}
	wide, high := max(name.Wide(), use.Wide())+0.6, large+small+0.6
	of := w.view.rect(t.solid)
	turned := of.wide() < wide+1 && of.high() > wide+1 && of.wide() > high+1
	if turned {
		name.Turn, use.Turn, wide, high = -90, -90, high, wide
	}
	want := wanted{of: of, wide: wide, high: high, inside: true}
	r, cost, ok := w.field.place(want)
	if !ok || cost > 40 {
		want.far = 30
		r, cost, ok = w.field.place(want)
	}
	if !ok || cost > 40 {
		w.balloon(t)
		return
	}
	name.At, use.At = Point{r.centre().X, r.Top + 0.85*large}, Point{r.centre().X, r.Bottom - 0.3*small}
	if turned {
		name.At, use.At = Point{r.Left + 0.85*large, r.centre().Y}, Point{r.Right - 0.3*small, r.centre().Y}
	}
	w.put(r, t, want, name, use)
}

// name writes a thing's name beside it, if that can be done without harm.
func (w *work) name(t *thing) bool {
	text := &Text{Size: normal, Anchor: Middle, Content: shortName(t.item)}
	if rank(t.sort) == 0 {
		text.Bold = true
	}
	want := wanted{of: w.aim(t), wide: text.Wide() + 0.8, high: 1.15 * normal, inside: t.sort == isAppliance || t.sort == isLocker || t.sort == isCylinder, far: 40, round: w.round(t)}
	r, cost, ok := w.field.place(want)
	if !ok || cost > 45 {
		return false
	}
	text.At = Point{r.centre().X, r.Bottom - 0.27*normal}
	w.put(r, t, want, text)
	return true
}

// shortName names a thing in two words at most: "cylinder A", "bandsaw".
func shortName(item layout.Item) string {
	switch item.(type) {
	case *layout.Cylinder, *layout.Regulator, *layout.Locker, *layout.LockerVent, *layout.FixedVent, *layout.Flue, *layout.Alarm, *layout.Changeover, *layout.Stored, *layout.Extinguisher, *layout.Penetration, *layout.Shutoff:
		return item.Label()
	}
	return item.ID()
}

// balloonReach is the radius of a balloon, in mm.
const balloonReach = 2.15

// balloon writes a thing's number beside it.
func (w *work) balloon(t *thing) {
	text := &Text{Size: small, Anchor: Middle, Content: fmt.Sprint(t.number)}
	want := wanted{of: w.aim(t), wide: 2 * balloonReach, high: 2 * balloonReach, inside: true, far: 90, round: w.round(t)}
	if t.number > 99 {
		want.wide += 1
	}
	r, _, ok := w.field.place(want)
	if !ok {
		w.omitted = append(w.omitted, "No room for the number of "+t.item.Label()+".")
		return
	}
	text.At = r.centre().plus(0, 0.35*small)
	w.put(r, t, want, &Circle{Centre: r.centre(), Radius: want.wide / 2, Pen: Pen{Width: thin}, Fill: White}, text)
	w.balloons = append(w.balloons, t)
}

// put draws a label, with a leader where it stands apart from what it names.
func (w *work) put(r Rectangle, t *thing, want wanted, marks ...Mark) {
	of, l := want.of, want.leader(r)
	g := &Group{Of: t.pointer(), Label: t.item.Label()}
	if l.a.to(l.b) > 1.1 {
		if _, round := marks[0].(*Circle); round {
			l.a = r.centre().toward(l.b, r.wide()/2)
		}
		g.Marks = append(g.Marks, line(Pen{Width: thin}, l.a, l.b))
		if of.wide() > 3 && of.high() > 3 {
			g.Marks = append(g.Marks, dot(l.b, 0.4))
		}
		w.field.leads = append(w.field.leads, l)
	}
	if _, round := marks[0].(*Circle); !round {
		g.Marks = append(g.Marks, r.drawn(Pen{}, White))
	}
	g.Marks = append(g.Marks, marks...)
	w.d.Marks = append(w.d.Marks, g)
	w.field.take(r)
}

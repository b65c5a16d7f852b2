package draw

import (
	"cmp"
	"fmt"
	"slices"

	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

// side is the margin to the left and right of what is drawn to scale, in mm.
const side = 5.0

// leastBand is the least height above and below it that labels are given.
const leastBand = 9.0

// work is a drawing to scale in the making.
type work struct {
	d         *Drawing
	scene     *scene
	view      view
	body      Rectangle   // what is drawn to scale, with no labels
	bounds    solid       // the same in the dwelling, for the detail of a locker
	wall      layout.Wall // from which side it is seen, in a section
	field     field
	shown     []*distance // those that are dimensioned here
	balloons  []*thing
	notes     []string // lines below the drawing
	dangerous []string // what is marked as a DANGER, and by which checks
	omitted   []string // what had no room, in sentences
	marked    bool     // the origin is on it
}

// mostShown is how many distances one drawing dimensions: more could not be read.
const mostShown = 10

// mostLabels is how many things one drawing names.
const mostLabels = 260

// compose lays out a drawing of a scene as a view shows it: finds scale and size, draws
// every thing, then labels them. The wall is the side that it is seen from, but for a plan.
// The notes are paragraphs for below the drawing.
func compose(d *Drawing, s *scene, v view, wall layout.Wall, f *report.FileReport, distances []*distance, notes []string) *work {
	w := &work{d: d, scene: s, view: v, wall: wall}
	w.shown = distances[:min(len(distances), mostShown)]
	if more := len(distances) - len(w.shown); more > 0 {
		notes = append(notes, fmt.Sprintf("%s not drawn here: the %d gravest and shortest are; the list of findings has them all.", count(more, "more distance that is not as needed is", "more distances that are not as needed are"), mostShown))
	}
	w.frame(notes)
	w.things()
	w.orient()
	w.dimensions()
	w.dangers(f)
	w.names()
	w.below()
	w.key()
	rounded(d.Marks)
	return w
}

// frame chooses the scale, and sets out the drawing's size and where in it things fall.
func (w *work) frame(notes []string) {
	all := w.scene.things[0].extent()
	for _, t := range w.scene.things {
		all = all.with(t.extent())
	}
	wide, high := all.size(w.view.right.of), all.size(w.view.up.of)
	fixed := func(across float64) float64 { return barHigh + noteHigh*float64(len(wrapped(notes, across-4))) + 3 }
	scale, on := fitting(func(scale, across float64) (float64, float64) {
		return wide*scale + 2*side, high*scale + 2*leastBand + fixed(across)
	})
	d, v := w.d, &w.view
	d.Scale, v.scale = scale, scale
	d.Width = on.wide
	w.notes = wrapped(notes, on.wide-4)
	band := min(w.wantedBand(), (on.high-fixed(on.wide)-high*scale)/2)
	d.Height = hundredth(2*band + high*scale + fixed(on.wide))
	r := v.rect(all)
	v.zero = Point{on.wide/2 - r.centre().X, band - r.Top}
	w.body = v.rect(all)
	w.field.area = Rectangle{0.5, 0.5, d.Width - 0.5, w.body.Bottom + band}
}

// wantedBand is how much room above and below its labels would like.
func (w *work) wantedBand() float64 {
	return min(60, leastBand+3+0.1*float64(len(w.scene.things))+2.6*float64(len(w.shown)))
}

// order is the things as they are drawn: what lies farther from who looks first, and
// spaces and lockers before what they hold.
func (w *work) order() []*thing {
	all := slices.Clone(w.scene.things)
	slices.SortStableFunc(all, func(a, b *thing) int {
		return cmp.Compare(layer(a.sort), layer(b.sort))
	})
	return all
}

func layer(s sort) int {
	switch s {
	case isSpace:
		return 0
	case isLocker:
		return 1
	case isAppliance, isStove, isExhaust, isStored:
		return 2
	case isCombustible:
		return 3
	case isLine:
		return 4
	case isCylinder:
		return 5
	}
	return 6
}

// things draws everything, each thing as a group of its own.
func (w *work) things() {
	for _, t := range w.order() {
		hidden := slices.ContainsFunc(w.scene.things, func(c *thing) bool { return c != t && c.covers() && w.view.hides(c.solid, t.solid, t.inWall()) })
		g := t.looks(&w.view, hidden)
		w.d.Marks = append(w.d.Marks, g)
		w.know(t, g)
	}
	w.clearances()
}

// covers tells whether a thing hides what lies behind it.
func (t *thing) covers() bool { return t.sort == isSpace || t.sort == isLocker }

// inWall is how far behind the inner face of a wall a thing that is part of the wall may
// lie, in m, and next to nothing for others.
func (t *thing) inWall() float64 {
	switch t.sort {
	case isOpening, isFixedVent, isFlue:
		return 0.1
	}
	return 0.005
}

// know tells the field of labels what is drawn.
func (w *work) know(t *thing, g *Group) {
	switch t.sort {
	case isSpace, isLocker, isCombustible:
		w.field.outline(w.view.rect(t.solid))
	case isLine:
		for _, m := range g.Marks {
			if p, is := m.(*Path); is {
				w.field.drawn(p.Points...)
			}
		}
	case isAppliance, isStove, isExhaust, isStored, isCylinder:
		if w.round(t) {
			w.field.drawn(ring(w.view.rect(t.solid).centre(), t.round/2*w.view.scale)...)
		} else {
			w.field.outline(w.view.rect(t.solid))
		}
		w.field.avoid(w.view.rect(t.solid), 0.15)
	default:
		for _, r := range w.spots(t) {
			w.field.avoid(r, 3)
		}
	}
}

// round tells whether a thing is seen as a circle.
func (w *work) round(t *thing) bool { return t.round > 0 && w.view.near.of == 2 }

// spots are where a thing's symbols lie.
func (w *work) spots(t *thing) []Rectangle {
	r := w.view.rect(t.solid)
	if c := r.centre(); max(r.wide(), r.high()) < 2*symbolReach {
		r = around(c, 2*symbolReach, 2*symbolReach)
	}
	all := []Rectangle{r}
	for _, e := range t.ends {
		all = append(all, around(w.view.at(e.at), 2*symbolReach, 2*symbolReach))
	}
	return all
}

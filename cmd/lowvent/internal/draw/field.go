package draw

import (
	"cmp"
	"math"
	"slices"
)

// field is the part of a drawing in which labels find their places. What is drawn before
// is made known to it, so that labels cover as little as can be; labels never cover one
// another. The same calls in the same order give the same places.
type field struct {
	area   Rectangle
	labels []Rectangle // nothing may cover them
	things []weighed   // symbols and bodies, which are covered unwillingly
	lines  []segment
	leads  []segment // leaders, which nothing should cross
}

type weighed struct {
	Rectangle
	weight float64 // cost of a square millimetre covered
}

// mostLines bounds the lines that places are weighed against: a drawing with more is
// black anyhow.
const mostLines = 4000

// avoid makes a drawn thing known.
func (f *field) avoid(r Rectangle, weight float64) {
	if len(f.things) < mostLines {
		f.things = append(f.things, weighed{r, weight})
	}
}

// drawn makes a drawn line known.
func (f *field) drawn(points ...Point) {
	for i := 1; i < len(points) && len(f.lines) < mostLines; i++ {
		f.lines = append(f.lines, segment{points[i-1], points[i]})
	}
}

// outline makes the four sides of a rectangle known.
func (f *field) outline(r Rectangle) {
	a, b, c, d := Point{r.Left, r.Top}, Point{r.Right, r.Top}, Point{r.Right, r.Bottom}, Point{r.Left, r.Bottom}
	f.drawn(a, b, c, d, a)
}

// take marks a place as a label's own.
func (f *field) take(r Rectangle) { f.labels = append(f.labels, r.grown(labelGap)) }

// labelGap is how near labels come to one another, in mm.
const labelGap = 0.35

// wanted is a label that looks for its place.
type wanted struct {
	of         Rectangle // what it names, on paper
	wide, high float64
	inside     bool     // it may stand within what it names
	far        float64  // how far off it may stand, in mm
	round      bool     // what it names is round
	along      *segment // it names a line, and its leader may end anywhere along it
	off        weighed  // it stands within this unwillingly
	finely     bool     // it is looked for at more places
}

// place finds where the label costs least, takes it, and tells the cost; false when there
// is no place left at all.
func (f *field) place(w wanted) (r Rectangle, cost float64, found bool) {
	cost = math.Inf(1)
	for _, c := range w.candidates() {
		if c.cost >= cost || !c.Within(f.area) || f.covered(c.Rectangle) {
			continue
		}
		if all := c.cost + f.cost(c.Rectangle, &w, cost-c.cost); all < cost {
			r, cost, found = c.Rectangle, all, true
		}
	}
	return r, cost, found
}

type candidate struct {
	Rectangle
	cost float64
}

// candidates are the places about a thing, the nearest first: some directions at each of
// ever greater distances.
func (w wanted) candidates() []candidate {
	var all []candidate
	middle := w.of.centre()
	if w.inside && w.of.wide() > w.wide+0.6 && w.of.high() > w.high+0.6 {
		all = append(all, w.within()...)
	}
	ways := 24
	if w.finely {
		ways = 72
	}
	for gap := 0.7; gap <= w.far; gap = gap*1.35 + 0.6 {
		x, y := w.of.wide()/2+gap+w.wide/2, w.of.high()/2+gap+w.high/2
		for i := range ways {
			sine, cosine := math.Sincos(2 * math.Pi * float64(i) / float64(ways))
			reach := min(x/max(math.Abs(cosine), 1e-9), y/max(math.Abs(sine), 1e-9))
			all = append(all, candidate{around(middle.plus(cosine*reach, sine*reach), w.wide, w.high), gap})
		}
	}
	return all
}

// within are places inside the thing, the middle first.
func (w wanted) within() []candidate {
	var all []candidate
	const steps = 6
	x, y := (w.of.wide()-w.wide-0.6)/steps, (w.of.high()-w.high-0.6)/steps
	for i := range steps + 1 {
		for j := range steps + 1 {
			off := Point{(float64(i) - steps/2) * x, (float64(j) - steps/2) * y}
			all = append(all, candidate{around(w.of.centre().plus(off.X, off.Y), w.wide, w.high), 0.3 * math.Hypot(off.X, off.Y) / (1 + math.Hypot(w.of.wide(), w.of.high())/20)})
		}
	}
	slices.SortStableFunc(all, func(a, b candidate) int { return cmp.Compare(a.cost, b.cost) })
	return all
}

func (f *field) covered(r Rectangle) bool {
	return slices.ContainsFunc(f.labels, func(s Rectangle) bool { return r.Overlaps(s) })
}

// cost is what a label at a place covers and what its leader crosses; the reckoning ends
// where it is over what is worth knowing.
func (f *field) cost(r Rectangle, w *wanted, most float64) float64 {
	cost := w.off.weight * r.shared(w.off.Rectangle)
	for _, t := range f.things {
		if t.Rectangle == w.of {
			continue
		}
		cost += t.weight * r.shared(t.Rectangle)
	}
	for i := 0; i < len(f.lines) && cost < most; i++ {
		cost += 2 * f.lines[i].inside(r)
	}
	for i := range f.leads {
		cost += 8 * f.leads[i].inside(r)
	}
	if cost >= most {
		return cost
	}
	return cost + f.leaderCost(w.leader(r))
}

// leaderCost is what a leader crosses: labels hardly ever, other leaders seldom.
func (f *field) leaderCost(l segment) float64 {
	cost := 0.0
	for i := range f.labels {
		if l.inside(f.labels[i]) > 0 {
			cost += 60
		}
	}
	for i := range f.leads {
		if l.crosses(f.leads[i]) {
			cost += 25
		}
	}
	for i := range f.lines {
		if l.crosses(f.lines[i]) {
			cost += 0.15
		}
	}
	return cost
}

package draw

import (
	"slices"

	"lowvent.example/schema/layout"
)

// zones is the pressure that can stand in each line by the way the lines are joined. It is
// worked out here for every drawing, since the word in the file is only its owner's.
type zones struct {
	layout *layout.Layout
	reach  map[node]*reach
}

// node is a thing in which gas stands; a regulator is two of them, parted from one another.
type node struct {
	ref    layout.Ref
	outlet bool
}

// reach is things and lines that are joined without a regulator between.
type reach struct {
	cylinders []*layout.Cylinder
	behind    []*layout.Regulator // their outlets are joined to it
	before    []*layout.Regulator // their inlets are
	burns     bool                // an appliance is joined to it
	reached   bool                // gas of some cylinder comes to it, by way of regulators or not
}

// zonesOf walks the lines both ways: gas does not mind which end of a line a file calls
// its beginning.
func zonesOf(l *layout.Layout) *zones {
	z := &zones{layout: l, reach: map[node]*reach{}}
	beside := map[node][]node{}
	for _, line := range l.Lines.All() {
		if a, b, known := endNodes(line); known {
			beside[a], beside[b] = append(beside[a], b), append(beside[b], a)
		}
	}
	for _, line := range l.Lines.All() {
		if a, _, known := endNodes(line); known {
			z.fill(a, beside)
		}
	}
	z.spreadThrough()
	return z
}

// endNodes are where a line begins and ends.
func endNodes(line *layout.Line) (a, b node, known bool) {
	from, knownFrom := line.From.Get()
	to, knownTo := line.To.Get()
	return node{from, from.Section() == "regulators"}, node{to, false}, knownFrom && knownTo
}

// fill finds everything that is joined to a node, unless it has been found before.
func (z *zones) fill(start node, beside map[node][]node) {
	if z.reach[start] != nil {
		return
	}
	r := &reach{}
	z.reach[start] = r
	for todo := []node{start}; len(todo) > 0; {
		at := todo[0]
		todo = todo[1:]
		r.take(z.layout.Find(at.ref), at.outlet)
		for _, next := range beside[at] {
			if z.reach[next] == nil {
				z.reach[next] = r
				todo = append(todo, next)
			}
		}
	}
}

// take notes what a thing does to the pressure.
func (r *reach) take(thing layout.Item, outlet bool) {
	switch thing := thing.(type) {
	case *layout.Appliance:
		r.burns = true
	case *layout.Cylinder:
		r.cylinders, r.reached = append(r.cylinders, thing), true
	case *layout.Regulator:
		if outlet {
			r.behind = append(r.behind, thing)
			return
		}
		r.before = append(r.before, thing)
	}
}

// spreadThrough carries on through regulators that gas comes to from a cylinder.
func (z *zones) spreadThrough() {
	for changed := true; changed; {
		changed = false
		for _, r := range z.layout.Regulators.All() {
			in, out := z.reach[node{r.Ref(), false}], z.reach[node{r.Ref(), true}]
			if in != nil && out != nil && in.reached && !out.reached {
				out.reached, changed = true, true
			}
		}
	}
}

// derived is the zone by the way things are joined, "" where gas from no cylinder is known
// to come there.
func (r *reach) derived() layout.PressureZone {
	switch {
	case r == nil || !r.reached:
		return ""
	case len(r.cylinders) > 0:
		return layout.PressureZoneHigh
	case len(r.before) > 0:
		return layout.PressureZoneMiddle
	}
	return layout.PressureZoneLow
}

// of is the zone that a line is drawn as: the worse of what the file states and what the
// way it is joined tells.
func (z *zones) of(line *layout.Line) layout.PressureZone {
	stated, _ := line.Zone.Get()
	derived := z.about(line).derived()
	if harder(derived, stated) {
		return derived
	}
	return stated
}

// about is the reach that a line belongs to.
func (z *zones) about(line *layout.Line) *reach {
	a, _, known := endNodes(line)
	if !known {
		return nil
	}
	return z.reach[a]
}

// harder tells whether one zone bears more than another; one that is not known bears least.
func harder(a, b layout.PressureZone) bool {
	order := []layout.PressureZone{"", layout.PressureZoneLow, layout.PressureZoneMiddle, layout.PressureZoneHigh}
	return slices.Index(order, a) > slices.Index(order, b)
}

// worsened tells whether cylinder pressure can reach a line of which the file says
// otherwise: then the drawing has to warn. Where the file says nothing, it warns unless the
// line only leads up to a regulator, where nobody expects anything else.
func (z *zones) worsened(line *layout.Line) bool {
	stated, known := line.Zone.Get()
	r := z.about(line)
	if stated == layout.PressureZoneHigh || r.derived() != layout.PressureZoneHigh {
		return false
	}
	return known || r.burns || len(r.behind) > 0
}

// reachesHere is what is said of lines that cylinder pressure can reach unawares.
const reachesHere = "cylinder pressure can reach here"

// reason tells how cylinder pressure gets there: "cylinder B joins behind regulator main".
func (r *reach) reason() string {
	cylinders, verb := labels(r.cylinders), " joins behind "
	if len(r.cylinders) > 1 {
		verb = " join behind "
	}
	if len(r.behind) == 0 {
		return "no regulator stands between it and " + listed(cylinders)
	}
	return listed(cylinders) + verb + listed(labels(r.behind))
}

// labels are the names of some things, in the order of their names.
func labels[T layout.Item](items []T) []string {
	var all []string
	for _, item := range items {
		all = append(all, item.Label())
	}
	slices.Sort(all)
	return all
}

// warned are the reaches with lines of which a drawing has to warn, in the order of the
// file, and for each the lines.
func (z *zones) warned() []warned {
	var all []warned
	for _, line := range z.layout.Lines.All() {
		if !z.worsened(line) {
			continue
		}
		r := z.about(line)
		i := slices.IndexFunc(all, func(w warned) bool { return w.reach == r })
		if i < 0 {
			all, i = append(all, warned{reach: r}), len(all)
		}
		all[i].lines = append(all[i].lines, line)
	}
	return all
}

type warned struct {
	reach *reach
	lines []*layout.Line
}

// sentence warns of lines in words.
func (w warned) sentence() string {
	var ids []string
	for _, line := range w.lines {
		ids = append(ids, line.ID())
	}
	noun := "lines "
	if len(ids) == 1 {
		noun = "line "
	}
	return "DANGER " + noun + listed(ids) + ": " + reachesHere + ", " + w.reach.reason() + ", whatever the file states."
}

// Unregulated lists the appliances that gas at cylinder pressure can reach by the lines of
// the file, without going through a regulator, in the order of the file.
func Unregulated(l *layout.Layout) []layout.Ref {
	z := zonesOf(l)
	var all []layout.Ref
	for _, a := range l.Appliances.All() {
		if z.reach[node{a.Ref(), false}].derived() == layout.PressureZoneHigh {
			all = append(all, a.Ref())
		}
	}
	return all
}

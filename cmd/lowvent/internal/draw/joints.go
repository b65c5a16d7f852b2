package draw

import (
	"cmp"
	"slices"

	"lowvent.example/schema/layout"
)

// NumberedJoint is a joint with the number that it has on the drawings and in the list.
type NumberedJoint struct {
	Number int
	Line   *layout.Line
	Joint  *layout.Joint
}

// Joints numbers every joint of the layout, from the cylinders on in the direction of
// the gas; those of lines that no cylinder reaches come last.
func Joints(l *layout.Layout) []NumberedJoint {
	var all []NumberedJoint
	for _, line := range inFlow(l) {
		for _, j := range alongLine(line) {
			all = append(all, NumberedJoint{Number: len(all) + 1, Line: line, Joint: j})
		}
	}
	return all
}

// inFlow lists the lines in the direction of the gas, each before those that it feeds.
func inFlow(l *layout.Layout) []*layout.Line {
	var order []*layout.Line
	seen := map[*layout.Line]bool{}
	var follow func(layout.Ref)
	follow = func(at layout.Ref) {
		if slices.ContainsFunc(l.FedBy(at), func(line *layout.Line) bool { return !seen[line] }) {
			return // the others that meet here come first
		}
		for _, line := range l.LeadsTo(at) {
			seen[line] = true
			order = append(order, line)
			to, _ := line.To.Get()
			follow(to)
		}
	}
	for _, c := range l.Cylinders.All() {
		follow(c.Ref())
	}
	for _, line := range l.Lines.All() {
		if !seen[line] {
			seen[line] = true
			order = append(order, line)
			to, _ := line.To.Get()
			follow(to)
		}
	}
	return order
}

// alongLine lists a line's joints by how far along its route they lie, or by their names
// where the file does not tell.
func alongLine(line *layout.Line) []*layout.Joint {
	joints := slices.Clone(line.Joints.All())
	far := map[*layout.Joint]float64{}
	for _, j := range joints {
		d, known := alongRoute(line, &j.At)
		if !known {
			return joints
		}
		far[j] = d
	}
	slices.SortStableFunc(joints, func(a, b *layout.Joint) int { return cmp.Compare(far[a], far[b]) })
	return joints
}

// alongRoute is how far along a line's route the nearest place to a point lies, in m.
func alongRoute(line *layout.Line, at *layout.Given[layout.Point]) (float64, bool) {
	p, known := at.Get()
	route, drawn := line.Route.Get()
	if !known || !drawn || len(route) == 0 {
		return 0, false
	}
	best, far, walked := -1.0, 0.0, 0.0
	for i := range route {
		from, to := route[max(i-1, 0)], route[i]
		share, off, long := nearest(placeAt(from), placeAt(to), placeAt(p))
		if best < 0 || off < best {
			best, far = off, walked+share*long
		}
		walked += long
	}
	return far, true
}

package draw

import "slices"

// untangle mends what comes of placing one block after the other: each is tried at another
// place, and each two in one another's, until nothing gets better.
func (w *work) untangle(all []*dimensioned) {
	for range 4 {
		before := tangle(all)
		for i, x := range all {
			w.again(x, all)
			for _, y := range all[:i] {
				w.swap(x, y, all)
			}
		}
		if tangle(all) >= before-0.5 {
			break
		}
	}
	w.leadsOf(all, nil)
}

// tangle is how bad the leaders of blocks are: their length, each crossing of two, and each
// block that one passes over.
func tangle(all []*dimensioned) float64 {
	total := 0.0
	for _, x := range all {
		l := x.want.leader(x.place)
		total += l.a.to(l.b)
		for _, y := range all {
			if y == x {
				continue
			}
			if l.inside(y.place) > 0 {
				total += 120
			}
			if l.crosses(y.want.leader(y.place)) {
				total += 15
			}
		}
	}
	return total
}

// leadsOf makes the leaders of all blocks but one known.
func (w *work) leadsOf(all []*dimensioned, but *dimensioned) {
	w.field.leads = nil
	for _, x := range all {
		if x != but {
			w.field.leads = append(w.field.leads, x.want.leader(x.place))
		}
	}
}

// again looks for a better place for one block, now that all others have theirs.
func (w *work) again(x *dimensioned, all []*dimensioned) {
	before, was := tangle(all), x.place
	labels := w.field.labels
	w.field.labels = without(labels, x.place)
	w.leadsOf(all, x)
	if r, _, ok := w.field.place(x.want); ok {
		x.place = r
	}
	if tangle(all) >= before {
		x.place, w.field.labels = was, labels
		return
	}
	w.field.take(x.place)
}

// without is the labels but those at some places.
func without(labels []Rectangle, places ...Rectangle) []Rectangle {
	return slices.DeleteFunc(slices.Clone(labels), func(r Rectangle) bool {
		return slices.ContainsFunc(places, func(p Rectangle) bool { return p.grown(labelGap) == r })
	})
}

// swap lets two blocks change places, if that is better and nothing is covered.
func (w *work) swap(x, y *dimensioned, all []*dimensioned) {
	before, wasX, wasY := tangle(all), x.place, y.place
	rest := without(w.field.labels, wasX, wasY)
	x.place = around(wasY.centre(), wasX.wide(), wasX.high())
	y.place = around(wasX.centre(), wasY.wide(), wasY.high())
	fits := func(r Rectangle) bool { return r.Within(w.field.area) && !slices.ContainsFunc(rest, r.Overlaps) }
	if !fits(x.place) || !fits(y.place) || x.place.Overlaps(y.place) || tangle(all) >= before {
		x.place, y.place = wasX, wasY
		return
	}
	w.field.labels = append(rest, x.place.grown(labelGap), y.place.grown(labelGap))
}

package vent

import (
	"cmp"
	"slices"

	"lowvent.example/schema/check"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/unit"
	"lowvent.example/vent/box"
)

// crowd is from how many things on those that are out of reach are no longer asked one
// by one: of each sort one stands for all of it.
const crowd = 300

// sorts tells what things of one list have in common, so that all of one sort that are
// out of reach are answered alike or by the first of them.
type sorts struct {
	list  string                                     // names the list, one list a name
	of    func(layout.Item) (sort string, told bool) // the sort of a thing, if the file tells all that makes it
	first func(a, b box.Box) float64                 // negative where a stands for b
}

// gathering is a list of very many things by place and by sort.
type gathering struct {
	index    *box.Index
	boxes    []box.Box
	placed   []layout.Item    // as in boxes
	unplaced []layout.Item    // those of which coordinates do not tell where they are, or the file not of what sort
	sorts    map[string][]int // of the placed, in order
}

// withinReach leaves of very many things those that may lie within a distance of a
// place as seen from above, those whose place or sort is not told, and of each sort of
// all others the first. Fewer than a crowd are left as they are. What is left
// out is farther off than the distance at every end of every tolerance.
func withinReach[T layout.Item](s *check.Sheet, of sorts, things []T, from layout.Item, d unit.Length) []T {
	center, known := drawn(from)
	if len(things) < crowd || !known || s.Stuck() {
		return things
	}
	g := check.Once(s, "vent."+of.list, func(l *layout.Layout) *gathering { return gather(l, of, things) })
	keep := map[layout.Item]bool{}
	for _, i := range g.reps(g.index.Near(center, d)) {
		keep[g.placed[i]] = true
	}
	for _, each := range g.unplaced {
		keep[each] = true
	}
	return slices.DeleteFunc(slices.Clone(things), func(t T) bool { return !keep[t] })
}

func gather[T layout.Item](l *layout.Layout, of sorts, things []T) *gathering {
	taped := map[layout.Ref]bool{}
	for _, t := range l.TapeMeasures.All() {
		from, _ := t.From.Get()
		to, _ := t.To.Get()
		taped[from], taped[to] = true, true
	}
	g := &gathering{sorts: map[string][]int{}}
	for _, each := range things {
		b, known := drawn(each)
		sort, told := of.of(each)
		if !known || !told || taped[refOf(each)] {
			g.unplaced = append(g.unplaced, each)
			continue
		}
		g.sorts[sort] = append(g.sorts[sort], len(g.placed))
		g.placed, g.boxes = append(g.placed, each), append(g.boxes, b)
	}
	for _, members := range g.sorts {
		slices.SortStableFunc(members, func(i, j int) int { return cmp.Compare(of.first(g.boxes[i], g.boxes[j]), 0) })
	}
	g.index = box.NewIndex(g.boxes, 1)
	return g
}

// reps adds to those that are near the first of each sort that is not, in no order.
func (g *gathering) reps(near []int) []int {
	isNear := map[int]bool{}
	for _, i := range near {
		isNear[i] = true
	}
	for _, members := range g.sorts {
		if i := slices.IndexFunc(members, func(i int) bool { return !isNear[i] }); i >= 0 {
			near = append(near, members[i])
		}
	}
	return near
}

// drawn gives the box of a thing as the file draws it, past the sheet: it only helps to
// choose what is asked.
func drawn(item layout.Item) (box.Box, bool) {
	switch item := item.(type) {
	case *layout.LockerVent:
		end := &item.At
		if item.EndsAt.Known() {
			end = &item.EndsAt
		}
		p, known := end.Get()
		return boxOf(p, p), known
	case *layout.FixedVent:
		p, known := item.At.Get()
		return boxOf(p, p), known
	case *layout.Cylinder:
		if !item.Box.Present() {
			at, known := item.At.Get()
			diameter, round := item.Diameter.Get()
			height, tall := item.Height.Get()
			return standingOn(boxOf(at, at), diameter.High, height.High), known && round && tall
		}
	}
	p := layout.PositionOf(item)
	if p == nil {
		return box.Box{}, false
	}
	from, to, known := p.Corners()
	return boxOf(from, to), known
}

// lowestFirst and highestFirst order the boxes of one sort; inOrder leaves them as the
// file has them.
func lowestFirst(a, b box.Box) float64 {
	x, _ := box.LowestPoint(a)
	y, _ := box.LowestPoint(b)
	return float64(x.Low - y.Low)
}

func highestFirst(a, b box.Box) float64 {
	x, _ := box.HighestPoint(a)
	y, _ := box.HighestPoint(b)
	return float64(y.High - x.High)
}

func inOrder(box.Box, box.Box) float64 { return 0 }

// stated is a word of the file as it stands, past the sheet: it only sorts.
func stated[W ~string](g *layout.Given[W]) (word string, told bool) {
	w, told := g.Get()
	return string(w), told
}

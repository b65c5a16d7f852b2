package box

import (
	"math"
	"slices"

	"lowvent.example/schema/unit"
)

// Index finds the boxes near a place, as seen from above, without looking at all of them:
// a grid of square cells, each with the boxes that reach into it.
type Index struct {
	boxes []Box
	cell  float64
	cells map[[2]int][]int
	wide  []int // that reach into too many cells to be worth a place in each
}

// mostCells is how many cells one box may take.
const mostCells = 64

// rounding is more than the nanometre to which distances are rounded, in m: a box may
// be that much farther off than its distance says.
const rounding = 2e-9

// NewIndex puts boxes into a grid with cells of a size in m, which is best that of the
// distances that will be asked for. A size that is not above zero counts as 1 m.
func NewIndex(boxes []Box, size unit.Length) *Index {
	x := &Index{boxes: boxes, cell: float64(size), cells: map[[2]int][]int{}}
	if !(x.cell > 0) || math.IsInf(x.cell, 0) {
		x.cell = 1
	}
	for i, b := range boxes {
		from, to, few := x.reach(b, 0)
		if !few {
			x.wide = append(x.wide, i)
			continue
		}
		for u := from[0]; u <= to[0]; u++ {
			for v := from[1]; v <= to[1]; v++ {
				x.cells[[2]int{u, v}] = append(x.cells[[2]int{u, v}], i)
			}
		}
	}
	return x
}

// reach gives the corners of the cells that a box takes, with a margin around it, and
// whether they are few.
func (x *Index) reach(b Box, margin float64) (from, to [2]int, few bool) {
	cells := 1.0
	spans := b.spans()
	for i, s := range spans[:2] {
		low, high := math.Floor((s.from.low-margin)/x.cell), math.Floor((s.to.high+margin)/x.cell)
		cells *= high - low + 1
		if !(cells <= mostCells) {
			return from, to, false
		}
		from[i], to[i] = int(low), int(high)
	}
	return from, to, true
}

// Near lists the places in the index, sorted, of every box whose distance to b in plan
// may be d or less, by [PlanGap] at the least of its band. The distance is in m.
func (x *Index) Near(b Box, d unit.Length) []int {
	var near []int
	from, to, few := x.reach(b, float64(d)+rounding)
	if !few {
		return x.among(b, d, everyPlace(len(x.boxes)))
	}
	for u := from[0]; u <= to[0]; u++ {
		for v := from[1]; v <= to[1]; v++ {
			near = append(near, x.cells[[2]int{u, v}]...)
		}
	}
	near = append(near, x.wide...)
	slices.Sort(near)
	return x.among(b, d, slices.Compact(near))
}

func (x *Index) among(b Box, d unit.Length, places []int) []int {
	return slices.DeleteFunc(places, func(i int) bool { return PlanGap(b, x.boxes[i]).Low > d })
}

func everyPlace(n int) []int {
	all := make([]int, n)
	for i := range all {
		all[i] = i
	}
	return all
}

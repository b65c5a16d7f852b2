package draw

import (
	"cmp"
	"slices"
)

// margin is a note beside a drawing that belongs to a height in it.
type margin struct {
	at     float64 // where it belongs
	middle float64 // where it stands
	lines  []string
}

// spreadOut moves notes up and down until none stands on another, all of them between top
// and bottom where they fit, and each as near to where it belongs as its neighbours let it.
func spreadOut(notes []*margin, lead, top, bottom float64) {
	slices.SortStableFunc(notes, func(a, b *margin) int { return cmp.Compare(a.at, b.at) })
	edge := top
	for _, n := range notes {
		high := float64(len(n.lines))*lead + 0.4
		n.middle = max(n.at, edge+high/2)
		edge = n.middle + high/2
	}
	edge = bottom
	for _, n := range slices.Backward(notes) {
		high := float64(len(n.lines))*lead + 0.4
		n.middle = min(n.middle, edge-high/2)
		edge = n.middle - high/2
	}
}

package pdf

import (
	"math"

	"lowvent.example/cmd/lowvent/internal/paper"
)

// columns are the edges of the columns: by their shares, but none so narrow that a signal
// word has no room in it.
func (s setter) columns(t *paper.Table, st style) []float64 {
	least, all := make([]float64, len(t.Columns)), 0.0
	for i := range t.Columns {
		least[i] = narrowest
		for _, cells := range t.Rows {
			if word := cells[i].Word; word != "" {
				least[i] = max(least[i], st.signalWidth(word)+2*beside+0.1)
			}
		}
		all += least[i]
	}
	if all > s.wide {
		s.fail("the table %q has %d columns that are %.0f mm wide at the least; a page has room for %.0f mm, so it must be parted into several", t.Caption, len(t.Columns), all, s.wide)
		return nil
	}
	edges := []float64{s.left}
	for _, wide := range shared(s.wide, shares(t.Columns), least) {
		edges = append(edges, edges[len(edges)-1]+wide)
	}
	edges[len(edges)-1] = s.left + s.wide
	return edges
}

func shares(columns []paper.Column) []float64 {
	out := make([]float64, len(columns))
	for i, c := range columns {
		out[i] = 1
		if c.Share > 0 && !math.IsInf(c.Share, 0) {
			out[i] = c.Share
		}
	}
	return out
}

// shared parts a width by shares; who would get less than its least gets that, and the
// others share the rest. The leasts must not come to more than the width.
func shared(wide float64, share, least []float64) []float64 {
	out := make([]float64, len(share))
	fixed := make([]bool, len(share))
	for {
		room, all := wide, 0.0
		for i := range share {
			if fixed[i] {
				room -= least[i]
			} else {
				all += share[i]
			}
		}
		again := false
		for i := range share {
			out[i] = least[i]
			if fixed[i] {
				continue
			}
			if out[i] = room * (share[i] / all); out[i] < least[i] {
				fixed[i], again = true, true
			}
		}
		if !again {
			return out
		}
	}
}

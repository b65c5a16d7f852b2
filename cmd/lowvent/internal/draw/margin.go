package draw

import (
	"slices"
	"strings"

	"lowvent.example/cmd/lowvent/internal/letter"
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
	slices.SortStableFunc(notes, func(a, b *margin) int { return compare(a.at, b.at) })
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

// folded breaks a text into lines of at most so many mm, between words.
func folded(text string, wide, size float64) []string {
	var lines []string
	for _, word := range strings.Fields(text) {
		last := len(lines) - 1
		if last >= 0 && letter.Width(letter.Regular, lines[last]+" "+word, size) <= wide {
			lines[last] += " " + word
			continue
		}
		lines = append(lines, word)
	}
	return lines
}

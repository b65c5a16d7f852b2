package layout

import (
	"fmt"
	"slices"
	"strings"
)

// loops faults each circle of lines. What a circle feeds is not in it, and is
// not faulted.
func (l *Layout) loops(d *decoder) {
	stuck := l.stuckLines()
	walk := map[*Line]int{} // the walk on which a line was met, from 1
	for i, start := range l.Lines.All() {
		var trail []*Line
		for line := start; stuck[line] > 0; line = l.upstream(line, stuck) {
			if walk[line] == i+1 {
				d.loop(trail[slices.Index(trail, line):])
			}
			if walk[line] > 0 {
				break
			}
			walk[line] = i + 1
			trail = append(trail, line)
		}
	}
}

// stuckLines counts, for each line, the lines into its beginning to which gas
// can't come from any cylinder because they stand in a circle or after one.
// Gas comes to all others; they are taken away step by step.
func (l *Layout) stuckLines() map[*Line]int {
	waits := map[*Line]int{}
	var free []*Line
	for _, line := range l.Lines.All() {
		from, _ := line.From.Get()
		if waits[line] = len(l.feeds[from]); waits[line] == 0 {
			free = append(free, line)
		}
	}
	for len(free) > 0 {
		to, _ := free[len(free)-1].To.Get()
		free = free[:len(free)-1]
		for _, next := range l.takes[to] {
			if waits[next]--; waits[next] == 0 {
				free = append(free, next)
			}
		}
	}
	return waits
}

// upstream is the first stuck line from which the gas of a stuck line comes.
func (l *Layout) upstream(line *Line, stuck map[*Line]int) *Line {
	from, _ := line.From.Get()
	for _, feed := range l.feeds[from] {
		if stuck[feed] > 0 {
			return feed
		}
	}
	return nil
}

// loop faults a circle of lines that are given against the flow, at the line
// that comes first by name.
func (d *decoder) loop(lines []*Line) {
	slices.Reverse(lines)
	first := slices.Index(lines, slices.MinFunc(lines, byID))
	lines = slices.Concat(lines[first:], lines[:first])
	what := fmt.Sprintf("the line %q ends where it begins", lines[0].id)
	if len(lines) > 1 {
		what = "gas would run in a circle through the lines " + circle(lines)
	}
	d.beyond(head(lines[0].spot.node), what, "lines that lead from the cylinders to the appliances", `look for the line whose "from" and "to" are the wrong way round`)
}

func byID(a, b *Line) int { return strings.Compare(a.id, b.id) }

// circle names the lines in order, the first once more at the end.
func circle(lines []*Line) string {
	const most = 8
	var names []string
	for _, line := range lines[:min(most, len(lines))] {
		names = append(names, line.id)
	}
	if len(lines) > most {
		names = append(names, "…")
	}
	return strings.Join(append(names, lines[0].id), " → ")
}

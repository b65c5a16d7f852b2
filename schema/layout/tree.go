package layout

import (
	"fmt"
	"slices"
)

// FedBy returns the lines that lead to the thing, sorted by id.
func (l *Layout) FedBy(r Ref) []*Line { return l.feeds[r] }

// LeadsTo returns the lines that start at the thing, sorted by id.
func (l *Layout) LeadsTo(r Ref) []*Line { return l.takes[r] }

// joinLines builds the tree of lines and faults what is not a tree: a thing fed
// twice, a line that ends where nothing carries on, a loop. Where an end of a
// line could not be read, what seems to be missing may well be there.
func (l *Layout) joinLines(d *decoder) {
	l.feeds, l.takes = map[Ref][]*Line{}, map[Ref][]*Line{}
	whole := !d.spoiltWithin("/lines")
	for _, line := range l.Lines.All() {
		from, known := line.From.Get()
		to, both := line.To.Get()
		if !known || !both || d.things[from] == nil || d.things[to] == nil {
			whole = false
			continue
		}
		l.takes[from] = append(l.takes[from], line)
		l.feeds[to] = append(l.feeds[to], line)
	}
	for _, line := range l.Lines.All() {
		l.fedTwice(d, line)
		if whole {
			l.endsNowhere(d, line)
		}
	}
	l.loops(d)
}

// fedTwice wants one line into each thing, save where cylinders meet.
func (l *Layout) fedTwice(d *decoder, line *Line) {
	to, _ := line.To.Get()
	feeds := l.feeds[to]
	if len(feeds) < 2 || feeds[0] == line || to.Section() == "changeovers" {
		return
	}
	d.beyond(line.To.spot.node.Place(), fmt.Sprintf("%s is already fed by the line %q", to, feeds[0].id), "one line into each thing",
		"where several cylinders feed one line, list a changeover, lead their lines to it and one on from it; else one of the two lines ends elsewhere")
}

// endsNowhere wants a line onwards from everything that only passes gas on.
func (l *Layout) endsNowhere(d *decoder, line *Line) {
	to, _ := line.To.Get()
	if !slices.Contains([]string{"junctions", "changeovers", "regulators"}, to.Section()) || len(l.takes[to]) > 0 {
		return
	}
	d.beyond(line.To.spot.node.Place(), fmt.Sprintf("the line %q ends at %s, and no line carries on from there", line.id, to), fmt.Sprintf("a line with \"from\": %q", to),
		`list the line that carries on; where the pipe really ends there, lead the line to a thing in "openEnds" and say what closes it`)
}

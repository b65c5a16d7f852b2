package draw

import (
	"cmp"
	"slices"

	"lowvent.example/cmd/lowvent/internal/letter"
	"lowvent.example/schema/layout"
)

// arrange finds which things the drawing has, and the column of each: one further than
// the furthest of those that feed it.
func (s *schematic) arrange() {
	add := func(ref layout.Ref) {
		if _, known := s.column[ref]; !known {
			s.column[ref] = 0
			s.nodes = append(s.nodes, ref)
		}
	}
	for _, c := range s.layout.Cylinders.All() {
		add(c.Ref())
	}
	for _, line := range inFlow(s.layout) {
		from, _ := line.From.Get()
		to, _ := line.To.Get()
		add(from)
		add(to)
		s.column[to] = max(s.column[to], s.column[from]+1)
	}
	last := 1
	for _, c := range s.column {
		last = max(last, c)
	}
	for _, a := range s.layout.Appliances.All() {
		add(a.Ref())
	}
	for _, ref := range s.nodes {
		if len(s.layout.LeadsTo(ref)) == 0 && ref.Section() != "cylinders" {
			s.column[ref] = last
		}
	}
}

// place gives every thing its row and column: ends have rows of their own, what feeds
// several stands in their middle, and so do those that several feed.
func (s *schematic) place() {
	s.row = map[layout.Ref]float64{}
	for _, ref := range s.nodes {
		if len(s.layout.LeadsTo(ref)) == 0 && ref.Section() != "cylinders" {
			s.row[ref] = float64(s.rows)
			s.rows++
		}
	}
	for _, ref := range slices.Backward(s.nodes) {
		s.between(ref)
	}
	s.spread()
	s.widths()
	for _, ref := range s.nodes {
		s.at[ref] = Point{s.across[s.column[ref]], schematicEdge + schematicAbove + s.row[ref]*s.step()}
	}
}

// between puts a thing in the middle of those that it feeds.
func (s *schematic) between(ref layout.Ref) {
	if _, has := s.row[ref]; has {
		return
	}
	lines := s.layout.LeadsTo(ref)
	if len(lines) == 0 {
		s.row[ref] = float64(s.rows) // a cylinder that no line leaves
		s.rows++
		return
	}
	sum := 0.0
	for _, line := range lines {
		to, _ := line.To.Get()
		sum += s.row[to]
	}
	s.row[ref] = sum / float64(len(lines))
}

// spread moves things of one column apart that would stand on each other, and lets none
// rise above the first row.
func (s *schematic) spread() {
	columns := map[int][]layout.Ref{}
	for _, ref := range s.nodes {
		columns[s.column[ref]] = append(columns[s.column[ref]], ref)
	}
	lowest := 0.0
	for _, refs := range columns {
		slices.SortStableFunc(refs, func(a, b layout.Ref) int { return cmp.Compare(s.row[a], s.row[b]) })
		middle, n := 0.0, float64(len(refs))
		crowded, step := false, stepIn(refs)
		for i, ref := range refs {
			middle += s.row[ref] / n
			crowded = crowded || i > 0 && s.row[ref]-s.row[refs[i-1]] < step
		}
		top := max(0, middle-step*(n-1)/2)
		for i, ref := range refs {
			if crowded {
				s.row[ref] = top + step*float64(i)
			}
			lowest = max(lowest, s.row[ref])
		}
	}
	s.rows = int(lowest) + 1
	if lowest > float64(s.rows-1) {
		s.rows++
	}
}

// stepIn is how far the things of a column stand apart at least: the words of a cylinder
// stand over it, below those of the line of the one before.
func stepIn(refs []layout.Ref) float64 {
	if slices.ContainsFunc(refs, func(ref layout.Ref) bool { return ref.Section() == "cylinders" }) {
		return 1.3
	}
	return 1
}

// widths sets the columns so far apart that the words of the lines between them fit.
func (s *schematic) widths() {
	last := 0
	for _, ref := range s.nodes {
		last = max(last, s.column[ref])
	}
	room := make([]float64, last+1) // before each column
	for _, line := range s.layout.Lines.All() {
		from, _ := line.From.Get()
		to, _ := line.To.Get()
		if s.column[to] > s.column[from] {
			room[s.column[from]+1] = max(room[s.column[from]+1], s.wide(append(s.lineWords(line), s.warning(line)...)), s.parting(from, to))
		}
	}
	s.across = make([]float64, last+1)
	x := schematicEdge + schematicSoil - 4.0
	for i := range s.across {
		if i > 0 {
			x += room[i] + 2*schematicSoil + 2
		}
		s.across[i] = x
	}
}

func (s *schematic) wide(words []string) float64 {
	most := 0.0
	for _, w := range words {
		most = max(most, letter.Width(letter.Regular, w, schematicBody))
	}
	return most
}

// step is how far apart rows are: farther where warnings stand below the lines.
func (s *schematic) step() float64 {
	if len(s.zones.warned()) > 0 {
		return schematicStep + schematicLead
	}
	return schematicStep
}

// parting is how far apart the lines' ends must be for the words of a thing to end before
// those of the next begin, where these stand to the left of it.
func (s *schematic) parting(from, to layout.Ref) float64 {
	const apart = 1.5 // mm: not every browser sets letters as wide as they were measured
	if len(s.layout.LeadsTo(from)) != 1 || len(s.layout.LeadsTo(to)) < 2 || from.Section() == "cylinders" {
		return 0
	}
	both := s.bold(s.nodeWords(s.layout.Find(from))) + s.bold(s.nodeWords(s.layout.Find(to)))
	return both + apart - 2*(schematicBus-1) - 2*schematicSoil - 2
}

// bold is how wide words are whose first line is bold.
func (s *schematic) bold(words []string) float64 {
	return max(letter.Width(letter.Bold, words[0], schematicBody), s.wide(words))
}

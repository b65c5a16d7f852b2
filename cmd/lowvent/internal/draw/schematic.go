package draw

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"lowvent.example/cmd/lowvent/internal/letter"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

// The measures of a schematic, in mm.
const (
	schematicBody  = 2.3  // the letters
	schematicLead  = 3.1  // from line to line of letters
	schematicEdge  = 4    // round the drawing
	schematicSoil  = 6    // half of what a symbol takes across, with the air around it
	schematicBus   = 4    // from a symbol to where its lines part or meet
	schematicStep  = 21   // from row to row
	schematicAbove = 10.5 // what stands over the first row's line
)

// Schematic is the way of the gas from cylinder to flame, as one line, and not to scale:
// the pressure zones by the pattern of the line, the joints by their numbers, and the
// lengths, diameters, loads and pressures that the report has figures for. Nil when the
// layout lists nothing that gas flows from or to.
func Schematic(l *layout.Layout, f *report.FileReport) *Drawing {
	s := &schematic{layout: l, told: tellings(f), at: map[layout.Ref]Point{}, column: map[layout.Ref]int{}}
	s.arrange()
	if len(s.nodes) == 0 {
		return nil
	}
	s.place()
	s.lines()
	for _, ref := range s.nodes {
		s.symbol(ref)
	}
	return s.drawing()
}

// schematic is one drawing while it is made.
type schematic struct {
	layout *layout.Layout
	told   map[string]string // figure id and subject: its text
	nodes  []layout.Ref      // in the order of the flow
	column map[layout.Ref]int
	row    map[layout.Ref]float64
	rows   int
	across []float64 // of each column's symbols
	at     map[layout.Ref]Point
	marks  []Mark
}

// tellings is the text of every figure that has one.
func tellings(f *report.FileReport) map[string]string {
	told := map[string]string{}
	for i := range f.Figures {
		if f.Figures[i].Value != nil {
			told[f.Figures[i].ID+f.Figures[i].Subject] = f.Figures[i].Value.Text
		}
	}
	return told
}

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
		s.at[ref] = Point{s.across[s.column[ref]], schematicEdge + schematicAbove + s.row[ref]*schematicStep}
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
			room[s.column[from]+1] = max(room[s.column[from]+1], s.wide(s.lineWords(line)))
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

// lineWords is what is told of a line, the least needful last.
func (s *schematic) lineWords(line *layout.Line) []string {
	words := []string{line.ID()}
	kind, known := line.Kind.Get()
	if kind == layout.LineKindDirect {
		return append(words, "screwed together")
	}
	of := "kind not known"
	if known {
		of = strings.ReplaceAll(string(kind), "-", " ")
	}
	words = append(words, of+", "+size(line), length(line))
	if load := s.told["line.load"+line.Spot().Pointer()]; load != "" {
		words = append(words, "load "+load)
	}
	return words
}

func size(line *layout.Line) string {
	if outside, known := line.Outside.Get(); known {
		return "outside " + outside.Written
	}
	if nominal, known := line.Nominal.Get(); known {
		return "nominal " + nominal
	}
	return "size not known"
}

func length(line *layout.Line) string {
	if long, known := line.Length.Get(); known {
		return "length " + long.Written
	}
	return "length not known"
}

// drawing closes the drawing around its marks.
func (s *schematic) drawing() *Drawing {
	r, _ := Extent(s.marks)
	d := &Drawing{ID: "schematic", Title: "How the gas goes, from cylinder to flame (not to scale)", Alt: s.words(),
		Width: r.Right + schematicEdge, Height: r.Bottom + schematicEdge, Marks: s.marks, Key: schematicKey()}
	return d
}

// words tells the drawing to those who can't see it: every line with its ends.
func (s *schematic) words() string {
	var b strings.Builder
	fmt.Fprintf(&b, "A schematic of %d things and %d gas lines, left to right in the direction of the gas.", len(s.nodes), len(s.layout.Lines.All()))
	for _, line := range inFlow(s.layout) {
		from, _ := line.From.Get()
		to, _ := line.To.Get()
		zone, known := line.Zone.Get()
		pressure := "pressure zone not known"
		if known {
			pressure = string(zone) + " pressure"
		}
		fmt.Fprintf(&b, " %s leads from %s to %s, %s.", strings.Join(s.lineWords(line), ", "), s.name(from), s.name(to), pressure)
	}
	return b.String()
}

func (s *schematic) name(ref layout.Ref) string {
	if thing := s.layout.Find(ref); thing != nil {
		return thing.Label()
	}
	return string(ref)
}

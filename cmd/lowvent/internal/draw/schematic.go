package draw

import (
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
	s := &schematic{layout: l, zones: zonesOf(l), told: tellings(f), at: map[layout.Ref]Point{}, column: map[layout.Ref]int{}}
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
	zones  *zones
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

// drawing closes the drawing around its marks.
func (s *schematic) drawing() *Drawing {
	r, _ := Extent(s.marks)
	d := &Drawing{ID: "schematic", Title: "How the gas goes, from cylinder to flame (not to scale)", Alt: s.words(),
		Width: r.Right + schematicEdge, Height: r.Bottom + schematicEdge, Marks: s.marks, Key: schematicKey()}
	return d
}

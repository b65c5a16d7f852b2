// Package paper is a document of pages as its readers see it: headings, tables, blanks
// to write in and drawings. It knows nothing of gas, and nothing of HTML or PDF.
package paper

import "lowvent.example/cmd/lowvent/internal/draw"

// Document is a whole paper.
type Document struct {
	Title    string
	Subject  string // a line on what it is of
	Language string // BCP 47: "en"
	Made     string // YYYY-MM-DD: the day that it speaks of, and no clock's
	Program  string // what made it, with its version
	Foot     string // stands at the foot of every page
	Parts    []Part
	Enclosed []Enclosure
}

// Part is a bundle of pages for one kind of reader. It begins on a page of its own.
type Part struct {
	ID       string // a word for links
	Title    string
	Sections []Section
}

// Section is a heading with what stands under it.
type Section struct {
	ID      string // a word for links, the only one of its kind in the document
	Title   string
	NewPage bool // begins on a page of its own
	Blocks  []Block
}

// Enclosure is a file that travels inside the paper where its form allows it.
type Enclosure struct {
	Name  string
	About string
	Data  []byte
}

// Block is one thing that stands under a heading: a *[Heading], *[Para], *[List],
// *[Table], *[Picture], *[Box], *[Pairs] or *[Lines].
type Block interface{ block() }

// Heading is a heading below a section's.
type Heading struct {
	Text string
	Word string // a signal word that stands before it, or ""
}

// Para is a paragraph.
type Para struct {
	Text   string
	Strong bool
	Word   string // a signal word that stands before it, or ""
}

// List is a list of items.
type List struct {
	Ordered bool
	Items   []string
	Boxes   bool // each has a square to tick with a pencil
}

// Table is a table with a row of headings. Every row has a cell for each column.
type Table struct {
	Caption string
	Columns []Column
	Rows    [][]Cell
	Small   bool // set in the smaller letters
}

// Column is a column of a table.
type Column struct {
	Title string
	Share float64 // of the width; the shares need not add up to anything
	Head  bool    // its cells are the headings of their rows
}

// Cell is one cell.
type Cell struct {
	Text   string
	Word   string // a signal word that stands before the text, or ""
	Strong bool
	Blank  bool // to be written in with a pen: it keeps the height of a hand's line
}

// Picture is a drawing with its title, and its legend where it has one.
type Picture struct{ Drawing *draw.Drawing }

// Box is blocks within a frame, for what must not be overlooked.
type Box struct{ Blocks []Block }

// Pairs is labels with what belongs to them.
type Pairs struct{ Rows []Pair }

// Pair is a label and what belongs to it. An empty value with Blank is a line to write on.
type Pair struct {
	Label, Value string
	Blank        bool
}

// Lines is empty lines to write on, under a label.
type Lines struct {
	Label string
	Count int
}

func (*Heading) block() {}
func (*Para) block()    {}
func (*List) block()    {}
func (*Table) block()   {}
func (*Picture) block() {}
func (*Box) block()     {}
func (*Pairs) block()   {}
func (*Lines) block()   {}

package pdf

import "lowvent.example/cmd/lowvent/internal/draw"

// piece is one thing placed: in a row relative to the row's top and the page's left edge,
// on a page relative to the page's top left corner.
type piece struct {
	mark draw.Mark
	of   int    // which of the document's texts it is a line of, counted from 1; 0 is none of them
	alt  string // what a drawing shows, in words
}

// bar is an upright line that runs along a row.
type bar struct{ at, width float64 }

// row is the least that is moved from one page to the next: mostly one line.
type row struct {
	high     float64
	gap      float64 // above it, but not at the top of a page
	pieces   []piece
	bars     []bar        // along its height
	gapBars  []bar        // along its gap
	keep     bool         // is not parted from the row after it
	fresh    bool         // begins a page
	turned   bool         // needs a page that lies on its side
	stays    bool         // may stand on such a page, after what needs it
	head     *row         // set again above it where it begins a page
	parts    func() []row // what it falls into where it is taller than a page; nil: it does not
	bookmark *bookmark
}

// bookmark is an entry of the outline.
type bookmark struct {
	title string
	level int     // 0 is a part, 1 a section
	page  int     // counted from 0
	top   float64 // mm from the page's top
}

// hairline, line and stroke are the widths of rules, in mm.
const (
	hairline = 0.15
	line     = 0.25
	stroke   = 0.4
)

func rule(x1, y1, x2, y2, width float64) piece {
	return piece{mark: &draw.Path{Points: []draw.Point{{X: x1, Y: y1}, {X: x2, Y: y2}}, Pen: draw.Pen{Width: width}}}
}

func rectangle(r draw.Rectangle, fill draw.Ink, width float64) piece {
	corners := []draw.Point{{X: r.Left, Y: r.Top}, {X: r.Right, Y: r.Top}, {X: r.Right, Y: r.Bottom}, {X: r.Left, Y: r.Bottom}}
	return piece{mark: &draw.Path{Points: corners, Closed: true, Fill: fill, Pen: draw.Pen{Width: width}}}
}

// moved is the pieces at another place.
func moved(pieces []piece, x, y float64) []piece {
	out := make([]piece, len(pieces))
	for i, p := range pieces {
		p.mark = transformed(p.mark, x, y, 1)
		out[i] = p
	}
	return out
}

// transformed is a mark made larger by a factor, then moved.
func transformed(m draw.Mark, x, y, factor float64) draw.Mark {
	at := func(p draw.Point) draw.Point { return draw.Point{X: x + p.X*factor, Y: y + p.Y*factor} }
	switch m := m.(type) {
	case *draw.Path:
		c := *m
		c.Pen.Width *= factor
		c.Points = make([]draw.Point, len(m.Points))
		for i, p := range m.Points {
			c.Points[i] = at(p)
		}
		return &c
	case *draw.Circle:
		c := *m
		c.Centre, c.Radius = at(m.Centre), m.Radius*factor
		c.Pen.Width *= factor
		return &c
	case *draw.Text:
		c := *m
		c.At, c.Size = at(m.At), m.Size*factor
		return &c
	case *draw.Group:
		return &draw.Group{Of: m.Of, Label: m.Label, Marks: transformedAll(m.Marks, x, y, factor)}
	}
	return m
}

func transformedAll(marks []draw.Mark, x, y, factor float64) []draw.Mark {
	out := make([]draw.Mark, len(marks))
	for i, m := range marks {
		out[i] = transformed(m, x, y, factor)
	}
	return out
}

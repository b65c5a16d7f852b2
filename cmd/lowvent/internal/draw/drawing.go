// Package draw makes the drawings of an installation: what lies where, to scale, and
// how the gas goes. A drawing is lines and letters in millimetres on paper; whoever
// writes it into HTML or PDF adds nothing and leaves nothing out.
package draw

// Point is a place on the drawing, in mm: X to the right and Y down from its top left corner.
type Point struct{ X, Y float64 }

// Drawing is one drawing, in mm on paper.
type Drawing struct {
	ID     string // a word for links and file names: "plan"
	Title  string
	Alt    string  // what it shows, in words, for those who can't see it
	Width  float64 // mm; no mark goes beyond it
	Height float64
	Scale  float64 // mm on paper for a metre of the dwelling; 0 where it is not to scale
	Marks  []Mark
	Key    []Explained // what its symbols and lines mean
	Spans  []Span      // the distances that are dimensioned in it
}

// Span is a distance that a drawing shows. On a drawing to scale the points lie so many
// millimetres apart as Metres and the scale say.
type Span struct {
	From, To Point
	Metres   float64
	Text     string
	Check    string // the finding that speaks of it, or ""
	Subject  string // JSON Pointer
}

// Explained is one line of a legend: a small drawing of the symbol, and its meaning.
type Explained struct {
	Marks []Mark // within 12 mm by 6 mm
	Means string
}

// Mark is one thing drawn: a *[Path], *[Circle], *[Text] or *[Group].
type Mark interface{ mark() }

// Path is a line through points, or an area when it is closed.
type Path struct {
	Points []Point
	Closed bool
	Pen    Pen
	Fill   Ink
}

// Circle is drawn around a point.
type Circle struct {
	Centre Point
	Radius float64
	Pen    Pen
	Fill   Ink
}

// Text is one line of letters.
type Text struct {
	At      Point // on the base line
	Size    float64
	Anchor  Anchor
	Turn    float64 // degrees, clockwise around At
	Bold    bool
	Ink     Ink // None is black
	Content string
}

// Group is the marks of one thing of the layout.
type Group struct {
	Of    string // JSON Pointer: "/lockers/skirt"
	Label string // for people: "locker skirt"
	Marks []Mark
}

func (*Path) mark()   {}
func (*Circle) mark() {}
func (*Text) mark()   {}
func (*Group) mark()  {}

// Anchor is which part of a text stands at its place.
type Anchor int

// The anchors.
const (
	Start Anchor = iota
	Middle
	End
)

// Pen is how a line is drawn; one of no width is not drawn.
type Pen struct {
	Width float64 // mm
	Dash  Dash
	Ink   Ink // None is black
}

// Dash is a line's pattern. Meaning hangs on patterns and never on colour.
type Dash int

// The patterns.
const (
	Solid Dash = iota
	Dashed
	Dotted
	DashDot
	LongDash
)

// Lengths is the pattern as mm drawn, mm left out, and so on; none for a solid line.
func (d Dash) Lengths() []float64 {
	return [...][]float64{Solid: nil, Dashed: {2, 1.2}, Dotted: {0.4, 0.9}, DashDot: {3, 0.9, 0.4, 0.9}, LongDash: {5, 1.5}}[d]
}

// Ink is a colour. Drawings are black, grey and white; the others are those of the
// signal words (ANSI Z535.1) and are used beside a signal word only.
type Ink int

// The inks.
const (
	None Ink = iota
	Black
	Grey // dark enough to read: 7:1 on white
	Pale // for areas below what is read
	White
	Red
	Orange
	Yellow
	Blue
)

// RGB is the ink for screens and paper, 0 to 255 each.
func (i Ink) RGB() (red, green, blue uint8) {
	c := [...][3]uint8{None: {0, 0, 0}, Black: {0, 0, 0}, Grey: {84, 84, 84}, Pale: {228, 228, 228}, White: {255, 255, 255},
		Red: {200, 16, 46}, Orange: {255, 130, 0}, Yellow: {255, 209, 0}, Blue: {0, 94, 184}}[i]
	return c[0], c[1], c[2]
}

// Package svg writes a drawing as SVG that stands inside an HTML page: true to size in
// millimetres, with words for those who can't see it, and with its distances as data, so
// that a test can measure whether it is to scale.
package svg

import (
	"fmt"
	"io"

	"lowvent.example/cmd/lowvent/internal/draw"
	"lowvent.example/cmd/lowvent/internal/render/markup"
)

// The room for one symbol of a legend, in mm.
const (
	keyWide = 12
	keyHigh = 6
)

// Write writes a drawing as an svg element. Letters are pressed into the width that they
// were measured with, so that boxes hold them whatever font the reader has. Every span
// becomes a line that is not painted, with its metres, check and subject beside it. The
// error is that of the writer, or tells of a coordinate that is no number: then nothing
// is written.
func Write(w io.Writer, d *draw.Drawing) error {
	title, desc := markup.ID("drawing", d.ID, "title"), markup.ID("drawing", d.ID, "desc")
	var p painter
	p.sheet(d.Width, d.Height, "role", "img", "aria-labelledby", title+" "+desc, "data-scale", p.scale(d.Scale))
	p.Element("title", d.Title, "id", title)
	p.Element("desc", d.Alt, "id", desc)
	p.Line()
	p.marks(d.Marks)
	for i := range d.Spans {
		p.span(&d.Spans[i])
	}
	p.Close()
	return p.finish(w, d.ID)
}

// Key writes the symbol of one line of a legend. Its meaning stands beside it, so it is
// kept from those who have the page read to them. The error is as that of [Write].
func Key(w io.Writer, e *draw.Explained) error {
	var p painter
	p.sheet(keyWide, keyHigh, "class", "key", "aria-hidden", "true")
	p.marks(e.Marks)
	p.Close()
	return p.finish(w, e.Means)
}

// sheet begins an svg element whose unit is the millimetre.
func (p *painter) sheet(wide, high float64, attributes ...string) {
	p.Open("svg", append([]string{
		"viewBox", "0 0 " + p.number(wide) + " " + p.number(high),
		"width", p.number(wide) + "mm", "height", p.number(high) + "mm",
		"xml:space", "preserve", "stroke-linejoin", "round"}, attributes...)...)
}

// scale is empty for a drawing that is not to scale.
func (p *painter) scale(scale float64) string {
	if scale == 0 {
		return ""
	}
	return p.number(scale)
}

// span writes a distance that tests measure and that nobody sees.
func (p *painter) span(s *draw.Span) {
	p.Empty("line", "class", "span", "stroke", "none", "fill", "none",
		"x1", p.number(s.From.X), "y1", p.number(s.From.Y), "x2", p.number(s.To.X), "y2", p.number(s.To.Y),
		"data-metres", p.exact(s.Metres), "data-text", s.Text, "data-check", s.Check, "data-subject", s.Subject)
	p.Line()
}

// finish writes what was painted, unless a number in it was none.
func (p *painter) finish(w io.Writer, of string) error {
	if p.bad {
		return fmt.Errorf("drawing %q: a place, a size or a distance is no finite number; whoever drew it has divided by zero", of)
	}
	_, err := p.WriteTo(w)
	return err
}

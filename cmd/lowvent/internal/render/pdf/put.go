package pdf

import (
	"io"
	"slices"
	"time"

	"codeberg.org/go-pdf/fpdf"

	"lowvent.example/cmd/lowvent/internal/draw"
	"lowvent.example/cmd/lowvent/internal/letter"
	"lowvent.example/cmd/lowvent/internal/paper"
)

// put writes the pages with the library. The outline, the enclosures and the settings for
// the reader are left to finish.
func put(w io.Writer, d *paper.Document, made time.Time, pages []*page) error {
	pdf := fpdf.New("P", "mm", "A4", "")
	pdf.SetCatalogSort(true)
	pdf.SetCreationDate(made)
	pdf.SetModificationDate(made)
	pdf.SetTitle(d.Title, true)
	pdf.SetSubject(d.Subject, true)
	pdf.SetCreator(d.Program, true)
	pdf.SetProducer("codeberg.org/go-pdf/fpdf", true)
	pdf.SetAutoPageBreak(false, 0)
	// The library writes into the fonts that it is given.
	pdf.AddUTF8FontFromBytes(letter.Family, "", slices.Clone(letter.Bytes(letter.Regular)))
	pdf.AddUTF8FontFromBytes(letter.Family, "B", slices.Clone(letter.Bytes(letter.Bold)))
	for _, g := range pages {
		pdf.AddPageFormat("P", fpdf.SizeType{Wd: g.wide, Ht: g.high})
		hand := &plotter{pdf: pdf}
		for _, p := range g.pieces {
			hand.piece(p)
		}
	}
	return pdf.Output(w)
}

// plotter draws marks on a page. It remembers what it has told the library, so that the
// same is not written again for every mark.
type plotter struct {
	pdf  *fpdf.Fpdf
	face string
	size float64
	fill draw.Ink
	pen  draw.Pen
}

// piece draws one piece; a drawing carries its words for those who can't see it.
func (h *plotter) piece(p piece) {
	if p.alt == "" {
		h.mark(p.mark)
		return
	}
	h.pdf.RawWriteStr("/Span <</Alt " + textString(p.alt) + ">> BDC")
	h.mark(p.mark)
	h.pdf.RawWriteStr("EMC")
}

func (h *plotter) mark(m draw.Mark) {
	switch m := m.(type) {
	case *draw.Path:
		h.path(m)
	case *draw.Circle:
		if style := h.set(m.Pen, m.Fill); style != "" {
			h.pdf.Circle(m.Centre.X, m.Centre.Y, m.Radius, style)
		}
	case *draw.Text:
		h.text(m)
	case *draw.Group:
		for _, inner := range m.Marks {
			h.mark(inner)
		}
	}
}

func (h *plotter) path(p *draw.Path) {
	style := h.set(p.Pen, p.Fill)
	if style == "" || len(p.Points) < 2 {
		return
	}
	h.pdf.MoveTo(p.Points[0].X, p.Points[0].Y)
	for _, q := range p.Points[1:] {
		h.pdf.LineTo(q.X, q.Y)
	}
	if p.Closed {
		h.pdf.ClosePath()
	}
	h.pdf.DrawPath(style)
}

// set makes pen and ink ready, and tells how the library calls what they do: to draw, to
// fill, both or nothing.
func (h *plotter) set(pen draw.Pen, fill draw.Ink) string {
	style := ""
	if fill != draw.None {
		style = "F"
		if fill != h.fill {
			r, g, b := fill.RGB()
			h.pdf.SetFillColor(int(r), int(g), int(b))
			h.fill = fill
		}
	}
	if pen.Width > 0 {
		style += "D"
		if pen != h.pen {
			r, g, b := pen.Ink.RGB()
			h.pdf.SetDrawColor(int(r), int(g), int(b))
			h.pdf.SetLineWidth(pen.Width)
			h.pdf.SetDashPattern(pen.Dash.Lengths(), 0)
			h.pen = pen
		}
	}
	return style
}

func (h *plotter) text(t *draw.Text) {
	words := letter.Printable(t.Content)
	cut, face := "", letter.Regular
	if t.Bold {
		cut, face = "B", letter.Bold
	}
	if cut != h.face || t.Size != h.size || h.size == 0 {
		h.pdf.SetFont(letter.Family, cut, t.Size/point)
		h.face, h.size = cut, t.Size
	}
	r, g, b := t.Ink.RGB()
	h.pdf.SetTextColor(int(r), int(g), int(b))
	x := t.At.X - letter.Width(face, words, t.Size)*float64(t.Anchor)/2
	if t.Turn == 0 {
		h.pdf.Text(x, t.At.Y, words)
		return
	}
	h.pdf.TransformBegin()
	h.pdf.TransformRotate(-t.Turn, t.At.X, t.At.Y)
	h.pdf.Text(x, t.At.Y, words)
	h.pdf.TransformEnd()
}

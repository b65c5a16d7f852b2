package pdf

import (
	"fmt"
	"math"

	"lowvent.example/cmd/lowvent/internal/draw"
)

// picture sets a drawing at its true size, its title and scale below it, and its legend.
// One too wide for the page gets a page that lies on its side; one too large for that too
// is made smaller, and says so.
func (s setter) picture(d *draw.Drawing) []row {
	factor, turned := s.sized(d)
	p := s.drawn(d, factor, turned)
	key := s.key(d)
	p.parts = func() []row { return apart(s, p) }
	if len(key) == 0 {
		return []row{p}
	}
	all := p.high
	for i := range key {
		key[i].stays = true
		all += key[i].high + key[i].gap
	}
	p.keep = all <= s.room(turned).high
	if p.keep {
		for i := range key[:len(key)-1] {
			key[i].keep = true
		}
	}
	return append([]row{p}, key...)
}

func (s setter) room(turned bool) area {
	if turned {
		return s.turned
	}
	return s.body
}

// apart is a drawing parted from the heading over it, where no page has room for both.
func apart(s setter, p row) []row {
	p.parts = nil
	note := s.extra(bodyStyle, "The drawing stands on the next page.", 1.8)
	return append(note, p)
}

// sized tells by what factor a drawing is set, 1 where there is room, and on which kind
// of page.
func (s setter) sized(d *draw.Drawing) (factor float64, turned bool) {
	upright, lying := s.fits(d, s.wide, s.body.high), s.fits(d, s.turned.wide, s.turned.high)
	if upright >= lying {
		return upright, false
	}
	return lying, true
}

// fits is how much of its true size a drawing can have, its caption standing below it.
func (s setter) fits(d *draw.Drawing, wide, high float64) float64 {
	if d.Width <= wide && d.Height+s.captionHigh(d, 1) <= high {
		return 1
	}
	f := min(wide/max(d.Width, 1), (high-s.captionHigh(d, 0.5))/max(d.Height, 1), 0.99)
	if d.Scale > 0 {
		ratio := 1000 / d.Scale
		return ratio / round(ratio/f)
	}
	return math.Floor(f*100) / 100
}

// round is the next larger scale that a ruler can be held to: a whole number, and from 10
// on a multiple of 5.
func round(ratio float64) float64 {
	if ratio > 10 {
		return 5 * math.Ceil(ratio/5)
	}
	return math.Ceil(ratio)
}

const underDrawing = 1.5

// captionHigh is the room for a drawing's caption, with a line to spare where it has to
// tell that the drawing was made smaller.
func (s setter) captionHigh(d *draw.Drawing, factor float64) float64 {
	title := captionStyle.wrap(d.Title, s.wide, s.wide)
	scale := smallStyle.wrap(scaled(d, factor), s.wide, s.wide)
	high := underDrawing + captionStyle.lead*float64(len(title)) + smallStyle.lead*float64(len(scale))
	if factor < 1 {
		high += smallStyle.lead
	}
	return high
}

// scaled tells a drawing's scale, and by how much it was made smaller: nothing of a chart,
// which has axes instead, nor of a schematic, whose title says that it is not to scale.
func scaled(d *draw.Drawing, factor float64) string {
	switch {
	case d.Scale > 0 && factor == 1:
		return fmt.Sprintf("Scale 1:%s when printed at 100 %%.", figure(1000/d.Scale))
	case d.Scale > 0:
		return fmt.Sprintf("Too large for this sheet at its scale of 1:%s: made smaller, to %s %%, which is 1:%s when printed at 100 %%.",
			figure(1000/d.Scale), figure(100*factor), figure(1000/d.Scale/factor))
	case factor != 1:
		return fmt.Sprintf("Too large for this sheet: made smaller, to %s %%.", figure(100*factor))
	}
	return ""
}

// figure is a number to four digits, as 20 or 33.33.
func figure(x float64) string { return fmt.Sprintf("%.4g", x) }

// drawn is the drawing and its caption as one row.
func (s setter) drawn(d *draw.Drawing, factor float64, turned bool) row {
	if turned { // the frames around it belong to pages that stand
		s.left, s.bars = s.lyingLeft(d.Width*factor), nil
	}
	r := s.row(0, 3, piece{mark: &draw.Group{Label: d.Title, Marks: transformedAll(d.Marks, s.left, 0, factor)}, alt: d.Alt})
	r.turned = turned
	r.high = d.Height*factor + underDrawing
	s.under(&r, captionStyle, s.of(d.Title), d.Title)
	s.under(&r, smallStyle, 0, scaled(d, factor))
	return r
}

// lyingLeft is where a drawing so wide begins on a page that lies: where its heading does,
// if it has room there.
func (s setter) lyingLeft(wide float64) float64 {
	return max(s.turned.left, min(s.body.left, s.turned.left+s.turned.wide-wide))
}

// under adds lines of text to a row, below what it has.
func (s setter) under(r *row, st style, of int, text string) {
	for _, words := range st.wrap(text, s.wide, s.wide) {
		r.pieces = append(r.pieces, st.words(of, words, s.left, r.high))
		r.high += st.lead
	}
}

package pdf

import "lowvent.example/cmd/lowvent/internal/draw"

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
	return d.Smaller(wide, high-s.captionHigh(d, 0.5))
}

const underDrawing = 1.5

// captionHigh is the room for a drawing's caption, with a line to spare where it has to
// tell that the drawing was made smaller.
func (s setter) captionHigh(d *draw.Drawing, factor float64) float64 {
	title := captionStyle.wrap(d.Title, s.wide, s.wide)
	scale := smallStyle.wrap(d.Scaled(factor), s.wide, s.wide)
	high := underDrawing + captionStyle.lead*float64(len(title)) + smallStyle.lead*float64(len(scale))
	if factor < 1 {
		high += smallStyle.lead
	}
	return high
}

// drawn is the drawing and its caption as one row.
func (s setter) drawn(d *draw.Drawing, factor float64, turned bool) row {
	if turned { // the frames around it belong to pages that stand
		s.left, s.bars = s.lyingLeft(d.Width*factor), nil
	}
	r := s.row(0, 3, piece{mark: &draw.Group{Label: d.Title, Marks: transformedAll(d.Marks, s.left, 0, factor)}, alt: d.Alt})
	r.turned = turned
	r.high = d.Height*factor + underDrawing
	s.under(&r, captionStyle, s.of(d.Title), d.Title)
	s.under(&r, smallStyle, 0, d.Scaled(factor))
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

package html

import (
	"fmt"

	"lowvent.example/cmd/lowvent/internal/draw"
	"lowvent.example/cmd/lowvent/internal/paper"
	"lowvent.example/cmd/lowvent/internal/render/svg"
)

func (p *page) picture(d *draw.Drawing) {
	once := *d
	if p.drawings[d.ID]++; p.drawings[d.ID] > 1 {
		once.ID = fmt.Sprintf("%s.%d", d.ID, p.drawings[d.ID])
	}
	factor := p.factor(d)
	p.Open("figure", "class", p.fit(d.Width, factor))
	p.note(svg.Write(p, &once))
	p.Line()
	p.Open("figcaption")
	p.Text(d.Title + " ")
	p.Element("span", d.Scaled(factor), "class", "scale")
	p.Close()
	p.Line()
	p.legend(d.Key)
	p.Close()
}

func (p *page) legend(key []draw.Explained) {
	if len(key) == 0 {
		return
	}
	p.Open("ul", "class", "legend", "role", "list")
	for i := range key {
		p.Open("li")
		p.note(svg.Key(p, &key[i]))
		p.Element("span", key[i].Means)
		p.Close()
		p.Line()
	}
	p.Close()
}

// The room for a drawing on a page that stands and on one that lies on its side, in mm:
// what both A4 and Letter have, beside a heading, a caption and a foot of one line.
const (
	standingWide, standingHigh = 180, 225
	lyingWide, lyingHigh       = 261, 165
)

// factor is by what factor a drawing is printed: 1 where there is room for it.
func (p *page) factor(d *draw.Drawing) float64 {
	return max(p.within(d, standingWide, standingHigh), p.within(d, lyingWide, lyingHigh))
}

// broad tells whether a drawing needs a page that lies on its side.
func (p *page) broad(d *draw.Drawing) bool {
	return p.within(d, standingWide, standingHigh) < p.factor(d)
}

func (p *page) within(d *draw.Drawing, wide, high float64) float64 {
	if high -= float64(p.foot - footHeight("")); d.Width <= wide && d.Height <= high {
		return 1
	}
	return d.Smaller(wide, high)
}

// fit is the class of a figure that is made smaller in print, and is none where its
// drawing keeps its size. On a screen every drawing is as wide as there is room.
func (p *page) fit(wide, factor float64) string {
	if factor == 1 {
		return ""
	}
	p.fits = append(p.fits, wide*factor)
	return fmt.Sprintf("fit%d", len(p.fits))
}

// turn begins a page that lies on its side before a broad drawing, or before the heading
// over it, which would be left alone; before all else it goes back to one that stands.
func (p *page) turn(blocks []paper.Block) {
	headed := false
	if _, is := blocks[0].(*paper.Heading); is && len(blocks) > 1 {
		headed = p.lies(blocks[1])
	}
	if p.lies(blocks[0]) && p.headed {
		p.headed = false
		return
	}
	p.stand()
	if p.headed = headed; headed || p.lies(blocks[0]) {
		p.lie()
	}
}

func (p *page) lies(b paper.Block) bool {
	picture, is := b.(*paper.Picture)
	return is && p.broad(picture.Drawing)
}

func (p *page) lie() {
	p.Open("div", "class", "broad")
	p.lying = true
}

func (p *page) stand() {
	if p.lying {
		p.Close()
	}
	p.lying = false
}

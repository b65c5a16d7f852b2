package pdf

import (
	"fmt"

	"lowvent.example/cmd/lowvent/internal/draw"
	"lowvent.example/cmd/lowvent/internal/paper"
)

// page is a page with all that stands on it.
type page struct {
	wide, high float64
	turned     bool
	pieces     []piece
	bookmarks  []bookmark
	uprights   map[bar]*draw.Path // the last one drawn at each place
}

// bars draws uprights, or lengthens those that end where these begin.
func (g *page) bars(bars []bar, from, to float64) {
	if to <= from {
		return
	}
	for _, b := range bars {
		if last := g.uprights[b]; last != nil && last.Points[1].Y >= from-1e-9 {
			last.Points[1].Y = to
			continue
		}
		path := &draw.Path{Points: []draw.Point{{X: b.at, Y: from}, {X: b.at, Y: to}}, Pen: draw.Pen{Width: b.width}}
		g.uprights[b] = path
		g.pieces = append(g.pieces, piece{mark: path})
	}
}

// footLines are the lines of the foot on a page.
func footLines(d *paper.Document, size Sheet, turned bool) []string {
	wide, _ := size.size(turned)
	return footStyle.wrap(d.Foot, wide-2*margin, wide-2*margin)
}

func footHigh(lines []string) float64 { return 1 + float64(len(lines)+1)*footStyle.lead }

// foot sets what stands at the foot of every page, down to its free edge.
func (g *page) foot(d *paper.Document, lines []string, n, of int) {
	left, right := float64(margin), g.wide-margin
	y := g.high - free(g.turned) - footHigh(lines)
	g.pieces = append(g.pieces, rule(left, y, right, y, hairline))
	y++
	for _, words := range lines {
		if words != "" {
			g.pieces = append(g.pieces, footStyle.words(ofFoot, words, left, y))
		}
		y += footStyle.lead
	}
	count := fmt.Sprintf("page %d of %d", n, of)
	g.pieces = append(g.pieces, footStyle.words(0, footStyle.cut(d.Title, right-left-45), left, y), footStyle.ending(0, count, right, y))
}

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

func footHigh(lines []string) float64 { return 1 + float64(len(lines)+1)*footStyle.lead }

// foot sets what stands at the foot of every page.
func (g *page) foot(d *paper.Document, room area, n, of int) {
	lines := footStyle.wrap(d.Foot, room.wide, room.wide)
	right := room.left + room.wide
	y := room.top + room.high - footHigh(lines)
	g.pieces = append(g.pieces, rule(room.left, y, right, y, hairline))
	y++
	for _, words := range lines {
		if words != "" {
			g.pieces = append(g.pieces, footStyle.words(ofFoot, words, room.left, y))
		}
		y += footStyle.lead
	}
	count := fmt.Sprintf("page %d of %d", n, of)
	g.pieces = append(g.pieces, footStyle.words(0, footStyle.cut(d.Title, room.wide-45), room.left, y), footStyle.ending(0, count, right, y))
}

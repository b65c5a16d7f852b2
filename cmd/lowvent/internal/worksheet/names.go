package worksheet

import (
	"math"
	"slices"

	"lowvent.example/cmd/lowvent/internal/letter"
)

// letters15 is the size of the letters on the drawings, as the style has it.
const letters15 = 15

// area is a part of the drawing that words stand on.
type area struct{ left, top, right, bottom float64 }

// name writes what a part of the drawing is called, above the names that are there already,
// and tells where it stands.
func (p *page) name(text string, x, y float64, names []area) area {
	a := area{x, y - letters15, x + letter.Width(letter.Regular, text, letters15), y + letters15/3}
	for slices.ContainsFunc(names, a.meets) {
		a.top, a.bottom, y = a.top-nameStep, a.bottom-nameStep, y-nameStep
	}
	p.put("<text x=\"%s\" y=\"%s\" font-style=\"italic\">%s</text>\n", num(x), num(y), text)
	return a
}

// nameStep is how far a name is lifted out of the way of another.
const nameStep = 6

func (a area) meets(b area) bool {
	return min(a.right, b.right) > max(a.left, b.left) && min(a.bottom, b.bottom) > max(a.top, b.top)
}

// off is how far a point is from an area; 0 within.
func (a area) off(x, y float64) float64 {
	return math.Hypot(max(a.left-x, 0, x-a.right), max(a.top-y, 0, y-a.bottom))
}

// marks draws the points, each pushed aside until it covers none before it and no name.
func (p *page) marks(s sight, marks []mark, taken []area) {
	for _, m := range marks {
		x, y := s.at(m.at)
		lx, ly := free(x, y, s, taken)
		taken = append(taken, area{lx - markRadius, ly - markRadius, lx + markRadius, ly + markRadius})
		p.put("<path d=\"M%s %sL%s %s\" stroke=\"#000\" stroke-width=\"1\"/>\n<circle cx=\"%s\" cy=\"%s\" r=\"3\" fill=\"#000\"/>\n", num(x), num(y), num(lx), num(ly), num(x), num(y))
		p.put("<circle cx=\"%s\" cy=\"%s\" r=\"15\" fill=\"#fff\" stroke=\"#000\" stroke-width=\"1.5\"/>\n<text x=\"%s\" y=\"%s\" text-anchor=\"middle\" font-weight=\"bold\">%s</text>\n", num(lx), num(ly), num(lx), num(ly+5), m.code)
	}
}

// free looks for a place for a label near a point.
func free(x, y float64, s sight, taken []area) (float64, float64) {
	for _, reach := range []float64{26, 44, 62, 84, 110} {
		for _, d := range [][2]float64{{0.7, -0.7}, {-0.7, -0.7}, {0.7, 0.7}, {-0.7, 0.7}, {1, 0}, {-1, 0}, {0, -1}, {0, 1}} {
			lx, ly := x+reach*d[0], y+reach*d[1]
			if lx < 18 || lx > s.width-18 || ly < 42 || ly > s.height-42 {
				continue
			}
			if !crowded(lx, ly, taken) {
				return lx, ly
			}
		}
	}
	return x, y
}

// markRadius is that of the ring round the number of a row, with a little air.
const markRadius = 16.5

func crowded(x, y float64, taken []area) bool {
	return slices.ContainsFunc(taken, func(a area) bool { return a.off(x, y) < markRadius })
}

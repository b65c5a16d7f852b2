package worksheet

import (
	"fmt"
	"strings"

	"lowvent.example/cmd/lowvent/internal/ask"
	"lowvent.example/cmd/lowvent/internal/letter"
	"lowvent.example/schema/layout"
)

// mark is one point to measure, on a drawing: a corner or the middle of a thing.
type mark struct {
	code, what string
	at         [3]float64 // m, in the frame of the layout
}

// view is one drawing: which of the three axes run across and up the paper.
type view struct {
	name, title      string
	across, down     int
	flip             bool // the second axis runs up the paper
	acrossIs, downIs string
}

var views = []view{
	{"plan", "Plan, seen from above", 0, 1, false, "x: from front to rear", "y: from left to right"},
	{"side", "Side elevation, seen from the left", 0, 2, true, "x: from front to rear", "z: up from the floor"},
}

// drawings shows where points are measured from, on the invented frame of the scene.
func (p *page) drawings(scene string, all []sheet, l *layout.Layout) {
	boxes := spacesOf(l)
	marks := marksOf(all, boxes)
	p.put("<h2>Where to measure</h2>\n<p>%s Invented and not to scale: it shows which points are meant, never where a thing should be.</p>\n", ask.Axes())
	for _, v := range views {
		p.drawing(scene, v, boxes, marks)
	}
	p.put("<h3>The marks on both drawings</h3>\n<ul class=\"contents\">\n")
	for _, m := range marks {
		p.put("<li><strong>%s</strong> %s</li>\n", m.code, m.what)
	}
	p.put("</ul>\n")
}

func (p *page) drawing(scene string, v view, boxes []box, marks []mark) {
	s := sightOf(v, boxes)
	id := v.name + "-" + scene
	p.put("<figure>\n<svg viewBox=\"0 0 %s %s\" role=\"img\" aria-labelledby=\"%s-title %s-desc\">\n<title id=\"%s-title\">%s of a %s</title>\n", num(s.width), num(s.height), id, id, id, v.title, scene)
	p.put("<desc id=\"%s-desc\">%s</desc>\n", id, describe(v, boxes, marks))
	var names []area
	for _, b := range boxes {
		x1, y1 := s.at(b.from)
		x2, y2 := s.at(b.to)
		p.put("<rect x=\"%s\" y=\"%s\" width=\"%s\" height=\"%s\" fill=\"none\" stroke=\"#000\" stroke-width=\"2\"/>\n", num(min(x1, x2)), num(min(y1, y2)), num(abs(x2-x1)), num(abs(y2-y1)))
		names = append(names, p.name(b.name, min(x1, x2)+40, max(y1, y2)-8, names))
	}
	names = append(names, p.locker(s, boxes, names))
	p.axes(s)
	p.marks(s, marks, names)
	p.put("</svg>\n<figcaption>%s. The black spot is the corner from which x, y and z are measured. The front is on the left.</figcaption>\n</figure>\n", v.title)
}

// locker draws the cylinder locker, in broken lines, since nobody knows where it is.
func (p *page) locker(s sight, boxes []box, names []area) area {
	frame := living(boxes).to
	x1, y1 := s.at(within(standsAt["lockers"], frame))
	x2, y2 := s.at(within(farOfLocker, frame))
	p.put("<rect x=\"%s\" y=\"%s\" width=\"%s\" height=\"%s\" fill=\"none\" stroke=\"#000\" stroke-width=\"1.5\" stroke-dasharray=\"7 4\"/>\n", num(min(x1, x2)), num(min(y1, y2)), num(abs(x2-x1)), num(abs(y2-y1)))
	const name = "locker"
	return p.name(name, (x1+x2-letter.Width(letter.Regular, name, letters15))/2, max(y1, y2)+17, names)
}

// describe is the drawing in words, for who does not see it.
func describe(v view, boxes []box, marks []mark) string {
	var spaces, points []string
	for _, b := range boxes {
		spaces = append(spaces, b.name)
	}
	for _, m := range marks {
		points = append(points, m.code+" "+m.what)
	}
	return fmt.Sprintf("Outlines of the spaces %s, and of a cylinder locker in broken lines. Across the paper runs %s; the other way %s. Marked points: %s.", strings.Join(spaces, ", "), v.acrossIs, v.downIs, strings.Join(points, "; "))
}

// axes draws the corner of the frame and an arrow along each of the two axes.
func (p *page) axes(s sight) {
	x, y := s.at([3]float64{})
	dy := 55.0
	if s.v.flip {
		dy = -dy
	}
	p.put("<circle cx=\"%s\" cy=\"%s\" r=\"6\" fill=\"#000\"/>\n", num(x), num(y))
	p.put("<path d=\"M%s %sh70m-9 -5l9 5l-9 5\" fill=\"none\" stroke=\"#000\" stroke-width=\"3\"/>\n", num(x), num(y))
	p.put("<path d=\"M%s %sv%sm-5 %sl5 %sl5 %s\" fill=\"none\" stroke=\"#000\" stroke-width=\"3\"/>\n", num(x), num(y), num(dy), num(-dy/6), num(dy/6), num(-dy/6))
	p.put("<text x=\"%s\" y=\"%s\" font-weight=\"bold\">%s</text>\n", num(s.left), num(s.height-12), s.v.acrossIs+" (arrow to the right)")
	p.put("<text x=\"%s\" y=\"%s\" font-weight=\"bold\">%s</text>\n", num(s.left), num(22), s.v.downIs+" ("+map[bool]string{true: "arrow up", false: "arrow down"}[s.v.flip]+")")
}

func num(f float64) string { return strings.TrimSuffix(fmt.Sprintf("%.1f", f), ".0") }

func abs(f float64) float64 { return max(f, -f) }

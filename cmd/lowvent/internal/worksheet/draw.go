package worksheet

import (
	"fmt"
	"strings"

	"lowvent.example/cmd/lowvent/internal/ask"
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

// box is one space of the frame.
type box struct {
	name     string
	from, to [3]float64
}

func spacesOf(l *layout.Layout) []box {
	var boxes []box
	for _, s := range l.Spaces.All() {
		from, known := s.Box.From.Get()
		to, both := s.Box.To.Get()
		if !known || !both {
			continue
		}
		b := box{name: s.ID()}
		for i := range 3 {
			b.from[i], b.to[i] = float64(from[i].Nominal), float64(to[i].Nominal)
		}
		boxes = append(boxes, b)
	}
	return boxes
}

// standsAt tells where on the frame a thing is drawn, as shares of the main living
// space: no more than a place for its mark.
var standsAt = map[string][3]float64{
	"lockers": {0.82, 0, 0}, "cylinders": {0.92, 0.16, 0.03}, "regulators": {0.88, 0.2, 0.42}, "appliances": {0.45, 0.9, 0.5},
	"openings": {0.2, 1, 0.4}, "alarms": {0.65, 0.6, 0.95}, "ignitionSources": {0.3, 0.08, 0.3}, "combustibles": {0.6, 0.86, 0.8}, "fixedVents": {0.08, 0.3, 0.97},
}

// marksOf takes the marks from the rows themselves: the corners of the first box of each
// kind of thing, or its middle where only that is asked.
func marksOf(all []sheet, boxes []box) []mark {
	var marks []mark
	seen := map[string]bool{}
	for _, one := range all {
		section, id, _ := strings.Cut(strings.TrimPrefix(one.at, "/"), "/")
		if seen[section] && section != "spaces" || id == spare && section == "spaces" {
			continue
		}
		for _, t := range one.tables[:min(1, len(one.tables))] {
			for _, r := range t.rows {
				if at, ok := pointOf(section, id, r, boxes); ok {
					marks = append(marks, mark{r.code, one.title + ": " + r.label, at})
					seen[section] = true
				}
			}
		}
	}
	return marks
}

// pointOf is where the point of a row is drawn, if it is one that the drawing shows.
func pointOf(section, id string, r row, boxes []box) (at [3]float64, ok bool) {
	far := strings.HasSuffix(r.asked.Template, "/box/to")
	near := strings.HasSuffix(r.asked.Template, "/box/from")
	for _, b := range boxes {
		switch {
		case section == "spaces" && b.name == id && near:
			return b.from, true
		case section == "spaces" && b.name == id && far:
			return b.to, true
		}
	}
	share, drawn := standsAt[section]
	middle := r.asked.Template == "/"+section+"/*/at"
	if !drawn || !middle && section != "lockers" || section == "lockers" && !near && !far {
		return at, false
	}
	if far {
		share = farOfLocker
	}
	return within(share, living(boxes).to), true
}

// farOfLocker is where the far corner of the locker is drawn.
var farOfLocker = [3]float64{1, 0.34, 0.5}

// within turns shares of the frame into metres.
func within(share, frame [3]float64) (at [3]float64) {
	for i := range 3 {
		at[i] = share[i] * frame[i]
	}
	return at
}

// living is the space in whose corner the frame begins.
func living(boxes []box) box {
	for _, b := range boxes {
		if b.from == [3]float64{} {
			return b
		}
	}
	return boxes[0]
}

// The drawing's measures, in its own units.
const (
	drawn  = 780.0
	border = 46.0
)

// sight turns metres into places on the paper.
type sight struct {
	v                view
	scale, left, top float64
	width, height    float64
	lowest, highest  [3]float64
}

func sightOf(v view, boxes []box) sight {
	s := sight{v: v, lowest: boxes[0].from, highest: boxes[0].to}
	for _, b := range boxes {
		for i := range 3 {
			s.lowest[i], s.highest[i] = min(s.lowest[i], b.from[i]), max(s.highest[i], b.to[i])
		}
	}
	s.scale = min((drawn-2*border)/(s.highest[v.across]-s.lowest[v.across]), 225/(s.highest[v.down]-s.lowest[v.down]))
	s.width = drawn
	s.height = 2*border + s.scale*(s.highest[v.down]-s.lowest[v.down])
	s.left = (drawn - s.scale*(s.highest[v.across]-s.lowest[v.across])) / 2
	s.top = border
	return s
}

func (s sight) at(point [3]float64) (x, y float64) {
	x = s.left + s.scale*(point[s.v.across]-s.lowest[s.v.across])
	y = s.top + s.scale*(point[s.v.down]-s.lowest[s.v.down])
	if s.v.flip {
		y = s.top + s.scale*(s.highest[s.v.down]-point[s.v.down])
	}
	return x, y
}

func (p *page) drawing(scene string, v view, boxes []box, marks []mark) {
	s := sightOf(v, boxes)
	id := v.name + "-" + scene
	p.put("<figure>\n<svg viewBox=\"0 0 %s %s\" role=\"img\" aria-labelledby=\"%s-title %s-desc\">\n<title id=\"%s-title\">%s of a %s</title>\n", num(s.width), num(s.height), id, id, id, v.title, scene)
	p.put("<desc id=\"%s-desc\">%s</desc>\n", id, describe(v, boxes, marks))
	for _, b := range boxes {
		x1, y1 := s.at(b.from)
		x2, y2 := s.at(b.to)
		p.put("<rect x=\"%s\" y=\"%s\" width=\"%s\" height=\"%s\" fill=\"none\" stroke=\"#000\" stroke-width=\"2\"/>\n", num(min(x1, x2)), num(min(y1, y2)), num(abs(x2-x1)), num(abs(y2-y1)))
		p.put("<text x=\"%s\" y=\"%s\" font-style=\"italic\">%s</text>\n", num(min(x1, x2)+40), num(max(y1, y2)-8), b.name)
	}
	p.locker(s, boxes)
	p.axes(s)
	p.marks(s, marks)
	p.put("</svg>\n<figcaption>%s. The black spot is the corner from which x, y and z are measured. The front is on the left.</figcaption>\n</figure>\n", v.title)
}

// locker draws the cylinder locker, in broken lines, since nobody knows where it is.
func (p *page) locker(s sight, boxes []box) {
	frame := living(boxes).to
	x1, y1 := s.at(within(standsAt["lockers"], frame))
	x2, y2 := s.at(within(farOfLocker, frame))
	p.put("<rect x=\"%s\" y=\"%s\" width=\"%s\" height=\"%s\" fill=\"none\" stroke=\"#000\" stroke-width=\"1.5\" stroke-dasharray=\"7 4\"/>\n", num(min(x1, x2)), num(min(y1, y2)), num(abs(x2-x1)), num(abs(y2-y1)))
	p.put("<text x=\"%s\" y=\"%s\" text-anchor=\"middle\" font-style=\"italic\">locker</text>\n", num((x1+x2)/2), num(max(y1, y2)+17))
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

// marks draws the points, each pushed aside until it covers none before it.
func (p *page) marks(s sight, marks []mark) {
	var taken [][2]float64
	for _, m := range marks {
		x, y := s.at(m.at)
		lx, ly := free(x, y, s, taken)
		taken = append(taken, [2]float64{lx, ly})
		p.put("<path d=\"M%s %sL%s %s\" stroke=\"#000\" stroke-width=\"1\"/>\n<circle cx=\"%s\" cy=\"%s\" r=\"3\" fill=\"#000\"/>\n", num(x), num(y), num(lx), num(ly), num(x), num(y))
		p.put("<circle cx=\"%s\" cy=\"%s\" r=\"15\" fill=\"#fff\" stroke=\"#000\" stroke-width=\"1.5\"/>\n<text x=\"%s\" y=\"%s\" text-anchor=\"middle\" font-weight=\"bold\">%s</text>\n", num(lx), num(ly), num(lx), num(ly+5), m.code)
	}
}

// free looks for a place for a label near a point.
func free(x, y float64, s sight, taken [][2]float64) (float64, float64) {
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

func crowded(x, y float64, taken [][2]float64) bool {
	for _, each := range taken {
		if dx, dy := x-each[0], y-each[1]; dx*dx+dy*dy < 33*33 {
			return true
		}
	}
	return false
}

func num(f float64) string { return strings.TrimSuffix(fmt.Sprintf("%.1f", f), ".0") }

func abs(f float64) float64 { return max(f, -f) }

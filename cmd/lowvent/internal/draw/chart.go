package draw

import (
	"fmt"
	"math"
	"strings"

	"lowvent.example/cmd/lowvent/internal/letter"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

// The measures of a chart, in mm.
const (
	chartWide = 180
	chartTall = 78
	chartFoot = 11
	chartHead = 7
	chartBody = 2.4
	chartLead = 2.9
	chartSide = 52 // for the names of levels
)

// Charts draws every course that the report has, in the report's order.
func Charts(f *report.FileReport) []*Drawing {
	var all []*Drawing
	for i := range f.Figures {
		figure := &f.Figures[i]
		if figure.Course == nil || len(figure.Course.Points) < 2 {
			continue
		}
		id := strings.NewReplacer(".", "-", "/", "-").Replace(figure.ID + figure.Subject)
		all = append(all, Chart(id, figure.Label+": "+figure.Title, figure.Course))
	}
	return all
}

// Chart draws a course of two points or more, with the levels that it is held against.
func Chart(id, title string, c *report.Course) *Drawing {
	g := &graph{courses: [][][2]float64{c.Points}, across: kindOf(c.Across.Kind), up: kindOf(c.Up.Kind), acrossTitle: c.Across.Title, upTitle: c.Up.Title}
	for _, l := range c.Levels {
		g.against = append(g.against, levelLine{Level: l})
	}
	return g.drawing(id, title)
}

// graph is one chart while it is made.
type graph struct {
	courses              [][][2]float64
	against              []levelLine
	across, up           unit.Kind
	acrossTitle, upTitle string
	whole                bool // every level lies in the chart, however far

	left, right, low, high float64 // of what is drawn, in SI
	step                   float64 // of the axis upwards
	leftEdge, rightEdge    float64 // of the frame, in mm
	least, most, last      float64 // of the courses themselves
	marks                  []Mark
	told                   []string // every level in words
}

// levelLine is a level that courses are held against, or where one of them ends.
type levelLine struct {
	report.Level
	end bool
}

func (g *graph) drawing(id, title string) *Drawing {
	g.extent()
	g.frame()
	g.axes()
	g.levels()
	g.curves()
	return &Drawing{ID: id, Title: title, Alt: g.words(title), Width: chartWide, Height: chartTall, Marks: g.marks}
}

func kindOf(name string) unit.Kind {
	for _, k := range unit.Kinds() {
		if k.String() == name {
			return k
		}
	}
	panic(fmt.Sprintf("a course of the kind %q", name)) // the kinds are the program's own
}

// extent is what the axes span: the whole of the courses, from zero where that is near, and
// every level that does not lie far beyond them.
func (g *graph) extent() {
	g.left, g.right, g.least, g.most = math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
	for _, course := range g.courses {
		for _, p := range course {
			g.left, g.right = min(g.left, p[0]), max(g.right, p[0])
			g.least, g.most = min(g.least, p[1]), max(g.most, p[1])
		}
	}
	g.low, g.high, g.last = g.least, g.most, g.right
	for _, l := range g.against {
		if reach := g.most - g.least; g.whole || l.At > g.least-2*reach && l.At < g.most+2*reach {
			g.low, g.high = min(g.low, l.At), max(g.high, l.At)
		}
	}
	if g.up != unit.KindTemperature && g.low > 0 && g.low < g.high/2 {
		g.low = 0
	}
	g.low, g.high = neverEmpty(g.low, g.high)
	g.left, g.right = neverEmpty(g.left, g.right)
}

// neverEmpty spreads a span that is too narrow to be told from a point.
func neverEmpty(low, high float64) (float64, float64) {
	size := max(math.Abs(low), math.Abs(high), 1e-9)
	if high-low > 1e-6*size {
		return low, high
	}
	return low, low + size/10
}

// x and y are where values lie on paper.
func (g *graph) x(v float64) float64 {
	return g.leftEdge + (v-g.left)/(g.right-g.left)*(g.rightEdge-g.leftEdge)
}

func (g *graph) y(v float64) float64 {
	return chartTall - chartFoot - (v-g.low)/(g.high-g.low)*(chartTall-chartFoot-chartHead)
}

// frame widens the span to whole steps, and leaves room for what stands beside it.
func (g *graph) frame() {
	g.step = stepOf(g.up, g.high-g.low, 5)
	zero := zeroOf(g.up)
	g.low = zero + math.Floor((g.low-zero)/g.step+1e-9)*g.step
	g.high = zero + math.Ceil((g.high-zero)/g.step-1e-9)*g.step
	widest := 0.0
	for _, v := range g.steps() {
		widest = max(widest, letter.Width(letter.Regular, g.stepText(v), chartBody))
	}
	g.leftEdge, g.rightEdge = widest+4, chartWide-8
	if len(g.against) > 0 {
		g.rightEdge = chartWide - chartSide
	}
	top, bottom := chartHead, chartTall-chartFoot
	g.marks = append(g.marks, &Path{Closed: true, Pen: Pen{Width: 0.3}, Fill: White,
		Points: []Point{{g.leftEdge, float64(top)}, {g.rightEdge, float64(top)}, {g.rightEdge, float64(bottom)}, {g.leftEdge, float64(bottom)}}})
}

// steps are the values that the axis upwards is marked at.
func (g *graph) steps() []float64 { return ticks(g.low, g.high, g.step, zeroOf(g.up)) }

// stepText is a value of the axis upwards, with the digits that tell it from the next.
func (g *graph) stepText(v float64) string {
	text, _ := unit.TextApart(g.up, v, v+g.step)
	return text
}

// axes draws the steps with their values in both systems of units.
func (g *graph) axes() {
	bottom := float64(chartTall - chartFoot)
	for _, v := range g.steps() {
		y := g.y(v)
		g.marks = append(g.marks, &Path{Points: []Point{{g.leftEdge, y}, {g.rightEdge, y}}, Pen: Pen{Width: 0.1, Ink: Grey}},
			&Text{At: Point{g.leftEdge - 1.5, y + 0.8}, Size: chartBody, Anchor: End, Content: g.stepText(v)})
	}
	step := stepOf(g.across, g.right-g.left, 7)
	for _, v := range ticks(g.left, g.right, step, zeroOf(g.across)) {
		x := g.x(v)
		g.marks = append(g.marks, &Path{Points: []Point{{x, bottom}, {x, bottom + 1.2}}, Pen: Pen{Width: 0.3}},
			&Text{At: Point{x, bottom + 4}, Size: chartBody, Anchor: Middle, Content: axisText(g.across, v)})
	}
	g.marks = append(g.marks,
		&Text{At: Point{1, 4}, Size: chartBody, Bold: true, Content: "up: " + g.upTitle},
		&Text{At: Point{g.rightEdge, bottom + 8.5}, Size: chartBody, Bold: true, Anchor: End, Content: "across: " + g.acrossTitle})
}

// levels draws what the course is held against, each a broken line with its name at its
// right end. One that lies beyond the chart is told in the words only.
func (g *graph) levels() {
	var names []*margin
	for _, l := range g.against {
		value := axisText(g.up, l.At)
		g.told = append(g.told, l.Title+", "+value)
		if l.At < g.low || l.At > g.high {
			continue
		}
		y := g.y(l.At)
		if !l.end {
			g.marks = append(g.marks, &Path{Points: []Point{{g.leftEdge, y}, {g.rightEdge, y}}, Pen: Pen{Width: 0.35, Dash: Dashed}})
		}
		names = append(names, &margin{at: y, lines: append(wrap(l.Title+",", chartSide-6, chartBody), value)})
	}
	spreadOut(names, chartLead, chartHead, chartTall-1)
	for _, n := range names {
		g.marks = append(g.marks, &Path{Points: []Point{{g.rightEdge, n.at}, {g.rightEdge + 3.5, n.middle}}, Pen: Pen{Width: 0.15}})
		for i, line := range n.lines {
			y := n.middle + (float64(i)-float64(len(n.lines)-1)/2)*chartLead + 0.8
			g.marks = append(g.marks, &Text{At: Point{g.rightEdge + 4.5, y}, Size: chartBody, Content: line})
		}
	}
}

// curves draws the courses, thinned to what a pen can show: of each step of paper its first,
// last, lowest and highest point.
func (g *graph) curves() {
	for _, course := range g.courses {
		var points []Point
		for _, p := range thinned(course, 600) {
			points = append(points, Point{g.x(p[0]), g.y(p[1])})
		}
		g.marks = append(g.marks, &Path{Points: points, Pen: Pen{Width: 0.6}})
	}
}

// thinned keeps at most four points of each of so many steps, so that no peak is lost.
func thinned(points [][2]float64, steps int) [][2]float64 {
	if len(points) <= 4*steps {
		return points
	}
	var out [][2]float64
	for i := range steps {
		from, to := i*len(points)/steps, (i+1)*len(points)/steps
		low, high := from, from
		for j := from; j < to; j++ {
			if points[j][1] < points[low][1] {
				low = j
			}
			if points[j][1] > points[high][1] {
				high = j
			}
		}
		last := -1
		for _, j := range []int{from, min(low, high), max(low, high), to - 1} {
			if j > last {
				out, last = append(out, points[j]), j
			}
		}
	}
	return out
}

// words tells the chart to those who can't see it.
func (g *graph) words(title string) string {
	text := fmt.Sprintf("%s. %s over %s up to %s: between %s and %s.", title, g.upTitle, g.acrossTitle,
		axisText(g.across, g.last), axisText(g.up, g.least), axisText(g.up, g.most))
	for _, course := range g.courses {
		text += fmt.Sprintf(" From %s to %s.", axisText(g.up, course[0][1]), axisText(g.up, course[len(course)-1][1]))
	}
	for _, t := range g.told {
		text += " Held against: " + t + "."
	}
	return text
}

// axisText is a value in both systems of units; whole days are told as days.
func axisText(k unit.Kind, v float64) string {
	if days := v / 86400; k == unit.KindDuration && days == math.Trunc(days) && days > 0 {
		return strings.TrimSuffix(fmt.Sprintf("%g days", days), map[bool]string{true: "s"}[days == 1])
	}
	return unit.TextOf(k, v)
}

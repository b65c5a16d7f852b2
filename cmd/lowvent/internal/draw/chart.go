package draw

import (
	"fmt"
	"math"
	"slices"
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

// Charts draws every course that the report has, in the report's order, but for the air of
// a space in which nothing burns that would spoil it: it has no question to answer.
func Charts(f *report.FileReport) []*Drawing {
	var all []*Drawing
	for i := range f.Figures {
		figure := &f.Figures[i]
		if figure.Course == nil || len(figure.Course.Points) < 2 || idleAir(f, figure) {
			continue
		}
		id := strings.NewReplacer(".", "-", "/", "-").Replace(figure.ID + figure.Subject)
		all = append(all, Chart(id, figure.Label+": "+figure.Title, figure.Course))
	}
	return all
}

// idleAir tells whether a figure is the air of a space of which the report does not ask
// whether it stays fit to breathe.
func idleAir(f *report.FileReport, figure *report.Figure) bool {
	return figure.ID == "space.carbon-dioxide-course" && slices.ContainsFunc(f.Findings, func(g report.Finding) bool {
		return g.Check == "room.air" && g.Subject == figure.Subject && g.Outcome == report.NotApplicable
	})
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
	cut                    bool     // the courses run off the top of the frame
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
	g.off()
	g.curves()
	return &Drawing{ID: id, Title: title, Alt: g.words(title), Width: chartWide, Height: chartTall, Marks: g.marks}
}

func kindOf(name string) unit.Kind {
	k, is := unit.KindNamed(name)
	if !is {
		panic(fmt.Sprintf("a course of the kind %q", name)) // the kinds are the program's own
	}
	return k
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
	g.cutTop()
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

// words tells the chart to those who can't see it.
func (g *graph) words(title string) string {
	text := fmt.Sprintf("%s. %s over %s up to %s: between %s and %s.", title, g.upTitle, g.acrossTitle,
		axisText(g.across, g.last), axisText(g.up, g.least), axisText(g.up, g.most))
	for _, course := range g.courses {
		text += fmt.Sprintf(" From %s to %s.", axisText(g.up, course[0][1]), axisText(g.up, course[len(course)-1][1]))
	}
	if g.cut {
		text += " Drawn up to " + axisText(g.up, g.high) + ": " + g.offWords() + "."
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

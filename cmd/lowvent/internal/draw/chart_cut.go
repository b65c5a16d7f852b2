package draw

import (
	"fmt"

	"lowvent.example/cmd/lowvent/internal/letter"
	"lowvent.example/schema/unit"
)

// A course that goes beyond farOff times the highest level that it is held against would
// press the levels flat onto the axis: its chart ends at about axisOf times that level.
const (
	farOff = 5.0
	axisOf = 4.0
)

// cutTop ends the axis near the levels where the course goes far beyond them.
func (g *graph) cutTop() {
	highest := 0.0
	for _, l := range g.against {
		highest = max(highest, l.At)
	}
	if g.whole || g.up == unit.KindTemperature || highest <= 0 || g.most <= farOff*highest || g.least < -highest || g.least > axisOf*highest {
		return
	}
	g.high, g.cut = axisOf*highest, true
	if g.low > 0 {
		g.low = 0
	}
}

// below are the pieces of a course that lie within the frame; where it runs off the top,
// a piece ends on the frame.
func (g *graph) below(course [][2]float64) [][][2]float64 {
	if !g.cut {
		return [][][2]float64{course}
	}
	var all [][][2]float64
	var piece [][2]float64
	for i, p := range course {
		if i > 0 && (p[1] > g.high) != (course[i-1][1] > g.high) {
			piece = append(piece, [2]float64{meets(course[i-1], p, g.high), g.high})
		}
		switch {
		case p[1] <= g.high:
			piece = append(piece, p)
		case len(piece) > 0:
			all, piece = append(all, piece), nil
		}
	}
	if len(piece) > 0 {
		all = append(all, piece)
	}
	return all
}

// meets is where the straight way from one point of a course to the next comes to a height.
func meets(a, b [2]float64, height float64) float64 {
	return a[0] + (b[0]-a[0])*(height-a[1])/(b[1]-a[1])
}

// firstPassed is when a course first comes to a height from where it starts, be that from
// below or from above; false when it never does.
func firstPassed(course [][2]float64, height float64) (float64, bool) {
	if course[0][1] == height {
		return course[0][0], true
	}
	from := course[0][1] < height
	for i, p := range course {
		if i > 0 && (p[1] < height) != from || p[1] == height {
			return meets(course[i-1], p, height), true
		}
	}
	return 0, false
}

// passed tells when the course first comes to a level, "" where it never does or is not
// one over time.
func (g *graph) passed(l levelLine) string {
	if g.across != unit.KindDuration || l.end || len(g.courses) != 1 {
		return ""
	}
	course := g.courses[0]
	at, does := firstPassed(course, l.At)
	switch {
	case !does:
		return ""
	case at <= course[0][0]:
		return "there from the start"
	}
	return "passed " + g.when(at)
}

// when tells a time of passing. Within the first step of a course nobody has reckoned how it
// rises, mostly faster at first: the end of that step is all that can be told.
func (g *graph) when(at float64) string {
	if first := g.courses[0][1][0]; at < first {
		return "within " + axisText(g.across, first)
	}
	return "after " + axisText(g.across, at)
}

// offWords tells when a course runs off the chart, and how far it goes.
func (g *graph) offWords() string {
	most := "at most " + axisText(g.up, g.most)
	if g.courses[0][0][1] > g.high {
		return "off the chart from the start; " + most
	}
	at, _ := firstPassed(g.courses[0], g.high)
	if g.across != unit.KindDuration {
		return fmt.Sprintf("off the chart at %s; %s", axisText(g.across, at), most)
	}
	return fmt.Sprintf("off the chart %s; %s", g.when(at), most)
}

// off says over the frame that the course runs off it, with an arrow where it first does.
func (g *graph) off() {
	if !g.cut {
		return
	}
	at, _ := firstPassed(g.courses[0], g.high)
	tip := Point{min(max(g.x(at), g.leftEdge+1), g.rightEdge-1), chartHead}
	text := &Text{At: Point{chartWide - 1, 4}, Size: chartBody, Bold: true, Anchor: End, Content: g.offWords()}
	g.marks = append(g.marks, arrow(tip, tip.plus(0, 5), 2.6))
	if text.Wide()+letter.Width(letter.Bold, "up: "+g.upTitle, chartBody)+6 > chartWide {
		text.At, text.Anchor = Point{g.leftEdge + 1.5, chartHead + 3.4}, Start
		g.marks = append(g.marks, backed(text)...)
		return
	}
	g.marks = append(g.marks, text)
}

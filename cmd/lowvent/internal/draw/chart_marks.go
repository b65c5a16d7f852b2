package draw

import (
	"lowvent.example/schema/unit"
)

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
		passed := g.passed(l)
		if passed != "" {
			value += ", " + passed
		}
		g.told = append(g.told, l.Title+", "+value)
		if l.At < g.low || l.At > g.high {
			continue
		}
		y := g.y(l.At)
		if !l.end {
			g.marks = append(g.marks, &Path{Points: []Point{{g.leftEdge, y}, {g.rightEdge, y}}, Pen: Pen{Width: 0.35, Dash: Dashed}})
		}
		names = append(names, &margin{at: y, lines: append(wrap(l.Title+",", chartSide-6, chartBody), wrap(value, chartSide-6, chartBody)...)})
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
		for _, piece := range g.below(course) {
			var points []Point
			for _, p := range thinned(piece, 600) {
				points = append(points, Point{g.x(p[0]), g.y(p[1])})
			}
			g.marks = append(g.marks, &Path{Points: points, Pen: Pen{Width: 0.6}})
		}
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

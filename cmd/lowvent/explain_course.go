package main

import (
	"math"
	"strings"

	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

// The most columns and the lines of a plot, beside what its sides are labelled with.
const (
	plotWide = 60
	plotTall = 12
)

// plot draws a course. A column shows all that lies in it, from its lowest to its
// highest, so that neither a short peak nor a cold hour is lost between two columns.
func plot(p *text.Page, c *report.Course) {
	if len(c.Points) == 0 {
		return
	}
	left, right, low, high := extent(c.Points)
	p.Item(text.Plain, 2, 2, c.Up.Title+": "+textOf(c.Up.Kind, low)+" to "+textOf(c.Up.Kind, high)+"; across: "+c.Across.Title+", "+
		textOf(c.Across.Kind, left)+" to "+textOf(c.Across.Kind, right))
	wide := min(plotWide, p.Width()-4)
	for _, line := range marks(c.Points, wide) {
		p.Verbatim(2, "|"+line)
	}
	p.Verbatim(2, "+"+strings.Repeat("-", wide))
}

// marks is the plot's lines from the top down, so many columns wide.
func marks(points [][2]float64, wide int) []string {
	left, right, low, high := extent(points)
	spans := make([]struct{ low, high float64 }, wide)
	for i := range spans {
		spans[i].low, spans[i].high = math.Inf(1), math.Inf(-1)
	}
	for _, each := range points {
		span := &spans[place(each[0], left, right, wide)]
		span.low, span.high = min(span.low, each[1]), max(span.high, each[1])
	}
	lines := make([]string, plotTall)
	for row := range lines {
		line := make([]byte, wide)
		for column, span := range spans {
			line[column] = ' '
			up := plotTall - 1 - row
			if span.low <= span.high && place(span.low, low, high, plotTall) <= up && up <= place(span.high, low, high, plotTall) {
				line[column] = '*'
			}
		}
		lines[row] = strings.TrimRight(string(line), " ")
	}
	return lines
}

// place is in which of n equal steps from low to high a number lies.
func place(x, low, high float64, n int) int {
	if high <= low {
		return 0
	}
	return min(n-1, int(float64(n)*(x-low)/(high-low)))
}

func extent(points [][2]float64) (left, right, low, high float64) {
	left, low = points[0][0], points[0][1]
	right, high = left, low
	for _, each := range points {
		left, right = min(left, each[0]), max(right, each[0])
		low, high = min(low, each[1]), max(high, each[1])
	}
	return left, right, low, high
}

// textOf writes a quantity of a kind that is known by name.
func textOf(kind string, si float64) string {
	if k, is := unit.KindNamed(kind); is {
		return unit.TextOf(k, si)
	}
	return report.Words(kind).Text
}

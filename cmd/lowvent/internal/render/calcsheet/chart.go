package calcsheet

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

// The sides of a chart's frame in its picture, in the picture's own units.
const (
	wide, tall                                   = 480.0, 280.0
	frameLeft, frameRight, frameTop, frameBottom = 50.0, 430.0, 30.0, 232.0
)

// chart is a course as a picture and as tables.
type chart struct {
	ID, Title, Describe       string
	Line                      string // the points of the line, as SVG writes them
	Left, Bottom              []mark
	UpName, OtherName, Across string // what stands along the sides
	UpTitle, AcrossTitle      string
	UpSymbol, AcrossSymbol    string
	Some, All                 []point // All is empty where Some has every point
}

// mark is a labelled place along a side; Other is its label in the other system.
type mark struct{ At, Label, Other string }

func chartOf(c *report.Course, id string) *chart {
	across, up := kindOf(c.Across.Kind), kindOf(c.Up.Kind)
	e := extremes(c.Points)
	x := axisOf(across, c.Points[0][0], c.Points[len(c.Points)-1][0], false)
	y := axisOf(up, c.Points[e.lowest][1], c.Points[e.highest][1], true)
	all := pointsOf(c, e)
	out := &chart{ID: id, Title: capital(c.Up.Title) + " against " + c.Across.Title, Describe: described(c, all, e),
		Line: line(c.Points, x, y), UpTitle: c.Up.Title, AcrossTitle: c.Across.Title,
		UpName: named(c.Up.Title, y.name), Across: named(c.Across.Title, x.name), UpSymbol: si(up), AcrossSymbol: si(across), Some: all}
	out.Left, out.OtherName = upMarks(up, y)
	for _, each := range x.marks() {
		out.Bottom = append(out.Bottom, mark{At: pixel(onto(x, each, frameLeft, frameRight)), Label: label(each, x.step, 0)})
	}
	if len(all) > mostShown {
		out.Some, out.All = thinned(all, e), all
	}
	return out
}

// upMarks labels the left side, and the right one where the other system has a unit.
func upMarks(k unit.Kind, y axis) (marks []mark, other string) {
	us := measureOf(k, scales[k].us)
	for _, each := range y.marks() {
		m := mark{At: pixel(onto(y, each, frameBottom, frameTop)), Label: label(each, y.step, 0)}
		if scales[k].us != "" {
			m.Other, other = label(us.of(y.toSI(each)), y.step*y.factor/us.factor, 1), us.name
		}
		marks = append(marks, m)
	}
	return marks, other
}

func named(title, unit string) string { return strings.TrimSuffix(title+", "+unit, ", ") }

func si(k unit.Kind) string {
	if k.Symbol() == "1" {
		return "parts of one"
	}
	return k.Symbol()
}

// capital begins a sentence.
func capital(s string) string {
	first, size := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(first)) + s[size:]
}

// onto maps a number of an axis onto a side of the frame.
func onto(a axis, x, from, to float64) float64 { return from + (to-from)*(x-a.low)/(a.high-a.low) }

func pixel(x float64) string { return strconv.FormatFloat(x, 'f', 1, 64) }

// line is the course in the picture. Of the points that fall into one column it keeps
// the first, the lowest, the highest and the last, so that no peak is lost.
func line(points [][2]float64, x, y axis) string {
	var out []string
	put := func(p [2]float64) {
		out = append(out, pixel(onto(x, x.of(p[0]), frameLeft, frameRight))+","+pixel(onto(y, y.of(p[1]), frameBottom, frameTop)))
	}
	column := func(p [2]float64) int { return int(onto(x, x.of(p[0]), frameLeft, frameRight)) }
	for from := 0; from < len(points); {
		to := from + 1
		for to < len(points) && column(points[to]) == column(points[from]) {
			to++
		}
		e := extremes(points[from:to])
		for i, each := range points[from:to] {
			if i == 0 || i == to-from-1 || i == e.lowest || i == e.highest {
				put(each)
			}
		}
		from = to
	}
	if len(out) == 1 {
		out = append(out, out[0]) // a line of one point is drawn as a dot
	}
	return strings.Join(out, " ")
}

// ends are the indices of the first point that is lowest and of that which is highest.
type ends struct{ lowest, highest int }

func extremes(points [][2]float64) ends {
	var e ends
	for i, each := range points {
		if each[1] < points[e.lowest][1] {
			e.lowest = i
		}
		if each[1] > points[e.highest][1] {
			e.highest = i
		}
	}
	return e
}

package calcsheet

import (
	"bytes"
	"html/template"
	"unicode"
	"unicode/utf8"

	"lowvent.example/cmd/lowvent/internal/draw"
	"lowvent.example/cmd/lowvent/internal/render/svg"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

// chart is a course as a picture and as tables.
type chart struct {
	Picture                *draw.Drawing // nil for a course of one point
	Title, Describe        string
	UpTitle, AcrossTitle   string
	UpSymbol, AcrossSymbol string
	Some, All              []point // All is empty where Some has every point
}

func chartOf(c *report.Course, id string) *chart {
	e := extremes(c.Points)
	all := pointsOf(c, e)
	out := &chart{Title: capital(c.Up.Title) + " against " + c.Across.Title, Describe: described(c, all, e), UpTitle: c.Up.Title, AcrossTitle: c.Across.Title,
		UpSymbol: si(kindOf(c.Up.Kind)), AcrossSymbol: si(kindOf(c.Across.Kind)), Some: all}
	if len(all) > 1 {
		out.Picture = draw.Chart(id, out.Title, c)
	}
	if len(all) > mostShown {
		out.Some, out.All = thinned(all, e), all
	}
	return out
}

// picture is a drawing as the page holds it. The error is as that of [svg.Write].
func picture(d *draw.Drawing) (template.HTML, error) {
	var out bytes.Buffer
	err := svg.Write(&out, d)
	return template.HTML(out.String()), err // svg has made a text of every text
}

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

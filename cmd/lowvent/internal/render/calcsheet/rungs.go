package calcsheet

import (
	"strconv"
	"strings"

	"lowvent.example/cmd/lowvent/internal/render/saying"
	"lowvent.example/schema/report"
)

// rung is one line of a working as it stands in its table.
type rung struct {
	*report.Line
	Number       int
	Basis, Place string
	Shown        string // what it is; for a value that was read its key
}

func rungs(file string, lines []report.Line, stated map[string]string) []rung {
	var all []rung
	for i := range lines {
		l := &lines[i]
		all = append(all, rung{Line: l, Number: i + 1, Basis: basis(stated, l), Place: placeIn(file, l.Place), Shown: shown(l)})
	}
	return all
}

// shown tells what a line is, unless its value says just that. What was read is told by
// its key alone where its place has the whole pointer anyway.
func shown(l *report.Line) string {
	switch {
	case l.Place != nil && l.What == l.Place.Pointer:
		return "the key " + l.What[strings.LastIndex(l.What, "/")+1:]
	case l.Value != nil && l.What == l.Value.Text:
		return ""
	}
	return l.What
}

// placeIn names a place of the file that the sheet is about by line and column alone.
func placeIn(file string, p *report.Place) string {
	switch {
	case p == nil:
		return ""
	case p.File != file || p.Line == 0:
		return saying.At(*p)
	}
	return "line " + strconv.Itoa(p.Line) + ", column " + strconv.Itoa(p.Column)
}

// Exact writes the value of a line in SI, with twelve digits.
func (r rung) Exact() string { return exact(r.Value) }

// Band writes the band of a line's value in SI, "" where it has none.
func (r rung) Band() string {
	if r.Value == nil || r.Value.Low == nil || r.Value.High == nil {
		return ""
	}
	return digits(*r.Value.Low) + " to " + digits(*r.Value.High)
}

func exact(a *report.Amount) string {
	if a == nil || a.SI == nil {
		return ""
	}
	if a.Unit == "1" {
		return digits(*a.SI)
	}
	return strings.TrimSpace(digits(*a.SI) + " " + a.Unit)
}

// digits writes a number for people who reckon with it. Twelve digits leave six where a
// step takes two nearly equal pressures from each other.
func digits(x float64) string { return strconv.FormatFloat(x+0, 'g', 12, 64) }

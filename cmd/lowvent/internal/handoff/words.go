package handoff

import (
	"fmt"
	"slices"
	"strings"

	"lowvent.example/cmd/lowvent/internal/paper"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

// notStated stands where the file says nothing.
const notStated = "not known"

// word is a word of the layout, or that it is not known.
func word[T ~string](g *layout.Given[T]) string {
	v, known := g.Get()
	if !known {
		return notStated
	}
	return string(v)
}

// yes is a statement that is true or false, or not known.
func yes(g *layout.Given[bool]) string {
	v, known := g.Get()
	switch {
	case !known:
		return notStated
	case v:
		return "yes"
	}
	return "no"
}

// number is a count, or that it is not known.
func number(g *layout.Given[int]) string {
	v, known := g.Get()
	if !known {
		return notStated
	}
	return fmt.Sprint(v)
}

// date is a day, or that it is not known.
func date(g *layout.Given[layout.Date]) string {
	v, known := g.Get()
	if !known {
		return notStated
	}
	return v.String()
}

// amount is a quantity in both systems of units, with what the file itself writes where
// that says more: a tolerance.
func amount[Q unit.Quantity](m *layout.Measure[Q]) string {
	v, known := m.Get()
	if !known {
		return notStated
	}
	text := unit.TextOf(v.Nominal.Kind(), float64(v.Nominal))
	if !v.Exact() && v.Written != "" {
		text += ", written " + v.Written
	}
	return text
}

// words is a list of words, or that it is not known.
func words[T ~string](w *layout.Words[T]) string {
	list, known := w.Get()
	if !known {
		return notStated
	}
	if len(list) == 0 {
		return "none"
	}
	var all []string
	for _, each := range list {
		all = append(all, string(each))
	}
	return strings.Join(all, ", ")
}

// each puts texts into one line, those that are not known too, so that none is taken for
// another; where none is known it says so once.
func each(texts ...string) string {
	if !slices.ContainsFunc(texts, func(t string) bool { return t != notStated }) {
		return notStated
	}
	return strings.Join(texts, ", ")
}

// size is a line's outside and wall, with its trade name where it has one.
func size(line *layout.Line) string {
	text := each(amount(&line.Outside), amount(&line.Wall))
	if nominal, known := line.Nominal.Get(); known {
		text += "; nominal " + string(nominal)
	}
	return text
}

func valueOf(f *report.Figure) string {
	switch {
	case f.Course != nil:
		return "drawn as a chart"
	case f.Value == nil:
		return strings.TrimSpace("not known " + f.Note)
	case f.Note != "":
		return f.Value.Text + ", " + f.Note
	}
	return f.Value.Text
}

func text(s string) paper.Cell   { return paper.Cell{Text: s} }
func strong(s string) paper.Cell { return paper.Cell{Text: s, Strong: true} }
func blank() paper.Cell          { return paper.Cell{Blank: true} }

// columns makes columns of titles with their shares of the width; the first heads its rows.
func columns(titles []string, shares ...float64) []paper.Column {
	var all []paper.Column
	for i, t := range titles {
		all = append(all, paper.Column{Title: t, Share: shares[i], Head: i == 0})
	}
	return all
}

// orNone is the table, or a sentence where it would have no rows.
func orNone(t *paper.Table, none string) paper.Block {
	if len(t.Rows) == 0 {
		return &paper.Para{Text: none}
	}
	return t
}

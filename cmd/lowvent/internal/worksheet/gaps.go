package worksheet

import (
	"cmp"
	"slices"
	"strings"

	"lowvent.example/cmd/lowvent/internal/ask"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
)

// gap is one thing that a layout does not state, with the questions that wait for it.
type gap struct {
	pointer   string
	what, how string
	waits     []wait
}

type wait struct {
	check string
	word  report.Signal
}

// gapsOf gathers what the questions wait for, each thing once. A question that is not
// known and names nothing is itself what is to be found out.
func gapsOf(findings []report.Finding) []gap {
	var gaps []gap
	for i := range findings {
		f, names := &findings[i], 0
		for _, part := range f.Parts {
			for _, m := range part.Missing {
				gaps = waiting(gaps, gap{pointer: m.Place.Pointer, what: m.What, how: m.Measure}, f)
				names++
			}
		}
		if f.Outcome == report.NotKnown && names == 0 {
			gaps = waiting(gaps, gap{pointer: f.Subject, what: f.Label, how: f.Asks}, f)
		}
	}
	return gaps
}

// waiting adds a question to what it waits for.
func waiting(gaps []gap, g gap, f *report.Finding) []gap {
	_, known := ask.AskedAt(g.pointer)
	i := slices.IndexFunc(gaps, func(each gap) bool {
		return each.pointer == g.pointer && (known || each.how == g.how)
	})
	if i < 0 {
		i, gaps = len(gaps), append(gaps, g)
	}
	if !slices.ContainsFunc(gaps[i].waits, func(w wait) bool { return w.check == f.Check }) {
		gaps[i].waits = append(gaps[i].waits, wait{f.Check, f.Word})
	}
	return gaps
}

// beside tells which questions wait, those first that matter most, and where in the file
// the answer stands.
func (g gap) beside() []string {
	waits := slices.Clone(g.waits)
	slices.SortStableFunc(waits, func(a, b wait) int { return cmp.Compare(b.word.Rank(), a.word.Rank()) })
	var told []string
	for i, w := range waits {
		if i > 0 && waits[i-1].word == w.word {
			told = append(told, w.check)
			continue
		}
		told = append(told, string(w.word)+" "+w.check)
	}
	lines := []string{"Waits: " + strings.Join(told, ", ")}
	if g.pointer != "" {
		lines = append(lines, "In the file: "+g.pointer)
	}
	return lines
}

// row is the blank for it, named as a part of the thing whose table it stands in.
func (g gap) row() row {
	asked, known := ask.AskedAt(g.pointer)
	r := row{label: g.what, how: g.how, beside: g.beside()}
	if known {
		r.asked = asked
		r.label = strings.TrimPrefix(ask.Title(g.pointer), ask.Title(thingOf(g.pointer))+", ")
	}
	return r
}

// thingOf is the thing that a pointer leads into: a thing of a list, or a part of the file.
func thingOf(pointer string) string {
	tokens := source.Split(pointer)
	of := ""
	for i, token := range tokens[:min(len(tokens), 2)] {
		if i == 0 || listed(tokens[0]) {
			of = source.Join(of, token)
		}
	}
	return of
}

// listed tells whether a part of the file is a list of things.
func listed(section string) bool {
	asked, _ := ask.AskedAt("/" + section)
	return asked.Form == layout.FormThings
}

// sheetAt is what the sheet is of that a pointer's blank stands on: a place that is gone
// through by itself, else a whole list; "" is the papers.
func sheetAt(pointer string) string {
	section, _, _ := strings.Cut(strings.TrimPrefix(pointer, "/"), "/")
	_, surveyed := ask.AskedAt(ask.SurveyAt(thingOf(pointer)))
	switch {
	case surveyed:
		return thingOf(pointer)
	case listed(section):
		return "/" + section
	}
	return ""
}

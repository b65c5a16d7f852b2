// Package worksheet makes the pages that somebody takes to the dwelling with a tape
// and a pencil: one blank for each key that "starter --ask" asks first, out of the same
// list. It is one HTML file that needs nothing else, made to be printed.
package worksheet

import (
	"fmt"
	"slices"
	"strings"

	"lowvent.example/cmd/lowvent/internal/ask"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/source"
)

// sheet is one page, or a few that belong together.
type sheet struct {
	letter string
	title  string
	about  string
	at     string // pointer of the thing, or of the list
	tables []table
	ticks  []tick // lists that can be complete here
}

// table is a table of blanks: one thing with all that is known of a value, or several
// things side by side.
type table struct {
	caption string
	rows    []row
	things  []string // names over the columns; nil for one thing
}

type row struct {
	code  string // "C4"
	label string
	asked ask.Asked
}

type tick struct{ word, meaning string }

// perPage is the number of keys from which each thing has a page of its own.
const perPage = 12

// sheets lays out the whole walk.
func sheets(w ask.Walk) []sheet {
	s := &setter{walk: w}
	s.papers()
	for _, part := range ask.Parts() {
		if part.Form == layout.FormThings {
			s.list("/" + part.Name)
		}
		if part.Name == "spaces" {
			for _, section := range ask.Walked() {
				s.list("/" + section)
			}
		}
	}
	s.place("Round the outside", "/outside")
	s.place("The whole dwelling", "/surveyedBy")
	return s.sheets
}

// setter sets one sheet after the other and gives them their letters.
type setter struct {
	walk   ask.Walk
	sheets []sheet
}

func (s *setter) add(one sheet) {
	one.letter = letters(len(s.sheets))
	n := 0
	for i := range one.tables {
		for j := range one.tables[i].rows {
			n++
			one.tables[i].rows[j].code = fmt.Sprintf("%s%d", one.letter, n)
		}
	}
	s.sheets = append(s.sheets, one)
}

// letters counts A, B … Z, AA, AB ….
func letters(n int) string {
	if n < 26 {
		return string(rune('A' + n))
	}
	return letters(n/26-1) + letters(n%26)
}

// papers is the first sheet: what is told of the dwelling as a whole.
func (s *setter) papers() {
	one := sheet{title: "The dwelling and its papers", at: ""}
	for _, part := range ask.Parts() {
		at := "/" + part.Name
		switch {
		case part.Name == "outside" || part.Name == "surveyedBy":
		case part.Form == layout.FormObject:
			if rows := s.rows(at); len(rows) > 0 {
				one.tables = append(one.tables, table{caption: capital(ask.Title(at)), rows: rows})
			}
		case part.Form != layout.FormThings:
			one.tables = append(one.tables, table{caption: capital(ask.Title(at)), rows: []row{{label: ask.Spaced(part.Name), asked: ask.Asked{Key: part, Template: at, First: true}}}})
		}
	}
	s.add(one)
}

func (s *setter) rows(at string) []row {
	var rows []row
	for _, k := range s.walk.Rows(at) {
		rows = append(rows, row{label: ask.Label(layout.Template(at), k), asked: k})
	}
	return rows
}

// list sets the sheets of a list: a page for each thing where there is much to tell of
// one, or lists of its own that can be complete, and one spare; else one page for several.
func (s *setter) list(at string) {
	names := s.walk.Names(at)
	rows := s.rows(at + "/" + spare)
	if len(rows) == 0 {
		return
	}
	if words, _ := s.walk.Surveys(at + "/" + spare); len(rows) <= perPage && len(words) == 0 {
		few := table{caption: capital(ask.Title(at)), rows: rows, things: columns(names)}
		s.add(sheet{title: capital(ask.Title(at)), about: ask.Describe(at), at: at, tables: append([]table{few}, s.inner(at+"/"+spare)...)})
		return
	}
	for _, name := range s.withSpare(at, names) {
		thing, title := at+"/"+name, ask.Title(at+"/"+name)
		if name == "" {
			thing = at + "/" + spare
			title = "another: " + strings.TrimSuffix(ask.Title(thing), " "+spare)
		}
		s.thing(thing, capital(title), ask.Describe(at))
	}
}

// withSpare adds a page without a name where there is no page yet, or where a thing of
// another kind has more to tell; the rest is done by copying.
func (s *setter) withSpare(at string, names []string) []string {
	for _, name := range names {
		if len(s.walk.Rows(at+"/"+name))+len(s.walk.Lists(at+"/"+name)) == len(s.walk.Rows(at+"/"+spare))+len(s.walk.Lists(at+"/"+spare)) {
			return names
		}
	}
	return append(slices.Clone(names), "")
}

// spare stands for a thing whose name nobody knows yet.
const spare = "x"

// columns are the names over the blanks of a page for several things.
func columns(names []string) []string {
	const least = 4
	names = slices.Clone(names)
	for len(names) < least {
		names = append(names, "")
	}
	return names
}

func (s *setter) thing(at, title, about string) {
	one := sheet{title: title, about: about, at: at, tables: []table{{caption: title, rows: s.rows(at)}}, ticks: s.ticks(at)}
	one.tables = append(one.tables, s.inner(at)...)
	s.add(one)
}

// inner sets the tables of the things within a thing: the vents of a locker.
func (s *setter) inner(at string) []table {
	var tables []table
	for _, list := range s.walk.Lists(at) {
		_, key := cut(list.Template)
		inside := at + "/" + key
		names := s.walk.Names(inside)
		rows := s.rows(inside + "/" + spare)
		if len(rows) == 0 { // what is told of it is only its name
			rows = []row{{label: ask.Spaced(key), asked: list}}
		}
		tables = append(tables, table{caption: capital(ask.Spaced(key)) + ": " + ask.Describe(list.Template), rows: rows, things: columns(names)})
	}
	return tables
}

// cut gives the last part of a template.
func cut(template string) (within, key string) {
	tokens := source.Split(template)
	return strings.TrimSuffix(template, "/"+tokens[len(tokens)-1]), tokens[len(tokens)-1]
}

func (s *setter) place(title, at string) {
	s.add(sheet{title: title, about: ask.Describe(at), at: at, tables: []table{{caption: title, rows: s.rows(at)}}, ticks: s.ticks(at)})
}

func (s *setter) ticks(at string) []tick {
	words, meanings := s.walk.Surveys(at)
	var ticks []tick
	for i, word := range words {
		ticks = append(ticks, tick{ask.Spaced(word), meanings[i]})
	}
	return ticks
}

func capital(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

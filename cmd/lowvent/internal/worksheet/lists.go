package worksheet

import (
	"slices"
	"strings"

	"lowvent.example/cmd/lowvent/internal/ask"
	"lowvent.example/schema/source"
)

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
	return ticksOf(s.walk.Surveys(at))
}

func ticksOf(words, meanings []string) []tick {
	var ticks []tick
	for i, word := range words {
		ticks = append(ticks, tick{ask.Spaced(word), meanings[i]})
	}
	return ticks
}

func capital(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

// Package worksheet makes the pages that somebody takes to the dwelling with a tape
// and a pencil: one blank for each key that "starter --ask" asks first, out of the same
// list. It is one HTML file that needs nothing else, made to be printed.
package worksheet

import (
	"fmt"

	"lowvent.example/cmd/lowvent/internal/ask"
	"lowvent.example/schema/layout"
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
	code   string // "C4"
	label  string
	asked  ask.Asked
	how    string   // where the contract does not tell
	beside []string // which questions wait, and where in the file it stands
}

type tick struct{ word, meaning string }

// The sheets that are of no list.
const (
	papersTitle  = "The dwelling and its papers"
	outsideTitle = "Round the outside"
	wholeTitle   = "The whole dwelling"
)

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
	s.place(outsideTitle, "/outside")
	s.place(wholeTitle, "/surveyedBy")
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
	one := sheet{title: papersTitle, at: ""}
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

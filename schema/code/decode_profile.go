package code

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"lowvent.example/schema/source"
	"lowvent.example/schema/unit"
)

var profileKeys = keys{
	must: []string{"format", "id", "title", "jurisdiction", "edition", "book", "scope", "entries", "notCovered"},
	may:  []string{"$schema", "note"},
}

func (d *decoder) profile(n *source.Node) *Profile {
	d.object(n, profileKeys)
	if m := n.Member("format"); m != nil {
		d.choice(m, []string{Format})
	}
	p := &Profile{
		ID: d.id(n), Title: d.text(n, "title"), Jurisdiction: d.text(n, "jurisdiction"), Edition: d.text(n, "edition"),
		Book: d.book(n), Scope: d.scope(n), NotCovered: d.texts(n, "notCovered"), Note: d.text(n, "note"),
	}
	d.text(n, "$schema")
	for _, e := range d.entries(n) {
		p.Entries = append(p.Entries, d.entry(e, p.Book))
	}
	return p
}

// entries gives the limits that a file states, each under the id of its term.
func (d *decoder) entries(n *source.Node) []*source.Node {
	m := n.Member("entries")
	if m == nil {
		return nil
	}
	if m.Kind != source.Object || len(m.Children) == 0 {
		d.fault(m.Place(), "there are no entries here", "an object with a limit under the id of each term", "")
		return nil
	}
	return m.Children
}

// id gives the profile's id, which must suit a command line.
func (d *decoder) id(n *source.Node) string {
	id := d.text(n, "id")
	if id != "" && !isID(id) {
		d.fault(n.Member("id").Place(), fmt.Sprintf("%q can't be an id", id), "words of the letters a to z and digits, joined by hyphens", `write it such as "my-code-2021"`)
	}
	return id
}

func isID(id string) bool {
	hyphen := true
	for _, r := range id {
		letter := r >= 'a' && r <= 'z' || r >= '0' && r <= '9'
		if !letter && (r != '-' || hyphen) {
			return false
		}
		hyphen = !letter
	}
	return !hyphen
}

func (d *decoder) book(n *source.Node) Book {
	m := n.Member("book")
	if m == nil {
		return 0
	}
	return Book(slices.Index(books[:], d.choice(m, books[1:])))
}

func (d *decoder) scope(n *source.Node) Scope {
	m := n.Member("scope")
	if m == nil || !d.object(m, keys{must: []string{"dwellings", "countries", "text"}, may: []string{"regions"}}) {
		return Scope{}
	}
	s := Scope{
		Dwellings: d.choices(m, "dwellings", 0, FactDwellingKind.Words()),
		Countries: d.texts(m, "countries"), Regions: d.texts(m, "regions"), Text: d.text(m, "text"),
	}
	for i, country := range s.Countries {
		if !isCountry(country) {
			d.fault(m.Member("countries").Children[i].Place(), fmt.Sprintf("%q is no country code", country), "two capital letters of ISO 3166-1", `write it such as "US"`)
		}
	}
	return s
}

func isCountry(code string) bool {
	return len(code) == 2 && strings.Trim(code, "ABCDEFGHIJKLMNOPQRSTUVWXYZ") == ""
}

// provenances lists what the entries of a book may be known by. Custom and own
// rules never stand in a code's file, nor the other way round.
func provenances(b Book) []string {
	switch b {
	case BookPractice:
		return []string{string(CommonPractice)}
	case BookOwn:
		return []string{string(OwnRule)}
	}
	return []string{string(Read), string(SecondHand), string(Memory)}
}

// entryKeys gives what an entry has: a citation where there is a text to cite,
// and none where there is none.
func entryKeys(b Book) keys {
	must, may := []string{"says", "rule", "provenance"}, []string{"from", "until", "note"}
	switch b {
	case BookProfile, BookComponent:
		return keys{append(must, "document"), append(may, "clause", "edition", "address", "row")}
	case BookPractice, BookOwn:
		return keys{must, may}
	}
	return keys{must, append(may, "document", "clause", "edition", "address", "row")}
}

func (d *decoder) entry(n *source.Node, b Book) Entry {
	if !d.object(n, entryKeys(b)) {
		return Entry{}
	}
	e := d.statement(n, b)
	if m := n.Member("provenance"); m != nil {
		e.Provenance = Provenance(d.choice(m, provenances(b)))
	}
	return e
}

// statement reads what every entry has, a published one and a local one.
func (d *decoder) statement(n *source.Node, b Book) Entry {
	e := Entry{
		Term: n.Key, Row: d.text(n, "row"), Says: d.text(n, "says"),
		Document: d.text(n, "document"), Clause: d.text(n, "clause"), Edition: d.text(n, "edition"), Address: d.text(n, "address"),
		From: d.date(n, "from"), Until: d.date(n, "until"), Note: d.text(n, "note"),
	}
	if !e.From.IsZero() && !e.Until.IsZero() && !e.From.Before(e.Until) {
		d.fault(n.Member("until").Place(), fmt.Sprintf("%s is not after %s", e.Until, e.From), `a day after "from"`, "")
	}
	if t := d.term(n, b); t != nil && n.Member("rule") != nil {
		e.Rule = d.rule(n.Member("rule"), t)
	}
	return e
}

// term gives the term that an entry answers, or nil with a fault.
func (d *decoder) term(n *source.Node, b Book) *Term {
	t := termByID(n.Key)
	switch {
	case t == nil:
		ids := termIDs(b)
		d.fault(n.KeyPlace(), fmt.Sprintf("%q is no term", n.Key), oneOfThese(ids), meant(n.Key, ids))
	case b != 0 && t.Book != b:
		d.fault(n.KeyPlace(), fmt.Sprintf("%q is a term of the book %q", n.Key, t.Book), fmt.Sprintf("a term of the book %q", b), "")
		return nil
	}
	return t
}

// termIDs lists the terms of a book, or of all books for no book.
func termIDs(b Book) []string {
	var ids []string
	for _, t := range Terms() {
		if t.Book == b || b == 0 {
			ids = append(ids, t.ID)
		}
	}
	return ids
}

func (d *decoder) date(n *source.Node, key string) unit.Date {
	text := d.text(n, key)
	if text == "" {
		return unit.Date{}
	}
	date, err := unit.ParseDate(text)
	var refused *unit.ParseError
	if errors.As(err, &refused) {
		d.fault(n.Member(key).Place(), fmt.Sprintf("%q is no date: %s", text, refused.Why), "", "")
	}
	return date
}

package main

import (
	"fmt"
	"strings"
	"testing"

	"lowvent.example/cmd/lowvent/internal/render/saying"
	"lowvent.example/schema/code"
	"lowvent.example/schema/report"
)

// TestDocsCodes holds docs/codes.md against the books of the program.
func TestDocsCodes(t *testing.T) { fresh(t, "docs/codes.md", codesDoc()) }

// shelf is one kind of book, as the document shows it.
type shelf struct {
	book         code.Book
	title, about string
}

func shelves() []shelf {
	return []shelf{
		{code.BookProfile, "Codes that can be chosen", "One is chosen for a run, in the file under `/where/code` or with `--code`. No figure of one is lent to another: where the chosen one is silent, the report says \"not covered\"."},
		{code.BookComponent, "Law on the thing itself", "It holds whatever code is chosen."},
		{code.BookPractice, "Common practice", "Customs of the trade, without a source. They can add a finding and never stand in for a code."},
		{code.BookOwn, "This program's own rules", "What a file must be like to be judged, and the owner's own wishes. They are no law anywhere."},
	}
}

func codesDoc() string {
	m := &markdown{}
	m.para("# The limits, and where they come from")
	m.WriteString(made)
	m.para("Every limit that a check may take, with the text that it comes from. How each is known is said beside it: *read* (the text of the law or its official page was seen), *second-hand* (somebody's account of the text was seen, not the text), *memory* (nobody saw it; it is printed as a question for the fitter and never judged), *common practice*, *own rule*. Later amendments were not checked unless it says so. Local codes and the licensed fitter decide.")
	m.para("`lowvent codes` lists the books; `lowvent codes show ID` prints one.")
	for _, s := range shelves() {
		shelfSection(m, s)
	}
	m.para("## A limit is wrong, or missing")
	m.para("%s", correction)
	return strings.TrimRight(m.String(), "\n") + "\n"
}

const correction = `Please propose a correction, with the source:

1. the id of the code and of the limit, as they stand above;
2. what the text says, in its own words: document, clause, edition, and the address or the page where you saw it;
3. what the entry says instead.

The entry stands in ` + "`schema/code/codes/<id>.json`" + `; the schema beside it tells its form. A text that you have before you is ` + "`read`" + `; an account of it is ` + "`second-hand`" + `; what you only recall is ` + "`memory`" + ` and will be asked, never judged. A published figure that looks wrong stays as it was published, and the entry's note says why it looks wrong. A figure of one code is no reason to fill a gap in another.`

func shelfSection(m *markdown, s shelf) {
	m.para("## %s", s.title)
	m.para("%s", s.about)
	books := booksOf(s.book)
	sideBySide(m, s.book, books)
	if s.book == code.BookProfile {
		disagreements(m, books)
	}
	for _, book := range books {
		bookSection(m, book)
	}
}

func booksOf(kind code.Book) []*code.Profile {
	var books []*code.Profile
	for _, p := range code.Profiles() {
		if p.Book == kind {
			books = append(books, p)
		}
	}
	return books
}

// sideBySide is a table of all terms of a kind of book and what each book answers.
func sideBySide(m *markdown, kind code.Book, books []*code.Profile) {
	head, rule := "| limit | asks |", "|---|---|"
	for _, book := range books {
		head, rule = head+" "+book.ID+" |", rule+"---|"
	}
	m.line("%s\n%s", head, rule)
	for _, t := range code.Terms() {
		if t.Book != kind {
			continue
		}
		row := fmt.Sprintf("| `%s` | %s |", t.ID, cell(t.Asks))
		for _, book := range books {
			row += " " + answerCell(t, book.Entry(t)) + " |"
		}
		m.line("%s", row)
	}
	m.line("")
}

// disagreements lists the limits to which codes give different answers.
func disagreements(m *markdown, books []*code.Profile) {
	m.para("### Where they disagree")
	m.para("Texts differ, and each may be right where it holds: a code weighs its figures against each other, a larger vent against a longer distance, a fixed cylinder against a removable one. So no figure is ever taken from one code into another, not even the stricter one, and a report names one code. What was found of each text, and where it contradicts another, stands row by row in [requirements.md](requirements.md).")
	for _, t := range code.Terms() {
		if answers := differing(t, books); len(answers) > 1 {
			m.line("- `%s`: %s", t.ID, strings.Join(answers, "; "))
		}
	}
	m.line("")
}

// differing gives the different answers to a term, each with the codes that give it.
func differing(t *code.Term, books []*code.Profile) []string {
	var answers []string
	by := map[string][]string{}
	for _, book := range books {
		if e := book.Entry(t); e != nil {
			words := cell(ruleWords(t, e))
			if by[words] == nil {
				answers = append(answers, words)
			}
			by[words] = append(by[words], book.ID)
		}
	}
	for i, words := range answers {
		answers[i] = words + " (" + strings.Join(by[words], ", ") + ")"
	}
	return answers
}

func answerCell(t *code.Term, e *code.Entry) string {
	switch {
	case e == nil:
		return "silent"
	case e.Provenance == code.Memory:
		return cell(ruleWords(t, e)) + " (**only remembered, never judged**)"
	}
	return cell(ruleWords(t, e)) + " (" + string(e.Provenance) + ")"
}

func bookSection(m *markdown, book *code.Profile) {
	m.para("### %s", book.ID)
	m.para("%s.", prose(book.Title))
	m.line("- law in: %s", prose(book.Jurisdiction))
	m.line("- edition: %s", prose(book.Edition))
	m.line("- scope: %s", prose(book.Scope.Text))
	m.line("- limits: %s", limitCounts(book))
	if book.Note != "" {
		m.line("- note: %s", prose(book.Note))
	}
	m.line("")
	for _, t := range code.Terms() {
		if e := book.Entry(t); e != nil {
			entrySection(m, t, e)
		}
	}
	if len(book.NotCovered) > 0 {
		m.para("What it does not answer here:")
		for _, each := range book.NotCovered {
			m.line("- %s", prose(each))
		}
		m.line("")
	}
}

func entrySection(m *markdown, t *code.Term, e *code.Entry) {
	m.para("**`%s`** %s", t.ID, prose(t.Asks))
	m.line("- says: %s", prose(e.Says))
	m.line("- rule: %s", prose(ruleWords(t, e)))
	m.line("- source: %s", prose(grounds(e)))
	if e.Address != "" {
		m.line("- seen at: %s", prose(e.Address))
	}
	if use := firstUse(e); use != "" {
		m.line("- for: %s", use)
	}
	if e.Note != "" {
		m.line("- note: %s", prose(e.Note))
	}
	m.line("")
}

// grounds tells what an entry rests on and how that is known.
func grounds(e *code.Entry) string {
	return strings.TrimPrefix(strings.TrimSpace(e.Cite()+edition(e))+"; "+saying.Provenance(report.Provenance(e.Provenance)), "; ")
}

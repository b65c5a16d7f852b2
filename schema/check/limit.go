package check

import (
	"slices"
	"strings"

	"lowvent.example/schema/code"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

// Need is a limit that a code states for this subject. It has a value only when
// the sheet is not stuck.
type Need[Q unit.Quantity] struct {
	at        Q
	exclusive bool // the figure itself is outside
	source    citation
}

// At is the limit's value, for a mend or a further step; 0 on a stuck sheet.
func (n Need[Q]) At() Q { return n.at }

// Words is a set of words that a code allows for this subject.
type Words struct {
	allowed []string
	source  citation
}

// Has tells whether the word is among those that the code allows.
func (w Words) Has(word string) bool { return slices.Contains(w.allowed, word) }

// String lists the words: "open-air or lockers".
func (w Words) String() string { return strings.Join(w.allowed, " or ") }

// Duty is a thing that a code asks for, whatever its size.
type Duty struct{ source citation }

// Limit takes a limit under the symbol that the working shows. A code that is
// silent, or a figure that is only remembered, leaves the sheet stuck: no number
// comes from elsewhere.
func Limit[Q unit.Quantity](s *Sheet, symbol string, l code.Limit[Q], of Facts) Need[Q] {
	answer, ok := s.ask(l.Term, of)
	if !ok {
		return Need[Q]{}
	}
	n := Need[Q]{at: Q(answer.SI), exclusive: answer.Exclusive, source: cite(l.Term, answer)}
	s.limitLine(symbol, answer, report.Quantity(n.at.Kind(), answer.SI))
	return n
}

// AllowedWords takes the words that a code allows.
func AllowedWords(s *Sheet, l code.WordLimit, of Facts) Words {
	answer, ok := s.ask(l.Term, of)
	if !ok {
		return Words{}
	}
	s.limitLine("", answer, report.Words(Words{allowed: answer.Words}.String()))
	return Words{allowed: answer.Words, source: cite(l.Term, answer)}
}

// Asked takes a duty.
func Asked(s *Sheet, l code.DutyLimit, of Facts) Duty {
	answer, ok := s.ask(l.Term, of)
	if !ok {
		return Duty{}
	}
	s.limitLine("", answer, report.Words(answer.Text))
	return Duty{source: cite(l.Term, answer)}
}

func (s *Sheet) ask(term *code.Term, of Facts) (code.Answer, bool) {
	answer := s.run.codes.Ask(term, facts{sheet: s, of: of})
	switch answer.State {
	case code.Answered:
		s.notes = append(s.notes, term)
		return answer, true
	case code.Silent:
		s.block(report.NotCovered, term.Asks, citation{})
	case code.Remembered:
		s.block(report.AskFitter, term.Asks, cite(term, answer))
	case code.NotAsked:
		s.excuse(answer.Text, cite(term, answer))
		s.notes = append(s.notes, term)
	case code.Open:
		if len(s.missing) == 0 {
			panic("check: rule of " + term.ID + " is open, and the sheet misses nothing")
		}
	}
	return answer, false
}

// excuse notes that the code asks nothing of this subject, and where it says so.
func (s *Sheet) excuse(why string, from citation) { s.exempt, s.why, s.source = true, why, from }

func (s *Sheet) block(reason report.Reason, why string, from citation) {
	if s.blocked == "" && !s.exempt {
		s.blocked, s.why, s.source = reason, why, from
	}
}

func (s *Sheet) limitLine(symbol string, a code.Answer, value *report.Amount) {
	if !s.run.options.Working {
		return
	}
	steps := a.Steps
	if _, right, found := strings.Cut(steps, " = "); found {
		steps = symbol + " = " + right // under the symbol by which the clause knows the limit
	}
	s.lines = append(s.lines, report.Line{Role: "limit", Symbol: symbol, What: a.Text, Formula: steps,
		Source: a.Entry.Cite(), Value: value})
}

func cite(t *code.Term, a code.Answer) citation {
	return citation{term: t, entry: a.Entry, rule: a.Text}
}

// Against makes a limit of a value that was taken from the file or computed: a
// plate's range, the owner's wish, the load on a regulator. The duty is the book's
// word that the value has to be held.
func Against[Q unit.Quantity](d Duty, value Q) Need[Q] { return Need[Q]{at: value, source: d.source} }

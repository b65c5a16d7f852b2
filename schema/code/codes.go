package code

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"lowvent.example/schema/source"
	"lowvent.example/schema/unit"
)

// Codes is the books that one run is judged by. A book that is nil is silent.
type Codes struct {
	Profile   *Profile // the code chosen for the dwelling; nil when none was
	Component *Profile // the law on the thing itself
	Practice  *Profile // common practice, no source
	Own       *Profile // the rules of this program

	local *Overlay // over the profile; nil when there is none that fits it
}

// Use gives the built-in books with the built-in profile of that id; "" means
// that no code was chosen. The error names the profile that was probably meant
// and lists all of them.
func Use(profileID string) (Codes, error) {
	var c Codes
	for _, id := range alwaysAsked {
		c = c.With(builtIn()[id]())
	}
	if profileID == "" {
		return c, nil
	}
	read, known := builtIn()[profileID]
	if !known || slices.Contains(alwaysAsked, profileID) {
		return Codes{}, unknownProfile(profileID)
	}
	return c.With(read()), nil
}

// alwaysAsked names the books that every run is judged by; no other built-in book is
// of their kind.
var alwaysAsked = []string{"component-law", "common-practice", "own-rules"}

func unknownProfile(id string) error {
	if slices.Contains(alwaysAsked, id) {
		return fmt.Errorf("there is no code profile %q. That file is asked in every run and can't be chosen. The profiles are: %s", id, strings.Join(choosable(), ", "))
	}
	hint := ""
	if near := source.Nearest(id, choosable()); near != "" {
		hint = fmt.Sprintf(" %q may be meant.", near)
	}
	return fmt.Errorf("there is no code profile %q.%s The profiles are: %s", id, hint, strings.Join(choosable(), ", "))
}

// choosable lists the ids among which a dwelling's code is chosen.
func choosable() []string {
	return slices.DeleteFunc(slices.Sorted(maps.Keys(builtIn())), func(id string) bool { return slices.Contains(alwaysAsked, id) })
}

// Ask puts a term to its book. The facts may be nil, which states nothing. The
// dates of an entry are held against FactFirstUsed: before its first day and
// from its last day on, the book is silent.
func (c Codes) Ask(t *Term, f Facts) Answer {
	book := c.book(t.Book)
	if book == nil {
		return noAnswer(t, Silent, nil, "no code was chosen that could answer this")
	}
	published := book.ask(t, f)
	if t.Book == BookProfile && c.local != nil {
		return c.local.over(t, f, published)
	}
	return published
}

func (p *Profile) ask(t *Term, f Facts) Answer {
	e := p.Entry(t)
	switch {
	case e == nil:
		return noAnswer(t, Silent, nil, fmt.Sprintf("%s has no text for this", p.Title))
	case e.Provenance == Memory:
		return noAnswer(t, Remembered, e, fmt.Sprintf("%s is only remembered, nobody read it: a question for the fitter", e.Cite()))
	}
	return e.asked(t, f)
}

// asked puts the term to the entry, whose dates come first.
func (e *Entry) asked(t *Term, f Facts) Answer {
	o, inForce := e.inForce(f)
	if inForce {
		o = e.Rule.weigh(t, f)
	}
	return e.answer(t, o)
}

// book gives the book of that kind, or nil.
func (c Codes) book(b Book) *Profile {
	switch b {
	case BookProfile:
		return c.Profile
	case BookComponent:
		return c.Component
	case BookPractice:
		return c.Practice
	case BookOwn:
		return c.Own
	}
	return nil
}

// inForce tells whether the entry's dates take in the day of first use; if not,
// the outcome says why.
func (e *Entry) inForce(f Facts) (outcome, bool) {
	if e.From.IsZero() && e.Until.IsZero() {
		return outcome{}, true
	}
	first, known := date(f, FactFirstUsed)
	tooOld, clearFrom := false, true
	if !e.From.IsZero() {
		tooOld, clearFrom = before(first, e.From)
	}
	inTime, clearUntil := true, true
	if !e.Until.IsZero() {
		inTime, clearUntil = before(first, e.Until)
	}
	switch {
	case !known || !clearFrom || !clearUntil:
		return needs(FactFirstUsed), false
	case tooOld:
		return outcome{state: Silent, text: fmt.Sprintf("the text is for what was first used on %s or later", e.From)}, false
	case !inTime:
		return outcome{state: Silent, text: fmt.Sprintf("the text is for what was first used before %s", e.Until)}, false
	}
	return outcome{}, true
}

// before tells whether d lies before the day on which o begins; it is not clear
// when d is a month or a year that has days on either side of it.
func before(d, o unit.Date) (is, clear bool) {
	o = o.First()
	if d.Before(o) {
		return true, true
	}
	return false, d.First().Compare(o) >= 0
}

// answer turns the outcome of the entry's rule into an Answer. A figure that is
// not finite, which only absurd facts can make, counts as open.
func (e *Entry) answer(t *Term, o outcome) Answer {
	if o.state == Answered && (math.IsNaN(o.si) || math.IsInf(o.si, 0)) {
		o = needs(e.Rule.Facts()...)
	}
	if o.state != Answered {
		a := noAnswer(t, o.state, e, o.text)
		a.Missing = slices.Compact(slices.Sorted(slices.Values(o.missing)))
		return a
	}
	a := Answer{State: Answered, SI: o.si, Exclusive: o.exclusive, Words: o.words, Entry: e, Text: o.text}
	if t.Sense == Duty {
		a.Text = e.Says
	}
	if t.numeric() {
		a.Steps = t.symbol() + " = " + o.expr
		a.Symbols = append([]Symbol{{t.symbol(), t.Kind, o.si}}, distinct(o.symbols)...)
	}
	return a
}

// distinct drops symbols that were already listed.
func distinct(symbols []Symbol) []Symbol {
	var kept []Symbol
	for _, s := range symbols {
		if !slices.Contains(kept, s) {
			kept = append(kept, s)
		}
	}
	return kept
}

// With gives a copy in which p stands as the book that it is. A nil p changes
// nothing.
func (c Codes) With(p *Profile) Codes {
	if p == nil {
		return c
	}
	switch p.Book {
	case BookProfile:
		c.Profile = p
	case BookComponent:
		c.Component = p
	case BookPractice:
		c.Practice = p
	case BookOwn:
		c.Own = p
	}
	return c
}

// Silence gives a copy in which no book answers the term.
func (c Codes) Silence(termID string) Codes {
	return c.each(func(p *Profile) *Profile {
		return p.altered(slices.DeleteFunc(slices.Clone(p.Entries), func(e Entry) bool { return e.Term == termID }))
	})
}

// Remember gives a copy in which the term's entry, if there is one, is known
// from memory only.
func (c Codes) Remember(termID string) Codes {
	return c.each(func(p *Profile) *Profile {
		entries := slices.Clone(p.Entries)
		for i := range entries {
			if entries[i].Term == termID {
				entries[i].Provenance = Memory
			}
		}
		return p.altered(entries)
	})
}

// each applies a change to every book that there is.
func (c Codes) each(change func(*Profile) *Profile) Codes {
	for _, book := range []**Profile{&c.Profile, &c.Component, &c.Practice, &c.Own} {
		if *book != nil {
			*book = change(*book)
		}
	}
	return c
}

package code

import (
	"math"
	"strings"

	"lowvent.example/schema/unit"
)

// State says how far a term was answered.
type State uint8

// The states. Only Answered carries a figure, words or a duty.
const (
	Silent     State = iota // the book has no text for this, or none for this case
	Remembered              // there is an entry, but nobody read the text: never judged
	NotAsked                // the text says that this case is exempt
	Open                    // a fact that the rule needs is not known
	Answered
)

// String gives "silent", "remembered", "not asked", "open" or "answered".
func (s State) String() string {
	return wordAt([]string{"silent", "remembered", "not asked", "open", "answered"}, int(s))
}

// Answer is what the codes say to a term in one case.
type Answer struct {
	State State

	// SI is the limit in the SI unit of the term's kind. It is not a number in
	// every state but Answered, so that no comparison can hold by a slip; it is
	// 0 for words and duties.
	SI float64

	// Exclusive tells that the figure itself is outside the limit: the text says
	// "less than" or "more than".
	Exclusive bool

	Words   []string // for Allowed, when Answered: the words allowed, perhaps none
	Entry   *Entry   // where it stands; nil only when the book has no entry. Not to be changed
	Missing []Fact   // when Open: what to find out, sorted

	// Text is the rule in words with its numbers in both systems of units, such
	// as "half of 2 % of the locker's floor area of 0.3 m2 (3.23 ft2)"; in the
	// other states it says why there is no limit.
	Text string

	// Steps is the working as one assignment in Go syntax, such as
	// "A_need = 0.02 * A_floor / 2", with bare numbers in SI. It uses only
	// + * / and the functions max and min. "" for words and duties.
	Steps   string
	Symbols []Symbol // every name in Steps, the limit first
}

// Symbol is a name in a line of working and what it stands for.
type Symbol struct {
	Name string
	Kind unit.Kind
	SI   float64
}

// outcome is what a rule makes of the facts; of the states it uses Silent,
// NotAsked, Open and Answered.
type outcome struct {
	state     State
	si        float64
	exclusive bool
	words     []string
	missing   []Fact
	text      string
	expr      string // right-hand side of the working
	symbols   []Symbol
}

// needs is the outcome for facts that are not known.
func needs(missing ...Fact) outcome {
	phrases := make([]string, len(missing))
	for i, f := range missing {
		phrases[i] = f.Phrase()
	}
	return outcome{state: Open, missing: missing, text: "this depends on " + joined(phrases, "and")}
}

// joined lists texts as a sentence would: "a, b and c".
func joined(texts []string, last string) string {
	if len(texts) < 2 {
		return strings.Join(texts, "")
	}
	return strings.Join(texts[:len(texts)-1], ", ") + " " + last + " " + texts[len(texts)-1]
}

// noAnswer is an Answer without a limit.
func noAnswer(t *Term, s State, e *Entry, text string) Answer {
	a := Answer{State: s, Entry: e, Text: text}
	if t.numeric() {
		a.SI = math.NaN()
	}
	return a
}

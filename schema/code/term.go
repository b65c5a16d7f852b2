package code

import (
	"cmp"
	"slices"
	"strings"
	"sync"

	"lowvent.example/schema/unit"
)

// Book says which kind of text may answer a term. A term has one book for good,
// so a figure can't wander from one kind of text to another.
type Book uint8

// The books. The zero Book is no book.
const (
	BookProfile   Book = iota + 1 // the code chosen for the dwelling
	BookComponent                 // the law on the thing itself, such as how far a cylinder may be filled
	BookPractice                  // common practice of the trade; no source
	BookOwn                       // the rules of this program
)

// books holds the words for the books as files write them.
var books = [...]string{"", "profile", "component", "practice", "own"}

// String gives the word that a file uses: "profile", "component", "practice"
// or "own".
func (b Book) String() string { return wordAt(books[:], int(b)) }

// Sense says how a limit is held against what was found.
type Sense uint8

// The senses. The zero Sense is none.
const (
	Least   Sense = iota + 1 // within when found ≥ limit
	Most                     // within when found ≤ limit
	Allowed                  // within when the word found is one of the limit's words
	Duty                     // the code asks for the thing at all
)

// String gives "least", "most", "allowed" or "duty".
func (s Sense) String() string {
	return wordAt([]string{"", "least", "most", "allowed", "duty"}, int(s))
}

func wordAt(words []string, i int) string {
	if i >= len(words) {
		return ""
	}
	return words[i]
}

// Term is one question that a code may answer. Terms are compared by address
// and never change.
type Term struct {
	ID    string    // permanent, such as "locker.low-vent-area"
	Kind  unit.Kind // of the figure; 0 for words and duties
	Sense Sense
	Book  Book
	Asks  string   // the question, ending in "?"
	Facts []Fact   // about the subject, that a rule for this term may use; facts of the dwelling are always allowed
	Words []string // for Allowed: every word that a rule may name
}

// Limit is the handle of a term that is answered by a figure of type Q.
type Limit[Q unit.Quantity] struct{ *Term }

// WordLimit is the handle of a term that is answered by a set of words.
type WordLimit struct{ *Term }

// DutyLimit is the handle of a term that is answered by "this is asked for".
type DutyLimit struct{ *Term }

// Terms lists every term of the program, sorted by ID.
func Terms() []*Term {
	all := slices.Clone(declared)
	slices.SortFunc(all, func(a, b *Term) int { return cmp.Compare(a.ID, b.ID) })
	return all
}

// declared grows only while package variables are initialised.
var declared []*Term

func declare(t Term) *Term {
	declared = append(declared, &t)
	return &t
}

func least[Q unit.Quantity](b Book, id, asks string, facts ...Fact) Limit[Q] {
	var q Q
	return Limit[Q]{declare(Term{ID: id, Kind: q.Kind(), Sense: Least, Book: b, Asks: asks, Facts: facts})}
}

func most[Q unit.Quantity](b Book, id, asks string, facts ...Fact) Limit[Q] {
	var q Q
	return Limit[Q]{declare(Term{ID: id, Kind: q.Kind(), Sense: Most, Book: b, Asks: asks, Facts: facts})}
}

func allowed(b Book, id, asks string, words []string, facts ...Fact) WordLimit {
	return WordLimit{declare(Term{ID: id, Sense: Allowed, Book: b, Asks: asks, Facts: facts, Words: words})}
}

func duty(b Book, id, asks string, facts ...Fact) DutyLimit {
	return DutyLimit{declare(Term{ID: id, Sense: Duty, Book: b, Asks: asks, Facts: facts})}
}

// numeric tells whether the term is answered by a figure.
func (t *Term) numeric() bool { return t.Sense == Least || t.Sense == Most }

// mayUse tells whether a rule for the term may read the fact.
func (t *Term) mayUse(f Fact) bool {
	return strings.HasPrefix(string(f), "dwelling.") || slices.Contains(t.Facts, f)
}

// usable lists the facts that a rule for the term may read, for messages.
func (t *Term) usable() []string {
	var names []string
	for _, f := range EveryFact() {
		if t.mayUse(f) {
			names = append(names, string(f))
		}
	}
	return names
}

// termByID gives the term of that ID, or nil.
func termByID(id string) *Term { return termsByID()[id] }

var termsByID = sync.OnceValue(func() map[string]*Term {
	all := make(map[string]*Term, len(declared))
	for _, t := range declared {
		all[t.ID] = t
	}
	return all
})

// symbol names the limit in a line of working: "A_need" for a least area,
// "m_most" for a most mass.
func (t *Term) symbol() string {
	if t.Sense == Most {
		return letter(t.Kind) + "_most"
	}
	return letter(t.Kind) + "_need"
}

// letter gives the usual symbol of a kind (ISO 80000 where it has one).
func letter(k unit.Kind) string {
	switch k {
	case unit.KindLength:
		return "L"
	case unit.KindArea:
		return "A"
	case unit.KindVolume:
		return "V"
	case unit.KindMass, unit.KindPropaneMass, unit.KindWaterMass:
		return "m"
	case unit.KindForce:
		return "F"
	case unit.KindGaugePressure, unit.KindAbsolutePressure:
		return "p"
	case unit.KindTemperature, unit.KindTemperatureDifference:
		return "T"
	case unit.KindPower, unit.KindGrossPower, unit.KindNetPower:
		return "P"
	case unit.KindDuration:
		return "t"
	case unit.KindCount:
		return "n"
	}
	return "x"
}

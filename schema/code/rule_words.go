package code

import "slices"

// oneOf is a set of words, of which the one found must be one:
// {"oneOf": ["open-air", "lockers"]}.
type oneOf struct{ words []string }

func (r oneOf) String() string { return joined(r.words, "or") }

func (oneOf) Facts() []Fact { return nil }

func (r oneOf) weigh(*Term, Facts) outcome {
	return outcome{state: Answered, words: slices.Clone(r.words), text: r.String()}
}

// asked is a plain duty: {"asked": true}.
type asked struct{}

func (asked) String() string { return "asked for" }

func (asked) Facts() []Fact { return nil }

func (asked) weigh(*Term, Facts) outcome { return outcome{state: Answered} }

package unit

import "strings"

// join tells what ties the two numbers of a text together.
type join uint8

const (
	joinNone  join = iota // one number
	joinSlack             // a value ± a tolerance in a unit
	joinShare             // a value ± a share of it in per cent
	joinRange             // from one value to another
)

// amount is a signed number with its unit, or a compound of two such.
type amount struct {
	negative bool
	n        number
	unit     *spelling
	extra    number    // the smaller part of a compound
	small    *spelling // its unit, nil when there is no such part
}

// written is a text taken apart.
type written struct {
	first  amount
	join   join
	second amount // the tolerance, the share or the end of the range
}

// scan takes text apart by the kind's grammar.
func scan(k *kindInfo, text string) (written, *fault) {
	var w written
	first, rest, bad := scanAmount(k, skipSpace(text))
	w.first = first
	if bad != nil {
		return w, bad
	}
	tail := skipSpace(rest)
	if tail == "" {
		return w, nil
	}
	if after, ok := cutPlusMinus(tail); ok {
		return scanTolerance(k, w, skipSpace(after))
	}
	if after, ok := strings.CutPrefix(tail, "to"); ok && tail != rest && skipSpace(after) != after {
		return scanRange(k, w, skipSpace(after))
	}
	return w, &fault{why: whyTrailing, at: tail}
}

// scanAmount reads a sign, a number, a unit and, where the kind has compounds,
// the second part of one.
func scanAmount(k *kindInfo, text string) (a amount, rest string, bad *fault) {
	a.negative, rest = cutSign(text)
	from := rest
	var why string
	if a.n, rest, why = scanNumber(rest); why != "" {
		return a, rest, &fault{why: why, at: from}
	}
	if a.unit, rest, bad = scanUnit(k.units, rest); bad != nil {
		return a, rest, bad
	}
	if a.unit.name != k.pair.big || a.n.fraction() || a.n.decimals != "" {
		return a, rest, nil
	}
	return scanSmall(k, a, rest)
}

// scanSmall reads the inches after the feet, if there are any.
func scanSmall(k *kindInfo, a amount, rest string) (amount, string, *fault) {
	next := skipSpace(rest)
	if next == rest || next == "" || next[0] != '.' && !isDigit(next[0]) {
		return a, rest, nil
	}
	n, after, why := scanNumber(next)
	if why != "" {
		return a, after, &fault{why: why, at: next}
	}
	unit, after, bad := scanUnit(k.units, after)
	if bad != nil {
		return a, after, bad
	}
	if unit.name != k.pair.small {
		return a, after, &fault{why: whyCompound, at: next}
	}
	if top, bottom, ok := n.parts(); ok && top >= k.pair.per*bottom {
		return a, after, &fault{why: whyCarry, at: next}
	}
	a.extra, a.small = n, unit
	return a, after, nil
}

// scanTolerance reads what stands after "±": a number in a unit of the kind's
// tolerance, or a share in per cent.
func scanTolerance(k *kindInfo, w written, text string) (written, *fault) {
	if negative, rest := cutSign(text); negative || rest != text {
		return w, &fault{why: whySignedSlack, at: text}
	}
	n, rest, why := scanNumber(text)
	if why != "" {
		return w, &fault{why: why, at: text}
	}
	w.second.n = n
	if word, after := unitWord(skipSpace(rest)); word == "%" && !k.alike {
		if !k.relative {
			return w, &fault{why: whyNoShare, at: word}
		}
		w.join = joinShare
		return w, atEnd(after)
	}
	w.join = joinSlack
	units := k.units
	if k.slack != nil {
		units = k.slack
	}
	unit, after, bad := scanUnit(units, rest)
	if bad != nil {
		return w, bad
	}
	if k.alike && unit != w.first.unit {
		return w, &fault{why: whyAlike, at: text}
	}
	w.second.unit = unit
	return w, atEnd(after)
}

// scanRange reads the value after "to".
func scanRange(k *kindInfo, w written, text string) (written, *fault) {
	second, rest, bad := scanAmount(k, text)
	if bad != nil {
		return w, bad
	}
	if k.alike && second.unit != w.first.unit {
		return w, &fault{why: whyAlike, at: text}
	}
	w.join, w.second = joinRange, second
	return w, atEnd(rest)
}

// scanUnit reads the unit after a number, over spaces.
func scanUnit(units []spelling, text string) (*spelling, string, *fault) {
	word, rest := unitWord(skipSpace(text))
	if s := find(units, word); s != nil {
		if word == "" {
			return s, text, nil // a plain number leaves the spaces to what follows
		}
		return s, rest, nil
	}
	if word == "" {
		return nil, rest, &fault{why: whyNoUnit, at: text}
	}
	return nil, rest, &fault{why: whyUnit, at: word}
}

// unitWord splits a unit off the start of text: all up to a space, a plus or
// a plus-minus. A digit or "to" begins something else.
func unitWord(text string) (word, rest string) {
	for i, r := range text {
		if isSpace(r) || r == '+' || r == '±' || i == 0 && r < 0x80 && isDigit(byte(r)) {
			return plainWord(text[:i], text)
		}
	}
	return plainWord(text, text)
}

// plainWord keeps "to" from being taken for the unit of a plain number.
func plainWord(word, text string) (string, string) {
	if word == "to" {
		return "", text
	}
	return word, text[len(word):]
}

// atEnd is a fault unless only spaces are left.
func atEnd(text string) *fault {
	if tail := skipSpace(text); tail != "" {
		return &fault{why: whyTrailing, at: tail}
	}
	return nil
}

// cutSign takes one sign off the start of text.
func cutSign(text string) (negative bool, rest string) {
	if after, ok := strings.CutPrefix(text, "-"); ok {
		return true, after
	}
	if after, ok := strings.CutPrefix(text, "−"); ok {
		return true, after
	}
	if after, ok := strings.CutPrefix(text, "+"); ok {
		return false, after
	}
	return false, text
}

// cutPlusMinus takes a plus-minus, in any of its spellings, off the start.
func cutPlusMinus(text string) (rest string, ok bool) {
	for _, sign := range [...]string{"±", "+/-", "+-"} {
		if rest, ok = strings.CutPrefix(text, sign); ok {
			return rest, true
		}
	}
	return text, false
}

// skipSpace drops leading spaces.
func skipSpace(text string) string {
	for i, r := range text {
		if !isSpace(r) {
			return text[i:]
		}
	}
	return ""
}

// isSpace tells whether r is a space within a text: the ordinary one, or one
// of the fixed ones that typesetting puts between a number and its unit.
func isSpace(r rune) bool {
	return r == ' ' || r == '\u00a0' || r == '\u2009' || r == '\u202f'
}

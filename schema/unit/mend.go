package unit

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// mended gives a text near the refused one that the kind takes, or "". It
// guesses spellings, never amounts: nothing is offered for "1,200 mm", "5 gal"
// or "3 mW", which could mean two things.
func mended(k Kind, text string) string {
	for _, c := range []string{respelled(k, text), respelled(k, spread(k, text)), swapped(text)} {
		if c == "" || c == text {
			continue
		}
		if _, bad := read(k, c); bad == nil {
			return c
		}
	}
	return ""
}

// respelled replaces commas, marks, fractions and words by what is accepted.
func respelled(k Kind, text string) string {
	text = pointed(text)
	for from, to := range pairs(vulgarSpelling) {
		text = strings.ReplaceAll(text, from, " "+to)
	}
	for from, to := range pairs(markSpelling) {
		text = strings.ReplaceAll(text, from, to)
	}
	text = oneSpaced(text)
	for from, to := range pairs(phraseSpelling) {
		text = replaceFold(text, from, to)
	}
	return oneSpaced(reworded(k, unhyphened(text)))
}

// oneSpaced leaves single spaces between the words of a text and none about it.
func oneSpaced(text string) string { return strings.Join(strings.Fields(text), " ") }

// pairs walks a list of from, to, from, to.
func pairs(list []string) func(yield func(string, string) bool) {
	return func(yield func(string, string) bool) {
		for p := range slices.Chunk(list, 2) {
			if !yield(p[0], p[1]) {
				return
			}
		}
	}
}

// pointed turns a decimal comma into a point, unless it could part thousands.
func pointed(text string) string {
	before, after, found := strings.Cut(text, ",")
	run, _ := digitRun(after)
	if !found || len(run) == 3 || run == "" || strings.ContainsAny(after, ",") || strings.Contains(before, ".") {
		return text
	}
	return before + "." + after
}

// unhyphened turns the dash of "1-1/2" into a space.
func unhyphened(text string) string {
	whole, fraction, found := strings.Cut(text, "-")
	over, stroke := digitRun(fraction)
	if _, left := digitRun(whole); found && left == "" && over != "" && startsStroke(stroke) {
		return whole + " " + fraction
	}
	return text
}

// replaceFold replaces a phrase in whatever size of letters it is written.
func replaceFold(text, from, to string) string {
	low := strings.ToLower(text)
	if at := strings.Index(low, from); at >= 0 && len(low) == len(text) {
		return text[:at] + to + text[at+len(from):]
	}
	return text
}

// reworded replaces each word that is no unit of the kind by the nearest.
func reworded(k Kind, text string) string {
	var b strings.Builder
	for rest := text; rest != ""; {
		r, size := utf8.DecodeRuneInString(rest)
		if !unicode.IsLetter(r) && r != '°' && r != '%' {
			b.WriteString(rest[:size])
			rest = rest[size:]
			continue
		}
		var word string
		word, rest = unitWord(rest)
		if word == "" { // "to" stays
			word, rest = rest[:2], rest[2:]
		}
		if better := nearest(k, word); better != word {
			word = " " + better
		}
		b.WriteString(word)
	}
	return b.String()
}

// nearest gives the unit of the kind, or of its tolerance, that word probably
// was meant to spell, else word.
func nearest(k Kind, word string) string {
	info := k.info()
	for _, units := range [][]spelling{info.units, info.slack} {
		if find(units, word) != nil {
			return word
		}
	}
	low := strings.TrimSuffix(strings.ToLower(word), ".")
	for from, to := range pairs(wordSpelling) {
		if low == from && find(info.units, to) != nil {
			return to
		}
	}
	for _, s := range info.units {
		if strings.ToLower(s.name) == low && !onlyLetterSize(k, word) {
			return s.name
		}
	}
	return word
}

// spread gives the unit at the end of "1.30 to 1.34 m" or "1.32 ± 0.02 m" to
// the first number as well. Not for a ratio: "0.5 to 70 %" could mean 50 %.
func spread(k Kind, text string) string {
	first, second, found := strings.Cut(text, "±")
	sign := " ± "
	if !found {
		first, second, found = strings.Cut(text, " to ")
		sign = " to "
	}
	_, rest, why := scanNumber(skipSpace(second))
	word, _ := unitWord(skipSpace(rest))
	if k.info().alike || !found || why != "" || word == "" {
		return ""
	}
	return strings.TrimSpace(first) + " " + word + sign + strings.TrimSpace(second)
}

// swapped turns a range round.
func swapped(text string) string {
	first, second, found := strings.Cut(text, " to ")
	if !found {
		return ""
	}
	return strings.TrimSpace(second) + " to " + strings.TrimSpace(first)
}

package letter

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// unknown stands for what the letters lack and no fallback is written for. It can be
// seen, as the empty box of a missing sign can't be told from a box to tick.
const unknown = "?"

// fallbacks are the characters that the letters lack and that texts here are written
// with, or that people's keyboards make, each with what is printed in its place. A
// raised or lowered letter is told by its mark, so that no formula changes its meaning.
var fallbacks = map[rune]string{
	'\t': " ", '\n': " ", '\r': " ", '\u2028': " ", '\u2029': " ",
	'\u2002': " ", '\u2003': " ", '\u2007': "\u00a0", '\u2008': " ", '\u2009': "\u00a0", '\u200a': "\u00a0", '\u202f': "\u00a0",
	'\u00ad': "", '\u200b': "", '\u2060': "", '\ufeff': "", '\ufe0e': "", '\ufe0f': "", // nothing is seen of them anywhere
	'‐': "-", '‑': "-", '‟': "“", '⋅': "·", '⇒': "→", '⌀': "Ø", '∅': "Ø", '☐': "[ ]",
	'ₐ': "_a", 'ₑ': "_e", 'ₕ': "_h", 'ᵢ': "_i", 'ⱼ': "_j", 'ₖ': "_k", 'ₗ': "_l", 'ₘ': "_m", 'ₒ': "_o",
	'ₚ': "_p", 'ᵣ': "_r", 'ₛ': "_s", 'ₜ': "_t", 'ᵤ': "_u", 'ᵥ': "_v", 'ₓ': "_x",
	'ᵃ': "^a", 'ᵇ': "^b", 'ᶜ': "^c", 'ᵈ': "^d", 'ⁱ': "^i", 'ᵏ': "^k", 'ᵐ': "^m", 'ᵖ': "^p", 'ᵗ': "^t", 'ˣ': "^x",
	'⅓': "1/3", '⅔': "2/3", '⅕': "1/5", '⅖': "2/5", '⅗': "3/5", '⅘': "4/5", '⅙': "1/6", '⅚': "5/6",
	'ṁ': "m-dot", // a flow, as it is read aloud
}

// Printable is a text as the letters can set it: what they lack is replaced by its
// written fallback, else by a question mark, and the ends of lines by spaces.
func Printable(text string) string {
	if plain(text) {
		return text
	}
	var out strings.Builder
	last := rune(0)
	for _, r := range text {
		put := printable(r)
		if unicode.IsDigit(last) && strings.Contains(put, "/") && len(put) > 1 {
			out.WriteByte(' ') // 5⅓ is not fifty-one thirds
		}
		out.WriteString(put)
		last = r
	}
	return out.String()
}

// plain tells of the common case without making a copy.
func plain(text string) bool {
	for i := range len(text) {
		if text[i] < ' ' || text[i] > '~' {
			return false
		}
	}
	return true
}

func printable(r rune) string {
	if put, is := fallbacks[r]; is {
		return put
	}
	drawn := r == utf8.RuneError || unicode.IsGraphic(r)
	if drawn && r <= '\uffff' && has(Regular, r) && has(Bold, r) {
		return string(r)
	}
	return unknown
}

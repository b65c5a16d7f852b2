package text

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/mattn/go-runewidth"
)

// Clean makes a text safe to print on one line: a tab or an end of a line
// becomes a space, and every control or format character (which include the
// escape that begins a terminal's commands, and the bidirectional controls)
// becomes U+FFFD, as does what is no UTF-8.
func Clean(s string) string {
	if printable(s) {
		return s
	}
	return strings.Map(visible, strings.ToValidUTF8(s, string(utf8.RuneError)))
}

// printable tells of the common case, plain ASCII, without making a copy.
func printable(s string) bool {
	for i := range len(s) {
		if s[i] < ' ' || s[i] > '~' {
			return false
		}
	}
	return true
}

func visible(r rune) rune {
	switch {
	case r == '\t' || r == '\n' || r == '\r':
		return ' '
	case unicode.In(r, unicode.Cc, unicode.Cf, unicode.Zl, unicode.Zp):
		return utf8.RuneError
	}
	return r
}

// Width is the number of terminal columns that a text takes, whatever the
// locale: an East Asian wide character takes two, a combining mark none.
func Width(s string) int {
	if printable(s) {
		return len(s)
	}
	return (&runewidth.Condition{StrictEmojiNeutral: true}).StringWidth(s)
}

// emojiSelector asks for the wide picture of the character before it.
const emojiSelector = '\ufe0f'

// most is the greatest number of columns that a character can add to a text.
func most(r rune) int {
	if r == emojiSelector {
		return 1
	}
	return (&runewidth.Condition{StrictEmojiNeutral: true}).RuneWidth(r)
}

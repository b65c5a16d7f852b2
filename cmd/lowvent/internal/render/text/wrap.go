package text

import (
	"cmp"
	"strings"
)

// Wrap breaks a text at its spaces into lines of at most first columns for the
// first and rest columns for the others. A word that is wider than a line, as a
// path or a pointer can be, is broken after a stroke, a hyphen or a point where
// it has one, else anywhere. There is always at least one line, and no line
// ends in a space. Widths below 2, in which a wide character has no place, are
// taken as 2.
func Wrap(s string, first, rest int) []string {
	w := wrapper{room: max(first, 2), rest: max(rest, 2)}
	for word := range strings.FieldsSeq(Clean(s)) {
		w.word(word)
	}
	return append(w.lines, w.line)
}

type wrapper struct {
	lines      []string
	line       string
	used       int // columns of line
	room, rest int
}

func (w *wrapper) word(word string) {
	width := Width(word)
	if w.line != "" && w.used+1+width <= w.room {
		w.line += " " + word
		w.used += 1 + width
		return
	}
	if w.line != "" {
		w.next()
	} else if width > w.room && width <= w.rest {
		w.next()
	}
	for width > w.room {
		head := fitting(word, w.room)
		w.line, word = head, word[len(head):]
		width = Width(word)
		w.next()
	}
	w.line, w.used = word, width
}

func (w *wrapper) next() {
	w.lines = append(w.lines, w.line)
	w.line, w.used, w.room = "", 0, w.rest
}

// fitting is the beginning of a word that fits into so many columns: at least
// one character, and up to a good place to break where that leaves half a line.
func fitting(word string, room int) string {
	end, stroke, mark, used := len(word), 0, 0, 0
	for i, r := range word {
		used += most(r)
		if used > room && i > 0 {
			end = i
			break
		}
		switch {
		case used*2 <= room || used > room:
		case r == '/':
			stroke = i + 1
		case strings.ContainsRune("-.,:_=", r):
			mark = i + 1
		}
	}
	return word[:cmp.Or(stroke, mark, end)]
}

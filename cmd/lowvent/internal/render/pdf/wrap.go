package pdf

import (
	"regexp"
	"strings"
	"sync"

	"lowvent.example/cmd/lowvent/internal/letter"
)

// wrap breaks a text at its spaces into lines that come out at most so wide, the first and
// the others. A number stays with its unit. A word wider than a line is broken after a
// stroke, a hyphen, a point or the like where that leaves more than half a line, else
// anywhere; no hyphen is put in, since such a word is a path or a number. There is at
// least one line; the first is empty where only the others have room for the first word.
func (s style) wrap(text string, first, rest float64) []string {
	w := wrapper{style: s, room: first, rest: rest, space: letter.Width(s.face, " ", s.size)}
	words := strings.FieldsFunc(letter.Printable(text), func(r rune) bool { return r == ' ' })
	for len(words) > 0 {
		n := together(words)
		group := strings.Join(words[:n], " ")
		wide := letter.Width(s.face, group, s.size)
		if n > 1 && wide > rest {
			n, group, wide = 1, words[0], letter.Width(s.face, words[0], s.size)
		}
		w.word(group, wide)
		words = words[n:]
	}
	return append(w.lines, w.line)
}

// together is how many of the words, from the first on, are one quantity: "120 × 80 mm".
func together(words []string) int {
	n, letters := 1, len(words[0])
	for n < len(words) && bound(words[n-1], words[n]) && letters+len(words[n]) < 30 {
		letters += len(words[n])
		n++
	}
	return n
}

// bound tells whether a line would end badly between two words.
func bound(a, b string) bool {
	const between, before = "±×", "±×≤≥=<>≈"
	switch {
	case strings.Contains(between, b):
		return true
	case strings.Contains(before, a):
		return number().MatchString(b)
	}
	return number().MatchString(a) && unitLike().MatchString(b)
}

var (
	number   = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^\(?[-−+±]?[0-9][0-9.,/]*$`) })
	unitLike = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^[\p{L}°%][\p{L}²³°/0-9·]{0,5}[.,;:)]*$`) })
)

type wrapper struct {
	style
	lines      []string
	line       string
	used       float64
	room, rest float64
	space      float64
}

func (w *wrapper) word(word string, wide float64) {
	if w.line != "" && w.used+w.space+wide <= w.room {
		w.line += " " + word
		w.used += w.space + wide
		return
	}
	if w.line != "" || wide > w.room && w.room < w.rest {
		w.next()
	}
	for wide > w.room {
		head := w.fitting(word)
		w.line, word = head, word[len(head):]
		wide = letter.Width(w.face, word, w.size)
		if word == "" {
			w.used = w.room
			return
		}
		w.next()
	}
	w.line, w.used = word, wide
}

func (w *wrapper) next() {
	w.lines = append(w.lines, w.line)
	w.line, w.used, w.room = "", 0, w.rest
}

// fitting is the beginning of a word that has room in a line: one character at least.
func (w *wrapper) fitting(word string) string {
	used, good := 0.0, 0
	for i, r := range word {
		used += letter.Width(w.face, string(r), w.size)
		if used > w.room && i > 0 {
			if good > 0 {
				return word[:good]
			}
			return word[:i]
		}
		if strings.ContainsRune("/\\-_.,:;=&?", r) && used > w.room/2 {
			good = i + len(string(r))
		}
	}
	return word
}

// cut is as much of a text as has room, with an ellipsis where that is not all.
func (s style) cut(text string, room float64) string {
	text = strings.Join(strings.Fields(letter.Printable(text)), " ")
	if letter.Width(s.face, text, s.size) <= room {
		return text
	}
	end := 0
	for i := range text {
		if letter.Width(s.face, text[:i]+"…", s.size) > room {
			break
		}
		end = i
	}
	return text[:end] + "…"
}

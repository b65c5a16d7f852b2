package draw

import (
	"fmt"
	"math"
	"strings"

	"lowvent.example/cmd/lowvent/internal/letter"
	"lowvent.example/schema/layout"
)

func hypot(x, y, z float64) float64 { return math.Hypot(math.Hypot(x, y), z) }

// noteHigh is how far apart the lines of notes stand, in mm.
const noteHigh = 1.35 * small

// mostNoteLines is how many lines a drawing gives to one note; the whole of it stands in
// the words that go with the drawing.
const mostNoteLines = 5

// wrapped breaks paragraphs into lines of small letters, of so many mm each.
func wrapped(paragraphs []string, wide float64) []string {
	var lines []string
	for _, p := range paragraphs {
		some := wrap(p, wide, small)
		if len(some) > mostNoteLines {
			some = append(some[:mostNoteLines-1], "… and more: the words that go with this drawing name them all.")
		}
		lines = append(lines, some...)
	}
	return lines
}

// wrap breaks a text between words into lines of so many mm, in letters of a size.
func wrap(text string, wide, size float64) []string {
	var lines []string
	current := ""
	for _, word := range strings.Fields(text) {
		next := strings.TrimSpace(current + " " + word)
		if current != "" && letter.Width(letter.Regular, next, size) > wide {
			lines, next = append(lines, current), word
		}
		current = shortened(next, wide, size)
	}
	if current == "" {
		return lines
	}
	return append(lines, current)
}

// shortened cuts a word that is wider than a line.
func shortened(text string, wide, size float64) string {
	for runes := []rune(text); len(runes) > 1 && letter.Width(letter.Regular, text, size) > wide; {
		runes = runes[:len(runes)*9/10]
		text = string(runes) + "…"
	}
	return text
}

// below writes the notes, the scale and its bars.
func (w *work) below() {
	y := w.field.area.Bottom
	for i, n := range w.notes {
		w.d.Marks = append(w.d.Marks, &Text{At: Point{2, y + noteHigh*float64(i) + small}, Size: small, Content: n})
	}
	w.d.Marks = append(w.d.Marks, scaleBars(Point{2, w.d.Height - barHigh}, w.d.Scale)...)
}

// notDrawn tells what a drawing can't show, since the file does not state where it is; ""
// when there is nothing.
func notDrawn(items []layout.Item) string {
	if len(items) == 0 {
		return ""
	}
	names := make([]string, len(items))
	for i, item := range items {
		names[i] = item.Label()
		switch item := item.(type) {
		case *layout.LockerVent:
			names[i] += " of locker " + item.Ref().ID()
		case *layout.Shutoff:
			names[i] += " of line " + item.Ref().ID()
		}
	}
	return "Not drawn, no position stated: " + strings.Join(names, ", ") + "."
}

// count writes a number with the word for one or for several.
func count(n int, one, many string) string {
	if n == 1 {
		return fmt.Sprint(n, " ", one)
	}
	return fmt.Sprint(n, " ", many)
}

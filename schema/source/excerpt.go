package source

import (
	"slices"
	"unicode"
	"unicode/utf8"
)

// minExcerpt is the least width at which a cut line still shows something
// between two ellipses.
const minExcerpt = 8

// ellipsis stands for what was cut from a line.
const ellipsis = '…'

// Excerpt is one line of a file, made safe to print, and the part of it to
// underline. From and To count code points in Text; From < To always holds.
type Excerpt struct {
	Line     int // counted from 1; 0 when there is nothing to show
	Text     string
	From, To int
}

// Excerpt shows the line on which the place begins in at most width code
// points (widths below 8 are taken as 8). A longer line is cut around the
// place and "…" marks each cut. A tab becomes one space. Control characters,
// format characters (which include the bidirectional controls) and line or
// paragraph separators become U+FFFD, so a file cannot drive the terminal or
// reorder what is read there. A place that goes on to further lines is
// underlined to the end of its first; a place at the end of a line underlines
// a space put there. The zero Excerpt is given for a place without a line.
func (p Place) Excerpt(width int) Excerpt {
	if !p.located() {
		return Excerpt{}
	}
	width = max(width, minExcerpt)
	from, to := p.File.lineSpan(int(p.Span.Start))
	start := min(int(p.Span.Start), to)
	end := min(max(int(p.Span.End), start), to)
	// One more than fits is enough to know that there is more.
	before := lastRunes(p.File.Data[from:start], width+1)
	mark := firstRunes(p.File.Data[start:end], width+1)
	after := firstRunes(p.File.Data[end:to], width+1)
	if len(mark) == 0 {
		mark, after = caret(after)
	}
	text, left, shown := fit(before, mark, after, width)
	return Excerpt{Line: p.Line(), Text: string(text), From: left, To: left + shown}
}

// caret widens an empty mark to the character after it, or to a space of its
// own at the end of a line.
func caret(after []rune) (mark, rest []rune) {
	if len(after) == 0 {
		return []rune{' '}, nil
	}
	return after[:1], after[1:]
}

// fit joins the three parts within width, keeping the mark in view, and gives
// how much of each of the first two is left.
func fit(before, mark, after []rune, width int) (text []rune, left, shown int) {
	if len(before)+len(mark)+len(after) <= width {
		return slices.Concat(before, mark, after), len(before), len(mark)
	}
	// A mark that fills the line leaves room for one ellipsis before it; the
	// one after it then takes its last character.
	shown = min(len(mark), width-min(len(before), 1))
	room := width - shown
	left = min(len(before), max(room/2, 1), room)
	right := min(len(after), room-left)
	left = min(len(before), room-right)
	text = slices.Concat(before[len(before)-left:], mark[:shown], after[:right])
	if left < len(before) {
		text[0] = ellipsis
	}
	if right < len(after) || shown < len(mark) {
		text[len(text)-1] = ellipsis
	}
	return text, left, shown
}

func firstRunes(data []byte, most int) []rune {
	var out []rune
	for len(data) > 0 && len(out) < most {
		r, size := utf8.DecodeRune(data)
		out, data = append(out, visible(r)), data[size:]
	}
	return out
}

func lastRunes(data []byte, most int) []rune {
	var out []rune
	for len(data) > 0 && len(out) < most {
		r, size := utf8.DecodeLastRune(data)
		out, data = append(out, visible(r)), data[:len(data)-size]
	}
	slices.Reverse(out)
	return out
}

// visible replaces a character that is not to reach a terminal as it is.
func visible(r rune) rune {
	switch {
	case r == '\t':
		return ' '
	case unicode.In(r, unicode.Cc, unicode.Cf, unicode.Zl, unicode.Zp):
		return utf8.RuneError
	}
	return r
}

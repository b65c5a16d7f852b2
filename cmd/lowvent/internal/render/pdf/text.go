package pdf

import "lowvent.example/cmd/lowvent/internal/letter"

// textLine is one line of a paragraph, its pieces relative to its own corner.
type textLine []piece

// lines sets a text, with a signal word before it or none, into lines so wide.
func (s setter) lines(st style, word, text string, wide float64) []textLine {
	var first textLine
	used := 0.0
	if ofWord := s.of(word); ofWord != 0 {
		first, used = st.signal(ofWord, word, wide)
		used += inset
	}
	of := s.of(text)
	if letter.Printable(text) == "" {
		return []textLine{first}
	}
	var all []textLine
	for i, words := range st.wrap(text, wide-used, wide) {
		var l textLine
		x := 0.0
		if i == 0 {
			l, x = first, used
		}
		if words != "" {
			l = append(l, st.words(of, words, x, 0))
		}
		all = append(all, l)
	}
	return all
}

// flow makes rows of lines: no line of a paragraph stands alone on a page.
func (s setter) flow(lines []textLine, lead, left, gap float64) []row {
	rows := make([]row, len(lines))
	for i, l := range lines {
		rows[i] = s.row(lead, 0, moved(l, left, 0)...)
		rows[i].keep = i == 0 && len(lines) > 1 || len(lines) > 2 && i == len(lines)-2
	}
	rows[0].gap = gap
	return rows
}

// text is rows of a text across the column; none of one in which nothing is to be seen.
func (s setter) text(st style, word, text string, gap float64) []row {
	lines := s.lines(st, word, text, s.wide)
	if unseen(lines) {
		return nil
	}
	return s.flow(lines, st.lead, s.left, gap)
}

func unseen(lines []textLine) bool { return len(lines) == 1 && len(lines[0]) == 0 }

// extra is rows of a text that is none of the document's.
func (s setter) extra(st style, text string, gap float64) []row {
	var lines []textLine
	for _, words := range st.wrap(text, s.wide, s.wide) {
		lines = append(lines, textLine{st.words(0, words, 0, 0)})
	}
	return s.flow(lines, st.lead, s.left, gap)
}

// heading is rows of a text that stand together with what follows; a row without height
// where there is no text.
func (s setter) heading(st style, word, text string, gap float64) []row {
	rows := s.text(st, word, text, gap)
	if rows == nil {
		rows = []row{s.row(0, 0)}
	}
	return kept(rows)
}

// kept is rows that stay together, and with what follows.
func kept(rows []row) []row {
	for i := range rows {
		rows[i].keep = true
	}
	return rows
}

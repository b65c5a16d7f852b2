package ask

import (
	"io"
	"strings"

	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/report"
)

// talker puts questions and answers on a plain stream, without moving about on it.
type talker struct {
	out  io.Writer
	err  error  // the first that was met in writing
	part string // of the walk, that was last asked about
}

func (t *talker) failed() error { return t.err }

func (t *talker) put(s string) {
	if t.err == nil {
		_, t.err = io.WriteString(t.out, s)
	}
}

// welcome tells what this is and how to answer.
func (t *talker) welcome() {
	p := text.New(text.Usual, nil)
	for _, each := range report.Cautions() {
		p.Para(text.Plain, 0, each)
	}
	p.Blank()
	p.Para(text.Plain, 0, "One question at a time, in the order of a walk through the dwelling with a tape. Look, read and measure; touch no gas part. Write what you found, with the unit on your tape or on the plate, and a tolerance where you are not sure. A figure in a hint only shows how it is written; it is never the one to aim at.")
	p.Blank()
	for _, row := range [][2]string{
		{"an empty line", "leaves the question open: the key is left out, and counts as not known"},
		{"?", "tells more about the question"},
		{"<", "goes back to the question before"},
		{">", "leaves out the rest of this thing"},
		{">>", "leaves out the rest of this part of the walk"},
		{".", "stops, and writes what there is"},
	} {
		p.Field(text.Plain, 2, row[0], 16, text.Plain, row[1])
	}
	p.Blank()
	p.Para(text.Plain, 0, "If the answers end before the last question, nothing is written.")
	t.put(p.String())
}

// ask shows a question and waits at the end of its line.
func (t *talker) ask(s step, q question) {
	p := text.New(text.Usual, nil)
	if part := firstOf(s.path()); part != t.part {
		t.part = part
		p.Blank()
		p.Para(text.Plain, 0, "== "+Spaced(part)+" ==")
	}
	p.Blank()
	p.Para(text.Plain, 0, q.title)
	p.Para(text.Plain, 2, q.asks)
	for _, line := range q.form {
		p.Item(text.Plain, 2, indentOf(line), line)
	}
	t.put(p.String() + "> ")
}

// indentOf hangs the lines of a numbered choice below its word.
func indentOf(line string) int {
	if line != "" && strings.ContainsRune("0123456789", rune(line[0])) {
		return 4
	}
	return 0
}

func (t *talker) longer(q question) {
	p := text.New(text.Usual, nil)
	for _, line := range q.longer {
		p.Item(text.Plain, 4, indentOf(line), line)
	}
	t.put(p.String())
}

func (t *talker) say(message string) {
	p := text.New(text.Usual, nil)
	for line := range strings.SplitSeq(message, "\n") {
		p.Para(text.Plain, 4, line)
	}
	t.put(p.String())
}

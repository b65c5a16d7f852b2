// Package ask leads a person through a dwelling, one question at a time, and makes a
// layout of the answers. Which keys it asks it takes from the layout's contract, what
// it says of each from the published schema, and which come first from what the
// checks say that they read. Every answer is judged by the reader of layouts itself,
// so that what comes out always loads; what is not answered is left out.
package ask

import (
	"bufio"
	"errors"
	"io"
	"slices"
	"strings"

	"lowvent.example/cmd/lowvent/internal/render/text"
)

// Options are what an interview begins with.
type Options struct {
	Scene string
	First []byte // the first layout of that scene
	Needs Needs
	Codes []Code
}

// ErrEnded is returned when the input ends before the last question. Nothing is
// made then: who wants what there is, says so.
var ErrEnded = errors.New("the answers ended before the last question, so nothing was written")

// interview is one run through the walk.
type interview struct {
	in     *bufio.Reader
	out    *talker
	st     *state
	agenda []step
	past   []mark // one for each answer, so that it can be taken back
}

type mark struct {
	st     *state
	agenda []step
}

// Run asks everything and returns the layout, and whether anything was answered. What
// it asks goes to out; answers are lines of in.
func Run(in io.Reader, out io.Writer, o Options) (made []byte, answered bool, err error) {
	st, err := begin(o.Scene, o.First)
	if err != nil {
		return nil, false, err
	}
	st.codes = o.Codes
	v := &interview{in: bufio.NewReader(in), out: &talker{out: out}, st: st, agenda: o.Needs.plan()}
	v.out.welcome()
	if err := v.all(); err != nil {
		return nil, false, err
	}
	if v.st.answered == 0 {
		return o.First, false, nil
	}
	v.st.root.put("note", kept)
	return v.st.text(), true, nil
}

// kept is the note of a layout that answers made.
const kept = "Made from answers. What was not answered is left out and counts as not known. A thing that still has a note is as the first layout invented it: put your own in its place or take it out. x runs from front to rear, y from left to right, z up, from the floor at the front left corner of the living space."

// all goes through the agenda to its end.
func (v *interview) all() error {
	for len(v.agenda) > 0 {
		next := v.agenda[0]
		if !next.fits(v.st) {
			v.agenda = v.agenda[1:]
			continue
		}
		if later, ok := next.(laterStep); ok {
			v.agenda = slices.Concat(later.make(v.st), v.agenda[1:])
			continue
		}
		v.out.ask(next, next.show(v.st))
		answer, err := v.line()
		if err != nil {
			return err
		}
		if answer == stop {
			return v.out.failed()
		}
		v.heed(next, answer)
	}
	return v.out.failed()
}

// The answers that are no answers.
const (
	stop  = "."
	back  = "<"
	thing = ">"
	part  = ">>"
	help  = "?"
)

// longestAnswer bounds what one line may hold, in bytes.
const longestAnswer = 2000

// line reads one answer. A last line without an end still counts.
func (v *interview) line() (string, error) {
	line, err := v.in.ReadString('\n')
	if err != nil && (line == "" || !errors.Is(err, io.EOF)) {
		if errors.Is(err, io.EOF) {
			return "", ErrEnded
		}
		return "", err
	}
	return strings.TrimSpace(text.Clean(line)), nil
}

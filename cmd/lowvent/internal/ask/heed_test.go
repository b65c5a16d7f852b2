package ask

import (
	"bytes"
	"io"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"

	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/cmd/lowvent/internal/starter"
	"lowvent.example/schema/report"
)

// begun is an interview that has answered some lines, whose next question is one to ask.
func begun(t *rapid.T, o Options, talk io.Writer, lines ...string) *interview {
	st, err := begin(o.Scene, o.First)
	if err != nil {
		t.Fatal(err)
	}
	st.codes = o.Codes
	v := &interview{out: &talker{out: talk}, st: st, agenda: o.Needs.plan()}
	for _, line := range lines {
		if !v.onward() {
			break
		}
		v.heed(v.agenda[0], line)
	}
	return v
}

// onward goes to the next question; false where there is none.
func (v *interview) onward() bool {
	for len(v.agenda) > 0 {
		next := v.agenda[0]
		if !next.fits(v.st) {
			v.agenda = v.agenda[1:]
		} else if later, ok := next.(laterStep); ok {
			v.agenda = slices.Concat(later.make(v.st), v.agenda[1:])
		} else {
			return true
		}
	}
	return false
}

// TestBackUndoesAnything: an answer, an empty line, a thing or a part that was skipped; what
// was refused, or asked for help, is nothing to undo.
func TestBackUndoesAnything(t *testing.T) {
	all := map[string]Options{}
	for _, scene := range starter.Scenes() {
		all[scene] = options(scene)
	}
	undone, refused := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		o := all[rapid.SampledFrom(starter.Scenes()).Draw(t, "scene")]
		v := begun(t, o, io.Discard, rapid.SliceOfN(rapid.Custom(answersLike), 0, 60).Draw(t, "before")...)
		if !v.onward() {
			return
		}
		before, title, open := v.st.text(), v.agenda[0].show(v.st).title, len(v.agenda)
		past := len(v.past)
		answer := answersLike(t)
		if answer == back {
			return
		}
		v.heed(v.agenda[0], answer)
		if len(v.past) == past {
			refused++
			if !bytes.Equal(v.st.text(), before) || v.agenda[0].show(v.st).title != title || len(v.agenda) != open {
				t.Fatalf("%s: %q changed something, and can't be undone", title, answer)
			}
			return
		}
		undone++
		v.goBack()
		if !bytes.Equal(v.st.text(), before) || v.agenda[0].show(v.st).title != title || len(v.agenda) != open || len(v.past) != past {
			t.Fatalf("%s: %q is not undone; now it is %s, %d steps of %d\n%s\n%s", title, answer, v.agenda[0].show(v.st).title, len(v.agenda), open, before, v.st.text())
		}
	})
	if undone < 20 || refused < 5 {
		t.Errorf("%d undone, %d refused: the test says little", undone, refused)
	}
}

// TestWhatIsSkippedIsAskedNoMore: after the rest of a thing or a part, no question of it
// comes, and what follows is the same as after as many empty lines.
func TestWhatIsSkippedIsAskedNoMore(t *testing.T) {
	for _, scene := range starter.Scenes() {
		o := options(scene)
		for at := range 60 {
			st, err := begin(o.Scene, o.First)
			if err != nil {
				t.Fatal(err)
			}
			v := &interview{out: &talker{out: io.Discard}, st: st, agenda: o.Needs.plan()}
			for range at {
				v.onward()
				v.heed(v.agenda[0], "")
			}
			v.onward()
			gone := firstOf(v.agenda[0].path())
			twin := &interview{out: &talker{out: io.Discard}, st: v.st.clone(), agenda: slices.Clone(v.agenda)}
			v.heed(v.agenda[0], part)
			for twin.onward() && firstOf(twin.agenda[0].path()) == gone {
				twin.heed(twin.agenda[0], "")
			}
			if v.onward() != twin.onward() || !bytes.Equal(v.st.text(), twin.st.text()) {
				t.Fatalf("%s, at question %d: the rest of %s is not left out as by empty lines:\n%s\n%s", scene, at, gone, v.st.text(), twin.st.text())
			}
			if len(v.agenda) > 0 && (firstOf(v.agenda[0].path()) == gone || v.agenda[0].show(v.st).title != twin.agenda[0].show(twin.st).title) {
				t.Fatalf("%s, at question %d: after %s comes %s, want %s", scene, at, gone, v.agenda[0].show(v.st).title, twin.agenda[0].show(twin.st).title)
			}
		}
	}
}

// TestAnAnswerOfAnyLengthIsTakenOrRefused: one over the bound is refused with the bound.
func TestAnAnswerOfAnyLengthIsTakenOrRefused(t *testing.T) {
	for long, want := range map[int]string{longestAnswer: "noted: ", longestAnswer + 1: "an answer of more than 2000 characters"} {
		made, talk, err := lined(options("van"), strings.Repeat("a", long), ".")
		if err != nil || !strings.Contains(unwrapped(talk), want) {
			t.Errorf("%d bytes: %v, want %q", long, err, want)
		}
		if stands := strings.Contains(string(made), strings.Repeat("a", longestAnswer)); stands != (long == longestAnswer) {
			t.Errorf("%d bytes: written %v", long, stands)
		}
	}
}

// TestTheTalkFitsATerminal: it begins with the cautions and how to answer, no line is wider
// than a page, and each question waits behind a sign of its own.
func TestTheTalkFitsATerminal(t *testing.T) {
	for _, scene := range starter.Scenes() {
		_, talk := told(t, options(scene), map[string]string{"title": "x"})
		for _, line := range strings.Split(talk, "\n") {
			if n := utf8.RuneCountInString(line); n > text.Usual+2 { // behind the sign stands what is said of the answer
				t.Errorf("%s: a line of %d columns: %s", scene, n, line)
			}
		}
		for _, each := range append(report.Cautions(), "leaves the question open", "goes back to the question before", "stops, and writes what there is", "If the answers end before the last question, nothing is written.") {
			if !strings.Contains(unwrapped(talk[:strings.Index(talk, "\n> ")]), each) {
				t.Errorf("%s: before the first question it does not say %q", scene, each)
			}
		}
	}
}

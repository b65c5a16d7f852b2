package ask

import (
	"bufio"
	"bytes"
	"io"
	"strings"
	"testing"

	"lowvent.example/cmd/lowvent/internal/starter"
	"lowvent.example/gas"
	"lowvent.example/schema/check"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/source"
	"lowvent.example/vent"
)

func allChecks() check.Set { return check.Join(gas.Checks(), vent.Checks()) }

func options(scene string) Options {
	return Options{Scene: scene, First: starter.Layout(scene), Needs: NeedsOf(allChecks()), Codes: []Code{{"us-mobile-structure", "US"}, {"uk-inland-boat", "UK"}}}
}

// told runs an interview in which each question is answered by its title; what has no
// answer gets an empty line. It gives the layout and the whole talk.
func told(t *testing.T, o Options, answers map[string]string) (made []byte, talk string) {
	t.Helper()
	asks, questions := io.Pipe()
	replies, says := io.Pipe()
	var heard bytes.Buffer
	go func() {
		in := bufio.NewReader(io.TeeReader(asks, &heard))
		for {
			question, err := in.ReadString('>')
			if err != nil {
				return
			}
			if _, prompt := strings.CutSuffix(question, "\n>"); prompt {
				_, _ = io.WriteString(says, answers[titleOf(question)]+"\n")
			}
		}
	}()
	made, _, err := Run(replies, questions, o)
	if err != nil {
		t.Fatal(err)
	}
	_ = questions.Close()
	return made, heard.String()
}

// titleOf is the first line of the last paragraph of a question.
func titleOf(question string) string {
	last := question[strings.LastIndex(question, "\n\n")+2:]
	title, _, _ := strings.Cut(last, "\n")
	return title
}

// lined runs an interview with the answers as lines.
func lined(o Options, lines ...string) (made []byte, talk string, err error) {
	var out bytes.Buffer
	made, _, err = Run(strings.NewReader(strings.Join(lines, "\n")+"\n"), &out, o)
	return made, out.String(), err
}

func loads(t interface {
	Helper()
	Fatalf(string, ...any)
}, text []byte) *layout.Layout {
	t.Helper()
	l, faults := layout.Load(source.NewFile("made", text))
	if len(faults) > 0 {
		t.Fatalf("the layout does not load: %s\n%s", faults.Error(), text)
	}
	return l
}

package ask

import (
	"fmt"
	"slices"
	"strings"

	"lowvent.example/schema/layout"
)

// step is one thing to ask. Taking its answer may bring further steps, which come
// right after it.
type step interface {
	path() string // of the walk: "/spaces/cabin/openings/door" is a part of "/spaces/cabin"
	fits(*state) bool
	show(*state) question
	// take writes the answer into the state, which is thrown away if there is an error;
	// "" leaves it open. said is what the one who answers is told.
	take(st *state, answer string) (next []step, said string, err error)
}

// question is what is shown of a step.
type question struct {
	title  string   // what it is about
	asks   string   // what to measure or say, and how
	form   []string // how the answer is written
	longer []string // what "?" adds
}

const leftOut = "left out: not known"

// valueStep asks for one key.
type valueStep struct {
	asked   Asked
	pointer string
	walk    string
	needs   Needs
}

func (v valueStep) path() string { return v.walk }

// fits also leaves out what needs a key that was just left out.
func (v valueStep) fits(st *state) bool {
	within, _ := parent(v.pointer)
	if musts := st.musts(within); slices.Index(musts, v.asked.Name) > 0 && st.held[within] == nil && !st.whole(within) {
		return false
	}
	return st.fits(v.asked.Template, v.pointer)
}

func (v valueStep) show(st *state) question {
	q := question{title: Title(v.pointer), asks: HowTo(v.asked), form: form(v.asked), longer: v.longer()}
	switch v.asked.Form {
	case layout.FormText:
		if v.pointer == codeKey {
			q.form = st.codesToName()
		}
	case layout.FormRef, layout.FormRefs:
		q.form = st.thingsToName(v.asked)
	case layout.FormWord, layout.FormWords:
		if len(v.asked.Words) > fewWords {
			q.longer = append(choices(v.asked), q.longer...)
			q.form = []string{strings.TrimSuffix(oneOrMore(v.asked.Form), ":") + `; "?" tells what each means: ` + strings.Join(v.asked.Words, ", ")}
		}
	}
	return q
}

// fewWords is how many words of a choice are told with their meanings at once.
const fewWords = 9

// longer names the key in the file, and the questions that wait for it.
func (v valueStep) longer() []string {
	var lines []string
	if v.asked.Form == layout.FormPoint || v.asked.Form == layout.FormPoints {
		lines = append(lines, Axes())
	}
	lines = append(lines, "In the file it stands at "+v.pointer+".")
	for _, need := range v.needs[v.asked.Template] {
		lines = append(lines, fmt.Sprintf("%s waits for it (%s): %s", need.Check, need.Word, need.Asks))
	}
	return lines
}

func (v valueStep) take(st *state, answer string) ([]step, string, error) {
	if answer == "" {
		st.leave(v.pointer)
		return nil, leftOut, nil
	}
	if v.pointer == codeKey {
		answer = oneOf(answer, st.codeIDs())
		if !slices.Contains(st.codeIDs(), answer) {
			return nil, "", fmt.Errorf("that can't be taken: there is no code %q\nwanted: one of %s", answer, strings.Join(st.codeIDs(), ", "))
		}
	}
	value, err := st.read(v.asked, answer)
	if err != nil {
		return nil, "", err
	}
	if err := v.alone(value); err != nil {
		return nil, "", err
	}
	st.set(v.pointer, value)
	return nil, "noted: " + flat(value, v.pointer), st.check()
}

// alone holds an answer that is to be held back to the same reader, in a layout of
// its own: a point must not wait for its neighbour to be told that it is none.
func (v valueStep) alone(value any) error {
	if !v.asked.Must || v.asked.Form != layout.FormPoint {
		return nil
	}
	lone := &state{root: &object{}}
	lone.root.put("format", layout.Format)
	lone.root.set("/openings/x/at", value)
	return lone.check()
}

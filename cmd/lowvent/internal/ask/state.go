package ask

import (
	"errors"
	"maps"
	"slices"
	"strings"

	"lowvent.example/schema/layout"
	"lowvent.example/schema/source"
)

// state is the layout as the answers have made it so far. It loads without a fault
// after every answer; what can't stand yet is held back.
type state struct {
	scene    string
	codes    []Code
	root     *object
	held     map[string]*object  // by pointer: what can't be without a key that is not answered yet
	counted  map[string]bool     // lists whose names were given, or "none"; one that is walked by its place as well
	complete map[string][]string // by pointer: the lists that were said to be complete
	claimed  map[string]bool     // things that an answer spoke of
	answered int
}

// begin is the first layout of a scene, without the sizes that it invents.
func begin(scene string, text []byte) (*state, error) {
	root, fault := source.Parse(source.NewFile(scene, text), source.DefaultLimits())
	if fault != nil {
		return nil, fault
	}
	st := &state{scene: scene, root: treeOf(root).(*object), held: map[string]*object{}, counted: map[string]bool{},
		complete: map[string][]string{}, claimed: map[string]bool{}}
	for _, id := range st.root.object("/spaces").keys() {
		st.root.cut("/spaces/" + id + "/box")
	}
	return st, nil
}

func (st *state) clone() *state {
	out := *st
	out.root = st.root.clone()
	out.held = map[string]*object{}
	for pointer, each := range st.held {
		out.held[pointer] = each.clone()
	}
	out.counted, out.claimed, out.complete = maps.Clone(st.counted), maps.Clone(st.claimed), maps.Clone(st.complete)
	return &out
}

// text is the layout as it would be written now.
func (st *state) text() []byte { return write(st.settled()) }

// settled is the tree with the lists that are complete. One that the file does not
// hold can't be said to be complete, and is left out.
func (st *state) settled() *object {
	root := st.root.clone()
	for _, pointer := range slices.Sorted(maps.Keys(st.complete)) {
		kept := list{}
		for _, word := range st.complete[pointer] {
			if root.at(st.listOf(pointer, word)) != nil {
				kept = append(kept, word)
			}
		}
		if len(kept) > 0 {
			root.set(pointer, kept)
		}
	}
	return root
}

// listOf is the list that a word at the pointer of a survey speaks of.
func (st *state) listOf(pointer, word string) string {
	place := strings.TrimSuffix(pointer, "/surveyed/complete")
	return ListOf(strings.TrimSuffix(place, "/complete"), word)
}

// faults are what the reader of layouts has against the layout as it is now.
func (st *state) faults() source.Faults {
	_, faults := layout.Load(source.NewFile("answers", st.text()))
	return faults
}

// check gives the reader's first fault as a message for who answers.
func (st *state) check() error {
	faults := st.faults()
	if len(faults) == 0 {
		return nil
	}
	f := faults[0]
	message := "that can't be taken: " + f.What
	if f.Expected != "" {
		message += "\nwanted: " + examples.ReplaceAllString(f.Expected, "")
	}
	if f.Mend != "" {
		message += "\n" + strings.ReplaceAll(f.Mend, "leave the key out", "give an empty line")
	}
	return errors.New(message)
}

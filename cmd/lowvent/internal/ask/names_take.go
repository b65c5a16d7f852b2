package ask

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strings"

	"lowvent.example/schema/layout"
	"lowvent.example/schema/source"
)

func (n namesStep) take(st *state, answer string) ([]step, string, error) {
	if answer == "" {
		return n.each(st, n.here(st)), n.left(st), nil
	}
	ids, err := n.read(st, answer)
	if err != nil {
		return nil, "", err
	}
	st.answered++
	st.counted[n.list+n.place] = true
	st.counted[n.list] = true
	n.keep(st, ids)
	n.add(st, ids)
	said := "noted: " + cmp.Or(strings.Join(ids, ", "), "none")
	if gone := st.shed(); len(gone) > 0 {
		said += "\nwith that there is no longer: " + strings.Join(gone, ", ")
	}
	if err := errors.Join(n.standing(st, ids), st.check()); err != nil {
		return nil, "", err
	}
	return n.each(st, ids), said, nil
}

func (n namesStep) left(st *state) string {
	if here := n.here(st); len(here) > 0 {
		return "left as the first layout has it: " + strings.Join(here, ", ")
	}
	return leftOut
}

// mostNames bounds what one answer can list: each name brings a few dozen questions.
const mostNames = 40

// read takes the names out of an answer; a space within one becomes a hyphen.
func (n namesStep) read(st *state, answer string) ([]string, error) {
	if strings.EqualFold(answer, "none") {
		return nil, nil
	}
	var ids []string
	for _, part := range several(answer, func(part string) string { return strings.Join(strings.Fields(part), "-") }) {
		id := part.(string)
		if slices.Contains(ids, id) {
			return nil, fmt.Errorf("that can't be taken: %q stands there twice; each thing has a name of its own", id)
		}
		if n.place != "" && st.root.at(n.list+"/"+id) != nil && !slices.Contains(n.here(st), id) {
			return nil, fmt.Errorf("that can't be taken: %q is already the name of one elsewhere; each thing has a name of its own", id)
		}
		ids = append(ids, id)
	}
	if len(ids) > mostNames {
		return nil, fmt.Errorf("that can't be taken: more than %d names in one answer", mostNames)
	}
	if len(ids) == 0 {
		return nil, fmt.Errorf(`that can't be taken: names are wanted, or "none"`)
	}
	return ids, nil
}

// keep takes out the things of the place that were not named.
func (n namesStep) keep(st *state, ids []string) {
	for _, id := range n.here(st) {
		if !slices.Contains(ids, id) {
			st.root.cut(source.Join(n.list, id))
		}
	}
	if n.place == "" && st.root.at(n.list) == nil {
		st.put(n.list, &object{})
	}
}

// add makes the things that are not there yet, those excepted that can't be without
// keys that are still to be asked.
func (n namesStep) add(st *state, ids []string) {
	for _, id := range ids {
		at := source.Join(n.list, id)
		st.claimed[at] = true
		if st.root.at(at) == nil && len(st.musts(at)) == 0 {
			st.put(at, &object{})
		}
		if n.place != "" {
			st.put(source.Join(at, n.key.Name), n.place)
		}
	}
}

// standing tells of names that the reader of layouts refused.
func (n namesStep) standing(st *state, ids []string) error {
	for _, id := range ids {
		at := source.Join(n.list, id)
		if st.root.at(at) != nil || len(st.musts(at)) > 0 && layout.Template(at) != "" {
			continue
		}
		if of := n.otherSpaces(st); of != nil {
			return fmt.Errorf("that can't be taken: %q is not one of the other spaces\nwanted: names out of %s", id, strings.Join(of, ", "))
		}
		return fmt.Errorf("that can't be taken: %q can't be a name here\nwanted: up to 64 letters from A to Z, digits, hyphens, dots or underscores, the first a letter or digit", id)
	}
	return nil
}

// each gives the steps for the things.
func (n namesStep) each(_ *state, ids []string) []step {
	var steps []step
	for _, id := range ids {
		at := source.Join(n.list, id)
		walk := at
		if n.place != "" {
			walk = n.walk + at
		}
		steps = append(steps, n.needs.thing(at, walk, n.key.Name)...)
	}
	return steps
}

// surveyOf is where a place says which of its lists are complete.
func surveyOf(place string) string {
	if place == string(layout.OpenAir) {
		return "/outside/surveyed/complete"
	}
	return "/" + place + "/surveyed/complete"
}

// wordOf is the word of a survey that speaks of a walked list.
func wordOf(section string) string {
	for _, word := range keyNamed("/spaces/*/surveyed", "complete").Words {
		if ListOf("/spaces/*", word) == "/"+section {
			return word
		}
	}
	return section
}

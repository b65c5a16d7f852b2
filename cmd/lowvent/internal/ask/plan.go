package ask

import (
	"slices"
	"strings"

	"lowvent.example/schema/layout"
	"lowvent.example/schema/source"
)

// laterStep is no question: when its turn comes, it gives the steps that fit what is
// known by then.
type laterStep struct {
	walk string
	make func(*state) []step
}

func (l laterStep) path() string                                     { return l.walk }
func (l laterStep) fits(*state) bool                                 { return true }
func (l laterStep) show(*state) question                             { return question{} }
func (l laterStep) take(st *state, _ string) ([]step, string, error) { return l.make(st), "", nil }

// plan is the whole walk: the steps of every part of the file.
func (n Needs) plan() []step {
	var steps []step
	for _, part := range Parts() {
		at := "/" + part.Name
		switch {
		case part.Name == "lines":
			steps = append(steps, laterStep{at, n.linesPart})
		case part.Name == "outside":
			steps = append(steps, n.around(string(layout.OpenAir), at)...)
			steps = append(steps, n.object(at)...)
		case part.Name == "surveyedBy":
			steps = append(steps, n.last(at)...)
		case part.Form == layout.FormThings:
			steps = append(steps, namesStep{list: at, walk: at, needs: n})
		case part.Form == layout.FormObject:
			steps = append(steps, n.object(at)...)
		default:
			steps = append(steps, n.value(Asked{part, at, true}, at, at))
		}
	}
	return steps
}

// object asks for the keys of an object of the whole file.
func (n Needs) object(at string) []step { return n.thing(at, at) }

// thing asks for the keys of one thing: those first that a check of DANGER or WARNING
// reads, then, if wanted, the rest; then, where it can hold things, what is in it.
func (n Needs) thing(at, walk string, but ...string) []step {
	var first, more []step
	for _, asked := range n.Keys(layout.Template(at)) {
		if slices.Contains(but, asked.Name) && strings.Count(asked.Template, "/") == strings.Count(at, "/")+1 {
			continue
		}
		pointer := filled(asked.Template, at)
		if asked.First {
			first = append(first, n.value(asked, pointer, walk))
		} else {
			more = append(more, n.value(asked, pointer, walk))
		}
	}
	if len(more) > 0 {
		first = append(first, moreStep{of: at, walk: walk, more: more})
	}
	return append(first, n.around(strings.TrimPrefix(at, "/"), walk)...)
}

// value asks for one key; a list of things is asked by the names of the things.
func (n Needs) value(asked Asked, pointer, walk string) step {
	if asked.Form == layout.FormThings {
		return namesStep{list: pointer, walk: walk, needs: n}
	}
	return valueStep{asked: asked, pointer: pointer, walk: walk, needs: n}
}

// filled puts the names of a thing's pointer into the template of one of its keys.
func filled(template, at string) string {
	tokens, names := source.Split(template), source.Split(at)
	var pointer string
	for i, token := range tokens {
		if i < len(names) {
			token = names[i]
		}
		pointer = source.Join(pointer, token)
	}
	return pointer
}

// around walks through a space, a locker or the open air: the lists of what is there,
// each with its things, and then, list by list, whether it is complete.
func (n Needs) around(place, walk string) []step {
	section, _, _ := strings.Cut(place, "/")
	if section == "outside" || strings.Count(place, "/") > 1 || keyNamed(layout.Template(surveyAt(place)), "complete").Name == "" {
		return nil
	}
	var steps, whole []step
	for _, list := range Walked() {
		if key := PlaceKey(list); slices.Contains(key.Refs, section) {
			steps = append(steps, namesStep{list: "/" + list, place: place, key: key, walk: walk, needs: n})
		}
	}
	for _, word := range keyNamed(layout.Template(surveyAt(place)), "complete").Words {
		whole = append(whole, wholeStep{survey: surveyOf(place), word: word, place: place, walk: walk})
	}
	return append(steps, whole...)
}

func surveyAt(place string) string { return strings.TrimSuffix(surveyOf(place), "/complete") }

// unasked are the lists that are left out where what is listed calls for none of theirs. Checks
// wait for them all the same, so that at the end it can be said that there are none.
var unasked = []string{"changeovers", "flues"}

// last asks what is told of the whole file at its end: what was listed nowhere, which
// lists are complete, and who looked.
func (n Needs) last(at string) []step {
	var steps []step
	for _, list := range slices.Concat(Walked(), unasked) {
		steps = append(steps, noneStep{list, at})
	}
	for _, word := range keyNamed(at, "complete").Words {
		steps = append(steps, wholeStep{survey: at + "/complete", word: word, walk: at})
	}
	return append(steps, n.object(at)...)
}

package ask

import (
	"slices"
	"strings"

	"lowvent.example/schema/layout"
)

// Walk is the first layout of a scene with what is asked of each of its things, for a
// worksheet that is filled in by hand.
type Walk struct {
	needs Needs
	st    *state
}

// NewWalk begins with the first layout of a scene.
func NewWalk(o Options) (Walk, error) {
	st, err := begin(o.Scene, o.First)
	return Walk{o.Needs, st}, err
}

// Names lists the things that the first layout has in a list, by its pointer.
func (w Walk) Names(list string) []string { return w.st.root.object(list).keys() }

// Rows lists the keys of the thing at a pointer that --ask asks first, as far as they
// fit the scene and what the first layout says that the thing is. The lists of things
// in it are not among them: see [Walk.Lists].
func (w Walk) Rows(pointer string) []Asked {
	return w.rows(pointer, func(k Asked) bool { return k.Form != layout.FormThings })
}

// Lists lists the lists of things that the thing at a pointer has, and that are asked
// first.
func (w Walk) Lists(pointer string) []Asked {
	return w.rows(pointer, func(k Asked) bool { return k.Form == layout.FormThings })
}

func (w Walk) rows(pointer string, want func(Asked) bool) []Asked {
	var rows []Asked
	for _, k := range w.needs.Keys(layout.Template(pointer)) {
		if k.First && want(k) && w.st.fits(k.Template, filled(k.Template, pointer)) {
			rows = append(rows, k)
		}
	}
	return rows
}

// AskedAt is the key that a pointer leads to, if the contract has it.
func AskedAt(pointer string) (Asked, bool) {
	within, name := parent(pointer)
	key := keyNamed(within, name)
	return Asked{Key: key, Template: layout.Template(pointer)}, key.Name != ""
}

// Incomplete lists, as [Walk.Surveys] does, those that are not stated complete.
func (w Walk) Incomplete(pointer string) (words, meanings []string) {
	stated, _ := w.st.root.at(SurveyAt(pointer)).(list)
	all, means := w.Surveys(pointer)
	for i, word := range all {
		if !slices.Contains(stated, any(word)) {
			words, meanings = append(words, word), append(meanings, means[i])
		}
	}
	return words, meanings
}

// SurveyAt is where what stands at a pointer says which of its lists are complete.
func SurveyAt(pointer string) string {
	if pointer == "/surveyedBy" {
		return pointer + "/complete"
	}
	return pointer + "/surveyed/complete"
}

// Surveys lists the words of the lists that can be stated complete for what stands at
// a pointer: a space, a locker, the outside, or "/surveyedBy" for the whole dwelling.
// Each comes with the schema's meaning of it.
func (w Walk) Surveys(pointer string) (words, meanings []string) {
	survey := SurveyAt(pointer)
	within, key := parent(survey)
	for _, word := range keyNamed(layout.Template(within), key).Words {
		if section, _, _ := strings.Cut(strings.TrimPrefix(pointer, "/"), "/"); pointer != "/surveyedBy" && !countable(section, word) {
			continue
		}
		words, meanings = append(words, word), append(meanings, layout.Meaning(survey, word))
	}
	return words, meanings
}

// countable tells whether the things of a survey's word can be in such a place at all.
func countable(section, word string) bool {
	if section == "outside" {
		section = string(layout.OpenAir)
	}
	if list := ListOf("/"+section+"/*", word); strings.HasPrefix(list, "/"+section+"/") {
		return true
	} else if list != "" {
		for _, each := range PlaceKey(strings.TrimPrefix(list, "/")).Refs {
			if each == section {
				return true
			}
		}
	}
	return false
}

package ask

import (
	"fmt"
	"slices"
	"strings"

	"lowvent.example/schema/layout"
	"lowvent.example/schema/source"
)

// moreStep offers the keys of a thing that no check of DANGER or WARNING reads.
type moreStep struct {
	of   string // pointer of the thing
	walk string
	more []step
}

func (m moreStep) path() string { return m.walk }

func (m moreStep) fits(st *state) bool {
	return slices.ContainsFunc(m.more, func(s step) bool { return s.fits(st) })
}

func (m moreStep) show(st *state) question {
	var names []string
	for _, each := range m.more {
		if v, ok := each.(valueStep); ok && v.fits(st) {
			names = append(names, Label(m.of, Asked{Template: v.pointer}))
		}
	}
	return question{title: Title(m.of) + ": more to tell",
		asks: fmt.Sprintf("These no check of DANGER or WARNING waits for; lighter checks and the fitter's papers use them: %s.", strings.Join(names, "; ")),
		form: []string{`yes asks them one by one; an empty line leaves all of them out`}}
}

func (m moreStep) take(_ *state, answer string) ([]step, string, error) {
	if answer == "" {
		return nil, leftOut, nil
	}
	yes, err := readYesNo(answer)
	if err != nil {
		return nil, "", err
	}
	if yes == true {
		return m.more, "", nil
	}
	return nil, leftOut, nil
}

// Title names what stands at a pointer for people: "locker gas, vent low, gross".
func Title(pointer string) string {
	var words []string
	tokens := source.Split(pointer)
	at := ""
	for i := 0; i < len(tokens); i++ {
		within := at
		at = source.Join(at, tokens[i])
		if i+1 < len(tokens) && keyNamed(within, tokens[i]).Form == layout.FormThings {
			words = append(words, Spaced(singular(tokens[i]))+" "+tokens[i+1])
			i++
			at = source.Join(at, tokens[i])
			continue
		}
		words = append(words, Spaced(tokens[i]))
	}
	return strings.Join(words, ", ")
}

// singular is the name of one thing of a list.
func singular(section string) string {
	switch section {
	case "openTo":
		return "way to"
	case "sealedFrom":
		return "seal from"
	case "through":
		return "passage"
	case "contents":
		return "content"
	}
	return strings.TrimSuffix(section, "s")
}

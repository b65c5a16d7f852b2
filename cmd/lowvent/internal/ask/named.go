package ask

import (
	"fmt"

	"lowvent.example/schema/layout"
)

// Code is one code that a layout can be judged by.
type Code struct{ ID, Title string }

func (st *state) codeIDs() []string {
	var ids []string
	for _, each := range st.codes {
		ids = append(ids, each.ID)
	}
	return ids
}

func (st *state) codesToName() []string {
	lines := []string{"One of these, by its id or its number; the order says nothing of which is yours:"}
	for i, each := range st.codes {
		lines = append(lines, fmt.Sprintf("%d  %s: %s", i+1, each.ID, each.Title))
	}
	return lines
}

func (st *state) thingsToName(k Asked) []string {
	lines := []string{"One of these, by its name or its number:"}
	if k.Form == layout.FormRefs {
		lines[0] = `All that fit, with commas between; "none" alone for none of them:`
	}
	things := st.things(k.Refs)
	if len(things) == 0 {
		return []string{"The list and the name of a thing, with a stroke between; nothing that could be named is listed yet."}
	}
	for i, each := range things {
		lines = append(lines, fmt.Sprintf("%d  %s", i+1, each))
	}
	return lines
}

package ask

import (
	"fmt"
	"slices"
	"strings"

	"lowvent.example/schema/layout"
)

// namesStep asks which things of a list there are: in the whole dwelling, in the
// thing that has the list, or in one place where the list is walked.
type namesStep struct {
	list  string     // pointer: "/cylinders", "/lockers/gas/vents", "/openings"
	place string     // what the things are in or of: "spaces/cabin"; "" where they have one list
	key   layout.Key // by which they say so
	walk  string
	needs Needs
}

func (n namesStep) path() string { return n.walk }

func (n namesStep) fits(st *state) bool { return st.fits(layout.Template(n.list), n.list) }

// here lists the things of the list that stand in the place, those first that an answer
// spoke of. What does not say where it is may be here.
func (n namesStep) here(st *state) []string {
	var ids []string
	things := st.root.object(n.list)
	for _, id := range things.keys() {
		if n.place == "" || st.root.at(n.list+"/"+id+"/"+n.key.Name) == n.place {
			ids = append(ids, id)
		}
	}
	return ids
}

func (n namesStep) show(st *state) question {
	_, name := parent(n.list)
	q := question{title: Title(n.list), asks: listed(n.list), form: []string{
		`Names of your own, with commas between, of letters, digits and hyphens; "none" when you looked and there is none.`}}
	if n.place != "" {
		q.title = fmt.Sprintf("%s, %s", Title("/"+n.place), Spaced(name))
		q.asks = strings.TrimSuffix(listed(n.list), ` "none" states that there is none.`)
		if word := wordOf(name); word == name {
			q.asks = layout.Meaning(surveyOf(n.place), word)
		}
		q.asks += " Only what is in or of this place counts here."
	}
	if of := n.otherSpaces(st); of != nil {
		q.form = []string{`The names of spaces, with commas between, out of: ` + strings.Join(of, ", ") + `; "none" when you looked and there is none.`}
	}
	if here := n.here(st); len(here) > 0 {
		q.form = append(q.form, "The first layout names here: "+strings.Join(here, ", ")+". An empty line leaves that as it is.")
	}
	q.longer = []string{"In the file the list stands at " + n.list + ".", Describe(n.list)}
	return q
}

// otherSpaces are the names that the list can have, where its names are those of spaces.
func (n namesStep) otherSpaces(st *state) []string {
	of, name := parent(n.list)
	if name != "openTo" && name != "sealedFrom" {
		return nil
	}
	_, own := parent(of)
	return slices.DeleteFunc(st.root.object("/spaces").keys(), func(id string) bool { return name == "openTo" && id == own })
}

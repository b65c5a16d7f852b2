package ask

import (
	"fmt"
	"slices"
	"strings"

	"lowvent.example/schema/layout"
)

// wholeStep asks whether a list is complete: for a space, a locker or the outside, or
// for the whole dwelling. Nothing but the word yes makes it so.
type wholeStep struct {
	survey string // pointer of the key: "/spaces/cabin/surveyed/complete"
	word   string
	place  string // "spaces/cabin"; "" for the whole dwelling
	walk   string
}

func (w wholeStep) path() string { return w.walk }

// fits asks only of a list that was gone through: what was skipped is not complete.
func (w wholeStep) fits(st *state) bool {
	of := st.listOf(w.survey, w.word)
	if w.place == "" {
		return st.root.at(of) != nil && (st.counted[of] || w.word == "lines" && st.claimed["/lines"])
	}
	return of != "" && (st.counted[of+w.place] || st.counted[of] && strings.HasPrefix(of, "/"+w.place+"/"))
}

func (w wholeStep) show(st *state) question {
	where := "in the whole dwelling"
	if w.place != "" {
		where = "in or of " + Title("/"+w.place)
	}
	there := w.there(st)
	listed := "Nothing is listed there."
	if len(there) > 0 {
		listed = "Listed there: " + strings.Join(there, ", ") + "."
	}
	return question{title: "complete? " + Spaced(w.word) + " " + where, asks: layout.Meaning(probe(w.survey), w.word) + " " + listed,
		form:   []string{"yes only if you have gone through it, behind, below and above, and nothing of that sort is unlisted; anything else leaves the list open"},
		longer: []string{Describe(w.survey)}}
}

func (w wholeStep) there(st *state) []string {
	of := st.listOf(w.survey, w.word)
	if w.place == "" || strings.HasPrefix(of, "/"+w.place+"/") {
		return st.root.object(of).keys()
	}
	return namesStep{list: of, place: w.place, key: PlaceKey(strings.TrimPrefix(of, "/"))}.here(st)
}

func (w wholeStep) take(st *state, answer string) ([]step, string, error) {
	switch strings.ToLower(answer) {
	case "yes":
		st.answered++
		st.complete[w.survey] = append(slices.Clone(st.complete[w.survey]), w.word)
		return nil, "", st.check()
	case "", "no":
		return nil, "not complete: checks that range over it stay open", nil
	}
	return nil, "", fmt.Errorf("that can't be taken: only the word yes says that a list is complete; no or an empty line leaves it open")
}

// noneStep asks whether there is none at all of what was listed for no place, or of what was
// not asked for since nothing that is listed calls for it.
type noneStep struct{ section, walk string }

func (n noneStep) path() string { return n.walk }

func (n noneStep) fits(st *state) bool {
	at := "/" + n.section
	return st.root.at(at) == nil && (slices.Contains(Walked(), n.section) || !st.fits(at, at))
}

func (n noneStep) show(*state) question {
	what, _, _ := strings.Cut(Describe("/"+n.section), " {} states") // as a file would say it
	return question{title: "none at all? " + Spaced(n.section), asks: "None are listed. " + what,
		form: []string{"yes only if you have looked everywhere and there is none in, on or under the dwelling; anything else leaves it not known"}}
}

func (n noneStep) take(st *state, answer string) ([]step, string, error) {
	switch strings.ToLower(answer) {
	case "yes":
		st.answered++
		st.put("/"+n.section, &object{})
		st.counted["/"+n.section] = true
		return nil, "", st.check()
	case "", "no":
		return nil, leftOut, nil
	}
	return nil, "", fmt.Errorf("that can't be taken: only the word yes says that there is none; no or an empty line leaves it open")
}

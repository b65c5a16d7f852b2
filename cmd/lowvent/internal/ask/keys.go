package ask

import (
	"slices"
	"strings"
	"sync"

	"lowvent.example/schema/check"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

// Need is one check that reads a key.
type Need struct {
	Check, Asks string
	Word        report.Signal
}

// Needs tells, by the template of a key, which checks wait for it.
type Needs map[string][]Need

// NeedsOf collects what the checks of a set say that they read.
func NeedsOf(set check.Set) Needs {
	needs := Needs{}
	for _, each := range set.Checks {
		for _, template := range each.Reads {
			needs[template] = append(needs[template], Need{each.ID, each.Asks, each.Word})
		}
	}
	return needs
}

// always are the keys that no check reads and that a report can't do without: whose
// dwelling it is, whose law holds there, and whether gas is in it now.
var always = []string{"/title", "/where/country", "/where/region", "/where/code", "/dwelling/kind", "/gas/connected", "/gas/kind", "/surveyedBy/who", "/surveyedBy/on", "/spaces/*/surveyed/on", "/lockers/*/surveyed/on", "/outside/surveyed/on"}

// never are the keys that are not asked: the file's own form, what is written by
// itself, and the waivers, which are for findings that there are none of yet.
var never = []string{"/$schema", "/format", "/waivers", "/surveyedBy/complete", "/spaces/*/surveyed/complete", "/lockers/*/surveyed/complete", "/outside/surveyed/complete"}

// Asked is one key that is asked, or one row of a worksheet.
type Asked struct {
	layout.Key
	Template string // of the key: "/lockers/*/vents/*/gross"
	First    bool   // a check of DANGER or WARNING waits for it
}

// Keys lists what is asked of the object at a template, in the contract's order.
// Objects in it are gone through; a list of things in it stands for itself. The keys
// of what needs its keys together, such as the two corners of a box, are all first or
// none is.
func (n Needs) Keys(template string) []Asked {
	var asked []Asked
	for _, key := range layout.Keys(template) {
		at := template + "/" + key.Name
		switch {
		case slices.Contains(never, at):
		case key.Form == layout.FormObject:
			inner := n.Keys(at)
			if together(inner) {
				share(inner)
			}
			asked = append(asked, inner...)
		default:
			asked = append(asked, Asked{key, at, n.first(at, key.Form)})
		}
	}
	return asked
}

func together(keys []Asked) bool {
	return slices.ContainsFunc(keys, func(k Asked) bool { return k.Must })
}

func share(keys []Asked) {
	first := slices.ContainsFunc(keys, func(k Asked) bool { return k.First })
	for i := range keys {
		keys[i].First = first
	}
}

// first tells whether a check of DANGER or WARNING reads the key, or in a list of
// things any key of theirs.
func (n Needs) first(at string, form layout.Form) bool {
	if slices.Contains(always, at) {
		return true
	}
	if form != layout.FormThings {
		return grave(n[at])
	}
	for template, waiting := range n {
		if (template == at || strings.HasPrefix(template, at+"/")) && grave(waiting) {
			return true
		}
	}
	return false
}

func grave(waiting []Need) bool {
	return slices.ContainsFunc(waiting, func(w Need) bool { return w.Word.Rank() >= report.Warning.Rank() })
}

// order is that of a walk: the papers, then space by space, the locker, what stands in
// it and what hangs on it, the alarms, once round the outside, and papers again.
// What the contract lists and this does not is asked at the end.
var order = []string{"title", "where", "dwelling", "gas", "spaces", "lockers", "cylinders", "changeovers", "regulators", "junctions", "appliances",
	"stoves", "exhausts", "flues", "openEnds", "outdoorOutlets", "fillPoints", "lines", "alarms", "extinguishers", "signs", "outside",
	"people", "climate", "wants", "tests", "certificates", "tapeMeasures"}

// Parts lists the keys of the whole file that are asked, in the order of the walk.
// The lists that are gone through place by place are not among them: see [Walked].
func Parts() []layout.Key {
	var parts []layout.Key
	for _, key := range layout.Keys("") {
		if at := "/" + key.Name; !slices.Contains(never, at) && at != "/surveyedBy" && !slices.Contains(Walked(), key.Name) {
			parts = append(parts, key)
		}
	}
	rank := func(k layout.Key) int {
		if i := slices.Index(order, k.Name); i >= 0 {
			return i
		}
		return len(order)
	}
	slices.SortStableFunc(parts, func(a, b layout.Key) int { return rank(a) - rank(b) })
	return append(parts, keyNamed("", "surveyedBy"))
}

// Walked lists the lists that are gone through space by space, since each can be
// stated complete for one space.
func Walked() []string { return walked() }

var walked = sync.OnceValue(func() []string {
	var walked []string
	for _, word := range keyNamed("/spaces/*/surveyed", "complete").Words {
		if section := ListOf("/spaces/*", word); section != "" {
			walked = append(walked, strings.TrimPrefix(section, "/"))
		}
	}
	return walked
})

// ListOf is the pointer of the list that a word of a place's survey speaks of, or ""
// when the file has no such list for it.
func ListOf(place, word string) string {
	switch {
	case keyNamed(place, word).Form == layout.FormThings:
		return place + "/" + word
	case keyNamed("", word).Form == layout.FormThings:
		return "/" + word
	case word == string(layout.SurveyListContents):
		return "/storedGoods"
	}
	return ""
}

// keyNamed is the key of an object, or the zero Key.
func keyNamed(template, name string) layout.Key {
	keys := layout.Keys(template)
	if i := slices.IndexFunc(keys, func(k layout.Key) bool { return k.Name == name }); i >= 0 {
		return keys[i]
	}
	return layout.Key{}
}

// PlaceKey is the key by which the things of a list say where they are: "in" or "of".
func PlaceKey(section string) layout.Key {
	for _, name := range []string{"in", "of"} {
		if key := keyNamed("/"+section+"/*", name); key.Form == layout.FormRef {
			return key
		}
	}
	return layout.Key{}
}

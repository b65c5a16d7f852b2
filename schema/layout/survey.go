package layout

import (
	"fmt"
	"strings"

	"lowvent.example/schema/source"
)

// surveys faults every list that is stated complete and is not in the file:
// what was left out is not known, and can't be complete.
func (d *decoder) surveys(l *Layout) {
	d.complete(l, &l.SurveyedBy.Complete.spot, func(word string) string { return "/" + word })
	d.complete(l, &l.Outside.Surveyed.Complete.spot, listOfSpace)
	for _, s := range l.Spaces.All() {
		d.complete(l, &s.Surveyed.Complete.spot, listOfSpace)
	}
	for _, k := range l.Lockers.All() {
		d.complete(l, &k.Surveyed.Complete.spot, func(word string) string {
			switch SurveyList(word) {
			case SurveyListPenetrations, SurveyListContents:
				return k.spot.Pointer() + "/" + word
			}
			return "/" + word
		})
	}
}

// listOfSpace tells which list a word of a space's survey speaks of, or "" for
// what only a locker lists.
func listOfSpace(word string) string {
	switch SurveyList(word) {
	case SurveyListPenetrations:
		return ""
	case SurveyListContents:
		return "/storedGoods"
	}
	return "/" + word
}

// complete holds each word of one survey to the list that it speaks of.
func (d *decoder) complete(l *Layout, at *Spot, list func(word string) string) {
	if at.node == nil || at.node.Kind != source.Array {
		return
	}
	for _, node := range at.node.Children {
		pointer := list(node.Text())
		known := pointer == "" || l.spot.node.At(pointer) != nil || d.isSpoilt(Ref(strings.TrimPrefix(pointer, "/")))
		if !known && Meaning(node.Pointer(), node.Text()) != "" {
			d.beyond(node.Place(), fmt.Sprintf("%q is said to be complete, and the file has no list %s", node.Text(), pointer), "only lists that stand in the file",
				fmt.Sprintf("write that list, which is {} where there is nothing to list, or take %q out here", node.Text()))
		}
	}
}

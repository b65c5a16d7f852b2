package vent

import (
	"strings"

	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.ForItems(check.Descriptor{
	ID:         "survey.complete",
	Asks:       "Does the file state that every list which the checks range over is complete here?",
	Why:        "A battery that nobody listed sparks all the same: a distance kept from what is listed says nothing of what is not.",
	NotCovered: "Whether what is listed is right.",
	Word:       report.Warning,
	MayAct:     report.Owner,
	Limits:     []*code.Term{code.OwnSurveyComplete.Term},
	Reads:      []string{"/spaces/*/surveyed/complete", "/lockers/*/surveyed/complete", "/outside/surveyed/complete", "/surveyedBy/complete"},
}, surveyed, func(s *check.Sheet, item layout.Item) check.Ruling {
	switch item := item.(type) {
	case *layout.Space:
		return complete(s, &item.Surveyed.Complete, layout.SurveyListIgnitionSources, layout.SurveyListOpenings, layout.SurveyListFixedVents, layout.SurveyListCombustibles,
			layout.SurveyListContents)
	case *layout.Locker:
		return complete(s, &item.Surveyed.Complete, layout.SurveyListIgnitionSources, layout.SurveyListPenetrations, layout.SurveyListContents)
	}
	return check.All(s,
		func(s *check.Sheet) check.Ruling {
			return complete(s, &s.Layout().Outside.Surveyed.Complete, layout.SurveyListIgnitionSources, layout.SurveyListOpenings,
				layout.SurveyListFixedVents).About("the open air around the dwelling")
		},
		func(s *check.Sheet) check.Ruling {
			return complete(s, &s.Layout().SurveyedBy.Complete, inventory...).About("the lists of the whole file")
		})
}))

var inventory = []layout.InventoryList{layout.InventoryListCylinders, layout.InventoryListAppliances, layout.InventoryListLines,
	layout.InventoryListOpenEnds, layout.InventoryListRegulators, layout.InventoryListFlues, layout.InventoryListStoves,
	layout.InventoryListExhausts, layout.InventoryListFans, layout.InventoryListAlarms, layout.InventoryListStoredGoods}

// surveyed lists the dwelling itself, its spaces and its lockers.
func surveyed(l *layout.Layout) ([]layout.Item, *layout.Spot, bool) {
	items := []layout.Item{l}
	for _, each := range l.Spaces.All() {
		items = append(items, each)
	}
	for _, each := range l.Lockers.All() {
		items = append(items, each)
	}
	return items, l.Spot(), true
}

func complete[W ~string](s *check.Sheet, stated *layout.Words[W], wanted ...W) check.Ruling {
	duty := check.Asked(s, code.OwnSurveyComplete, nil)
	check.Read(s, &stated.Given)
	var lacking []string
	for _, each := range wanted {
		if !stated.Has(each) {
			lacking = append(lacking, string(each))
		}
	}
	if len(lacking) == 0 {
		return check.Is(s, true, duty, "every list complete", "every list complete")
	}
	return check.Is(s, false, duty, "not stated complete: "+strings.Join(lacking, ", "), "every list complete").
		Mend("Go through the place with the list in hand; only then add the list's name to \"complete\".")
}

package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
)

// tightTo takes whether the file states a locker vapour-tight to a space: the
// seal itself, and every gland that is listed in a wall between the two. A hole
// outweighs a seal that is merely stated.
func tightTo(s *check.Sheet, k *layout.Locker, space *layout.Space) (tight bool, found string) {
	seal := k.SealedFrom.Get(space.ID())
	if seal == nil {
		s.Missing("whether "+k.Label()+" is sealed from "+space.Label(), k.SealedFrom.Spot())
		return false, ""
	}
	kind := check.Read(s, &seal.Kind)
	if kind != layout.SealKindGasTight {
		return false, string(kind)
	}
	for _, p := range k.Penetrations.All() {
		if check.Read(s, &p.To) != space.Ref() {
			continue
		}
		allowed := check.AllowedWords(s, code.PracticeTightGlands, nil)
		if gland := check.Read(s, &p.Gland); !allowed.Has(string(gland)) {
			return false, "stated gas-tight, but " + p.Label() + " into it has the gland " + string(gland)
		}
	}
	return true, string(kind)
}

// surveyAround asks that a list is stated complete wherever gas from a point can
// reach: the open air, every locker, and every space but those that the point's
// locker is stated tight to.
func surveyAround(s *check.Sheet, k *layout.Locker, list layout.SurveyList) {
	l := s.Layout()
	surveyIn(s, nil, list)
	for _, each := range check.List(s, &l.Lockers) {
		surveyIn(s, each, list)
	}
	for _, each := range check.List(s, &l.Spaces) {
		if k == nil || !saidTight(s, k, each) {
			surveyIn(s, each, list)
		}
	}
}

// saidTight takes whether the file says so much as that a locker is tight to a
// space. Where it does not say, the space has to be surveyed.
func saidTight(s *check.Sheet, k *layout.Locker, space *layout.Space) bool {
	seal := k.SealedFrom.Get(space.ID())
	return seal != nil && seal.Kind.Known() && check.Read(s, &seal.Kind) == layout.SealKindGasTight
}

// sparks lists everything that can light gas, and asks that those lists are complete of
// which the whole file has one.
func sparks(s *check.Sheet) []layout.Item {
	for _, list := range sparkLists {
		check.Inventory(s, list)
	}
	return lights(s)
}

// sparkLists are the lists of the whole file in which what can light gas stands, beside
// the ignition sources of each space.
var sparkLists = []layout.InventoryList{layout.InventoryListAppliances, layout.InventoryListStoves, layout.InventoryListExhausts, layout.InventoryListFans}

// lights lists everything that can light gas, in whichever list it stands: a stove, an
// engine or a fan does so whether or not it is an ignition source by name as well.
func lights(s *check.Sheet) []layout.Item {
	l := s.Layout()
	var all []layout.Item
	all = appendAll(all, known(s, &l.IgnitionSources))
	all = appendAll(all, known(s, &l.Appliances))
	all = appendAll(all, known(s, &l.Stoves))
	all = appendAll(all, known(s, &l.Exhausts))
	return appendAll(all, known(s, &l.Fans))
}

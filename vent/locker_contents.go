package vent

import (
	"slices"

	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "locker.contents",
	Asks:       "Is nothing kept or fitted in the locker that can spark, burn, strike the cylinder or stand in front of a vent?",
	Why:        "The first thing that a leak fills is the locker: a drill battery or a lamp in there is a lighter held to it.",
	NotCovered: "What is put there for an hour. A box that keeps water out does not keep gas out: only what its maker marks for explosive air counts as protected.",
	Word:       report.Danger,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.LockerContents.Term, code.PracticeLockerContents.Term},
	Reads: []string{"/lockers/*/contents", "/lockers/*/contents/*/kind", "/ignitionSources", "/ignitionSources/*/in", "/ignitionSources/*/kind",
		"/ignitionSources/*/protection", "/appliances", "/appliances/*/in", "/storedGoods", "/storedGoods/*/in", "/storedGoods/*/kind",
		"/exhausts", "/exhausts/*/in", "/fans", "/fans/*/in"},
	Surveys: []layout.SurveyList{layout.SurveyListContents, layout.SurveyListIgnitionSources},
	Inventory: []layout.InventoryList{layout.InventoryListAppliances, layout.InventoryListStoredGoods, layout.InventoryListExhausts,
		layout.InventoryListFans},
}, lockers, func(s *check.Sheet, k *layout.Locker) check.Ruling {
	return check.ByEither(s, code.LockerContents, code.PracticeLockerContents, func(s *check.Sheet, limit code.WordLimit) check.Ruling { return onlyAllowed(s, k, limit) })
}))

func onlyAllowed(s *check.Sheet, k *layout.Locker, limit code.WordLimit) check.Ruling {
	allowed := check.AllowedWords(s, limit, nil)
	none := func() check.Ruling {
		return check.OneOf(s, "gas-gear", allowed).Worded("nothing but the gas supply itself", allowed.String())
	}
	return check.Every(s, keptIn(s, k), none, func(s *check.Sheet, x inLocker) check.Ruling {
		allowed := check.AllowedWords(s, limit, nil)
		return check.OneOf(s, x.word(s), allowed).Points(x.Spot()).
			Mend("Take it out of the locker for good, its cable and its holder with it; a hole that is left is closed vapour-tight.")
	})
}

// inLocker is one thing in a locker, with how to take the word by which codes know it.
type inLocker struct {
	layout.Item
	word func(*check.Sheet) string
}

func fixedWord(word string) func(*check.Sheet) string {
	return func(*check.Sheet) string { return word }
}

// keptIn takes everything that is in a locker beside the gas supply: what is listed as
// its contents, and what other lists say stands in it.
func keptIn(s *check.Sheet, k *layout.Locker) []inLocker {
	surveyIn(s, k, layout.SurveyListContents)
	surveyIn(s, k, layout.SurveyListIgnitionSources)
	l := s.Layout()
	var all []inLocker
	for _, c := range check.List(s, &k.Contents) {
		all = append(all, inLocker{c, func(s *check.Sheet) string { return string(check.Read(s, &c.Kind)) }})
	}
	for _, i := range standingIn(s, k, check.List(s, &l.IgnitionSources)) {
		all = append(all, inLocker{i, func(s *check.Sheet) string { return sparkWord(s, i) }})
	}
	for _, g := range standingIn(s, k, check.List(s, &l.Stored)) {
		all = append(all, inLocker{g, func(s *check.Sheet) string { return storedWord(check.Read(s, &g.Kind)) }})
	}
	for _, a := range standingIn(s, k, check.List(s, &l.Appliances)) {
		all = append(all, inLocker{a, fixedWord("flame")})
	}
	for _, x := range standingIn(s, k, check.List(s, &l.Exhausts)) {
		all = append(all, inLocker{x, fixedWord("flame")})
	}
	for _, f := range standingIn(s, k, check.List(s, &l.Fans)) {
		all = append(all, inLocker{f, fixedWord("electrics")})
	}
	for _, list := range []layout.InventoryList{layout.InventoryListAppliances, layout.InventoryListStoredGoods, layout.InventoryListExhausts, layout.InventoryListFans} {
		check.Inventory(s, list)
	}
	return all
}

// standingIn takes those things of a list that are said to stand in a place.
func standingIn[T layout.Item](s *check.Sheet, place interface{ Ref() layout.Ref }, list []T) []T {
	var some []T
	for _, each := range list {
		if check.Read(s, layout.PlaceOf(each)) == place.Ref() {
			some = append(some, each)
		}
	}
	return some
}

// sparkWord takes the word for an ignition source in a locker.
func sparkWord(s *check.Sheet, i *layout.IgnitionSource) string {
	switch check.Read(s, &i.Kind) {
	case layout.IgnitionKindBattery:
		return "battery"
	case layout.IgnitionKindSolidFuelStove, layout.IgnitionKindHeater, layout.IgnitionKindEngine, layout.IgnitionKindGenerator, layout.IgnitionKindOpenFlame:
		return "flame"
	}
	if check.Read(s, &i.Protected) == layout.ProtectionIgnitionProtected {
		return "protected-electrics"
	}
	return "electrics"
}

func storedWord(kind layout.StoredKind) string {
	if slices.Contains(vapours, kind) || kind == layout.StoredKindCharcoal {
		return "fuel"
	}
	return "other"
}

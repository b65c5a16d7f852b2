package vent

import (
	"slices"

	"lowvent.example/schema/check"
	"lowvent.example/schema/layout"
)

// waysIn takes every opening of the dwelling, and every fixed vent of its spaces: gas
// that lies outside gets in by either.
func waysIn(s *check.Sheet) []layout.Item {
	surveyEverywhere(s, layout.SurveyListOpenings)
	surveyEverywhere(s, layout.SurveyListFixedVents)
	var all []layout.Item
	all = appendAll(all, known(s, &s.Layout().Openings))
	return appendAll(all, known(s, &s.Layout().FixedVents))
}

// known takes a section as one that the file states.
func known[T any](s *check.Sheet, section *layout.Section[T]) *layout.Section[T] {
	check.List(s, section)
	return section
}

// surveyEverywhere asks that a list is stated complete in the open air and in every
// space.
func surveyEverywhere(s *check.Sheet, list layout.SurveyList) {
	surveyIn(s, nil, list)
	for _, each := range check.List(s, &s.Layout().Spaces) {
		surveyIn(s, each, list)
	}
}

// wayAt takes where a way in is.
func wayAt(s *check.Sheet, way layout.Item) thing {
	if v, is := way.(*layout.FixedVent); is {
		return endOf(s, v, &v.At)
	}
	return positioned(s, way)
}

// wayFrom is a way in as a neighbour.
func wayFrom(way layout.Item) neighbour {
	return neighbour{Item: way, where: func(s *check.Sheet) thing { return wayAt(s, way) }}
}

// countsAtAnyHeight takes whether an opening matters at any height: hot ones, and those
// with vapour of their own or a fan behind them.
func countsAtAnyHeight(s *check.Sheet, way layout.Item) bool {
	o, is := way.(*layout.Opening)
	return is && slices.Contains([]layout.OpeningKind{layout.OpeningKindVehicleFuelFiller, layout.OpeningKindEngineExhaustOutlet,
		layout.OpeningKindMechanicalIntake, layout.OpeningKindEngineAirIntake}, check.Read(s, &o.Kind))
}

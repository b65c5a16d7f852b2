package vent

import (
	"slices"

	"lowvent.example/schema/check"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/unit"
)

// neighbour is something that has to be kept away from something else, with how to
// take where it is.
type neighbour struct {
	layout.Item
	where func(*check.Sheet) thing
	drawn bool // only coordinates tell where: a tape to the item would not say to which end
}

// standing is a neighbour at its own place.
func standing(item layout.Item) neighbour {
	return neighbour{Item: item, where: func(s *check.Sheet) thing { return positioned(s, item) }}
}

// endAt is a neighbour at one point of an item, such as the end of a pipe.
func endAt(item layout.Item, p *layout.Given[layout.Point]) neighbour {
	return neighbour{Item: item, drawn: true, where: func(s *check.Sheet) thing { return endOf(s, item, p) }}
}

// endOf takes one point of an item as the place of it.
func endOf(s *check.Sheet, item layout.Item, p *layout.Given[layout.Point]) thing {
	at := check.Read(s, p)
	return thing{item: item, box: boxOf(at, at)}
}

// spaced takes the least distance between two things. A tape measure needs no
// coordinates.
func spaced(s *check.Sheet, a, b neighbour) unit.Length {
	if !a.drawn && !b.drawn {
		if t := tape(s, a.Item, b.Item); t != nil {
			return check.Measure(s, "d", &t.Is)
		}
	}
	return apart(s, "d", a.where(s), b.where(s))
}

// keptClear asks that each neighbour is at least as far from a thing as the limit asks.
func keptClear(s *check.Sheet, of neighbour, others []neighbour, limit lengthLimit, facts check.Facts, none, mend string) check.Ruling {
	check.Limit(s, "d_need", limit, facts)
	nobody := func() check.Ruling { return check.NotApplicable(s, none) }
	return check.Every(s, others, nobody, func(s *check.Sheet, o neighbour) check.Ruling {
		need := check.Limit(s, "d_need", limit, facts)
		return check.AtLeast(s, spaced(s, of, o), need).About("%s to %s", of.Label(), o.Label()).Points(o.Spot()).Mend(mend)
	})
}

// openingsThat takes the openings of which a question holds.
func openingsThat(s *check.Sheet, holds func(*check.Sheet, *layout.Opening) bool) []neighbour {
	surveyEverywhere(s, layout.SurveyListOpenings)
	var some []neighbour
	for _, o := range check.List(s, &s.Layout().Openings) {
		if holds(s, o) {
			some = append(some, standing(o))
		}
	}
	return some
}

// isIntake takes whether a fan or an engine draws air through an opening.
func isIntake(s *check.Sheet, o *layout.Opening) bool {
	return slices.Contains([]layout.OpeningKind{layout.OpeningKindMechanicalIntake, layout.OpeningKindEngineAirIntake}, check.Read(s, &o.Kind))
}

// flueEnds takes the terminals of all flues, and the air inlets of those that have one
// apart from the terminal.
func flueEnds(s *check.Sheet) []neighbour {
	check.Inventory(s, layout.InventoryListFlues)
	var ends []neighbour
	for _, f := range check.List(s, &s.Layout().Flues) {
		ends = append(ends, endAt(f, &f.Terminal.At))
		if f.Intake.Present() {
			ends = append(ends, endAt(f, &f.Intake.At))
		}
	}
	return ends
}

// outdoorSparks takes what can light gas in the open air: ignition sources and
// appliances that are stated to stand there.
func outdoorSparks(s *check.Sheet) []neighbour {
	surveyIn(s, nil, layout.SurveyListIgnitionSources)
	var some []neighbour
	for _, spark := range sparks(s) {
		if check.Read(s, layout.PlaceOf(spark)) == layout.OpenAir {
			some = append(some, standing(spark))
		}
	}
	return some
}

package vent

import (
	"slices"
	"strings"
	"unicode"

	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/vent/box"
)

var _ = add(check.For(check.Descriptor{
	ID:         "extinguisher.place",
	Asks:       "Is there a fire extinguisher for burning fat and gas that is nearer to a way out than the cooker is?",
	Why:        "An extinguisher behind the fire is out of reach, and who goes for it has the fire between himself and the door.",
	NotCovered: "Whether it is full and within its date, and that a gas flame is put out by shutting the gas and by nothing else.",
	Word:       report.Warning,
	MayAct:     report.Owner,
	Limits:     []*code.Term{code.PracticeExtinguisherPlace.Term, code.PracticeExtinguisher.Term},
	Reads: append([]string{"/appliances/*/in", "/appliances/*/kind", "/appliances/*/at", "/appliances/*/box/from", "/appliances/*/box/to",
		"/extinguishers", "/extinguishers/*/in", "/extinguishers/*/class", "/extinguishers/*/mass", "/extinguishers/*/at", "/extinguishers/*/box/from", "/extinguishers/*/box/to"}, outReads...),
	Sources: []string{"Euclid, least distance between boxes"},
}, appliances, indoors(func(s *check.Sheet, a *layout.Appliance) check.Ruling {
	if !cooks(check.Read(s, &a.Kind)) {
		return check.NotApplicable(s, "it is not for cooking")
	}
	space, ok := check.Item(s, &a.In).(*layout.Space)
	if !ok {
		return check.NotApplicable(s, "it stands in no space of the dwelling")
	}
	asked := check.Asked(s, code.PracticeExtinguisherPlace, nil)
	rooms := withNeighbours(s, space)
	outs := waysOut(s, rooms)
	var tries []func(*check.Sheet) check.Ruling
	for _, x := range extinguishersIn(s, rooms) {
		for _, out := range outs {
			tries = append(tries, func(s *check.Sheet) check.Ruling { return inReach(s, a, x, out) })
		}
	}
	if len(tries) == 0 {
		return check.Is(s, false, asked, "no extinguisher of class B there or next door, or no way out", "an extinguisher of class B and a way out").
			Points(s.Layout().Extinguishers.Spot()).Mend("An extinguisher of class B by the way out, where it can be reached without going past the cooker.")
	}
	return check.Any(s, tries...)
})))

// extinguishersIn takes every extinguisher of class B in some spaces, and all that is
// asked of each: one of which something is not known may be the one that is grasped.
func extinguishersIn(s *check.Sheet, rooms []layout.Ref) []*layout.Extinguisher {
	var found []*layout.Extinguisher
	for _, x := range check.List(s, &s.Layout().Extinguishers) {
		if slices.Contains(rooms, check.Read(s, &x.In)) && forBurningFat(check.Read(s, &x.Class)) {
			check.Measure(s, "m", &x.Mass)
			at(s, x, &x.Position)
			found = append(found, x)
		}
	}
	slices.SortStableFunc(found, func(a, b *layout.Extinguisher) int { return byPlace(&a.Position, &b.Position) })
	return found
}

// inReach asks of one extinguisher and one way out that the first is large enough,
// and no farther from the second than the cooker is.
func inReach(s *check.Sheet, a *layout.Appliance, x *layout.Extinguisher, out *layout.Opening) check.Ruling {
	return check.All(s,
		func(s *check.Sheet) check.Ruling {
			least := check.Limit(s, "m_need", code.PracticeExtinguisher, nil)
			return check.AtLeast(s, check.Measure(s, "m", &x.Mass), least).About("%s, filling", x.Label()).
				Mend("A larger extinguisher.", check.Raise(&x.Mass, least.At()))
		},
		func(s *check.Sheet) check.Ruling {
			asked := check.Asked(s, code.PracticeExtinguisherPlace, nil)
			cooker, door, it := at(s, a, &a.Position), at(s, out, &out.Position), at(s, x, &x.Position)
			away := check.Band(s, "d_cooker", between(cooker, door, "least distance"), box.Gap(cooker.box, door.box))
			return check.AtMost(s, apart(s, "d", it, door), check.Against(asked, away)).About("%s, to %s", x.Label(), out.Label()).
				Mend("Hang it nearer to the way out than the cooker is.")
		})
}

// forBurningFat tells whether the classes printed on an extinguisher name B, for
// burning liquids: "1-A:10-B:C", "ABC", "34B". A blanket names none, and the BS of
// a standard is no class: of a word that names classes every letter is one, in
// rising order.
func forBurningFat(printed string) bool {
	words := strings.FieldsFunc(printed, func(r rune) bool { return !unicode.IsLetter(r) })
	return slices.ContainsFunc(words, func(word string) bool {
		last := rune(0)
		for _, r := range word {
			if !strings.ContainsRune("ABCDEFK", r) || r <= last {
				return false
			}
			last = r
		}
		return strings.ContainsRune(word, 'B')
	})
}

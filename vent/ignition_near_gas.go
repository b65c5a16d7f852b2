package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

type lengthLimit = code.Limit[unit.Length]

var _ = add(check.ForItems(check.Descriptor{
	ID:         "ignition.near-gas",
	Asks:       "Is every ignition source far enough from each place where gas can come out: cylinders, regulators, vents of lockers?",
	Why:        "One spark within reach of a leak is enough, and batteries, switches and pumps spark unseen.",
	NotCovered: "Sources in a space that the locker is stated tight to: there the seal is judged. Flue terminals have a check of their own.",
	Word:       report.Danger,
	Instead:    []string{"/lockers/*/vents/*/endsAt", "/tapeMeasures/*/is", "/lockers/*/sealedFrom/*/seal"}, // a seal spares the survey behind it
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.VentToIgnition.Term, code.CylinderToIgnition.Term, code.PracticeVentToIgnition.Term, code.PracticeTightGlands.Term},
	Reads: []string{"/ignitionSources", "/ignitionSources/*/at", "/ignitionSources/*/box/from", "/ignitionSources/*/box/to", "/ignitionSources/*/in",
		"/cylinders/*/at", "/cylinders/*/box/from", "/cylinders/*/box/to", "/cylinders/*/in", "/cylinders/*/diameter", "/cylinders/*/height",
		"/regulators/*/at", "/regulators/*/box/from", "/regulators/*/box/to", "/regulators/*/in",
		"/lockers", "/lockers/*/vents/*/at", "/lockers/*/vents/*/endsAt", "/lockers/*/sealedFrom/*/seal",
		"/lockers/*/penetrations/*/to", "/lockers/*/penetrations/*/gland", "/spaces", "/tapeMeasures/*/is",
		"/appliances", "/appliances/*/in", "/appliances/*/at", "/appliances/*/box/from", "/appliances/*/box/to", "/stoves", "/stoves/*/in", "/stoves/*/at", "/stoves/*/box/from", "/stoves/*/box/to",
		"/exhausts", "/exhausts/*/in", "/exhausts/*/at", "/exhausts/*/box/from", "/exhausts/*/box/to",
		"/fans", "/fans/*/in", "/fans/*/at", "/fans/*/box/from", "/fans/*/box/to"},
	Inventory: sparkLists,
	Surveys:   []layout.SurveyList{layout.SurveyListIgnitionSources},
	Claims:    []string{"/lockers/*/sealedFrom/*/seal", "/lockers/*/penetrations/*/gland"},
	Sources:   []string{"Euclid, least distance between boxes"},
}, gasPoints, func(s *check.Sheet, point layout.Item) check.Ruling {
	return check.OrPractice(s,
		func(s *check.Sheet) check.Ruling {
			if c, is := point.(*layout.Cylinder); is {
				return clearOfIgnition(s, point, code.CylinderToIgnition, cylinderFacts(c))
			}
			return clearOfIgnition(s, point, code.VentToIgnition, nil)
		},
		func(s *check.Sheet) check.Ruling { return clearOfIgnition(s, point, code.PracticeVentToIgnition, nil) })
}))

// gasPoints lists everything from which gas can come out.
func gasPoints(l *layout.Layout) ([]layout.Item, *layout.Spot, bool) {
	var points []layout.Item
	for _, c := range l.Cylinders.All() {
		points = append(points, c)
	}
	for _, r := range l.Regulators.All() {
		points = append(points, r)
	}
	for _, k := range l.Lockers.All() {
		for _, v := range k.Vents.All() {
			points = append(points, v)
		}
	}
	return points, l.Cylinders.Spot(), l.Cylinders.Known()
}

// sparkSorts parts what can light gas by where it is: a seal keeps all of one space.
var sparkSorts = sorts{"sparks", func(i layout.Item) (string, bool) { return stated(layout.PlaceOf(i)) }, inOrder}

func clearOfIgnition(s *check.Sheet, point layout.Item, limit lengthLimit, facts check.Facts) check.Ruling {
	k := lockerOf(s, point)
	surveyAround(s, k, layout.SurveyListIgnitionSources)
	apart := check.Limit(s, "d_need", limit, facts).At()
	none := func() check.Ruling { return check.NotApplicable(s, "the file states that nothing there can light gas") }
	return check.Every(s, withinReach(s, sparkSorts, sparks(s), point, apart), none, func(s *check.Sheet, spark layout.Item) check.Ruling {
		need := check.Limit(s, "d_need", limit, facts)
		reach := reaches(s, point, spark)
		if reach == kept {
			return check.NotApplicable(s, "it is in a space that the locker is stated tight to")
		}
		ruling := check.AtLeast(s, distance(s, reach, point, spark), need)
		if reach == fills {
			ruling = ruling.Says("gas from there reaches all of the space that it is in")
		}
		return ruling.Points(spark.Spot()).Mend("Move the ignition source, or the vent or cylinder, until they are this far apart.")
	})
}

// reach is how gas from a point comes to an ignition source.
type reach uint8

const (
	straight reach = iota // through the open air or within one enclosure: by distance
	kept                  // not at all, as stated: a seal is between them
	fills                 // by filling the space that the source is in
)

// reaches takes how gas from a point comes to an ignition source. A locker that
// is not tight to a space, or a cylinder in it, fills the space: how far off the
// source stands in there does not help.
func reaches(s *check.Sheet, point, spark layout.Item) reach {
	space, indoors := check.Item(s, layout.PlaceOf(spark)).(*layout.Space)
	if !indoors {
		return straight
	}
	if k := lockerOf(s, point); k != nil {
		if tight, _ := tightTo(s, k, space); tight {
			return kept
		}
		return fills
	}
	if in := layout.PlaceOf(point); in != nil && check.Read(s, in) == space.Ref() {
		return fills
	}
	return straight
}

// distance takes how far gas has to go. A tape measure needs no coordinates.
func distance(s *check.Sheet, way reach, point, spark layout.Item) unit.Length {
	if way == fills {
		return 0
	}
	if t := tape(s, point, spark); t != nil {
		return check.Measure(s, "d", &t.Is)
	}
	return apart(s, "d", pointAt(s, point), positioned(s, spark))
}

// pointAt takes where gas can come out of a thing.
func pointAt(s *check.Sheet, point layout.Item) thing {
	switch point := point.(type) {
	case *layout.Cylinder:
		return cylinderAt(s, point)
	case *layout.Regulator:
		return at(s, point, &point.Position)
	case *layout.LockerVent:
		return ventAt(s, point)
	}
	panic("vent: no gas comes out of " + point.Label())
}

// lockerOf is the locker in which gas from a point comes out first.
func lockerOf(s *check.Sheet, point layout.Item) *layout.Locker {
	switch point := point.(type) {
	case *layout.Cylinder:
		k, _ := check.Item(s, &point.In).(*layout.Locker)
		return k
	case *layout.Regulator:
		k, _ := check.Item(s, &point.In).(*layout.Locker)
		return k
	}
	k, _ := s.Layout().Find(layout.Ref("lockers/" + refOf(point).ID())).(*layout.Locker)
	return k
}

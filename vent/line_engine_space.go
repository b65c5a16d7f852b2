package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/vent/box"
)

var _ = add(check.For(check.Descriptor{
	ID:         "line.engine-space",
	Asks:       "Does the line keep out of the space of an engine?",
	Why:        "An engine shakes joints loose, and sparks and glows in the same air.",
	NotCovered: "Generators and heaters that stand in no space of their own, and whether the bulkhead is tight.",
	Word:       report.Warning,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.LineNotInEngineSpace.Term, code.PracticeEngineSpace.Term},
	Reads: []string{"/lines/*/kind", "/lines/*/from", "/lines/*/to", "/lines/*/route", "/lines/*/joints", "/lines/*/joints/*/in", "/spaces", "/spaces/*/use",
		"/spaces/*/box/from", "/spaces/*/box/to", "/junctions/*/in", "/cylinders/*/in", "/changeovers/*/in", "/regulators/*/in", "/appliances/*/in", "/openEnds/*/in"},
	Sources: []string{"Euclid, least distance between boxes"},
}, func(l *layout.Layout) *layout.Section[layout.Line] { return &l.Lines }, awayFromEngines))

func awayFromEngines(s *check.Sheet, line *layout.Line) check.Ruling {
	ask := func(s *check.Sheet, l code.DutyLimit) check.Ruling {
		check.Asked(s, l, nil)
		var engines []*layout.Space
		for _, space := range check.List(s, &s.Layout().Spaces) {
			if check.Read(s, &space.Use) == layout.SpaceUseEngine {
				engines = append(engines, space)
			}
		}
		none := func() check.Ruling { return check.NotApplicable(s, "there is no space for an engine") }
		return check.Every(s, engines, none, func(s *check.Sheet, space *layout.Space) check.Ruling {
			duty := check.Asked(s, l, nil)
			in := runsIn(s, line, space)
			return check.Is(s, !in, duty, either(in, "runs through it", "runs outside it"), "runs outside it").Points(line.Spot()).
				Mend("Another way for the line; the fitter lays it.")
		})
	}
	return check.ByEither(s, code.LineNotInEngineSpace, code.PracticeEngineSpace, func(s *check.Sheet, l code.DutyLimit) check.Ruling { return ask(s, l) })
}

// runsIn takes whether a line runs in a space: one of its joints or ends is there, or
// its route goes through. A line whose two ends are in one locker stays in
// that, and where one part screws into the next nothing is between.
func runsIn(s *check.Sheet, line *layout.Line, space *layout.Space) bool {
	for _, j := range check.List(s, &line.Joints) {
		if check.Read(s, &j.In) == space.Ref() {
			return true
		}
	}
	from, to := placeOf(s, check.Item(s, &line.From)), placeOf(s, check.Item(s, &line.To))
	if from == space.Ref() || to == space.Ref() {
		return true
	}
	if from.Section() == "lockers" && from == to || check.Read(s, &line.Kind) == layout.LineKindDirect {
		return false
	}
	route := check.Read(s, &line.Route)
	room := boxOf(check.Corners(s, &space.Box))
	for i := 1; i < len(route) && !s.Stuck(); i++ {
		way := boxOf(route[i-1], route[i])
		if check.Band(s, "d", "distance of "+line.Label()+" from "+space.Label(), box.Gap(way, room)) <= 0 {
			return true
		}
	}
	return false
}

// placeOf takes the space or locker in which a thing stands; what has no such key
// stands in the open air.
func placeOf(s *check.Sheet, item layout.Item) layout.Ref {
	if in := layout.PlaceOf(item); in != nil {
		return check.Read(s, in)
	}
	return layout.OpenAir
}

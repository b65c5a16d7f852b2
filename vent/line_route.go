package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
	"lowvent.example/vent/box"
)

var _ = add(check.For(check.Descriptor{
	ID:   "line.route",
	Asks: "Is the line guarded in every hole, clear of wiring, heat, engines and the ways out, and branched where the code wants it?",
	Why:  "A line that chafes in a hole, lies on a cable or crosses an engine bay leaks beside the spark that lights it, and under the door that people flee by.",
	NotCovered: "How far a line is from the ground and from what drives over it, and whether cables in conduit may be nearer: " +
		"the fitter looks along it.",
	Word:   report.Warning,
	MayAct: report.LicensedFitter,
	Limits: []*code.Term{code.LineSleeves.Term, code.LineNotUnderExit.Term, code.LineToWiring.Term, code.LineToHeat.Term, code.LineNotInEngineSpace.Term,
		code.JunctionPlaces.Term, code.PracticeSleeves.Term, code.PracticeNotUnderExit.Term, code.PracticeLineToWiring.Term, code.PracticeLineToHeat.Term,
		code.PracticeEngineSpace.Term},
	Reads: []string{"/lines/*/kind", "/lines/*/through", "/lines/*/through/*/sleeve", "/lines/*/underExit", "/lines/*/leastToWiring", "/lines/*/leastToHeat",
		"/lines/*/from", "/lines/*/to", "/lines/*/route", "/lines/*/joints", "/lines/*/joints/*/in", "/spaces", "/spaces/*/use", "/spaces/*/box/from", "/spaces/*/box/to",
		"/junctions/*/in", "/cylinders/*/in", "/changeovers/*/in", "/regulators/*/in", "/appliances/*/in", "/openEnds/*/in"},
	Sources: []string{"Euclid, least distance between boxes"},
}, pipework, sleeved, awayFromExits, awayFromWiring, awayFromHeat, awayFromEngines, junctionsPlaced))

func pipework(l *layout.Layout) *layout.Section[layout.Line] { return &l.Lines }

// byCodeOrCustom asks the same by a term of the code and, where that is silent, by
// one of common practice.
func byCodeOrCustom[L any](s *check.Sheet, byCode, byPractice L, ask func(*check.Sheet, L) check.Ruling) check.Ruling {
	return check.OrPractice(s,
		func(s *check.Sheet) check.Ruling { return ask(s, byCode) },
		func(s *check.Sheet) check.Ruling { return ask(s, byPractice) })
}

const reroute = "Another way for the line; the fitter lays it."

func sleeved(s *check.Sheet, line *layout.Line) check.Ruling {
	none := func() check.Ruling { return check.NotApplicable(s, "the line passes through nothing") }
	return check.Every(s, check.List(s, &line.Through), none, func(s *check.Sheet, p *layout.Passage) check.Ruling {
		return byCodeOrCustom(s, code.LineSleeves, code.PracticeSleeves, func(s *check.Sheet, l code.WordLimit) check.Ruling {
			return check.OneOf(s, check.Read(s, &p.Sleeve), check.AllowedWords(s, l, nil)).
				Mend("A fitting made to go through a wall, or a sealed sleeve; the fitter puts it in.", check.SetWord(&p.Sleeve, layout.SleeveKindBulkheadFitting))
		})
	})
}

func awayFromExits(s *check.Sheet, line *layout.Line) check.Ruling {
	return byCodeOrCustom(s, code.LineNotUnderExit, code.PracticeNotUnderExit, func(s *check.Sheet, l code.DutyLimit) check.Ruling {
		duty := check.Asked(s, l, nil)
		under := check.Read(s, &line.UnderExit)
		return check.Is(s, !under, duty, yesNo(under, "under a way out", "clear of the ways out"), "clear of the ways out").Mend(reroute)
	})
}

func awayFromWiring(s *check.Sheet, line *layout.Line) check.Ruling {
	return keptOff(s, line, &line.ToWiring, code.LineToWiring, code.PracticeLineToWiring)
}

func awayFromHeat(s *check.Sheet, line *layout.Line) check.Ruling {
	return keptOff(s, line, &line.ToHeat, code.LineToHeat, code.PracticeLineToHeat)
}

func keptOff(s *check.Sheet, line *layout.Line, gap *layout.Measure[unit.Length], byCode, byPractice lengthLimit) check.Ruling {
	if check.Read(s, &line.Kind) == layout.LineKindDirect {
		return check.NotApplicable(s, "no pipe is between the two parts")
	}
	return byCodeOrCustom(s, byCode, byPractice, func(s *check.Sheet, l lengthLimit) check.Ruling {
		need := check.Limit(s, "d_need", l, nil)
		return check.AtLeast(s, check.Measure(s, "d", gap), need).Mend(reroute, check.Raise(gap, need.At()))
	})
}

func awayFromEngines(s *check.Sheet, line *layout.Line) check.Ruling {
	return byCodeOrCustom(s, code.LineNotInEngineSpace, code.PracticeEngineSpace, func(s *check.Sheet, l code.DutyLimit) check.Ruling {
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
			return check.Is(s, !in, duty, yesNo(in, "runs through it", "runs outside it"), "runs outside it").Points(line.Spot()).Mend(reroute)
		})
	})
}

// runsIn takes whether a line runs in a space: one of its joints or ends is there, or
// its route goes through. A line whose two ends are in one locker stays in that.
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
	if from.Section() == "lockers" && from == to {
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

func junctionsPlaced(s *check.Sheet, line *layout.Line) check.Ruling {
	j, branches := check.Item(s, &line.To).(*layout.Junction)
	if !branches {
		return check.NotApplicable(s, "the line leads to no tee or manifold")
	}
	allowed := check.AllowedWords(s, code.JunctionPlaces, nil)
	return check.OneOf(s, check.Read(s, &j.In).Section(), allowed).About("%s", j.Label()).
		Mend("A tee or manifold where the code wants it; the fitter moves it.")
}

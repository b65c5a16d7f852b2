package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "locker.penetrations",
	Asks:       "Is every pipe, cable and bolt through an inner wall of the locker listed, each with a vapour-tight gland?",
	Why:        "The hole around a pipe is the usual way by which gas from a sealed locker gets inside.",
	NotCovered: "Whether a gland holds: a fitter proves it with the locker's seal.",
	Word:       report.Danger,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.LockerPenetrations.Term, code.PracticeLockerPenetrations.Term, code.PracticeTightGlands.Term},
	Reads: []string{"/lines", "/lines/*/from", "/lines/*/to", "/lockers/*/penetrations", "/lockers/*/penetrations/*/of", "/lockers/*/penetrations/*/gland",
		"/cylinders/*/in", "/changeovers/*/in", "/regulators/*/in", "/junctions/*/in", "/appliances/*/in", "/openEnds/*/in"},
	Surveys:   []layout.SurveyList{layout.SurveyListPenetrations},
	Inventory: []layout.InventoryList{layout.InventoryListLines},
	Claims:    []string{"/lockers/*/penetrations/*/gland"},
}, lockers, orPractice(code.LockerPenetrations, code.PracticeLockerPenetrations, tightGlands),
	orPractice(code.LockerPenetrations, code.PracticeLockerPenetrations, linesListed)))

func tightGlands(s *check.Sheet, k *layout.Locker, asked code.DutyLimit) check.Ruling {
	duty := check.Asked(s, asked, nil)
	check.Survey(s, k, &k.Surveyed, layout.SurveyListPenetrations)
	none := func() check.Ruling {
		return check.Is(s, true, duty, "nothing goes through the walls", "vapour-tight glands")
	}
	return check.Every(s, check.List(s, &k.Penetrations), none, func(s *check.Sheet, p *layout.Penetration) check.Ruling {
		check.Asked(s, asked, nil)
		return check.OneOf(s, check.Read(s, &p.Gland), check.AllowedWords(s, code.PracticeTightGlands, nil)).
			Mend("A gland made to be vapour-tight, on the lining itself.", check.SetWord(&p.Gland, layout.GlandBulkhead))
	})
}

// linesListed asks that each line with one end in the locker and the other
// outside it is among the penetrations: no pipe goes through a wall without a hole.
func linesListed(s *check.Sheet, k *layout.Locker, asked code.DutyLimit) check.Ruling {
	duty := check.Asked(s, asked, nil)
	check.Inventory(s, layout.InventoryListLines)
	var crossing []*layout.Line
	for _, line := range check.List(s, &s.Layout().Lines) {
		from, to := check.Read(s, &line.From), check.Read(s, &line.To)
		if inside(s, from, k) != inside(s, to, k) {
			crossing = append(crossing, line)
		}
	}
	none := func() check.Ruling { return check.NotApplicable(s, "no line goes through the locker's walls") }
	return check.Every(s, crossing, none, func(s *check.Sheet, line *layout.Line) check.Ruling {
		for _, p := range check.List(s, &k.Penetrations) {
			if check.Read(s, &p.Of) == string(line.Ref()) {
				return check.Is(s, true, duty, "listed as "+p.Label(), "listed")
			}
		}
		s.Missing("where "+line.Label()+" goes through the locker's wall, and its gland", k.Penetrations.Spot())
		return check.Ruling{}
	})
}

// inside takes whether a thing stands in the locker. Outdoor outlets, which have
// no such key, stand in none.
func inside(s *check.Sheet, ref layout.Ref, k *layout.Locker) bool {
	in := layout.PlaceOf(s.Layout().Find(ref))
	return in != nil && check.Read(s, in) == k.Ref()
}

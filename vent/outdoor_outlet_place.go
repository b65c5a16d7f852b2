package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/vent/box"
)

var _ = add(check.For(check.Descriptor{
	ID:         "outdoor-outlet.place",
	Asks:       "Has the outlet outside a valve and a cap, and is it away from openings and from the vents of lockers?",
	Why:        "A grill under a window sends its gas and its carbon monoxide inside, and beside a locker's vent it lights what drains there.",
	NotCovered: "What is plugged in and how far its flame reaches, and a second regulator in it.",
	Word:       report.Warning,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.PracticeOutletClosed.Term, code.PracticeOutletToOpening.Term},
	Reads: []string{"/outdoorOutlets/*/shutoff", "/outdoorOutlets/*/capped", "/outdoorOutlets/*/at", "/outdoorOutlets/*/box/from", "/outdoorOutlets/*/box/to",
		"/openings", "/openings/*/at", "/openings/*/box/from", "/openings/*/box/to", "/spaces",
		"/lockers", "/lockers/*/vents", "/lockers/*/vents/*/at", "/lockers/*/vents/*/endsAt"},
	Instead: []string{"/lockers/*/vents/*/endsAt"},
	Surveys: []layout.SurveyList{layout.SurveyListOpenings},
	Sources: []string{"Euclid, least distance between boxes"},
}, outlets, outletClosed, outletFromOpenings, outletFromVents))

func outlets(l *layout.Layout) *layout.Section[layout.Outlet] { return &l.Outlets }

func outletClosed(s *check.Sheet, o *layout.Outlet) check.Ruling {
	return check.All(s,
		func(s *check.Sheet) check.Ruling {
			duty := check.Asked(s, code.PracticeOutletClosed, nil)
			valve := check.Read(s, &o.Shutoff)
			return check.Is(s, valve, duty, either(valve, "a valve", "no valve"), "a valve beside it").
				Mend("A valve right beside the outlet; the fitter puts it in.", check.SetBool(&o.Shutoff, true))
		},
		func(s *check.Sheet) check.Ruling {
			duty := check.Asked(s, code.PracticeOutletClosed, nil)
			capped := check.Read(s, &o.Capped)
			return check.Is(s, capped, duty, either(capped, "a cap", "no cap"), "a cap when nothing is plugged in").
				Mend("The cap that belongs to the outlet, on a chain.", check.SetBool(&o.Capped, true))
		})
}

const moveOutlet = "Another place for the outlet; the fitter moves it."

// outletFromOpenings asks for the distance in plan: a window over the outlet takes in
// what burns below it.
func outletFromOpenings(s *check.Sheet, o *layout.Outlet) check.Ruling {
	surveyEverywhere(s, layout.SurveyListOpenings)
	check.Limit(s, "d_need", code.PracticeOutletToOpening, nil)
	none := func() check.Ruling { return check.NotApplicable(s, "the file states that there is no opening") }
	return check.Every(s, check.List(s, &s.Layout().Openings), none, func(s *check.Sheet, opening *layout.Opening) check.Ruling {
		need := check.Limit(s, "d_need", code.PracticeOutletToOpening, nil)
		a, b := at(s, o, &o.Position), at(s, opening, &opening.Position)
		return check.AtLeast(s, check.Band(s, "d", between(a, b, "distance in plan"), box.PlanGap(a.box, b.box)), need).
			Points(o.Spot()).Mend(moveOutlet)
	})
}

func outletFromVents(s *check.Sheet, o *layout.Outlet) check.Ruling {
	check.Limit(s, "d_need", code.PracticeOutletToOpening, nil)
	var vents []*layout.LockerVent
	for _, k := range check.List(s, &s.Layout().Lockers) {
		vents = append(vents, check.List(s, &k.Vents)...)
	}
	none := func() check.Ruling { return check.NotApplicable(s, "the file lists no vent of a locker") }
	return check.Every(s, vents, none, func(s *check.Sheet, v *layout.LockerVent) check.Ruling {
		need := check.Limit(s, "d_need", code.PracticeOutletToOpening, nil)
		return check.AtLeast(s, apart(s, "d", at(s, o, &o.Position), ventAt(s, v)), need).Points(o.Spot()).Mend(moveOutlet)
	})
}

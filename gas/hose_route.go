package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "hose.route",
	Asks:       "Does the hose pass through no wall, in plain sight, rising from its cylinder, and only where something moves?",
	Why:        "Where a hose goes through a wall its edge saws at it, and where nobody sees it nobody sees the crack.",
	NotCovered: "Heat, strain and oil: line.route and the fitter. Engine spaces: ask the fitter.",
	Word:       report.Warning,
	MayAct:     report.LicensedFitter,
	Limits: []*code.Term{code.HoseNotThrough.Term, code.PracticeHoseNotThrough.Term, code.HoseVisible.Term, code.PracticeHoseVisible.Term,
		code.HoseRises.Term, code.PracticeHoseRises.Term, code.HoseOnlyToMovable.Term},
	Reads: []string{"/lines/*/kind", "/lines/*/through", "/lines/*/visible", "/lines/*/risesFromCylinder", "/lines/*/partsMove",
		"/lines/*/from", "/lines/*/to"},
}, lines, ofHose(notThrough), ofHose(hoseInSight), ofHose(rising), ofHose(onlyToMovable)))

// ofHose makes a clause that is asked of hoses alone.
func ofHose(f func(*check.Sheet, *layout.Line) check.Ruling) func(*check.Sheet, *layout.Line) check.Ruling {
	return func(s *check.Sheet, h *layout.Line) check.Ruling {
		if !isHose(s, h) {
			return notAHose(s)
		}
		return f(s, h)
	}
}

func notThrough(s *check.Sheet, h *layout.Line) check.Ruling {
	return check.ByEither(s, code.HoseNotThrough, code.PracticeHoseNotThrough, func(s *check.Sheet, duty code.DutyLimit) check.Ruling {
		asked := check.Asked(s, duty, nil)
		through := check.List(s, &h.Through)
		found := "through nothing"
		if len(through) > 0 {
			found = "through " + through[0].Label()
		}
		return check.Is(s, len(through) == 0, asked, found, "through nothing").
			Mend("Pipe or a bulkhead fitting through the wall, and hose on one side of it only; the fitter makes it.")
	})
}

func hoseInSight(s *check.Sheet, h *layout.Line) check.Ruling {
	return check.ByEither(s, code.HoseVisible, code.PracticeHoseVisible, func(s *check.Sheet, duty code.DutyLimit) check.Ruling {
		return stated(s, &h.Visible, duty, "all of it in sight", "hidden in part").
			Mend("Open up what hides it, or have pipe put in its place.", check.SetBool(&h.Visible, true))
	})
}

func rising(s *check.Sheet, h *layout.Line) check.Ruling {
	if check.Read(s, &h.From).Section() != "cylinders" && !s.Stuck() {
		return check.NotApplicable(s, "it does not begin at a cylinder")
	}
	return check.ByEither(s, code.HoseRises, code.PracticeHoseRises, func(s *check.Sheet, duty code.DutyLimit) check.Ruling {
		return stated(s, &h.RisesFromTank, duty, "rises from its cylinder", "falls or sags after its cylinder").
			Mend("Raise what it leads to over the cylinder valve; the fitter does it.", check.SetBool(&h.RisesFromTank, true))
	})
}

func onlyToMovable(s *check.Sheet, h *layout.Line) check.Ruling {
	if check.Read(s, &h.To).Section() != "appliances" && !s.Stuck() {
		return check.NotApplicable(s, "it leads to no appliance")
	}
	return stated(s, &h.Moves, code.HoseOnlyToMovable, "to an appliance that moves", "to an appliance that stands still").
		Mend("Pipe up to the appliance; the fitter makes it.")
}

package gas

import (
	"slices"

	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "regulator.present",
	Asks:       "Does every way from a cylinder to the appliance cross a regulator, with nothing at cylinder pressure in a space that people use?",
	Why:        "Cylinder pressure is hundreds of times what a burner takes: a burner without a regulator is a torch, and a leak before the regulator is the worst there is.",
	NotCovered: "Whether the regulator works: see the fitter's lock-up and running pressure.",
	Word:       report.Danger,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.RegulatorBetween.Term, code.PracticeRegulatorBetween.Term, code.HighPressurePlaces.Term, code.PracticeHighPressurePlaces.Term},
	Reads:      []string{"/lines", "/lines/*/from", "/appliances/*/ownRegulator", "/regulators/*/in", "/changeovers/*/in", "/junctions/*/in", "/cylinders/*/in", "/appliances/*/in"},
	Inventory:  []layout.InventoryList{layout.InventoryListLines},
	NeverWaive: true,
}, appliances,
	func(s *check.Sheet, a *layout.Appliance) check.Ruling {
		return check.ByEither(s, code.RegulatorBetween, code.PracticeRegulatorBetween, func(s *check.Sheet, l code.DutyLimit) check.Ruling { return crossed(s, a, l) })
	},
	func(s *check.Sheet, a *layout.Appliance) check.Ruling {
		return check.ByEither(s, code.HighPressurePlaces, code.PracticeHighPressurePlaces, func(s *check.Sheet, l code.WordLimit) check.Ruling { return highPressureApart(s, a, l) })
	}))

// crossed asks that some regulator, the appliance's own or one in the lines,
// stands on every way, and that none of those ways is regulated twice.
func crossed(s *check.Sheet, a *layout.Appliance, asked code.DutyLimit) check.Ruling {
	duty := check.Asked(s, asked, nil)
	own := check.Read(s, &a.OwnStage)
	bare, regulated := ways(s, a.Ref())
	switch {
	case bare && !own:
		return check.Is(s, false, duty, "a way from a cylinder with no regulator on it", "a regulator on every way").Points(a.Spot()).
			Mend("A regulator in the locker, on every way from a cylinder; the fitter fits it.")
	case regulated && own:
		return check.Is(s, false, duty, "a regulator in the line and another in the appliance", "one regulator for the appliance's pressure").Points(a.Spot()).
			Mend("Ask the fitter which of the two is meant to stay.")
	}
	return check.Is(s, true, duty, "a regulator on every way", "a regulator on every way")
}

// ways tells of the ways from cylinders to the appliance whether any is without a
// regulator and whether any has one. A way that the file does not lead back to a
// cylinder is not known. Where ways meet again, what is before is looked at once.
func ways(s *check.Sheet, to layout.Ref) (bare, regulated bool) {
	check.List(s, &s.Layout().Lines)
	check.Inventory(s, layout.InventoryListLines)
	type step struct {
		to      layout.Ref
		crossed bool
	}
	seen := map[step]bool{}
	var up func(step)
	up = func(at step) {
		if seen[at] {
			return
		}
		seen[at] = true
		feeds := s.Layout().FedBy(at.to)
		if len(feeds) == 0 {
			s.Missing("the line that leads to "+string(at.to), s.Layout().Lines.Spot())
		}
		for _, line := range feeds {
			switch from := check.Read(s, &line.From); {
			case from.Section() != "cylinders":
				up(step{from, at.crossed || from.Section() == "regulators"})
			case at.crossed:
				regulated = true
			default:
				bare = true
			}
		}
	}
	up(step{to, false})
	return bare, regulated
}

// highPressureApart asks where each part stands that holds cylinder pressure on
// the way to the appliance.
func highPressureApart(s *check.Sheet, a *layout.Appliance, places code.WordLimit) check.Ruling {
	parts := highPressureParts(s, a)
	none := func() check.Ruling {
		s.Missing("the parts between the cylinder and "+a.Label(), s.Layout().Lines.Spot())
		return check.Ruling{}
	}
	return check.Every(s, parts, none, func(s *check.Sheet, part layout.Item) check.Ruling {
		in := layout.PlaceOf(part)
		return check.OneOf(s, check.Read(s, in).Section(), check.AllowedWords(s, places, nil)).
			Mend("Move it into the cylinder's locker or outside; the fitter does it.", check.SetWord(in, layout.OpenAir))
	})
}

// highPressureParts lists, by the lines, everything from the cylinders up to and
// with the first regulator; where that is the appliance's own, the appliance too.
func highPressureParts(s *check.Sheet, a *layout.Appliance) []layout.Item {
	check.List(s, &s.Layout().Lines)
	check.Inventory(s, layout.InventoryListLines)
	var parts []layout.Item
	if check.Read(s, &a.OwnStage) && !comesFrom(s.Layout(), a.Ref(), "regulators") {
		parts = append(parts, a)
	}
	climb(s.Layout(), a.Ref(), func(_ *layout.Line, from layout.Ref) bool {
		part := s.Layout().Find(from)
		if !comesFrom(s.Layout(), from, "regulators") && !slices.Contains(parts, part) {
			parts = append(parts, part)
		}
		return true
	})
	return parts
}

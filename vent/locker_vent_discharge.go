package vent

import (
	"strconv"

	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/vent/box"
)

var _ = add(check.For(check.Descriptor{
	ID:   "locker.vent-discharge",
	Asks: "Does each low vent or drain of the locker end where gas can run away: in the open air, free around, out of spray and snow?",
	Why:  "A vent into a chassis rail, a double floor or a skirted bay moves the gas from one closed place into the next.",
	NotCovered: "What stands below the end for a time, such as a step, a spare wheel or a bag; what is near it (locker.vent-clear, ignition.near-gas); " +
		"and gas that lies on still ground.",
	Word:   report.Danger,
	MayAct: report.LicensedFitter,
	Limits: []*code.Term{code.LockerVentEnds.Term, code.PracticeVentEnds.Term, code.PracticeVentOpenSides.Term, code.PracticeVentOutOfSpray.Term,
		code.PracticeVentOutsideSkirt.Term, code.PracticeVentOverSnow.Term},
	Reads: []string{"/lockers/*/vents", "/lockers/*/vents/*/level", "/lockers/*/vents/*/endsIn/kind", "/lockers/*/vents/*/endsIn/openSides",
		"/lockers/*/vents/*/endsIn/inWheelSpray", "/lockers/*/vents/*/endsIn/overGround", "/climate/snowDepth", "/dwelling/skirted",
		"/lockers/*/vents/*/at", "/lockers/*/vents/*/endsAt", "/spaces", "/spaces/*/box/from", "/spaces/*/box/to", "/lockers", "/lockers/*/box/from", "/lockers/*/box/to"},
	Instead: []string{"/lockers/*/vents/*/endsAt"},
}, lockers, ofEachLow(endsOutside), ofEachLow(freeAround), ofEachLow(outOfSpray), ofEachLow(outsideSkirt), ofEachLow(overSnow)))

// ofEachLow asks the same of each low vent or drain of a locker. A locker without one
// is for locker.low-vent.
func ofEachLow(f func(*check.Sheet, *layout.LockerVent) check.Ruling) func(*check.Sheet, *layout.Locker) check.Ruling {
	return func(s *check.Sheet, k *layout.Locker) check.Ruling {
		none := func() check.Ruling { return check.NotApplicable(s, "the file lists no low vent") }
		return check.Every(s, ventsAt(s, k, layout.VentLevelLow), none, f)
	}
}

func endsOutside(s *check.Sheet, v *layout.LockerVent) check.Ruling {
	return check.ByEither(s, code.LockerVentEnds, code.PracticeVentEnds, func(s *check.Sheet, limit code.WordLimit) check.Ruling {
		return check.OneOf(s, check.Read(s, &v.EndsIn.Kind), check.AllowedWords(s, limit, nil)).
			Mend("The vent led on by a pipe that falls all the way to the open air, where the fitter agrees.")
	})
}

func freeAround(s *check.Sheet, v *layout.LockerVent) check.Ruling {
	sides := check.Read(s, &v.EndsIn.OpenSides)
	allowed := check.AllowedWords(s, code.PracticeVentOpenSides, nil)
	return check.OneOf(s, strconv.Itoa(sides), allowed).Worded(strconv.Itoa(sides)+" of four sides open", allowed.String()+" of four").
		Mend("Take away what stands round the end of the vent, or lead the vent on to where air moves past it.")
}

func outOfSpray(s *check.Sheet, v *layout.LockerVent) check.Ruling {
	duty := check.Asked(s, code.PracticeVentOutOfSpray, nil)
	spray := check.Read(s, &v.EndsIn.Spray)
	found := "out of the spray of wheels"
	if spray {
		found = "in the spray of a wheel"
	}
	return check.Is(s, !spray, duty, found, "out of the spray of wheels").
		Mend("A flap of rubber between wheel and vent that leaves the vent open all round.", check.SetBool(&v.EndsIn.Spray, false))
}

// outsideSkirt asks of a dwelling that is closed off to the ground that the vent does not
// end below it, which is behind the skirt.
func outsideSkirt(s *check.Sheet, v *layout.LockerVent) check.Ruling {
	if !check.Read(s, &s.Layout().Dwelling.Skirted) {
		return check.NotApplicable(s, "the dwelling is not closed off to the ground")
	}
	duty := check.Asked(s, code.PracticeVentOutsideSkirt, nil)
	end, found := ventAt(s, v), "not below the dwelling"
	for _, room := range rooms(s) {
		if box.PlanGap(end.box, room.box).Low <= 0 && box.Rise(end.box, room.box).High >= 0 {
			found = "below " + room.item.Label() + ", behind the skirt"
		}
	}
	return check.Is(s, found == "not below the dwelling", duty, found, "not below the dwelling").Points(v.Spot()).
		Mend("The vent led on through the skirt by a pipe that falls all the way, where the fitter agrees; or the skirt taken off.")
}

// rooms takes every space and every locker as a box.
func rooms(s *check.Sheet) []thing {
	var all []thing
	for _, each := range check.List(s, &s.Layout().Spaces) {
		all = append(all, enclosure(s, each, &each.Box))
	}
	for _, each := range check.List(s, &s.Layout().Lockers) {
		all = append(all, enclosure(s, each, &each.Box))
	}
	return all
}

func overSnow(s *check.Sheet, v *layout.LockerVent) check.Ruling {
	if check.Read(s, &v.EndsIn.Kind) == layout.VentEndingOverboard {
		return check.NotApplicable(s, "it ends over the water")
	}
	duty := check.Asked(s, code.PracticeVentOverSnow, nil)
	snow := check.Measure(s, "h_snow", &s.Layout().Climate.SnowDepth)
	end := check.Measure(s, "h_end", &v.EndsIn.OverGround)
	return check.AtLeast(s, end, check.Against(duty, snow)).Says("height of the vent's end over the ground, against the deepest snow").
		Mend("Keep the snow dug away around the vent, or lead the vent out higher where the fitter agrees.")
}

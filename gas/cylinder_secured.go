package gas

import (
	"strconv"

	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

var _ = add(check.For(check.Descriptor{
	ID:         "cylinder.secured",
	Asks:       "Is the cylinder held as the code wants, so that no crash, corner or sea throws it about?",
	Why:        "A full cylinder weighs as much as a child and tears off its own hose when it goes: what comes out then is a jet of gas.",
	NotCovered: "What the strap or bracket is screwed to: a fitter pulls at it. Spare and empty cylinders are asked as well.",
	Word:       report.Warning,
	MayAct:     report.Owner,
	Limits: []*code.Term{code.CylinderRestraint.Term, code.CylinderRestraintLoad.Term, code.CylinderRestraintTimes.Term, code.CylinderRestraintPoints.Term,
		code.CylinderRestraintByHand.Term, code.CylinderRestraintMetal.Term, code.PracticeCylinderHeld.Term},
	Reads: []string{"/cylinders/*/restraint/points", "/cylinders/*/restraint/rated", "/cylinders/*/restraint/releasedWithoutTools",
		"/cylinders/*/restraint/metallic", "/cylinders/*/tare", "/cylinders/*/propane"},
	Claims: []string{"/cylinders/*/restraint/points", "/cylinders/*/restraint/rated"},
}, cylinders, func(s *check.Sheet, c *layout.Cylinder) check.Ruling {
	return check.OrPractice(s,
		func(s *check.Sheet) check.Ruling { return restrained(s, c) },
		func(s *check.Sheet) check.Ruling { return heldAt(s, c, code.PracticeCylinderHeld) })
}))

// restrained asks for all that the code wants of a restraint, and for no more.
func restrained(s *check.Sheet, c *layout.Cylinder) check.Ruling {
	wants := check.AllowedWords(s, code.CylinderRestraint, nil)
	clauses := []func(*check.Sheet) check.Ruling{func(s *check.Sheet) check.Ruling { return notLoose(s, c) }}
	for _, each := range []struct {
		word string
		f    func(*check.Sheet) check.Ruling
	}{
		{"load", func(s *check.Sheet) check.Ruling { return bears(s, c) }},
		{"points", func(s *check.Sheet) check.Ruling { return heldAt(s, c, code.CylinderRestraintPoints) }},
		{"by-hand", func(s *check.Sheet) check.Ruling {
			return stated(s, &c.Restraint.NoTools, code.CylinderRestraintByHand, "freed by hand", "freed with tools only").
				Mend("A strap or clamp that one person opens by hand.", check.SetBool(&c.Restraint.NoTools, true))
		}},
		{"metal", func(s *check.Sheet) check.Ruling {
			return stated(s, &c.Restraint.Metallic, code.CylinderRestraintMetal, "of metal", "not of metal").
				Mend("A strap or bracket of metal, which fire does not melt at once.", check.SetBool(&c.Restraint.Metallic, true))
		}},
	} {
		if wants.Has(each.word) {
			clauses = append(clauses, each.f)
		}
	}
	return check.All(s, clauses...)
}

// stated is is for a duty that needs no facts.
func stated(s *check.Sheet, given *layout.Given[bool], duty code.DutyLimit, so, notSo string) check.Ruling {
	return is(s, given, check.Asked(s, duty, nil), so, notSo)
}

// is rules on a statement that a duty wants to be true.
func is(s *check.Sheet, given *layout.Given[bool], asked check.Duty, so, notSo string) check.Ruling {
	found := notSo
	value := check.Read(s, given)
	if value {
		found = so
	}
	return check.Is(s, value, asked, found, so)
}

func notLoose(s *check.Sheet, c *layout.Cylinder) check.Ruling {
	held := "loose"
	if check.Read(s, &c.Restraint.Points) > 0 {
		held = "held"
	}
	return check.OneOf(s, held, check.AllowedWords(s, code.CylinderRestraint, nil)).Worded(held, "held").Mend(strapIt)
}

const strapIt = "Straps or brackets round the cylinder, one high and one low, screwed to what bears them."

func heldAt(s *check.Sheet, c *layout.Cylinder, limit code.Limit[unit.Count]) check.Ruling {
	fewest := check.Limit(s, "n_min", limit, nil)
	points := check.Read(s, &c.Restraint.Points)
	return check.AtLeast(s, unit.Count(points), fewest).Says("points at which it is held").
		Mend(strapIt, report.Edit{Pointer: c.Restraint.Points.Spot().Pointer(), Value: strconv.Itoa(int(fewest.At()))})
}

// loadOfFull is the force that a restraint has to bear, for a multiple of the
// weight of the cylinder with all that it may hold.
var loadOfFull = check.Formula{Text: "F_need = n * (m_tare + m_propane) * 9.80665",
	Source: "weight under the standard acceleration of free fall, 9.80665 m/s2 (3rd CGPM, 1901)"}

func bears(s *check.Sheet, c *layout.Cylinder) check.Ruling {
	duty := check.Asked(s, code.CylinderRestraintLoad, nil)
	times := check.Limit(s, "n", code.CylinderRestraintTimes, nil)
	rated := check.Measure(s, "F_rated", &c.Restraint.Rated)
	tare, propane := check.Measure(s, "m_tare", &c.Tare), check.Measure(s, "m_propane", &c.Propane)
	need := check.Step(s, "F_need", loadOfFull, func() unit.Force {
		return unit.Force(float64(times.At()) * (float64(tare) + float64(propane)) * 9.80665)
	})
	return check.AtLeast(s, rated, check.Against(duty, need)).
		Mend("A restraint whose maker rates it for at least this force.", check.Raise(&c.Restraint.Rated, need))
}

package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/vent/box"
)

var besideReads = []string{"/appliances/*/kind", "/appliances/*/in", "/appliances/*/at", "/appliances/*/box/from", "/appliances/*/box/to",
	"/combustibles", "/combustibles/*/in", "/combustibles/*/moves", "/combustibles/*/surface", "/combustibles/*/at", "/combustibles/*/box/from", "/combustibles/*/box/to",
	"/tapeMeasures/*/is"}

var _ = add(beside(check.Descriptor{
	ID:         "clearance.side",
	Asks:       "Is everything beside the burners that can catch fire, and rises above them, far enough away?",
	Why:        "The flame leans out round a wide pan and reaches wood or plastic beside it, where nobody looks.",
	NotCovered: "What hangs over the burners (clearance.above), what moves (clearance.near), and a plate that asks for more (clearance.appliance).",
	Limits:     []*code.Term{code.PracticeClearanceSide.Term},
}, code.PracticeClearanceSide, false, "Move it away, or give it a face that can't burn on spacers; a shield as the plate or manual shows."))

var _ = add(beside(check.Descriptor{
	ID:         "clearance.near",
	Asks:       "Is everything that can swing, slide or blow towards the burners far enough away?",
	Why:        "A curtain at an open window, a towel on its rail: a breath of wind puts it into the flame.",
	NotCovered: "What is hung up to dry for an evening and not listed, and what stands fast (clearance.side).",
	Limits:     []*code.Term{code.PracticeClearanceNear.Term},
}, code.PracticeClearanceNear, true, "Take it away, or fasten it so that it can't come nearer."))

// beside makes the check of what stands fast or of what moves near burners.
func beside(d check.Descriptor, limit lengthLimit, moves bool, mend string) check.Check {
	d.Word, d.MayAct = report.Warning, report.Owner
	d.Reads, d.Instead, d.Surveys = besideReads, []string{"/tapeMeasures/*/is"}, []layout.SurveyList{layout.SurveyListCombustibles}
	d.Sources = []string{"Euclid, least distance between boxes"}
	return check.For(d, appliances, func(s *check.Sheet, a *layout.Appliance) check.Ruling {
		if kind := check.Read(s, &a.Kind); kind != layout.ApplianceKindCooktop && kind != layout.ApplianceKindRange {
			return check.NotApplicable(s, "it has no open burners on top")
		}
		surveyIn(s, check.Item(s, &a.In), layout.SurveyListCombustibles)
		apart := check.Limit(s, "d_need", limit, nil).At()
		none := func() check.Ruling {
			return check.NotApplicable(s, "the file states that nothing there can catch fire")
		}
		return check.Every(s, withinReach(s, fuelSorts, check.List(s, &s.Layout().Combustibles), a, apart), none, func(s *check.Sheet, c *layout.Combustible) check.Ruling {
			if check.Read(s, &c.In) != check.Read(s, &a.In) {
				return check.NotApplicable(s, "it is in another space")
			}
			if is := check.Read(s, &c.Moves); is != moves {
				return check.NotApplicable(s, either(is, "it moves", "it stands fast"))
			}
			return asideOf(s, a, c, limit, mend)
		})
	})
}

func asideOf(s *check.Sheet, a *layout.Appliance, c *layout.Combustible, limit lengthLimit, mend string) check.Ruling {
	need := check.Limit(s, "d_need", limit, nil)
	burners, other := at(s, a, &a.Position), at(s, c, &c.Position)
	switch {
	case box.Above(burners.box, other.box) == box.Yes:
		return check.NotApplicable(s, "it is over the burners, where its height counts")
	case !risesAbove(burners.box, other.box):
		return check.NotApplicable(s, "it does not rise above the burners")
	}
	if surface := check.Read(s, &c.Surface); !canBurn(surface) {
		return check.NotApplicable(s, "its surface is "+string(surface))
	}
	return check.AtLeast(s, apartInPlan(s, "d", burners, other), need).Mend(mend)
}

// risesAbove tells whether a thing reaches, or may reach, above the top of another.
func risesAbove(lower, thing box.Box) bool {
	top, _ := box.HighestPoint(lower)
	of, _ := box.HighestPoint(thing)
	return of.High > top.Low
}

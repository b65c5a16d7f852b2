package vent

import (
	"fmt"
	"slices"

	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
	"lowvent.example/vent/box"
)

var _ = add(check.For(check.Descriptor{
	ID:         "clearance.above",
	Asks:       "Is everything over the burners that can catch fire high enough above them?",
	Why:        "Wood and cloth over a flame char slowly until they light, often when the hob is left on.",
	NotCovered: "Beside and behind the burners (clearance.side), and a plate or manual that asks for more (clearance.appliance).",
	Word:       report.Warning,
	Instead:    []string{"/tapeMeasures/*/is"},
	MayAct:     report.Owner,
	Limits:     []*code.Term{code.ClearanceAbove.Term, code.PracticeClearanceAbove.Term},
	Reads: []string{"/appliances/*/kind", "/appliances/*/in", "/appliances/*/at", "/appliances/*/box/from", "/appliances/*/box/to",
		"/combustibles", "/combustibles/*/surface", "/combustibles/*/at", "/combustibles/*/box/from", "/combustibles/*/box/to", "/tapeMeasures/*/is"},
	Surveys: []layout.SurveyList{layout.SurveyListCombustibles},
	Sources: []string{"Euclid, height between boxes"},
}, appliances, orPractice(code.ClearanceAbove, code.PracticeClearanceAbove, allAbove)))

func allAbove(s *check.Sheet, a *layout.Appliance, asked lengthLimit) check.Ruling {
	if kind := check.Read(s, &a.Kind); kind != layout.ApplianceKindCooktop && kind != layout.ApplianceKindRange {
		return check.NotApplicable(s, "it has no open burners on top")
	}
	surveyIn(s, check.Item(s, &a.In), layout.SurveyListCombustibles)
	check.Limit(s, "h_need", asked, nil)
	none := func() check.Ruling {
		return check.NotApplicable(s, "the file states that nothing there can catch fire")
	}
	return check.Every(s, withinReach(s, fuelSorts, check.List(s, &s.Layout().Combustibles), a, 0), none, func(s *check.Sheet, c *layout.Combustible) check.Ruling {
		return over(s, a, c, asked)
	})
}

// fuelSorts parts what can burn by where it is, what it is made of and whether it moves,
// the highest first: beside burners only what rises above them counts.
var fuelSorts = sorts{"combustibles", func(i layout.Item) (string, bool) {
	c := i.(*layout.Combustible)
	in, placed := stated(&c.In)
	surface, made := stated(&c.Surface)
	moves, known := c.Moves.Get()
	return fmt.Sprint(in, " ", surface, " ", moves), placed && made && known
}, highestFirst}

// over asks of one thing whether it hangs over the burners, and how high.
func over(s *check.Sheet, a *layout.Appliance, c *layout.Combustible, asked lengthLimit) check.Ruling {
	need := check.Limit(s, "h_need", asked, nil)
	burners, thing := at(s, a, &a.Position), at(s, c, &c.Position)
	if box.Above(burners.box, thing.box) == box.No {
		return check.NotApplicable(s, "it is not over the burners")
	}
	if surface := check.Read(s, &c.Surface); !canBurn(surface) {
		return check.NotApplicable(s, "its surface is "+string(surface))
	}
	height := heightOver(s, burners, thing)
	return check.AtLeast(s, height, need).
		Mend("Raise or shorten what hangs over the burners until it is this high above them.", raised(s, c, height, need.At(), burners, thing)...)
}

// raised is the edits that bring what hangs over the burners up to the height that is
// needed: its lowest point, and the tape that says how high that is.
func raised(s *check.Sheet, c *layout.Combustible, height, need unit.Length, burners, above thing) []report.Edit {
	if t := tape(s, burners.item, above.item); t != nil {
		return append(lift(&c.Position, need-height), check.Raise(&t.Is, need))
	}
	return lift(&c.Position, need-box.Rise(burners.box, above.box).Low)
}

// heightOver takes the free height over the burners; a tape overrules it.
func heightOver(s *check.Sheet, burners, above thing) unit.Length {
	if t := tape(s, burners.item, above.item); t != nil {
		return check.Measure(s, "h", &t.Is)
	}
	return check.Band(s, "h", between(burners, above, "free height"), box.VerticalGap(burners.box, above.box))
}

// canBurn tells whether a surface can catch fire; one that is not named among
// those that can't counts as one that can.
func canBurn(surface layout.Surface) bool {
	return !slices.Contains([]layout.Surface{layout.SurfaceMetal, layout.SurfaceStone, layout.SurfaceGlass, layout.SurfaceGypsum}, surface)
}

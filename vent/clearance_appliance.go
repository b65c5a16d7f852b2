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
	ID:   "clearance.appliance",
	Asks: "Is everything that can burn outside the distances that the appliance's own plate or manual states, on every side?",
	Why:  "Its maker tried how hot the wood beside it gets; nearer than that it chars, week by week, until it lights.",
	NotCovered: "Tape measures: the drawing alone tells on which side a thing is. Walls and furniture that nobody listed, " +
		"and what a code asks beside the maker (clearance.above, clearance.side).",
	Word:   report.Warning,
	MayAct: report.Owner,
	Limits: []*code.Term{code.PracticePlateClearances.Term},
	Reads: []string{"/appliances/*/in", "/appliances/*/faces", "/appliances/*/at", "/appliances/*/box/from", "/appliances/*/box/to",
		"/appliances/*/clearances/above", "/appliances/*/clearances/sides", "/appliances/*/clearances/rear", "/appliances/*/clearances/front", "/appliances/*/clearances/below",
		"/combustibles", "/combustibles/*/in", "/combustibles/*/surface", "/combustibles/*/at", "/combustibles/*/box/from", "/combustibles/*/box/to"},
	Surveys: []layout.SurveyList{layout.SurveyListCombustibles},
	Sources: []string{"Euclid, distance along an axis between boxes"},
}, appliances, indoors(func(s *check.Sheet, a *layout.Appliance) check.Ruling {
	surveyIn(s, check.Item(s, &a.In), layout.SurveyListCombustibles)
	none := func() check.Ruling {
		return check.NotApplicable(s, "the file states that nothing there can catch fire")
	}
	return check.Every(s, withinReach(s, fuelSorts, check.List(s, &s.Layout().Combustibles), a, farthest(&a.Clearances)), none, func(s *check.Sheet, c *layout.Combustible) check.Ruling {
		if check.Read(s, &c.In) != check.Read(s, &a.In) {
			return check.NotApplicable(s, "it is in another space")
		}
		if surface := check.Read(s, &c.Surface); !canBurn(surface) {
			return check.NotApplicable(s, "its surface is "+string(surface))
		}
		return keptFree(s, a, c)
	})
})))

// side is one side of an appliance: how far off a thing is there, and how far off
// the maker wants it.
type side struct {
	name string
	gap  unit.Value[unit.Length]
	need check.Need[unit.Length]
}

// keptFree asks that a thing is outside of the room that the maker wants free: far
// enough off on one side of the appliance is enough, since that room is a box.
func keptFree(s *check.Sheet, a *layout.Appliance, c *layout.Combustible) check.Ruling {
	sides := sidesOf(s, a, at(s, a, &a.Position), at(s, c, &c.Position))
	if s.Stuck() {
		return check.Ruling{}
	}
	var tries []func(*check.Sheet) check.Ruling
	for _, each := range beyond(sides) {
		tries = append(tries, func(s *check.Sheet) check.Ruling {
			gap := check.Band(s, "d", "distance "+each.name+" "+a.Label()+" to "+c.Label(), each.gap)
			return check.AtLeast(s, gap, each.need).About("%s, %s", c.Label(), each.name).
				Mend("Move it away, or put a face that can't burn before it as the manual shows.")
		})
	}
	return check.Any(s, tries...)
}

// beyond keeps the sides on which a thing lies. A side on which it only touches, or
// reaches into the appliance, counts where it lies on no other: the one on which it
// reaches in least.
func beyond(sides []side) []side {
	var out []side
	nearest := sides[0]
	for _, each := range sides {
		if each.gap.Nominal > 0 {
			out = append(out, each)
		}
		if each.gap.Nominal > nearest.gap.Nominal {
			nearest = each
		}
	}
	if out == nil {
		return []side{nearest}
	}
	return out
}

// farthest is more than any distance that a plate states, in m: what is farther off as
// seen from above lies beyond one side of the appliance by more than the plate asks.
func farthest(c *layout.Clearances) unit.Length {
	most := unit.Length(0)
	for _, m := range []*layout.Measure[unit.Length]{&c.Above, &c.Sides, &c.Rear, &c.Front, &c.Below} {
		if v, known := m.Get(); known {
			most = max(most, v.High)
		}
	}
	return unit.Length(1.5 * float64(most)) // over √2: along a diagonal both sides count
}

// sidesOf takes how far a thing is off on each side of an appliance. All that the
// plate states is taken, whatever side the thing is on.
func sidesOf(s *check.Sheet, a *layout.Appliance, it, other thing) []side {
	need := func(symbol string, m *layout.Measure[unit.Length]) check.Need[unit.Length] {
		return check.Against(check.Asked(s, code.PracticePlateClearances, nil), check.Measure(s, symbol, m))
	}
	c := &a.Clearances
	beside, rear, front := need("d_sides", &c.Sides), need("d_rear", &c.Rear), need("d_front", &c.Front)
	toFront, toRear, toLeft, toRight := gaps(it.box, other.box)
	all := []side{{"above", box.Rise(it.box, other.box), need("d_above", &c.Above)}, {"below", box.Rise(other.box, it.box), need("d_below", &c.Below)}}
	switch check.Read(s, &a.Faces) {
	case layout.WallLeft:
		return append(all, side{"in front", toLeft, front}, side{"behind", toRight, rear}, side{"beside", toFront, beside}, side{"beside", toRear, beside})
	case layout.WallRight:
		return append(all, side{"in front", toRight, front}, side{"behind", toLeft, rear}, side{"beside", toFront, beside}, side{"beside", toRear, beside})
	case layout.WallFront:
		return append(all, side{"in front", toFront, front}, side{"behind", toRear, rear}, side{"beside", toLeft, beside}, side{"beside", toRight, beside})
	case layout.WallRear:
		return append(all, side{"in front", toRear, front}, side{"behind", toFront, rear}, side{"beside", toLeft, beside}, side{"beside", toRight, beside})
	}
	if !s.Stuck() {
		s.Missing("a side of the dwelling, not its floor or ceiling, as that towards which "+a.Label()+" faces", a.Faces.Spot())
	}
	return all
}

// gaps is how far a thing lies off a box towards the front, the rear, the left and
// the right of the dwelling; negative where it does not.
func gaps(it, other box.Box) (front, rear, left, right unit.Value[unit.Length]) {
	return less(it.From.X, other.To.X), less(other.From.X, it.To.X), less(it.From.Y, other.To.Y), less(other.From.Y, it.To.Y)
}

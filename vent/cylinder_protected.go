package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

var _ = add(check.For(check.Descriptor{
	ID:         "cylinder.protected",
	Asks:       "Does the cylinder lie behind the front axle and ahead of the rear bumper?",
	Why:        "What hits the vehicle from behind or in front hits a cylinder that hangs out there first, and its valve breaks off.",
	NotCovered: "Guards around it, stones and spray from the wheels, and what lies lower than the rest: the fitter looks from below.",
	Word:       report.Warning,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.PracticeBehindBumper.Term},
	Reads: []string{"/dwelling/kind", "/dwelling/frontAxle", "/dwelling/rearBumper", "/cylinders/*/at", "/cylinders/*/box/from", "/cylinders/*/box/to",
		"/cylinders/*/diameter", "/cylinders/*/height"},
}, cylinders, behindFrontAxle, aheadOfBumper))

const moveInside = "Move it between the axles, into a locker or cage of its own; the fitter says where."

// How far a cylinder lies within the two lines, in m along the floor; below zero it
// lies beyond them.
var (
	behindAxle = check.Formula{Text: "d = x - x_axle", Source: "arithmetic"}
	aheadOf    = check.Formula{Text: "d = x_bumper - x", Source: "arithmetic"}
)

func behindFrontAxle(s *check.Sheet, c *layout.Cylinder) check.Ruling {
	d := &s.Layout().Dwelling
	if kind := check.Read(s, &d.Kind); kind != layout.DwellingKindRoadVehicle && !s.Stuck() {
		return check.NotApplicable(s, "it has no front axle of its own")
	}
	duty := check.Asked(s, code.PracticeBehindBumper, nil)
	cylinder := cylinderAt(s, c)
	front := check.Measure(s, "x_axle", &d.FrontAxle)
	x := along(s, cylinder, "front end", cylinder.box.From.X)
	behind := check.Step(s, "d", behindAxle, func() unit.Length { return nanometre(float64(x) - float64(front)) })
	return check.AtLeast(s, behind, check.Against(duty, unit.Length(0))).About("how far it lies behind the front axle").Mend(moveInside)
}

func aheadOfBumper(s *check.Sheet, c *layout.Cylinder) check.Ruling {
	d := &s.Layout().Dwelling
	switch check.Read(s, &d.Kind) {
	case layout.DwellingKindRoadVehicle, layout.DwellingKindTrailer, layout.DwellingKindTinyHouseOnWheels:
	default:
		if !s.Stuck() {
			return check.NotApplicable(s, "it does not travel on a road")
		}
	}
	duty := check.Asked(s, code.PracticeBehindBumper, nil)
	cylinder := cylinderAt(s, c)
	rear := check.Measure(s, "x_bumper", &d.RearBumper)
	x := along(s, cylinder, "rear end", cylinder.box.To.X)
	ahead := check.Step(s, "d", aheadOf, func() unit.Length { return nanometre(float64(rear) - float64(x)) })
	return check.AtLeast(s, ahead, check.Against(duty, unit.Length(0))).About("how far it lies ahead of the rear bumper").Mend(moveInside)
}

// along takes how far along the floor one end of a thing lies.
func along(s *check.Sheet, t thing, end string, x unit.Value[unit.Length]) unit.Length {
	return check.Band(s, "x", end+" of "+t.item.Spot().Pointer(), x)
}

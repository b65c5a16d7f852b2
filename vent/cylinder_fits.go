package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

var _ = add(check.For(check.Descriptor{
	ID:         "cylinder.fits",
	Asks:       "Does the cylinder stand under its locker's ceiling, and pass through its door?",
	Why:        "A cylinder that only goes in at a slant is left with its valve against the lid, or is kept somewhere worse.",
	NotCovered: "Room for tail and hand, and whether somebody can lift it. That it stays off the vents: locker.low-vent.",
	Word:       report.Caution,
	MayAct:     report.Owner,
	Limits:     []*code.Term{code.OwnCylinderFits.Term},
	Reads: []string{"/cylinders/*/in", "/cylinders/*/at", "/cylinders/*/box/from", "/cylinders/*/box/to", "/cylinders/*/diameter", "/cylinders/*/height",
		"/lockers/*/box/from", "/lockers/*/box/to", "/lockers/*/door/width", "/lockers/*/door/height"},
}, cylinders, whereInLocker(underCeiling), whereInLocker(throughDoor)))

const smaller = "A smaller cylinder, or a larger locker or door; ask the fitter before you cut."

// whereInLocker makes a clause that is asked of cylinders in a locker alone.
func whereInLocker(f func(*check.Sheet, *layout.Cylinder, *layout.Locker) check.Ruling) func(*check.Sheet, *layout.Cylinder) check.Ruling {
	return func(s *check.Sheet, c *layout.Cylinder) check.Ruling {
		k, is := check.Item(s, &c.In).(*layout.Locker)
		switch {
		case s.Stuck():
			return check.Ruling{}
		case !is:
			return check.NotApplicable(s, "it stands in no locker")
		}
		return f(s, c, k)
	}
}

func underCeiling(s *check.Sheet, c *layout.Cylinder, k *layout.Locker) check.Ruling {
	duty := check.Asked(s, code.OwnCylinderFits, nil)
	from, to := check.Corners(s, &k.Box)
	locker, cylinder := boxOf(from, to), cylinderAt(s, c)
	headroom := check.Band(s, "h", "headroom from "+c.Spot().Pointer()+" to the ceiling of "+k.Spot().Pointer(), less(locker.To.Z, cylinder.box.To.Z))
	return check.AtLeast(s, headroom, check.Against(duty, unit.Length(0))).About("headroom under the ceiling of %s", k.Label()).Mend(smaller)
}

// throughDoor asks for a door that is as wide and as high as the cylinder is thick:
// any less, and it goes through neither upright nor end first.
func throughDoor(s *check.Sheet, c *layout.Cylinder, k *layout.Locker) check.Ruling {
	return check.All(s,
		func(s *check.Sheet) check.Ruling {
			duty := check.Asked(s, code.OwnCylinderFits, nil)
			thick, width := check.Measure(s, "D", &c.Diameter), check.Measure(s, "w", &k.Door.Width)
			return check.AtLeast(s, width, check.Against(duty, thick)).About("width of the door of %s", k.Label()).
				Mend(smaller, check.Raise(&k.Door.Width, thick))
		},
		func(s *check.Sheet) check.Ruling {
			duty := check.Asked(s, code.OwnCylinderFits, nil)
			thick, height := check.Measure(s, "D", &c.Diameter), check.Measure(s, "h", &k.Door.Height)
			return check.AtLeast(s, height, check.Against(duty, thick)).About("height of the door of %s", k.Label()).
				Mend(smaller, check.Raise(&k.Door.Height, thick))
		})
}

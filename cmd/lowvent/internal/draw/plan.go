package draw

import (
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

// Plan draws a layout from above, to scale, with the distances of which the report says
// that they are not as needed. It is nil when the file gives no thing a place.
func Plan(l *layout.Layout, f *report.FileReport) *Drawing {
	s := sceneOf(l)
	if len(s.things) == 0 {
		return nil
	}
	here, other := fromAbove(), fromSide(gasSide(s))
	d := &Drawing{ID: "plan", Title: "Plan, seen from above"}
	w := compose(d, s, here, "", f, belonging(distancesOf(l, f), here, other), notesOf(s))
	d.Alt = w.alt("Plan of the dwelling seen from above, its front to the left, its right side at the top")
	return d
}

// Elevation draws a layout from the side on which most of the gas installation is, to
// scale. It is nil when the file gives no thing a place.
func Elevation(l *layout.Layout, f *report.FileReport) *Drawing {
	s := sceneOf(l)
	if len(s.things) == 0 {
		return nil
	}
	wall := gasSide(s)
	here, other := fromSide(wall), fromAbove()
	d := &Drawing{ID: "elevation", Title: "Elevation, seen from the " + string(wall)}
	front := "left"
	if wall == layout.WallRight {
		front = "right"
	}
	w := compose(d, s, here, wall, f, belonging(distancesOf(l, f), here, other), notesOf(s))
	d.Alt = w.alt("Elevation of the dwelling seen from its " + string(wall) + " side as if the wall were away, its front to the " + front)
	return d
}

// notesOf are the paragraphs below a drawing, the warnings first.
func notesOf(s *scene) []string {
	notes := s.warnings()
	if none := notDrawn(s.unplaced); none != "" {
		notes = append(notes, none)
	}
	return notes
}

// gasSide is the side nearer to most of the gas installation: cylinders, lockers and
// regulators count, then appliances.
func gasSide(s *scene) layout.Wall {
	all := s.things[0].extent()
	for _, t := range s.things {
		all = all.with(t.extent())
	}
	middle, right := all.middle()[1], 0.0
	for _, t := range s.things {
		switch t.sort {
		case isCylinder, isLocker, isRegulator, isFillPoint, isChangeover, isLockerVent:
			right += 3 * (t.solid.middle()[1] - middle)
		case isAppliance, isOutlet, isJunction, isOpenEnd:
			right += t.solid.middle()[1] - middle
		}
	}
	if right < 0 {
		return layout.WallLeft
	}
	return layout.WallRight
}

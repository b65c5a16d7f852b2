package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

// The span of time that the course of unlit gas is followed for, and its step, in s.
const (
	unlitFor  = 3600
	unlitStep = 60
)

// unlitCourse is how deep the gas of an appliance's open burners can lie on the floor of its
// space, just flammable, over the first hour, with what stands there that could light it and
// what could hear it.
var unlitCourse = &check.Course[*layout.Appliance]{
	ID: "appliance.unlit-course", Title: "open burners, not lit: how deep a flammable layer can lie on the floor in the first hour, doors open (no time of warning: gas can light at the burner from the first second)",
	Calc: func(s *check.Sheet, a *layout.Appliance) report.Course {
		course := report.Course{Across: report.Axis{Title: "time", Kind: unit.KindDuration.String()}, Up: report.Axis{Title: "flammable layer over the floor", Kind: unit.KindLength.String()}}
		space := spaceOf(s, a)
		if space == nil {
			return course
		}
		p := floorPlan(s)
		course.Levels = levelsIn(s, space)
		from := burner{room: p.index[space], gas: openBurners(s, a)}
		steps := check.Formula{Source: pooled, Valid: "even floors without furniture, doors open; leaves out draughts; errs early"}
		check.Try(s, a, "z", steps, func() (unit.Length, error) {
			floor, depth := p.space.Rooms[from.room].Floor, unit.Length(0)
			for t := 0; t <= unlitFor; t += unlitStep {
				filled, err := p.fill(from, unit.Duration(t))
				if err != nil {
					return 0, err
				}
				depth = filled.Levels[from.room] - floor
				course.Points = append(course.Points, [2]float64{float64(t), float64(depth)})
			}
			return depth, nil
		})
		return course
	},
}

// levelsIn is how high over the floor of a space the ignition sources and the gas alarms
// stand that its lists name. One without a position is left out: the course does not rest on it.
func levelsIn(s *check.Sheet, space *layout.Space) []report.Level {
	from, _ := space.Box.From.Get()
	floor := from[2].Nominal
	var levels []report.Level
	add := func(title string, p *layout.Position) {
		if lowest, _, known := p.Corners(); known {
			levels = append(levels, report.Level{Title: title, At: float64(lowest[2].Nominal - floor)})
		}
	}
	for _, each := range s.Layout().IgnitionSources.All() {
		if in, _ := each.In.Get(); in == space.Ref() {
			add(each.Label(), &each.Position)
		}
	}
	for _, each := range s.Layout().Alarms.All() {
		in, _ := each.In.Get()
		kind, _ := each.Kind.Get()
		if in == space.Ref() && kind == layout.AlarmKindPropane {
			add(each.Label()+" (nothing is counted for it)", &each.Position)
		}
	}
	return levels
}

var _ = show(check.ShowCourse(unlitCourse, appliances))

package vent

import (
	"slices"
	"strconv"
	"strings"

	"lowvent.example/gas"
	"lowvent.example/gas/propane"
	"lowvent.example/schema/check"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
	"lowvent.example/vent/box"
	"lowvent.example/vent/flow"
	"lowvent.example/vent/locker"
)

const heldSource = "two-way flow through openings in still air, held against a helium box (NIST 2009); the richest layer 1.4 times the mean"

// heldSteps tells what stands behind the figures of this file.
var heldSteps = check.Formula{Source: heldSource, Valid: "the worst of 2 K colder to 10 K warmer inside, started full of gas; no wind. " +
	"Vents alone do not make a leak at cylinder pressure harmless: the seal, the opening to the outside and a shut cylinder valve do"}

// leakFigures lists what each published size of leak is held at in a locker, in parts of the
// lower flammable limit: with the vents as they are, and half blocked.
func leakFigures() []check.Shown {
	var shown []check.Shown
	for _, each := range gas.Leaks() {
		figure := strconv.FormatFloat(float64(each.Area)*1e6, 'g', 6, 64)
		size := strings.ReplaceAll(figure, ".", "-") + "-mm2"
		high := func(s *check.Sheet, _ *layout.Locker) unit.MassFlow {
			return check.Fig(s, "m_leak", each.HighSide, s.Layout())
		}
		low := func(s *check.Sheet, k *layout.Locker) unit.MassFlow {
			return fromRegulators(s, k, each.LowSide)
		}
		failed := func(s *check.Sheet, k *layout.Locker) unit.MassFlow { return fromRegulators(s, k, each.Failed) }
		name := "leak through " + figure + " mm2"
		shown = append(shown,
			check.Detail(check.Show(heldAt("locker.held-"+size+"-high-side", name+" at cylinder pressure", 0, high), lockers)),
			check.Detail(check.Show(heldAt("locker.held-"+size+"-high-side-half", name+" at cylinder pressure, vents half blocked", 0.5, high), lockers)),
			check.Detail(check.Show(heldAt("locker.held-"+size+"-low-side", name+" behind the regulator", 0, low), lockers)),
			check.Detail(check.Show(heldAt("locker.held-"+size+"-failed-regulator", name+" behind a regulator that fails open", 0, failed), lockers)))
	}
	return shown
}

// heldAt is the share of the lower flammable limit in the richest place of a locker while
// something leaks in it.
func heldAt(id, what string, blocked unit.Ratio, leak func(*check.Sheet, *layout.Locker) unit.MassFlow) *check.Figure[unit.Ratio, *layout.Locker] {
	return &check.Figure[unit.Ratio, *layout.Locker]{ID: id, Title: "held in the locker by a " + what + ", as a share of the lower flammable limit",
		Calc: func(s *check.Sheet, k *layout.Locker) unit.Ratio {
			c := conditionsOf(s, k, blocked)
			c.Leak = leak(s, k)
			limit := lowerLimit(s)
			return check.Try(s, k, "F_LFL", heldSteps, func() (unit.Ratio, error) { return richest(c, limit) })
		}}
}

// richest is the worst of the band of temperatures.
func richest(c locker.Conditions, limit unit.Ratio) (unit.Ratio, error) {
	worst := unit.Ratio(0)
	for _, difference := range locker.Band() {
		c.Difference = difference
		m, err := locker.New(c)
		if err != nil {
			return 0, err
		}
		states, err := m.Steady()
		if err != nil {
			return 0, err
		}
		worst = max(worst, unit.Ratio(float64(locker.Richest(states.Full, locker.Near))/float64(limit)))
	}
	return worst, nil
}

// fromRegulators is the largest of a leak behind each regulator that stands in a locker.
func fromRegulators(s *check.Sheet, k *layout.Locker, leak *check.Figure[unit.MassFlow, *layout.Regulator]) unit.MassFlow {
	worst := unit.MassFlow(0)
	there := standingIn(s, k, check.List(s, &s.Layout().Regulators))
	check.Inventory(s, layout.InventoryListRegulators)
	if len(there) == 0 && !s.Stuck() {
		s.Missing("a regulator in "+k.Label(), s.Layout().Regulators.Spot())
	}
	for _, r := range there {
		worst = max(worst, check.Fig(s, check.Symbol("m", r.ID()), leak, r))
	}
	return worst
}

func lowerLimit(s *check.Sheet) unit.Ratio {
	return check.Constant(s, "x", "lower flammable limit of propane in air", propane.WidestRange().Source, propane.WidestRange().Lower)
}

// conditionsOf is a locker as the physics sees it, with each of its vents in part blocked.
// What stands in it takes up room, which changes how soon and not how much.
func conditionsOf(s *check.Sheet, k *layout.Locker, blocked unit.Ratio) locker.Conditions {
	from, to := check.Corners(s, &k.Box)
	inside := boxOf(from, to)
	c := locker.Conditions{Gas: flow.Propane(), Volume: check.Band(s, "V", "volume of "+k.Spot().Pointer(), box.Volume(inside)),
		Outside: check.Measure(s, "T_out", &s.Layout().Climate.Hottest), Pressure: gas.OutsidePressure(s)}
	floor, _ := box.LowestPoint(inside)
	for _, v := range check.List(s, &k.Vents) {
		if check.Read(s, &v.Closable) {
			continue
		}
		o := flow.Opening{Area: check.Fig(s, check.Symbol("A", v.ID()), freeArea, v), Coefficient: flow.Coefficient, Face: faceOf(check.Read(s, &v.Wall))}
		z := check.Band(s, check.Symbol("z", v.ID()), "height of "+v.Spot().Pointer(), check.Read(s, &v.At)[2])
		o.Middle = max(unit.Length(float64(z)-float64(floor.Nominal)), 0)
		c.Openings = append(c.Openings, o.Blocked(blocked))
	}
	return c
}

func faceOf(wall layout.Wall) flow.Face {
	switch wall {
	case layout.WallFloor:
		return flow.Floor
	case layout.WallCeiling:
		return flow.Ceiling
	}
	return flow.Wall
}

// largestHeld is the largest leak that a locker holds at a quarter of the lower limit.
var largestHeld = &check.Figure[unit.MassFlow, *layout.Locker]{
	ID: "locker.largest-leak", Title: "largest leak that the locker holds at 25 % of the lower flammable limit, as warm inside as out",
	Calc: func(s *check.Sheet, k *layout.Locker) unit.MassFlow {
		c, limit := conditionsOf(s, k, 0), lowerLimit(s)
		return check.Try(s, k, "m_leak", heldSteps, func() (unit.MassFlow, error) {
			m, err := locker.New(c)
			if err != nil {
				return 0, err
			}
			largest, err := m.LargestLeak(quarterOf(limit))
			return largest.FromFull, err
		})
	},
}

// clears is how long a locker full of gas takes to fall below a quarter of the lower limit.
var clears = &check.Figure[unit.Duration, *layout.Locker]{
	ID: "locker.clears", Title: "from full of gas to 25 % of the lower flammable limit, as warm inside as out",
	Calc: func(s *check.Sheet, k *layout.Locker) unit.Duration {
		c, limit := conditionsOf(s, k, 0), lowerLimit(s)
		var when locker.Arrival
		t := check.Try(s, k, "t", heldSteps, func() (unit.Duration, error) {
			m, err := locker.New(c)
			if err == nil {
				when, err = m.Clears(1, quarterOf(limit))
			}
			return when.Time, err
		})
		if when.Never {
			s.Missing("a vent by which it ever clears: as it is, never by itself", k.Vents.Spot())
		}
		return t
	},
}

func quarterOf(limit unit.Ratio) unit.Ratio {
	return unit.Ratio(float64(limit) * float64(locker.Quarter) / float64(locker.Near))
}

// leakCourse is the share of the lower limit in the richest place of a locker in the first
// hour of a leak of 1 mm2 at cylinder pressure.
var leakCourse = &check.Course[*layout.Locker]{
	ID: "locker.leak-course", Title: "the first hour of a leak through 1 mm2 at cylinder pressure, as a share of the lower flammable limit, as warm inside as out",
	Calc: func(s *check.Sheet, k *layout.Locker) report.Course {
		course := report.Course{Across: report.Axis{Title: "time", Kind: unit.KindDuration.String()}, Up: report.Axis{Title: "of the lower limit, richest place", Kind: unit.KindRatio.String()},
			Levels: []report.Level{{Title: "lower flammable limit", At: 1}, {Title: "a quarter of it", At: 0.25}}}
		c := conditionsOf(s, k, 0)
		c.Leak = check.Fig(s, "m_leak", squareMillimetre().HighSide, s.Layout())
		limit := lowerLimit(s)
		check.Try(s, k, "F_LFL", heldSteps, func() (unit.Ratio, error) {
			m, err := locker.New(c)
			if err != nil {
				return 0, err
			}
			last := unit.Ratio(0)
			for t := 0.0; t <= 3600; t += 60 {
				mixed, err := m.After(0, unit.Duration(t))
				if err != nil {
					return 0, err
				}
				last = unit.Ratio(float64(locker.Richest(mixed, locker.Near)) / float64(limit))
				course.Points = append(course.Points, [2]float64{t, float64(last)})
			}
			return last, nil
		})
		return course
	},
}

// squareMillimetre is the published leak of 1 mm2, a compression joint.
func squareMillimetre() gas.Leak {
	all := gas.Leaks()
	return all[slices.IndexFunc(all, func(l gas.Leak) bool { return float64(l.Area) == 1e-6 })]
}

var _ = show(check.ShowCourse(leakCourse, lockers))

var _ = showAll(slices.Concat(leakFigures(), []check.Shown{
	check.Detail(check.Show(largestHeld, lockers)),
	check.Detail(check.Show(clears, lockers)),
}))

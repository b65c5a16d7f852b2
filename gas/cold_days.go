package gas

import (
	"lowvent.example/gas/cylinder"
	"lowvent.example/schema/check"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

// coldDays is how far ahead cylinders are followed in the cold, in s.
const coldDays = unit.Duration(60 * 86400)

// dawn is when the air is coldest, in s from midnight.
const dawn = unit.Duration(6 * 3600)

var (
	coldLasts    = inTheCold("regulator.cold-lasts", "how long the full cylinders feed the ordinary days of the coldest time, 60 days at most", func(o cylinder.Outcome) unit.Duration { return o.Time })
	coldUsed     = inTheCold("regulator.cold-used", "propane used by then", func(o cylinder.Outcome) unit.PropaneMass { return o.Used })
	coldStranded = inTheCold("regulator.cold-stranded", "propane left by then, of use only when it is warmer", func(o cylinder.Outcome) unit.PropaneMass { return o.Left })
	coldSpare    = inTheCold("regulator.cold-spare", "how long the other cylinders last once the first is due for a swap", func(o cylinder.Outcome) unit.Duration { return o.Spare })
)

// inTheCold is a figure of the cylinders before a regulator, full, followed day after day
// through the coldest time until they no longer feed it.
func inTheCold[Q unit.Quantity](id, title string, of func(cylinder.Outcome) Q) *check.Figure[Q, *layout.Regulator] {
	return &check.Figure[Q, *layout.Regulator]{ID: id, Title: title, Calc: func(s *check.Sheet, r *layout.Regulator) Q {
		supply := coldSupply(s, r)
		steps := check.Formula{Source: wallSource, Valid: "followed in steps of time, with mass and energy closed to 1e-6; no frost, no tight locker"}
		return check.Try(s, r, "x", steps, func() (Q, error) {
			out, err := cylinder.Run(supply)
			return of(out), err
		})
	}}
}

// coldSupply is the cylinders before a regulator, full, in the coldest time.
func coldSupply(s *check.Sheet, r *layout.Regulator) cylinder.Supply {
	supply := cylinder.Supply{Horizon: coldDays, Least: check.Fig(s, "T_least", leastLiquid, r)}
	climate := &s.Layout().Climate
	supply.Air = cylinder.Air{Coldest: check.Measure(s, "T_air", &climate.Coldest), Swing: check.Measure(s, "dT_night", &climate.NightDrop), Dawn: dawn}
	supply.Start = supply.Air.Coldest
	supply.Wall = check.Band(s, "U", wallWords, cylinder.WallInStillAir())
	supply.Spells = spellsOf(s, downstream(s, r.Ref()))
	supply.Changeover = true // several are joined in one: lines meet nowhere else
	for _, c := range servedBy(s, r) {
		supply.Vessels = append(supply.Vessels, cylinder.Filled{Vessel: vesselOf(s, c), Propane: netContents(s, c)})
	}
	return supply
}

// coldCourse, coldPressure and coldContents are the temperature of the liquid, the pressure
// over it and the propane that is left, hour by hour.
var (
	coldPressureCourse = overDays("regulator.cold-pressure-course", "pressure in the cylinder that feeds over the days of the coldest time, full cylinders", "pressure, absolute", unit.KindAbsolutePressure,
		func(p cylinder.Sample) float64 { return float64(p.Pressure) })
	coldCourse = overDays("regulator.cold-course", "temperature of the liquid over the days of the coldest time, full cylinders", "temperature of the liquid", unit.KindTemperature,
		func(p cylinder.Sample) float64 { return float64(p.Temperature) })
	coldContents = overDays("regulator.cold-contents", "propane left over the days of the coldest time, full cylinders", "propane left", unit.KindPropaneMass,
		func(p cylinder.Sample) float64 { return float64(p.Propane) })
)

func overDays(id, title, up string, kind unit.Kind, of func(cylinder.Sample) float64) *check.Course[*layout.Regulator] {
	return &check.Course[*layout.Regulator]{ID: id, Title: title, Calc: func(s *check.Sheet, r *layout.Regulator) report.Course {
		course := report.Course{Across: report.Axis{Title: "time", Kind: unit.KindDuration.String()}, Up: report.Axis{Title: up, Kind: kind.String()}}
		supply := coldSupply(s, r)
		supply.Interval = 3600
		if kind == unit.KindTemperature {
			course.Levels = []report.Level{{Title: "colder than this it no longer feeds the regulator", At: float64(supply.Least)}}
		}
		steps := check.Formula{Source: wallSource, Valid: "followed in steps of time, with mass and energy closed to 1e-6; no frost, no tight locker"}
		check.Try(s, r, "t_end", steps, func() (unit.Duration, error) {
			out, err := cylinder.Run(supply)
			for _, each := range out.Series {
				course.Points = append(course.Points, [2]float64{float64(each.Time), of(each)})
			}
			return out.Time, err
		})
		return course
	}}
}

// netContents is the propane in a cylinder, by the sleeve where it is given, since swapped
// cylinders are often sold short.
func netContents(s *check.Sheet, c *layout.Cylinder) unit.PropaneMass {
	if c.SleeveMass.Known() {
		return check.Measure(s, "m", &c.SleeveMass)
	}
	return check.Measure(s, "m", &c.Propane)
}

// fullLoadHolds is how long the fullest draw is held in the coldest air, starting with a
// full cylinder from a warm room.
var fullLoadHolds = &check.Figure[unit.Duration, *layout.Regulator]{
	ID: "regulator.full-load-holds", Title: "how long everything can burn in the coldest air, with one full cylinder that was warm",
	Calc: func(s *check.Sheet, r *layout.Regulator) unit.Duration {
		draw := cylinder.Draw{Least: check.Fig(s, "T_least", leastLiquid, r), Air: check.Measure(s, "T_air", &s.Layout().Climate.Coldest)}
		load := check.Fig(s, "P_load", regulatorLoad, r)
		draw.Wall = check.Band(s, "U", wallWords, cylinder.WallInStillAir())
		draw.Start = check.Constant(s, "T_start", "a cylinder that was warm", "own rule", warmStart)
		least, served := unit.Duration(0), servedBy(s, r)
		for i, c := range served {
			draw.From = cylinder.Filled{Vessel: vesselOf(s, c), Propane: netContents(s, c)}
			steps := check.Formula{Source: wallSource, Valid: "followed in steps of time until the liquid is too cold, or gone"}
			held := check.Try(s, c, check.Symbol("t", c.ID()), steps, func() (unit.Duration, error) {
				draw.Flow = fuelOf(load)
				hold, err := cylinder.Holds(draw)
				return hold.Time, err
			})
			if i == 0 || held < least {
				least = held
			}
		}
		return check.Step(s, "t_hold", check.Formula{Source: "definition", Valid: "the least of them"}, func() unit.Duration { return least })
	},
}

const warmStart = unit.Temperature(288.15)

var _ = showAll([]check.Shown{
	check.Show(coldDraw, regulators),
	check.Detail(check.Show(leastLiquid, regulators)),
	check.Detail(check.Show(coldLasts, regulators)),
	check.Detail(check.Show(coldUsed, regulators)),
	check.Detail(check.Show(coldStranded, regulators)),
	check.Detail(check.Show(coldSpare, regulators)),
	check.Detail(check.Show(fullLoadHolds, regulators)),
	check.ShowCourse(coldCourse, regulators),
	check.ShowCourse(coldPressureCourse, regulators),
	check.ShowCourse(coldContents, regulators),
})

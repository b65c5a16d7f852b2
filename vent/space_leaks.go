package vent

import (
	"lowvent.example/gas"
	"lowvent.example/gas/propane"
	"lowvent.example/schema/check"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/unit"
	"lowvent.example/vent/box"
	"lowvent.example/vent/pool"
)

// flammableMass is the propane that makes the whole of a space flammable.
var flammableMass = &check.Figure[unit.PropaneMass, *layout.Space]{
	ID: "space.flammable-mass", Title: "propane that makes all of the space flammable",
	Calc: func(s *check.Sheet, space *layout.Space) unit.PropaneMass {
		volume, limit, rho := volumeOf(s, space), lowerLimit(s), warmVapour(s, space)
		formula := check.Formula{Text: pool.FlammableFormula, Source: "definition of a share by volume", Valid: "mixed throughout; a tenth of it on the floor makes a tenth of the space flammable"}
		return check.Try(s, space, "m", formula, func() (unit.PropaneMass, error) {
			whole, err := pool.Flammable(volume, limit, rho, 1)
			return whole.Mass, err
		})
	},
}

// timesOver is how many times over the largest cylinder makes a space flammable.
var timesOver = &check.Figure[unit.Ratio, *layout.Space]{
	ID: "space.times-flammable", Title: "propane in the largest cylinder, as a share of what makes all of the space flammable",
	Calc: func(s *check.Sheet, space *layout.Space) unit.Ratio {
		mass := check.Fig(s, "m", flammableMass, space)
		check.Inventory(s, layout.InventoryListCylinders)
		text, largest := "0", unit.PropaneMass(0)
		for _, c := range check.List(s, &s.Layout().Cylinders) {
			symbol := check.Symbol("m", c.ID())
			text = "max(" + text + ", " + symbol + ")"
			largest = max(largest, check.Measure(s, symbol, &c.Propane))
		}
		check.Step(s, "m_held", check.Formula{Text: "m_held = " + text, Source: "definition"}, func() unit.PropaneMass { return largest })
		return check.Step(s, "n", check.Formula{Text: pool.TimesFormula, Source: "definition"}, func() unit.Ratio {
			return unit.Ratio(float64(largest) / float64(mass))
		})
	},
}

// mixedTime is how long an appliance's open burners take to bring the whole of its space to
// the lower limit, mixed: never a time of warning.
var mixedTime = &check.Figure[unit.Duration, *layout.Appliance]{
	ID: "appliance.mixed-time", Title: "open burners, not lit: until all of the space is flammable if it were mixed (no time of warning: on the floor it is sooner)",
	Calc: func(s *check.Sheet, a *layout.Appliance) unit.Duration {
		space := spaceOf(s, a)
		if space == nil {
			return 0
		}
		volume, limit, q := volumeOf(s, space), lowerLimit(s), openBurners(s, a)
		check.Constant(s, "Q", "fresh air: every vent shut", "definition", unit.VolumeFlow(0))
		formula := check.Formula{Text: pool.MixedFormula, Source: "balance of volume", Valid: "never as it is: gas lies on the floor first"}
		return check.Try(s, a, "t", formula, func() (unit.Duration, error) {
			when, err := pool.Mixed(volume, q, 0, limit)
			return when.After, err
		})
	},
}

// ankle is the height at which a figure tells how soon gas lies there.
const ankle = unit.Length(0.05)

// ankleTime is how soon an appliance's open burners can have laid a flammable layer 5 cm
// deep on the floor of its space.
var ankleTime = &check.Figure[unit.Duration, *layout.Appliance]{
	ID: "appliance.ankle-time", Title: "open burners, not lit: as soon as this the gas can lie 5 cm deep on the floor, flammable",
	Calc: func(s *check.Sheet, a *layout.Appliance) unit.Duration {
		space := spaceOf(s, a)
		if space == nil {
			return 0
		}
		area, limit, q := check.Fig(s, "A", spaceArea, space), lowerLimit(s), openBurners(s, a)
		check.Constant(s, "z", "a height that sockets and pumps are at", "own rule", ankle)
		formula := check.Formula{Text: pool.LayerFormula, Source: pooled, Valid: "an even floor without furniture: with it the gas is there sooner"}
		return check.Try(s, a, "t", formula, func() (unit.Duration, error) { return pool.LayerTime(area, ankle, limit, q) })
	},
}

// heardLate is how late a gas alarm in the space of an appliance's open burners can be.
var heardLate = &check.Figure[unit.Duration, *layout.Alarm]{
	ID: "alarm.latest", Title: "the hob's burners open, not lit, in its space: as late as this the alarm can sound",
	Calc: func(s *check.Sheet, alarm *layout.Alarm) unit.Duration {
		space, ok := check.Item(s, &alarm.In).(*layout.Space)
		if !ok || check.Read(s, &alarm.Kind) != layout.AlarmKindPropane {
			s.Missing("a propane alarm in a space", alarm.Spot())
			return 0
		}
		q := largestUnlit(s, space)
		height, area, volume := overFloor(s, alarm, space), check.Fig(s, "A", spaceArea, space), volumeOf(s, space)
		lower := lowerLimit(s)
		point := check.Constant(s, "share", "of the lower limit at which it sounds, at the latest", "UL 1484 (from memory)", unit.Ratio(0.25))
		steps := check.Formula{Source: "balance of volume: the later of undiluted gas up to the sensor and the mixed space", Valid: "an alarm that works at all; it earns nothing in any check"}
		return check.Try(s, alarm, "t", steps, func() (unit.Duration, error) {
			heard, err := pool.Alarm{Height: max(height, 0), Point: unit.Ratio(float64(lower) * float64(point))}.Latest(area, volume, q, 0)
			return heard.Latest.After, err
		})
	},
}

// largestUnlit is the room that the gas of the largest appliance without a flue takes.
func largestUnlit(s *check.Sheet, space *layout.Space) unit.VolumeFlow {
	largest := unit.VolumeFlow(0)
	there := unfluedIn(s, space)
	if len(there) == 0 && !s.Stuck() {
		s.Missing("an appliance without a flue in "+space.Label(), s.Layout().Appliances.Spot())
	}
	for _, a := range there {
		largest = max(largest, openBurners(s, a))
	}
	return largest
}

// spaceOf is the space whose air an appliance's burners open to.
func spaceOf(s *check.Sheet, a *layout.Appliance) *layout.Space {
	if check.Read(s, &a.Flue) == layout.FlueKindRoomSealed {
		s.Missing("a burner that is open to the room: "+a.Label()+" is sealed from it", a.Flue.Spot())
	}
	space, ok := check.Item(s, &a.In).(*layout.Space)
	if !ok && !s.Stuck() {
		s.Missing("a space in which "+a.Label()+" stands", a.In.Spot())
	}
	return space
}

func volumeOf(s *check.Sheet, space *layout.Space) unit.Volume {
	from, to := check.Corners(s, &space.Box)
	return check.Band(s, "V", "volume of "+space.Spot().Pointer(), box.Volume(boxOf(from, to)))
}

// warmVapour is the density of propane on a warm day at the highest place.
func warmVapour(s *check.Sheet, about layout.Item) unit.Density {
	around := gas.OutsidePressure(s)
	check.Constant(s, "T", "temperature of the gas, a warm day", "own rule: the warmer, the more room it takes", warmDay)
	state := check.Formula{Source: "equation of state of Lemmon, McLinden and Wagner (2009)", Valid: "pure propane"}
	return check.Try(s, about, "rho", state, func() (unit.Density, error) {
		vapour, err := propane.VapourAt(warmDay, around)
		return vapour.Density, err
	})
}

const warmDay = unit.Temperature(313.15)

var _ = showAll([]check.Shown{
	check.Detail(check.Show(flammableMass, spaces)),
	check.Detail(check.Show(timesOver, spaces)),
	check.Detail(check.Show(mixedTime, appliances)),
	check.Detail(check.Show(ankleTime, appliances)),
	check.Detail(check.Show(heardLate, alarms)),
})

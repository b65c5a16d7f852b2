package vent

import (
	"lowvent.example/gas/air"
	"lowvent.example/gas/propane"
	"lowvent.example/schema/check"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/unit"
	"lowvent.example/vent/box"
	"lowvent.example/vent/flow"
	"lowvent.example/vent/locker"
)

// mostWindShare is the greatest difference of wind pressure between two sides of a building.
const mostWindShare = unit.Ratio(1.5)

// cancellingWind is the wind that holds gas in a locker against its own weight.
var cancellingWind = &check.Figure[unit.Speed, *layout.Locker]{
	ID: "locker.cancelling-wind", Title: "a wind on the low vents that stops what the weight of gas at its lower flammable limit drives out",
	Calc: func(s *check.Sheet, k *layout.Locker) unit.Speed {
		c, limit := conditionsOf(s, k, 0), lowerLimit(s)
		high := check.Step(s, "H", check.Formula{Source: "the highest of these vents over the lowest"}, func() unit.Length { return stackOf(c) })
		if !s.Stuck() && float64(high) == 0 {
			s.Missing("a low and a high vent that nobody can shut: without both any wind does", k.Vents.Spot())
		}
		vapour := check.Try(s, k, "rho_gas", check.Formula{Source: "equation of state of Lemmon, McLinden and Wagner (2009)", Valid: "pure propane"}, func() (unit.Density, error) {
			v, err := propane.VapourAt(c.Outside, c.Pressure)
			return v.Density, err
		})
		around := check.Try(s, k, "rho_air", check.Formula{Source: "ideal gas, U.S. Standard Atmosphere 1976"}, func() (unit.Density, error) { return air.Density(c.Pressure, c.Outside) })
		share := check.Constant(s, "C_p", "wind pressure between the two vents at the worst", "from memory", mostWindShare)
		formula := check.Formula{Text: "U = sqrt(2*9.80665*H*x*(rho_gas - rho_air) / (C_p*rho_air))", Source: "weight of a column against the pressure of the wind", Valid: "as warm inside as out"}
		return check.Try(s, k, "U", formula, func() (unit.Speed, error) {
			mixture := unit.Density(float64(limit)*float64(vapour) + (1-float64(limit))*float64(around))
			head, err := flow.Head(mixture, around, high)
			if err != nil {
				return 0, err
			}
			return flow.WindSpeed(head, share, around)
		})
	},
}

// stackOf is the height between the lowest and the highest opening that is free.
func stackOf(c locker.Conditions) unit.Length {
	low, high, any := unit.Length(0), unit.Length(0), false
	for _, o := range c.Openings {
		if float64(o.Area) == 0 {
			continue
		}
		if !any {
			low, high, any = o.Middle, o.Middle, true
		}
		low, high = min(low, o.Middle), max(high, o.Middle)
	}
	return high - low
}

// trapped is the gas that no vent of a locker lets out.
var trapped = &check.Figure[unit.Volume, *layout.Locker]{
	ID: "locker.trapped", Title: "gas that lies below the lowest edge of the vents and never runs out",
	Calc: func(s *check.Sheet, k *layout.Locker) unit.Volume {
		from, to := check.Corners(s, &k.Box)
		inside := boxOf(from, to)
		A := check.Band(s, "A", "floor of "+k.Spot().Pointer(), box.FloorArea(inside))
		bottom, _ := box.LowestPoint(inside)
		top, _ := box.HighestPoint(inside)
		tall := check.Step(s, "H", check.Formula{Source: "height of the locker"}, func() unit.Length { return top.Nominal - bottom.Nominal })
		depth, text, low := tall, "H", false
		for _, v := range check.List(s, &k.Vents) {
			if check.Read(s, &v.Level) != layout.VentLevelLow || check.Read(s, &v.Closable) {
				continue
			}
			h := check.Symbol("h", v.ID())
			depth = min(depth, check.Measure(s, h, &v.LowerEdge))
			text, low = "min("+text+", "+h+")", true
		}
		if !low {
			s.Missing("a low vent that nobody can shut: without one the locker fills", k.Vents.Spot())
		}
		formula := check.Formula{Text: "V = A * " + text, Source: "definition", Valid: "a floor that is level; diffusion empties it in days"}
		return check.Step(s, "V", formula, func() unit.Volume { return unit.Volume(float64(A) * float64(depth)) })
	},
}

var _ = showAll([]check.Shown{
	check.Detail(check.Show(cancellingWind, lockers)),
	check.Detail(check.Show(trapped, lockers)),
})

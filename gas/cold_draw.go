package gas

import (
	"cmp"
	"fmt"
	"slices"

	"lowvent.example/gas/cylinder"
	"lowvent.example/gas/propane"
	"lowvent.example/schema/check"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/unit"
)

const (
	wallWords  = "heat that passes the wall of a cylinder in still air"
	wallSource = "heat balance of the wall; its coefficient in still air from memory, with a band"
)

// coldDraw is the heat that the cylinders before a regulator feed for as long as the last
// quarter lasts, in the coldest air. Several are joined in a changeover: one feeds at a time,
// and the least of them counts.
var coldDraw = &check.Figure[unit.GrossPower, *layout.Regulator]{
	ID: "regulator.cold-draw", Title: "what the cylinders feed in the coldest air, a quarter full",
	Calc: func(s *check.Sheet, r *layout.Regulator) unit.GrossPower {
		least := check.Fig(s, "T_least", leastLiquid, r)
		text, fewest := "", 0.0
		for _, c := range servedBy(s, r) {
			symbol := check.Symbol("P", c.ID())
			power := float64(sustained(s, symbol, c, least))
			if text == "" {
				text, fewest = symbol, power
				continue
			}
			text, fewest = "min("+text+", "+symbol+")", min(fewest, power)
		}
		return check.Step(s, "P_cold", check.Formula{Text: "P_cold = " + text, Source: "definition"}, func() unit.GrossPower { return unit.GrossPower(fewest) })
	},
}

// sustained is what one cylinder feeds for good, at a quarter of what it holds.
func sustained(s *check.Sheet, symbol string, c *layout.Cylinder, least unit.Temperature) unit.GrossPower {
	f := quarterFull(s, c)
	air := check.Measure(s, "T_air", &s.Layout().Climate.Coldest)
	wall := check.Band(s, "U", wallWords, cylinder.WallInStillAir())
	check.Step(s, "T", check.Formula{Text: "T = T_least", Source: "definition"}, func() unit.Temperature { return least })
	check.Step(s, "V", check.Formula{Text: cylinder.VolumeFormula, Source: "definition of water capacity"}, func() unit.Volume { return cylinder.Volume(f.Water) })
	density := func(name, text string, of func(unit.Temperature) (unit.Density, error)) {
		check.Try(s, c, name, check.Formula{Text: text, Source: saturationSource, Valid: "pure propane"}, func() (unit.Density, error) { return of(least) })
	}
	density("rho_liquid", propane.LiquidDensityFormula, propane.LiquidDensity)
	density("rho_vapour", propane.VapourDensityFormula, propane.VapourDensity)
	liquid := check.Formula{Text: cylinder.LiquidVolumeFormula, Source: "the masses of liquid and vapour add up"}
	check.Try(s, c, "V_liquid", liquid, func() (unit.Volume, error) { return cylinder.LiquidVolume(f.Vessel, f.Propane, least) })
	area := check.Formula{Text: cylinder.WettedAreaFormula, Source: "geometry", Valid: "an upright cylinder with a flat bottom; errs high when nearly empty"}
	check.Try(s, c, "A", area, func() (unit.Area, error) { return cylinder.WettedArea(f.Vessel, f.Propane, least) })
	latent := check.Formula{Text: propane.LatentHeatFormula, Source: saturationSource, Valid: "pure propane"}
	check.Try(s, c, "h_latent", latent, func() (unit.HeatPerMass, error) { return propane.LatentHeat(least) })
	balance := check.Formula{Text: cylinder.SustainedFormula, Source: wallSource, Valid: "no frost, no tight locker, no layers: all of them make it less"}
	flow := check.Try(s, c, "m_flow", balance, func() (unit.MassFlow, error) { return cylinder.Sustained(f.Vessel, f.Propane, wall, air, least) })
	grossHeat(s)
	return check.Step(s, symbol, check.Formula{Text: symbol + " = m_flow * H", Source: heatSource}, func() unit.GrossPower {
		return unit.GrossPower(float64(flow) * float64(propane.GrossHeat))
	})
}

// quarterFull is a cylinder with a quarter of its propane.
func quarterFull(s *check.Sheet, c *layout.Cylinder) cylinder.Filled {
	held := check.Measure(s, "m_full", &c.Propane)
	check.Constant(s, "q", "what is left", "own rule: the last quarter is the worst that should be used in the cold", quarter)
	m := check.Step(s, "m", check.Formula{Text: "m = m_full * q", Source: "definition"}, func() unit.PropaneMass {
		return unit.PropaneMass(float64(held) * float64(quarter))
	})
	return cylinder.Filled{Vessel: vesselOf(s, c), Propane: m}
}

// vesselOf is a cylinder as the physics sees it.
func vesselOf(s *check.Sheet, c *layout.Cylinder) cylinder.Vessel {
	return cylinder.Vessel{Water: check.Measure(s, "m_water", &c.WaterCapacity), Diameter: check.Measure(s, "D", &c.Diameter),
		Metal: check.Measure(s, "m_metal", &c.Tare), Material: wallOf(check.Read(s, &c.Material))}
}

func wallOf(m layout.CylinderMaterial) cylinder.Material {
	switch m {
	case layout.CylinderMaterialSteel:
		return cylinder.Steel
	case layout.CylinderMaterialAluminium:
		return cylinder.Aluminium
	case layout.CylinderMaterialComposite:
		return cylinder.Composite
	}
	return cylinder.MaterialNotKnown
}

// servedBy lists the cylinders in service before a regulator.
func servedBy(s *check.Sheet, r *layout.Regulator) []*layout.Cylinder {
	var found []*layout.Cylinder
	for _, c := range upstream(s, r.Ref()) {
		if check.Read(s, &c.Role) == layout.CylinderRoleInService {
			found = append(found, c)
		}
	}
	if !s.Stuck() && len(found) == 0 {
		s.Missing("a cylinder in service before "+r.Label(), s.Layout().Cylinders.Spot())
	}
	return found
}

// changeoversBefore are the changeovers through which the cylinders feed a regulator one
// at a time. Where there is none there is one cylinder: lines meet nowhere else.
func changeoversBefore(s *check.Sheet, r *layout.Regulator) []*layout.Changeover {
	var found []*layout.Changeover
	climb(s.Layout(), r.Ref(), func(_ *layout.Line, from layout.Ref) bool {
		if c, is := s.Layout().Find(from).(*layout.Changeover); is {
			found = append(found, c)
		}
		return true
	})
	return found
}

// byThemselves takes whether none of the changeovers waits for a hand.
func byThemselves(s *check.Sheet, changeovers []*layout.Changeover) bool {
	all := true
	for _, c := range changeovers {
		automatic := check.Read(s, &c.Automatic)
		all = all && automatic
	}
	return all
}

// fed is whether a cylinder feeds the busy times of a day, and what came of it in words.
type fed struct {
	all  bool
	text string
}

// fedInTheCold follows the cylinders before a regulator through each time of an ordinary
// day that draws more than the day's mean: a quarter full as it begins, as cold as the
// coldest air, with the air that cold throughout. Behind a changeover each is followed
// alone; where all change over by themselves the next goes on, a quarter full as well.
func fedInTheCold(s *check.Sheet, r *layout.Regulator) fed {
	supply := cylinder.Supply{Least: check.Fig(s, "T_least", leastLiquid, r)}
	supply.Air.Coldest = check.Measure(s, "T_air", &s.Layout().Climate.Coldest)
	supply.Start = supply.Air.Coldest
	supply.Wall = check.Band(s, "U", wallWords, cylinder.WallInStillAir())
	spells := spellsOf(s, downstream(s, r.Ref()))
	var banks [][]cylinder.Filled
	for _, c := range servedBy(s, r) {
		banks = append(banks, []cylinder.Filled{quarterFull(s, c)})
	}
	if byThemselves(s, changeoversBefore(s, r)) {
		banks, supply.Changeover = [][]cylinder.Filled{slices.Concat(banks...)}, true
	}
	came := fed{all: true, text: "every busy time of an ordinary day is fed"}
	steps := check.Formula{Source: wallSource, Valid: "followed in steps of time from a quarter full, with mass and energy closed to 1e-6: how long it feeds the busy times"}
	check.Try(s, r, "t_fed", steps, func() (unit.Duration, error) {
		var all unit.Duration
		times, err := cylinder.BusyTimes(spells)
		for _, busy := range times {
			for _, bank := range banks {
				supply.Vessels, supply.Spells, supply.Horizon = bank, busy.Spells, busy.Lasts
				out, failed := cylinder.Run(supply)
				err, all = cmp.Or(err, failed), all+out.Time
				if out.End != cylinder.Fed && came.all {
					came = fed{text: fmt.Sprintf("%s, %s into the busy time that begins at %s", out.End, unit.Text(out.Time), clockOf(busy.Start))}
				}
			}
		}
		return all, err
	})
	return came
}

// clockOf is a time of the day in words.
func clockOf(t unit.Duration) string {
	return unit.ClockTime{Minutes: int(float64(t)/60+0.5) % 1440}.String()
}

// spellsOf is when and how fast appliances burn gas on an ordinary day.
func spellsOf(s *check.Sheet, appliances []*layout.Appliance) []cylinder.Spell {
	var spells []cylinder.Spell
	for _, a := range appliances {
		P := check.Symbol("P", a.ID())
		input := check.Fig(s, P, applianceInput, a)
		for _, u := range check.List(s, &a.Use) {
			share, lasts := check.Measure(s, check.Symbol("s", a.ID(), u.ID()), &u.Share), check.Measure(s, check.Symbol("t", a.ID(), u.ID()), &u.For)
			at := check.Read(s, &u.At)
			spells = append(spells, cylinder.Spell{Start: unit.Duration(60 * at.Minutes), Lasts: lasts,
				Draw: unit.MassFlow(float64(fuelOf(input)) * float64(share))})
		}
	}
	return spells
}

// fuelOf is the propane that a gross input burns.
func fuelOf(input unit.GrossPower) unit.MassFlow { return propane.Burn(input).Fuel }

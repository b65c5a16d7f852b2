package vent

import (
	"errors"
	"math"
	"slices"

	"lowvent.example/gas"
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
	"lowvent.example/vent/flow"
	"lowvent.example/vent/room"
)

const (
	stackSource  = "two openings in still air (ASHRAE Fundamentals 2009, ch. 16, as quoted by the EnergyPlus Engineering Reference)"
	airingSource = "balance of mass of a well-mixed room, complete combustion"
)

var airReads = slices.Concat(fixedReads, []string{"/appliances", "/appliances/*/in", "/appliances/*/flue", "/spaces/*/box/from", "/spaces/*/box/to", "/fixedVents/*/at", "/fixedVents/*/gross",
	"/fixedVents/*/cover/kind", "/fixedVents/*/cover/open", "/climate/highestPlace", "/dwelling/sleeps",
	"/appliances/*/plate/input", "/appliances/*/plate/basis", "/appliances/*/plate/consumption",
	"/appliances/*/use", "/appliances/*/use/*/at", "/appliances/*/use/*/for", "/appliances/*/use/*/share"})

var _ = add(check.For(check.Descriptor{
	ID:   "room.air",
	Asks: "Does the air of the room stay fit to breathe while the flames without a flue burn, on an ordinary day?",
	Why:  "A hob on a still evening turns the air of a small room into what a flame makes carbon monoxide of, and nobody smells it.",
	NotCovered: "Carbon monoxide and nitrogen dioxide, which nobody can predict: an alarm and open windows are the guard. Windows, hatches and fans, which " +
		"people shut: only fixed vents count, in still weather. A sensor in an appliance that stops it at low oxygen changes nothing here.",
	Word:      report.Warning,
	MayAct:    report.Owner,
	Limits:    []*code.Term{code.OwnCarbonDioxide.Term, code.OwnOxygen.Term},
	Reads:     airReads,
	Instead:   []string{"/appliances/*/plate/consumption"},
	Inventory: []layout.InventoryList{layout.InventoryListAppliances},
	Sources:   []string{stackSource, airingSource},
}, spaces, func(s *check.Sheet, space *layout.Space) check.Ruling {
	return unfluedThere(s, space, func() check.Ruling {
		most := check.Limit(s, "x_max", code.OwnCarbonDioxide, nil)
		return check.AtMost(s, check.Fig(s, "x_CO2", worstCarbonDioxide, space), most).About("carbon dioxide").Mend(moreAir)
	})
}, func(s *check.Sheet, space *layout.Space) check.Ruling {
	return unfluedThere(s, space, func() check.Ruling {
		least := check.Limit(s, "x_min", code.OwnOxygen, nil)
		return check.AtLeast(s, check.Fig(s, "x_O2", leastOxygen, space), least).About("oxygen").Mend(moreAir)
	})
}))

const moreAir = "Larger fixed vents low and high where the fitter agrees, less burning at a time, or an appliance with a flue. Open windows while anything burns."

// unfluedThere asks only of a space in which a flame without a flue burns.
func unfluedThere(s *check.Sheet, space *layout.Space, ask func() check.Ruling) check.Ruling {
	check.Inventory(s, layout.InventoryListAppliances)
	if len(unfluedIn(s, space)) == 0 {
		return check.NotApplicable(s, "nothing burns there without a flue")
	}
	return ask()
}

// unfluedIn lists the appliances of a space that give their burnt gas to its air.
func unfluedIn(s *check.Sheet, space *layout.Space) []*layout.Appliance {
	var found []*layout.Appliance
	for _, a := range check.List(s, &s.Layout().Appliances) {
		if check.Read(s, &a.In) == space.Ref() && check.Read(s, &a.Flue) == layout.FlueKindNone {
			found = append(found, a)
		}
	}
	return found
}

// stillAir is the air that the fixed vents of a space let in on a still, mild day.
var stillAir = &check.Figure[unit.VolumeFlow, *layout.Space]{
	ID: "space.still-air", Title: "air through the fixed vents on a still day, 3 K warmer inside",
	Calc: func(s *check.Sheet, space *layout.Space) unit.VolumeFlow {
		return throughVents(s, space, check.Constant(s, "dT", "how much warmer it is inside", "own rule: at most this on a mild day", room.MildDifference))
	},
}

// throughVents is the air that low and high vents let in at a difference of temperature.
// Vents at one level alone are taken to let in none.
func throughVents(s *check.Sheet, space *layout.Space, warmer unit.TemperatureDifference) unit.VolumeFlow {
	low, high := check.Fig(s, "A_bottom", lowAir, space), check.Fig(s, "A_top", highAir, space)
	none := float64(low) == 0 || float64(high) == 0
	if !s.Stuck() && none {
		return check.Constant(s, "Q", "vents at one level alone let in hardly any", stackSource, unit.VolumeFlow(0))
	}
	height := unit.Length(float64(middle(s, "z_top", space, layout.VentLevelHigh)) - float64(middle(s, "z_bottom", space, layout.VentLevelLow)))
	check.Step(s, "H", check.Formula{Text: "H = z_top - z_bottom", Source: "definition"}, func() unit.Length { return height })
	check.Constant(s, "C_d", "discharge coefficient", "plain openings (ASHRAE Fundamentals 2009)", flow.Coefficient)
	check.Constant(s, "T", "temperature inside", "own rule", indoors20)
	area := check.Try(s, space, "A_eff", check.Formula{Text: flow.EffectiveAreaFormula, Source: stackSource}, func() (unit.Area, error) {
		return flow.EffectiveArea(high, low, flow.Coefficient)
	})
	formula := check.Formula{Text: "Q = A_eff * sqrt(9.80665*max(0, H)*dT/T)", Source: stackSource, Valid: "still air; a breeze brings more, and now and then less"}
	return check.Step(s, "Q", formula, func() unit.VolumeFlow { return stack(area, height, warmer) })
}

// middle is the height of the middle of the vents of one level, each by its free area.
func middle(s *check.Sheet, symbol string, space *layout.Space, level layout.VentLevel) unit.Length {
	sum, weights, text, below := 0.0, 0.0, "0", "0"
	for _, v := range fixedVentsAt(s, space, level) {
		a, z := check.Symbol("A", v.ID()), check.Symbol("z", v.ID())
		area := float64(check.Fig(s, a, fixedFree, v))
		height := float64(check.Band(s, z, "height of "+v.Spot().Pointer(), check.Read(s, &v.At)[2]))
		sum, weights = sum+area*height, weights+area
		text, below = text+" + "+a+"*"+z, below+" + "+a
	}
	return check.Step(s, symbol, check.Formula{Text: symbol + " = (" + text + ") / (" + below + ")", Source: "definition"}, func() unit.Length {
		return unit.Length(sum / weights)
	})
}

// stack is the air that a difference of temperature drives through two openings that are
// worth an area together; none where the upper one is no higher.
func stack(area unit.Area, height unit.Length, warmer unit.TemperatureDifference) unit.VolumeFlow {
	return unit.VolumeFlow(float64(area) * math.Sqrt(gravity*max(0, float64(height))*float64(warmer)/float64(indoors20)))
}

const (
	gravity   = 9.80665                  // m/s2
	indoors20 = unit.Temperature(293.15) // 20 degC
	outdoors  = unit.Ratio(420e-6)       // carbon dioxide outside
)

var (
	worstCarbonDioxide = airAtItsWorst("space.carbon-dioxide-peak", "carbon dioxide in the air at its worst, fixed vents in still weather", mildFlow, func(o room.Outcome) unit.Ratio {
		return o.CarbonDioxide.Air.Dry().CarbonDioxide
	})
	leastOxygen = airAtItsWorst("space.oxygen-least", "oxygen in the air at its worst, fixed vents in still weather", mildFlow, func(o room.Outcome) unit.Ratio {
		return o.Oxygen.Air.Oxygen
	})
	shutCarbonDioxide = airAtItsWorst("space.carbon-dioxide-shut", "carbon dioxide in the air at its worst, with every vent shut", noFlow, func(o room.Outcome) unit.Ratio {
		return o.CarbonDioxide.Air.Dry().CarbonDioxide
	})
	shutOxygen = airAtItsWorst("space.oxygen-shut", "oxygen in the air at its worst, with every vent shut", noFlow, func(o room.Outcome) unit.Ratio {
		return o.Oxygen.Air.Oxygen
	})
)

func mildFlow(s *check.Sheet, space *layout.Space) unit.VolumeFlow {
	return check.Fig(s, "Q", stillAir, space)
}

func noFlow(s *check.Sheet, _ *layout.Space) unit.VolumeFlow {
	return check.Constant(s, "Q", "every vent shut", "definition", unit.VolumeFlow(0))
}

// airAtItsWorst is one share of the air of a space over two ordinary days, with what fresh
// air there is.
func airAtItsWorst(id, title string, fresh func(*check.Sheet, *layout.Space) unit.VolumeFlow, of func(room.Outcome) unit.Ratio) *check.Figure[unit.Ratio, *layout.Space] {
	return &check.Figure[unit.Ratio, *layout.Space]{ID: id, Title: title, Calc: func(s *check.Sheet, space *layout.Space) unit.Ratio {
		there := roomOf(s, space, unit.Temperature(float64(indoors20)-float64(room.MildDifference)))
		there.Fresh = fresh(s, space)
		use := useIn(s, space)
		steps := check.Formula{Source: airingSource, Valid: "followed from one change of use to the next; the peak, no average; on the side of worse air, by up to 13 % against burners in a room with a fan and 37 % in a shut one"}
		return check.Try(s, space, "x", steps, func() (unit.Ratio, error) {
			out, err := room.Follow(there, use)
			return of(out), err
		})
	}}
}

// roomOf is a space as the physics sees it, with the air outside at a temperature.
func roomOf(s *check.Sheet, space *layout.Space, outside unit.Temperature) room.Room {
	volume := volumeOf(s, space)
	p := gas.OutsidePressure(s)
	check.Constant(s, "x_out", "carbon dioxide outside", "public record of the air, 2024 (from memory)", outdoors)
	damp := unit.Ratio(1)
	air, err := room.Outside(outdoors, outside, damp, p)
	if err != nil && !s.Stuck() {
		s.Missing("values for "+space.Label()+" within the reach of the formula: "+err.Error(), space.Spot())
	}
	return room.Room{Volume: volume, Inside: indoors20, Outside: outside, Pressure: p, Air: air}
}

// useIn is what goes on in a space on an ordinary day: flames without a flue, and all who
// sleep in the dwelling at rest in it. It asks nothing of a bay in which nobody stays.
func useIn(s *check.Sheet, space *layout.Space) room.Use {
	use := room.Use{Days: 2}
	burning := unfluedIn(s, space)
	if len(burning) == 0 && !isOccupied(check.Read(s, &space.Use)) {
		s.Missing("air that anyone breathes: nobody stays there, and nothing burns there without a flue", space.Spot())
	}
	people := check.Count(s, "n_sleeps", &s.Layout().Dwelling.Sleeps)
	if breath, err := room.Breathing(room.Resting, unit.Count(people)); err == nil && people > 0 {
		use.Spells = append(use.Spells, room.Spell{Lasts: 86400, Exchange: breath})
	}
	for _, a := range burning {
		P := check.Symbol("P", a.ID())
		input := check.Fig(s, P, gas.ApplianceInput(), a)
		for _, u := range check.List(s, &a.Use) {
			share, lasts := check.Measure(s, check.Symbol("s", a.ID(), u.ID()), &u.Share), check.Measure(s, check.Symbol("t", a.ID(), u.ID()), &u.For)
			begins := check.Read(s, &u.At)
			power := unit.GrossPower(float64(input) * float64(share))
			use.Spells = append(use.Spells, room.Spell{Start: unit.Duration(60 * begins.Minutes), Lasts: lasts, Exchange: room.Propane(power)})
		}
	}
	return use
}

// dayOfAir is the carbon dioxide of the air of a space over two ordinary days from fresh air,
// minute by minute; it ends where the last oxygen would be used up.
var dayOfAir = &check.Course[*layout.Space]{
	ID: "space.carbon-dioxide-course", Title: "carbon dioxide in the air over two ordinary days, fixed vents in still weather",
	Calc: func(s *check.Sheet, space *layout.Space) report.Course {
		course := report.Course{Across: report.Axis{Title: "time", Kind: unit.KindDuration.String()}, Up: report.Axis{Title: "carbon dioxide, dry", Kind: unit.KindRatio.String()}}
		there := roomOf(s, space, unit.Temperature(float64(indoors20)-float64(room.MildDifference)))
		there.Fresh = mildFlow(s, space)
		use := useIn(s, space)
		most := check.Limit(s, "x_max", code.OwnCarbonDioxide, nil)
		course.Levels = []report.Level{{Title: "the most that this program's own rule allows", At: float64(most.At())}}
		steps := check.Formula{Source: airingSource, Valid: "doors shut; to where the last oxygen would be used up"}
		check.Try(s, space, "x_CO2", steps, func() (unit.Ratio, error) {
			now := there.Air
			for minute := range 2 * 1440 {
				course.Points = append(course.Points, [2]float64{float64(60 * minute), float64(now.Dry().CarbonDioxide)})
				after, err := room.After(there, use.At(unit.Duration(60*(minute%1440)+30)), now, 60)
				var spent *room.ExhaustedError
				if errors.As(err, &spent) {
					break
				}
				if err != nil {
					return 0, err
				}
				now = after
			}
			return now.Dry().CarbonDioxide, nil
		})
		return course
	},
}

var _ = show(check.ShowCourse(dayOfAir, spaces))

var _ = showAll([]check.Shown{
	check.Detail(check.Show(worstCarbonDioxide, spaces)),
	check.Detail(check.Show(leastOxygen, spaces)),
	check.Detail(check.Show(stillAir, spaces)),
	check.Detail(check.Show(shutCarbonDioxide, spaces)),
	check.Detail(check.Show(shutOxygen, spaces)),
})

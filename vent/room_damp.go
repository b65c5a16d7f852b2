package vent

import (
	"slices"

	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
	"lowvent.example/vent/room"
)

var _ = add(check.For(check.Descriptor{
	ID:   "room.damp",
	Asks: "Does the glass stay dry on the coldest ordinary day, with the flames without a flue burning?",
	Why:  "Each kilogram of gas makes more than a kilogram and a half of water. It runs down the glass, feeds mould, and people shut the vents against it.",
	NotCovered: "Wet clothes, boiling pots and showers, which bring more water than the gas; cold corners, frames and metal walls; curtains, behind " +
		"which glass is colder.",
	Word:      report.Notice,
	MayAct:    report.Owner,
	Limits:    []*code.Term{code.OwnDryGlass.Term},
	Reads:     slices.Concat([]string{"/climate/coldest", "/openings", "/openings/*/of", "/openings/*/kind", "/openings/*/glazing"}, airReads),
	Instead:   []string{"/appliances/*/plate/consumption"},
	Inventory: []layout.InventoryList{layout.InventoryListAppliances},
	Surveys:   []layout.SurveyList{layout.SurveyListOpenings},
	Sources:   []string{stackSource, airingSource, glassSource},
}, spaces, func(s *check.Sheet, space *layout.Space) check.Ruling {
	return unfluedThere(s, space, func() check.Ruling {
		pane := worstPane(s, space)
		if pane == layout.GlazingNone {
			return check.NotApplicable(s, "no glass is listed in the space")
		}
		asked := check.Asked(s, code.OwnDryGlass, nil)
		face, dew := glassFace(s, pane), check.Fig(s, "T_dew", coldDewPoint, space)
		return check.AtLeast(s, face, check.Against(asked, dew)).About("%s glass, against the dew point", pane).
			Mend("Less burning at a time, fixed vents that stay open, double glass; wipe the glass in the morning.")
	})
}))

const glassSource = "steady conduction; single glass by a published table, double from memory"

// worstPane is the poorest glass of the windows of a space.
func worstPane(s *check.Sheet, space *layout.Space) layout.Glazing {
	check.Survey(s, space, &space.Surveyed, layout.SurveyListOpenings)
	worst := layout.GlazingNone
	for _, o := range check.List(s, &s.Layout().Openings) {
		if check.Read(s, &o.Of) != space.Ref() {
			continue
		}
		switch check.Read(s, &o.Kind) {
		case layout.OpeningKindWindow, layout.OpeningKindRoofVent:
		default:
			continue
		}
		switch pane := check.Read(s, &o.Pane); {
		case pane == layout.GlazingSingle, pane == layout.GlazingDouble && worst == layout.GlazingNone:
			worst = pane
		}
	}
	return worst
}

// glassFace is the temperature of the inner face of glass in the coldest air.
func glassFace(s *check.Sheet, pane layout.Glazing) unit.Temperature {
	surface := room.SingleGlazing()
	if pane == layout.GlazingDouble {
		surface.U = 3
	}
	check.Constant(s, "U", "heat through the glass", glassSource, surface.U)
	check.Constant(s, "h_in", "heat from the air to its inner face", glassSource, surface.Film)
	check.Constant(s, "T_in", "temperature inside", "own rule", indoors20)
	outside := check.Measure(s, "T_out", &s.Layout().Climate.Coldest)
	formula := check.Formula{Text: room.SurfaceFormula, Source: glassSource, Valid: "the middle of the pane; its edge is colder"}
	return check.Try(s, s.Layout(), "T_surface", formula, func() (unit.Temperature, error) { return surface.Temperature(indoors20, outside) })
}

// coldDewPoint is the temperature at which the water in the air of a space settles, at its
// dampest on the coldest ordinary day.
var coldDewPoint = &check.Figure[unit.Temperature, *layout.Space]{
	ID: "space.dew-point", Title: "dew point of the air at its dampest, on the coldest ordinary day",
	Calc: func(s *check.Sheet, space *layout.Space) unit.Temperature {
		outside := check.Measure(s, "T_out", &s.Layout().Climate.Coldest)
		there := roomOf(s, space, outside)
		warmer := check.Step(s, "dT", check.Formula{Text: "dT = 293.15 - T_out", Source: "definition"}, func() unit.TemperatureDifference {
			return unit.TemperatureDifference(float64(indoors20) - float64(outside))
		})
		there.Fresh = throughVents(s, space, max(warmer, 0))
		use := useIn(s, space)
		steps := check.Formula{Source: airingSource, Valid: "air outside that is saturated; walls and cloth take up some of it: errs to the damp side"}
		return check.Try(s, space, "T_dew", steps, func() (unit.Temperature, error) {
			out, err := room.Follow(there, use)
			if err != nil {
				return 0, err
			}
			settled, err := room.Settle(there, out.Water.Air, room.SingleGlazing())
			return settled.Point, err
		})
	},
}

var _ = show(check.Detail(check.Show(coldDewPoint, spaces)))

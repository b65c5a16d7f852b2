package vent

import (
	"slices"

	"lowvent.example/gas"
	"lowvent.example/gas/air"
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
	"lowvent.example/vent/flow"
	"lowvent.example/vent/room"
)

var fanReads = slices.Concat(fixedReads, []string{"/fixedVents/*/gross", "/fixedVents/*/cover/kind", "/fixedVents/*/cover/open",
	"/fans", "/fans/*/in", "/fans/*/direction", "/fans/*/flow", "/spaces/*/openTo", "/climate/highestPlace"})

var _ = add(check.For(check.Descriptor{
	ID:   "room.make-up-air",
	Asks: "Where something burns with an open flue, do fans leave its draught alone?",
	Why:  "A fan that draws harder than a warm chimney pulls the burnt gas back into the room, carbon monoxide and all.",
	NotCovered: "Wind on the terminal, a cold or dirty flue, fans that are not listed, and doors that shut the vents off: the fitter's test of " +
		"spillage with every fan on decides.",
	Word:      report.Danger,
	MayAct:    report.LicensedFitter,
	Limits:    []*code.Term{code.PracticeSpillage.Term, code.PracticeFanInlet.Term},
	Reads:     slices.Concat(burnReads, fanReads),
	Inventory: []layout.InventoryList{layout.InventoryListAppliances, layout.InventoryListStoves, layout.InventoryListFans},
	Sources:   []string{drawnSource},
}, spaces, func(s *check.Sheet, space *layout.Space) check.Ruling {
	if !openFlueIn(s, space) {
		return check.NotApplicable(s, "nothing burns there with an open flue")
	}
	return pulledDown(s, space, code.PracticeSpillage, "Fixed vents large enough for the fans, a weaker fan, or an appliance sealed from the room; the fitter decides.")
}))

const drawnSource = "flow through an opening (BS 5925:1991 amendment 1, equation 2)"

// openFlueIn tells whether an appliance with an open flue, or a stove, is in a space.
func openFlueIn(s *check.Sheet, space *layout.Space) bool {
	check.Inventory(s, layout.InventoryListAppliances)
	check.Inventory(s, layout.InventoryListStoves)
	found := false
	for _, a := range check.List(s, &s.Layout().Appliances) {
		found = found || check.Read(s, &a.In) == space.Ref() && check.Read(s, &a.Flue) == layout.FlueKindOpenFlued
	}
	for _, st := range check.List(s, &s.Layout().Stoves) {
		found = found || check.Read(s, &st.In) == space.Ref()
	}
	return found
}

// pulledDown asks how far the fans of a space, and of those that open into it, pull its
// pressure down against its fixed vents.
func pulledDown(s *check.Sheet, space *layout.Space, limit code.Limit[unit.GaugePressure], mend string) check.Ruling {
	fans := extractors(s, space)
	if len(fans) == 0 {
		return check.NotApplicable(s, "no fan draws on its air")
	}
	most := check.Limit(s, "dp_max", limit, nil)
	if free := check.Fig(s, "A", allAir, space); float64(free) == 0 && !s.Stuck() {
		return check.Is(s, false, check.Asked(s, code.PracticeFanInlet, nil), "a fan and no fixed vent", "fixed vents for what the fans draw").Mend(mend)
	}
	return check.AtMost(s, check.Fig(s, "dp", suction, space), most).Mend(mend)
}

// extractors lists the fans that draw air out of a space or out of one that opens into it.
func extractors(s *check.Sheet, space *layout.Space) []*layout.Fan {
	check.Inventory(s, layout.InventoryListFans)
	joined := map[layout.Ref]bool{space.Ref(): true}
	for _, way := range check.List(s, &space.OpenTo) {
		joined[layout.Ref("spaces/"+way.ID())] = true
	}
	var found []*layout.Fan
	for _, f := range check.List(s, &s.Layout().Fans) {
		if joined[check.Read(s, &f.In)] && check.Read(s, &f.Direction) == layout.FanDirectionExtract {
			found = append(found, f)
		}
	}
	return found
}

// suction is by how much all extract fans together pull the pressure of a space down.
var suction = &check.Figure[unit.GaugePressure, *layout.Space]{
	ID: "space.suction", Title: "how far the extract fans pull the pressure down, all on",
	Calc: func(s *check.Sheet, space *layout.Space) unit.GaugePressure {
		sum, text := 0.0, "q = 0"
		for _, f := range extractors(s, space) {
			symbol := check.Symbol("q", f.ID())
			sum += float64(check.Measure(s, symbol, &f.Flow))
			text += " + " + symbol
		}
		drawn := check.Step(s, "q", check.Formula{Text: text, Source: "definition", Valid: "all on at once; supply fans may be off"}, func() unit.VolumeFlow { return unit.VolumeFlow(sum) })
		free := check.Fig(s, "A", allAir, space)
		check.Constant(s, "C_d", "discharge coefficient", "plain openings (ASHRAE Fundamentals 2009)", flow.Coefficient)
		p := gas.OutsidePressure(s)
		check.Constant(s, "T", "temperature of the air that comes in", "own rule: cold air is denser and harder to draw", coldAir)
		rho := check.Try(s, space, "rho", check.Formula{Text: air.DensityFormula, Source: "ideal gas"}, func() (unit.Density, error) { return air.Density(p, coldAir) })
		formula := check.Formula{Text: room.DepressurisationFormula, Source: drawnSource, Valid: "vents that are clean; half blocked, four times as much"}
		return check.Try(s, space, "dp", formula, func() (unit.GaugePressure, error) { return room.Depressurisation(drawn, free, flow.Coefficient, rho) })
	},
}

const coldAir = unit.Temperature(263.15)

var _ = show(check.Detail(check.Show(suction, spaces)))

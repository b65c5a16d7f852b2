package gas

import (
	"slices"

	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

// onRoads are the dwellings that are driven or towed.
var onRoads = []layout.DwellingKind{layout.DwellingKindRoadVehicle, layout.DwellingKindTrailer, layout.DwellingKindTinyHouseOnWheels}

var _ = add(check.ForDwelling(check.Descriptor{
	ID:         "transit.shutoff",
	Asks:       "Where gas stays on while the dwelling is driven, does something shut it by itself in a crash?",
	Why:        "A crash breaks the pipe, and the whole cylinder blows out beside a hot engine with people inside.",
	NotCovered: "Whether the device is made for the pressure and flow, and whether a vehicle with burning gas may use a ferry or a tunnel.",
	Word:       report.Warning,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.TransitDevices.Term, code.PracticeTransitDevices.Term},
	Reads:      []string{"/dwelling/kind", "/dwelling/gasWhileDriving", "/lines", "/lines/*/from", "/lines/*/shutoffs", "/lines/*/shutoffs/*/kind"},
	Inventory:  []layout.InventoryList{layout.InventoryListLines},
}, func(s *check.Sheet, l *layout.Layout) check.Ruling {
	if kind := check.Read(s, &l.Dwelling.Kind); !s.Stuck() && !slices.Contains(onRoads, kind) {
		return check.NotApplicable(s, "it is not driven on roads")
	}
	if !check.Read(s, &l.Dwelling.GasWhileDriving) {
		return check.NotApplicable(s, "every cylinder valve is shut before it moves, as stated")
	}
	return check.ByEither(s, code.TransitDevices, code.PracticeTransitDevices, shutByItself)
}))

// shutByItself asks that each line from a cylinder has one of the devices.
func shutByItself(s *check.Sheet, w code.WordLimit) check.Ruling {
	check.AllowedWords(s, w, nil)
	check.Inventory(s, layout.InventoryListLines)
	var first []*layout.Line
	for _, line := range check.List(s, &s.Layout().Lines) {
		if check.Read(s, &line.From).Section() == "cylinders" {
			first = append(first, line)
		}
	}
	none := func() check.Ruling { return check.NotApplicable(s, "no line comes from a cylinder") }
	return check.Every(s, first, none, func(s *check.Sheet, line *layout.Line) check.Ruling {
		allowed := check.AllowedWords(s, w, nil)
		found := layout.ShutoffKind("none")
		for _, device := range check.List(s, &line.Shutoffs) {
			if kind := check.Read(s, &device.Kind); allowed.Has(string(kind)) {
				found = kind
			}
		}
		return check.OneOf(s, found, allowed).Points(line.Spot()).
			Mend("A device that shuts the gas in a crash, at each cylinder; the fitter chooses it. Or shut every cylinder before each drive.")
	})
}

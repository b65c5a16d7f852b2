package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "appliance.gas-kind",
	Asks:       "Does the plate say propane, are jets for propane fitted, and by someone who may?",
	Why:        "A natural-gas burner on propane burns about twice its rating: long flames, soot and carbon monoxide.",
	NotCovered: "The plate's pressure: see regulator.outlet. The jets' size: see the fitter's sheet.",
	Word:       report.Danger,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.ApplianceGas.Term, code.ApplianceConvertedBy.Term},
	Reads:      []string{"/appliances/*/plate/gas", "/appliances/*/plate/jetsFittedFor", "/appliances/*/plate/convertedBy"},
	Claims:     []string{"/appliances/*/plate/jetsFittedFor"},
	NeverWaive: true,
}, appliances,
	func(s *check.Sheet, a *layout.Appliance) check.Ruling {
		return forPropane(s, &a.Plate.Gas, "the plate")
	},
	func(s *check.Sheet, a *layout.Appliance) check.Ruling {
		return forPropane(s, &a.Plate.JetsFor, "the jets")
	},
	func(s *check.Sheet, a *layout.Appliance) check.Ruling {
		by := check.Read(s, &a.Plate.ConvertedBy)
		return check.OneOf(s, by, check.AllowedWords(s, code.ApplianceConvertedBy, nil)).About("who fitted the jets").
			Mend("Have a licensed fitter check and set the appliance before it is used.", check.SetWord(&a.Plate.ConvertedBy, layout.ConvertedByLicensedFitter))
	}))

func forPropane(s *check.Sheet, gas *layout.Given[layout.GasKind], what string) check.Ruling {
	return check.OneOf(s, check.Read(s, gas), check.AllowedWords(s, code.ApplianceGas, nil)).About("%s", what).
		Mend("An appliance made for propane, or converted by a licensed fitter with the maker's parts.", check.SetWord(gas, layout.GasKindPropane))
}

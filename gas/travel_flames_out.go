package gas

import (
	"slices"

	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

// staying are the dwellings that never move.
var staying = []layout.DwellingKind{layout.DwellingKindCabin, layout.DwellingKindTinyHouseFixed}

var _ = add(check.For(check.Descriptor{
	ID:         "travel.flames-out",
	Asks:       "Is the appliance kept from burning and from lighting by itself while the dwelling moves or refuels?",
	Why:        "At the pump the vapour of fuel runs along the ground to whatever burns or sparks: a fridge that lights itself is enough.",
	NotCovered: "Heaters that burn diesel or petrol, and what a ferry or a tunnel asks for.",
	Word:       report.Danger,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.PracticeFlamesOut.Term},
	Reads:      []string{"/dwelling/kind", "/appliances/*/offWhileDriving"},
	Claims:     []string{"/appliances/*/offWhileDriving"},
}, appliances, func(s *check.Sheet, a *layout.Appliance) check.Ruling {
	if slices.Contains(staying, check.Read(s, &s.Layout().Dwelling.Kind)) {
		return check.NotApplicable(s, "the dwelling never moves")
	}
	duty := check.Asked(s, code.PracticeFlamesOut, nil)
	off := check.Read(s, &a.LockedOff)
	return check.Is(s, off, duty, resting(off), resting(true)).
		Mend("A lock or relay that keeps it out, or its valve shut before each drive and each refuelling.", check.SetBool(&a.LockedOff, true))
}))

func resting(off bool) string {
	if off {
		return "kept from lighting"
	}
	return "free to burn and light"
}

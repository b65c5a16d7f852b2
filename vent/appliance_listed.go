package vent

import (
	"slices"
	"strings"

	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "appliance.listed",
	Asks:       "Is the appliance approved, by its plate or manual, for dwellings of this kind?",
	Why:        "A hob for a house is not made to be shaken, tilted and starved of air, and nobody has tried what it does then.",
	NotCovered: "Whether the mark on it is genuine, and by whose list. What stands in the open air is not asked.",
	Word:       report.Warning,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.ApplianceListed.Term, code.PracticeListed.Term},
	Reads:      []string{"/appliances/*/in", "/appliances/*/plate/approvedFor", "/dwelling/kind"},
}, appliances, indoors(func(s *check.Sheet, a *layout.Appliance) check.Ruling {
	return check.ByEither(s, code.ApplianceListed, code.PracticeListed, func(s *check.Sheet, l code.DutyLimit) check.Ruling { return approved(s, a, l) })
})))

func approved(s *check.Sheet, a *layout.Appliance, duty code.DutyLimit) check.Ruling {
	asked := check.Asked(s, duty, applianceFacts(a))
	kind := check.Read(s, &s.Layout().Dwelling.Kind)
	var names []string
	for _, each := range check.Read(s, &a.Plate.ApprovedFor.Given) {
		names = append(names, string(each))
	}
	found := "approved for " + strings.Join(names, ", ")
	if len(names) == 0 {
		found = "approved for no kind of dwelling"
	}
	return check.Is(s, slices.Contains(names, string(kind)), asked, found, "approved for "+string(kind)).
		Mend("An appliance whose plate or manual names such a dwelling.")
}

package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:   "appliance.flame-guard",
	Asks: "Does the gas of every burner and pilot stop by itself when its flame goes out?",
	Why:  "A flame that boils over or blows out leaves its gas running: by morning it fills a small dwelling from the floor up.",
	NotCovered: "How long gas flows before the device shuts, up to a minute for each burner, and whether it works: a fitter proves it. " +
		"In a dwelling this small every room is next to the bed, so the word is the same in all of them.",
	Word:   report.Danger,
	MayAct: report.LicensedFitter,
	Limits: []*code.Term{code.ApplianceFlameGuard.Term, code.PracticeFlameGuard.Term},
	Reads: []string{"/appliances/*/in", "/appliances/*/kind", "/appliances/*/flameGuard", "/appliances/*/burners",
		"/appliances/*/burners/*/flameGuard"},
	Claims: []string{"/appliances/*/flameGuard", "/appliances/*/burners/*/flameGuard"},
}, appliances, indoors(func(s *check.Sheet, a *layout.Appliance) check.Ruling {
	return check.ByEither(s, code.ApplianceFlameGuard, code.PracticeFlameGuard, func(s *check.Sheet, l code.DutyLimit) check.Ruling { return guarded(s, a, l) })
})))

// guarded asks what the manual says of the appliance, and what is said of each of
// its burners: where the two differ, the worse one counts.
func guarded(s *check.Sheet, a *layout.Appliance, duty code.DutyLimit) check.Ruling {
	const mend = "An appliance with a flame-failure device on every burner and pilot."
	whole := func(s *check.Sheet) check.Ruling {
		asked := check.Asked(s, duty, applianceFacts(a))
		guard := check.Read(s, &a.FlameGuard)
		return check.Is(s, guard == layout.FlameGuardEveryBurner, asked, string(guard), string(layout.FlameGuardEveryBurner)).Mend(mend)
	}
	none := func() check.Ruling { return check.NotApplicable(s, "the file states that it has no burner") }
	return check.All(s, whole, func(s *check.Sheet) check.Ruling {
		return check.Every(s, check.List(s, &a.Burners), none, func(s *check.Sheet, b *layout.Burner) check.Ruling {
			asked := check.Asked(s, duty, applianceFacts(a))
			is := check.Read(s, &b.Guarded)
			return check.Is(s, is, asked, either(is, "stops its own gas", "lets its gas run on"), "stops its own gas").Mend(mend)
		})
	})
}

package gas

import (
	"time"

	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

var _ = add(check.ForDwelling(check.Descriptor{
	ID:         "inspection.current",
	Asks:       "Is a fitter's certificate in force for the installation as it is now, and recent enough for the code?",
	Why:        "What a paper vouches for is the installation of that day: hoses age, and a new shelf can cover a vent.",
	NotCovered: "Whether the fitter's licence covers this kind of dwelling, which the paper says; what insurers and clubs ask for.",
	Word:       report.Warning,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.InspectionCertificate.Term, code.InspectionInterval.Term, code.PracticeCertificate.Term},
	Reads:      []string{"/certificates", "/certificates/*/on", "/certificates/*/expires", "/certificates/*/changedSince", "/cylinders", "/appliances"},
	Inventory:  []layout.InventoryList{layout.InventoryListCylinders, layout.InventoryListAppliances},
}, certified, recent))

const inspectAgain = "A licensed fitter inspects the installation as it is now and signs for it."

func certified(s *check.Sheet, l *layout.Layout) check.Ruling {
	if !gasAboard(s) {
		return check.NotApplicable(s, noGas)
	}
	return check.ByEither(s, code.InspectionCertificate, code.PracticeCertificate, func(s *check.Sheet, d code.DutyLimit) check.Ruling {
		duty := check.Asked(s, d, nil)
		return anyCertificate(s, func() check.Ruling {
			return check.Is(s, false, duty, "no certificate", "a certificate in force").Points(l.Certificates.Spot()).Mend(inspectAgain)
		}, func(s *check.Sheet, c *layout.Certificate) check.Ruling {
			return check.All(s,
				func(s *check.Sheet) check.Ruling { return inForce(s, c, d).About("%s, dates", c.Label()) },
				func(s *check.Sheet) check.Ruling { return unchanged(s, c, d).About("%s, changes", c.Label()) })
		})
	})
}

const noGas = "there is no cylinder and no appliance"

// gasAboard takes whether there is a cylinder or an appliance. That there is none
// needs both lists to be complete.
func gasAboard(s *check.Sheet) bool {
	if len(check.List(s, &s.Layout().Cylinders)) > 0 || len(check.List(s, &s.Layout().Appliances)) > 0 {
		return true
	}
	check.Inventory(s, layout.InventoryListCylinders)
	check.Inventory(s, layout.InventoryListAppliances)
	return false
}

// anyCertificate asks of each certificate; one that is right is enough.
func anyCertificate(s *check.Sheet, none func() check.Ruling, ask func(*check.Sheet, *layout.Certificate) check.Ruling) check.Ruling {
	var tries []func(*check.Sheet) check.Ruling
	for _, c := range check.List(s, &s.Layout().Certificates) {
		tries = append(tries, func(s *check.Sheet) check.Ruling { return ask(s, c) })
	}
	if len(tries) == 0 {
		return none()
	}
	return check.Any(s, tries...)
}

func inForce(s *check.Sheet, c *layout.Certificate, d code.DutyLimit) check.Ruling {
	duty := check.Asked(s, d, nil)
	on, expires := check.Read(s, &c.On), check.Read(s, &c.Expires)
	within := !s.On().Before(on.Last()) && !expires.First().Before(s.On())
	return check.Is(s, within, duty, "from "+on.String()+" to "+expires.String(), "the day of judgement within its dates").Mend(inspectAgain)
}

func unchanged(s *check.Sheet, c *layout.Certificate, d code.DutyLimit) check.Ruling {
	duty := check.Asked(s, d, nil)
	changed := check.Read(s, &c.Changed)
	return check.Is(s, !changed, duty, changes(changed), changes(false)).Mend(inspectAgain)
}

// recent asks that the last inspection is not older than the code allows.
func recent(s *check.Sheet, l *layout.Layout) check.Ruling {
	if !gasAboard(s) {
		return check.NotApplicable(s, noGas)
	}
	return anyCertificate(s, func() check.Ruling {
		return check.NotApplicable(s, "there is no certificate of which to ask how old it is")
	}, func(s *check.Sheet, c *layout.Certificate) check.Ruling {
		most := check.Limit(s, "t_max", code.InspectionInterval, nil)
		age := check.Band(s, "t_age", "age of "+c.Label(), unit.Exactly(between(check.Read(s, &c.On), s.On())))
		return check.AtMost(s, age, most).About("%s, age", c.Label()).Mend(inspectAgain)
	})
}

// between is the time from a date, taken at its earliest, to a full day.
func between(from, to unit.Date) unit.Duration {
	at := func(d unit.Date) time.Time { return time.Date(d.Year, d.Month, d.Day, 0, 0, 0, 0, time.UTC) }
	return unit.Duration(at(to).Sub(at(from.First())).Seconds())
}

func changes(changed bool) string {
	if changed {
		return "something was changed since it was signed"
	}
	return "nothing was changed since it was signed"
}

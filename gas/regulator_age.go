package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

var _ = add(check.For(check.Descriptor{
	ID:         "regulator.age",
	Asks:       "Is the regulator within the years that a regulator may serve?",
	Why:        "Its rubber hardens and its seat wears: the pressure then creeps up while nothing burns, and the next flame is too large.",
	NotCovered: "Its state: the fitter measures lock-up and running pressure.",
	Word:       report.Caution,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.RegulatorLife.Term, code.PracticeRegulatorLife.Term},
	Reads:      []string{"/regulators/*/made"},
}, regulators, func(s *check.Sheet, r *layout.Regulator) check.Ruling {
	made := func(s *check.Sheet) unit.Date { return check.Read(s, &r.Made) }
	return aged(s, made, code.RegulatorLife, code.PracticeRegulatorLife)
}))

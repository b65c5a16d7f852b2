package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "line.open-end",
	Asks:       "Is every end of pipe that leads nowhere closed by a proper cap or plug?",
	Why:        "When the valves are opened, an open end lets out the whole supply; a removed appliance is how it usually comes about, and a crimped or taped end is an open one.",
	NotCovered: "Ends that nobody listed: look behind every appliance that was taken out.",
	Word:       report.Danger,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.PracticeOpenEnd.Term},
	Reads:      []string{"/openEnds/*/end"},
	Claims:     []string{"/openEnds/*/end"},
	NeverWaive: true,
}, openEnds, func(s *check.Sheet, e *layout.OpenEnd) check.Ruling {
	return check.OneOf(s, check.Read(s, &e.End), check.AllowedWords(s, code.PracticeOpenEnd, nil)).
		Mend("A cap or plug made for the pipe, fitted and leak-tested by the fitter; until then the cylinders stay shut.",
			check.SetWord(&e.End, layout.EndFitCap))
}))

func openEnds(l *layout.Layout) *layout.Section[layout.OpenEnd] { return &l.OpenEnds }

package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "line.bonding",
	Asks:       "Is the metal gas line bonded to the chassis or earth?",
	Why:        "A fault in the wiring or lightning makes an unbonded pipe live: it shocks, and where its current jumps it burns a hole.",
	NotCovered: "That no line serves as the earth of anything, isolators against galvanic current afloat, and the wiring as such: ask the fitter and an electrician.",
	Word:       report.Warning,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.PracticeBonded.Term},
	Reads:      []string{"/lines/*/kind", "/lines/*/bonded"},
	Claims:     []string{"/lines/*/bonded"},
}, lines, func(s *check.Sheet, line *layout.Line) check.Ruling {
	return ofPipe(s, line, func() check.Ruling {
		if check.Read(s, &line.Kind) == layout.LineKindPolyethylene {
			return check.NotApplicable(s, "the line is of plastic")
		}
		duty := check.Asked(s, code.PracticeBonded, nil)
		bonded := check.Read(s, &line.Bonded)
		return check.Is(s, bonded, duty, bond(bonded), bond(true)).
			Mend("A clamp and wire to the chassis or earth, once for the whole of the metal pipework; corrugated tube as its maker says.", check.SetBool(&line.Bonded, true))
	})
}))

func bond(bonded bool) string {
	if bonded {
		return "bonded"
	}
	return "not bonded"
}

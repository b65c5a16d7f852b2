package gas

import (
	"strings"

	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "line.joints",
	Asks:       "Is every joint in the line of a kind that is trusted with gas, and every flare dry?",
	Why:        "Lines leak at their joints: soft solder melts, a sleeve made for water slips, and tape on a flare keeps it from sealing.",
	NotCovered: "Whether a joint holds: the fitter tests it. Paste on threads, which has to be made for the gas.",
	Word:       report.Warning,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.JointKinds.Term, code.PracticeJointKinds.Term, code.PracticeDryFlares.Term},
	Reads:      []string{"/lines/*/kind", "/lines/*/joints", "/lines/*/joints/*/kind", "/lines/*/joints/*/sealant"},
	Claims:     []string{"/lines/*/joints/*/kind"},
}, lines, trustedJoints, dryFlares))

func trustedJoints(s *check.Sheet, line *layout.Line) check.Ruling {
	return everyJoint(s, line, func(s *check.Sheet, j *layout.Joint) check.Ruling {
		facts := lineFacts(line)
		facts[code.FactJointKind] = func(s *check.Sheet) any { return string(check.Read(s, &j.Kind)) }
		return check.ByEither(s, code.JointKinds, code.PracticeJointKinds, func(s *check.Sheet, l code.WordLimit) check.Ruling {
			return check.OneOf(s, check.Read(s, &j.Kind), check.AllowedWords(s, l, facts)).
				Mend("The fitter makes this joint anew.")
		})
	})
}

func dryFlares(s *check.Sheet, line *layout.Line) check.Ruling {
	return everyJoint(s, line, func(s *check.Sheet, j *layout.Joint) check.Ruling {
		if kind := check.Read(s, &j.Kind); !strings.HasPrefix(string(kind), "flare") {
			return check.NotApplicable(s, "the joint is no flare")
		}
		duty := check.Asked(s, code.PracticeDryFlares, nil)
		sealant := check.Read(s, &j.Sealant)
		return check.Is(s, sealant == "none", duty, sealant, "none").Mend("The fitter cuts the flare off and makes it anew, dry.")
	})
}

// everyJoint asks the same of each joint of a line, of which there is at least one.
func everyJoint(s *check.Sheet, line *layout.Line, ask func(*check.Sheet, *layout.Joint) check.Ruling) check.Ruling {
	return check.Every(s, jointsOf(s, line), nil, ask)
}

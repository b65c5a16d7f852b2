package gas

import (
	"strconv"

	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

var _ = add(check.For(check.Descriptor{
	ID:         "regulator.stages",
	Asks:       "Does the regulator bring the pressure down in as many stages as the code asks, with a fixed setting, and is it of the kind asked for?",
	Why:        "One stage lets the outlet follow the cylinder up and down, and a screw that anyone can turn feeds the burners with any pressure.",
	NotCovered: "How steady it is: the fitter measures running pressure and lock-up.",
	Word:       report.Warning,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.RegulatorStages.Term, code.RegulatorFixed.Term, code.PracticeFixedSetting.Term, code.RegulatorForVehicles.Term},
	Reads:      []string{"/regulators/*/stages", "/regulators/*/fixedSetting", "/regulators/*/forVehicles", "/lines", "/lines/*/from", "/lines/*/to"},
	Inventory:  []layout.InventoryList{layout.InventoryListLines},
}, regulators, stages, fixedSetting, forVehicles))

const otherRegulator = "Another regulator; the fitter chooses, fits and proves it."

// stages counts those of the last regulator on a way and of all that stand before it.
func stages(s *check.Sheet, r *layout.Regulator) check.Ruling {
	fewest := check.Limit(s, "n_min", code.RegulatorStages, nil)
	if firstStage(s, r) {
		return check.NotApplicable(s, "it delivers to a further regulator, of which the stages are counted")
	}
	n := check.Read(s, &r.Stages) + stagesBefore(s, r.Ref(), map[layout.Ref]int{})
	return check.AtLeast(s, unit.Count(n), fewest).About("stages").Points(r.Stages.Spot()).
		Mend(otherRegulator, report.Edit{Pointer: r.Stages.Spot().Pointer(), Value: strconv.Itoa(int(fewest.At()))})
}

// stagesBefore counts the stages before a thing, on that way to it that has the
// fewest. Each thing is looked at once, however many ways lead through it.
func stagesBefore(s *check.Sheet, to layout.Ref, known map[layout.Ref]int) int {
	if n, seen := known[to]; seen {
		return n
	}
	fewest := 0
	for i, line := range s.Layout().FedBy(to) {
		from := check.Read(s, &line.From)
		n := stagesBefore(s, from, known)
		if before, is := s.Layout().Find(from).(*layout.Regulator); is {
			n += check.Read(s, &before.Stages)
		}
		if i == 0 || n < fewest {
			fewest = n
		}
	}
	known[to] = fewest
	return fewest
}

func fixedSetting(s *check.Sheet, r *layout.Regulator) check.Ruling {
	return check.ByEither(s, code.RegulatorFixed, code.PracticeFixedSetting, func(s *check.Sheet, duty code.DutyLimit) check.Ruling {
		return stated(s, &r.Fixed, duty, "a fixed setting", "a setting that anyone can turn").
			Mend(otherRegulator, check.SetBool(&r.Fixed, true))
	})
}

func forVehicles(s *check.Sheet, r *layout.Regulator) check.Ruling {
	return stated(s, &r.ForVehicles, code.RegulatorForVehicles, "made for vehicles, caravans or boats", "not made for vehicles").
		Mend(otherRegulator, check.SetBool(&r.ForVehicles, true))
}

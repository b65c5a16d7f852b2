package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.ForItems(check.Descriptor{
	ID:         "flue.route",
	Asks:       "Is the flue tight at every joint inside, without a dip, clear of beds and seats, and far from what can burn?",
	Why:        "One joint that slipped under a bunk has filled a cabin with carbon monoxide night after night.",
	NotCovered: "Corrosion, nests and what a joint does when it is hot: the fitter measures spillage. Exhausts of engines: generator.outside.",
	Word:       report.Danger,
	MayAct:     report.LicensedFitter,
	Limits: []*code.Term{code.FlueTight.Term, code.PracticeFlueTight.Term, code.PracticeFlueDrains.Term, code.PracticeFlueNotBoxedIn.Term,
		code.PracticeFlueToCombustible.Term},
	Reads: append([]string{"/appliances/*/kind", "/flues/*/kind", "/flues/*/joints", "/flues/*/joints/*/in", "/flues/*/joints/*/gasTight", "/flues/*/fallsOutward",
		"/flues/*/sags", "/flues/*/throughBedOrSeat", "/flues/*/leastToCombustible"}, flueReads...),
	Inventory: []layout.InventoryList{layout.InventoryListFlues},
	Claims:    []string{"/flues/*/joints/*/gasTight"},
}, fired, eachFlue(tightInside), eachFlue(drains), eachFlue(notBoxedIn), eachFlue(clearOfCombustibles)))

func tightInside(s *check.Sheet, item layout.Item, x *layout.Flue) check.Ruling {
	return check.ByEither(s, code.FlueTight, code.PracticeFlueTight, func(s *check.Sheet, duty code.DutyLimit) check.Ruling {
		asked := check.Asked(s, duty, flueFacts(item, x))
		joints := check.List(s, &x.Joints)
		if len(joints) == 0 {
			return check.Is(s, true, asked, "one piece, without a joint", "gas-tight joints")
		}
		return check.Every(s, joints, nil, func(s *check.Sheet, j *layout.FlueJoint) check.Ruling {
			return tightJoint(s, j, duty, flueFacts(item, x))
		})
	})
}

func tightJoint(s *check.Sheet, j *layout.FlueJoint, duty code.DutyLimit, of check.Facts) check.Ruling {
	asked := check.Asked(s, duty, of)
	if check.Read(s, &j.In) == layout.OpenAir {
		return check.NotApplicable(s, "the joint is in the open air")
	}
	tight := check.Read(s, &j.Gas)
	return check.Is(s, tight, asked, either(tight, "gas-tight", "lets fumes out"), "gas-tight").
		Mend("A joint that its maker states to be gas-tight, made and proved by the fitter; or a flue in one piece.")
}

func drains(s *check.Sheet, _ layout.Item, x *layout.Flue) check.Ruling {
	return check.All(s,
		func(s *check.Sheet) check.Ruling {
			asked := check.Asked(s, code.PracticeFlueDrains, nil)
			falls := check.Read(s, &x.FallsOut)
			return check.Is(s, falls, asked, either(falls, "slopes as it should", "does not slope as it should"), "slopes as it should").
				Mend("Hang it anew with the slope that its manual asks for.")
		},
		func(s *check.Sheet) check.Ruling {
			asked := check.Asked(s, code.PracticeFlueDrains, nil)
			sags := check.Read(s, &x.Sags)
			return check.Is(s, !sags, asked, either(sags, "has a dip where water stands", "has no dip"), "has no dip").
				Mend("Support it so that it hangs nowhere.")
		})
}

func notBoxedIn(s *check.Sheet, _ layout.Item, x *layout.Flue) check.Ruling {
	asked := check.Asked(s, code.PracticeFlueNotBoxedIn, nil)
	through := check.Read(s, &x.ThroughBed)
	return check.Is(s, !through, asked, either(through, "runs through a bed or seat box", "clear of beds and seats"), "clear of beds and seats").
		Mend("The fitter leads it another way: no flue where bedding can touch it or a sleeper lies on it.")
}

func clearOfCombustibles(s *check.Sheet, item layout.Item, x *layout.Flue) check.Ruling {
	gap := check.Measure(s, "d", &x.ToCombustible)
	need := check.Limit(s, "d_need", code.PracticeFlueToCombustible, flueFacts(item, x))
	return check.AtLeast(s, gap, need).Says("least gap between the flue and what can burn along its run").
		Mend("A shield on spacers or another way, as the flue's manual has it.", check.Raise(&x.ToCombustible, need.At()))
}

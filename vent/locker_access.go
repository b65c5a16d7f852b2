package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var lockerAccess = add(check.For(check.Descriptor{
	ID:         "locker.access",
	Asks:       "Does the locker open only to where the code allows, and over a sill and with a seal where it opens to the inside?",
	Why:        "A door to the inside is the largest leak a locker can have, and it is open just when a cylinder is being swapped.",
	NotCovered: "Locks and tools, which the code may forbid, and on what condition a code allows a door to the inside: ask the fitter.",
	Word:       report.Danger,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.LockerDoorOpensTo.Term, code.PracticeLockerDoorOpensTo.Term, code.LockerDoorSill.Term, code.LockerDoorSeal.Term},
	Reads:      []string{"/lockers/*/door/opensTo", "/lockers/*/door/sill", "/lockers/*/door/seal"},
	Claims:     []string{"/lockers/*/door/seal"},
}, lockers, orPractice(code.LockerDoorOpensTo, code.PracticeLockerDoorOpensTo, opensOutside), overASill, doorSealed))

func opensOutside(s *check.Sheet, k *layout.Locker, allowed code.WordLimit) check.Ruling {
	opens := check.Read(s, &k.Door.OpensTo)
	return check.OneOf(s, opens.Section(), check.AllowedWords(s, allowed, nil)).
		Mend("A door in an outer wall; the inner opening closed as part of the sealed lining.", check.SetWord(&k.Door.OpensTo, layout.OpenAir))
}

// overASill asks of a door to the inside that gas on the locker's floor has to climb.
func overASill(s *check.Sheet, k *layout.Locker) check.Ruling {
	if check.Read(s, &k.Door.OpensTo) == layout.OpenAir {
		return check.NotApplicable(s, "the door opens to the open air")
	}
	sill := check.Measure(s, "h_sill", &k.Door.Sill)
	need := check.Limit(s, "h_need", code.LockerDoorSill, nil)
	return check.AtLeast(s, sill, need).Says("height of the door's sill over the locker's floor").
		Mend("A fixed sill of this height below the door, tight to the lining.", check.Raise(&k.Door.Sill, need.At()))
}

func doorSealed(s *check.Sheet, k *layout.Locker) check.Ruling {
	if check.Read(s, &k.Door.OpensTo) == layout.OpenAir {
		return check.NotApplicable(s, "the door opens to the open air")
	}
	return check.OneOf(s, check.Read(s, &k.Door.Seal), check.AllowedWords(s, code.LockerDoorSeal, nil)).
		Mend("A gasket all round that the door squeezes when it is shut.", check.SetWord(&k.Door.Seal, layout.DoorSealGasket))
}

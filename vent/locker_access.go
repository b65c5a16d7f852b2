package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var lockerAccess = add(check.For(check.Descriptor{
	ID:         "locker.access",
	Asks:       "Does the locker open only to where the code allows?",
	Why:        "A door to the inside is the largest leak a locker can have, and it is open just when a cylinder is being swapped.",
	NotCovered: "Locks and tools, which the code may forbid.",
	Word:       report.Danger,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.LockerDoorOpensTo.Term, code.PracticeLockerDoorOpensTo.Term},
	Reads:      []string{"/lockers/*/door/opensTo"},
}, lockers, orPractice(code.LockerDoorOpensTo, code.PracticeLockerDoorOpensTo, opensTo)))

func opensTo(s *check.Sheet, k *layout.Locker, allowed code.WordLimit) check.Ruling {
	opens := check.Read(s, &k.Door.OpensTo)
	return check.OneOf(s, opens.Section(), check.AllowedWords(s, allowed, nil)).
		Mend("A door in an outer wall; the inner opening closed as part of the sealed lining.", check.SetWord(&k.Door.OpensTo, layout.OpenAir))
}

package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

// sealReads are the keys that decide whether a locker is stated tight, and
// sealClaims those that only a fitter can prove.
var (
	sealReads  = []string{"/spaces", "/lockers/*/sealedFrom", "/lockers/*/sealedFrom/*/seal", "/lockers/*/penetrations/*/to", "/lockers/*/penetrations/*/gland"}
	sealClaims = []string{"/lockers/*/sealedFrom/*/seal", "/lockers/*/penetrations/*/gland"}
)

// lockerReads are the keys that decide whether a locker is one at all.
var lockerReads = append([]string{"/lockers/*/door/opensTo", "/lockers/*/door/sill", "/lockers/*/door/seal",
	"/lockers/*/vents", "/lockers/*/vents/*/level", "/lockers/*/vents/*/gross", "/lockers/*/vents/*/cover/kind", "/lockers/*/vents/*/cover/open",
	"/lockers/*/vents/*/lowerEdgeOverLowest", "/lockers/*/vents/*/closable", "/lockers/*/vents/*/coveredByCylinder",
	"/lockers/*/box/from", "/lockers/*/box/to"}, sealReads...)

var lockerSealed = add(check.For(check.Descriptor{
	ID:         "locker.sealed",
	Asks:       "Is the locker vapour-tight to every space of the dwelling: joints, pipe and cable entries, door?",
	Why:        "A seam that air passes, gas passes: the locker's vents carry a leak away only if it can't go inside first.",
	NotCovered: "Whether the seal holds: a fitter proves it, by smoke or water.",
	Word:       report.Danger,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.LockerSealed.Term, code.PracticeLockerSealed.Term, code.PracticeTightGlands.Term},
	Reads:      sealReads,
	Claims:     sealClaims,
	NeverWaive: true,
}, lockers, orPractice(code.LockerSealed, code.PracticeLockerSealed, sealedFromAll)))

func sealedFromAll(s *check.Sheet, k *layout.Locker, asked code.DutyLimit) check.Ruling {
	all := check.List(s, &s.Layout().Spaces)
	check.List(s, &k.SealedFrom)
	none := func() check.Ruling {
		return check.NotApplicable(s, "the file states that there is no space to be sealed from")
	}
	return check.Every(s, all, none, func(s *check.Sheet, space *layout.Space) check.Ruling {
		duty := check.Asked(s, asked, nil)
		tight, found := tightTo(s, k, space)
		return check.Is(s, tight, duty, found, string(layout.SealKindGasTight)).
			Mend("A welded or bonded lining with every joint, pipe and cable entry closed vapour-tight.", sealEdit(k, space)...)
	})
}

// sealEdit writes the seal that is lacking; a hole is mended at its gland.
func sealEdit(k *layout.Locker, space *layout.Space) []report.Edit {
	seal := k.SealedFrom.Get(space.ID())
	if seal == nil {
		return nil
	}
	edits := []report.Edit{check.SetWord(&seal.Kind, layout.SealKindGasTight)}
	for _, p := range k.Penetrations.All() {
		if to, _ := p.To.Get(); to == space.Ref() {
			edits = append(edits, check.SetWord(&p.Gland, layout.GlandBulkhead))
		}
	}
	return edits
}

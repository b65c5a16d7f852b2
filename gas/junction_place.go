package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "junction.place",
	Asks:       "Is the tee or manifold where the code wants it?",
	Why:        "A tee is three joints in one place: inside, all that it leaks stays inside.",
	NotCovered: "What the tee is made of and how its joints are made.",
	Word:       report.Warning,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.JunctionPlaces.Term},
	Reads:      []string{"/junctions/*/in"},
}, junctions, func(s *check.Sheet, j *layout.Junction) check.Ruling {
	allowed := check.AllowedWords(s, code.JunctionPlaces, nil)
	return check.OneOf(s, check.Read(s, &j.In).Section(), allowed).
		Mend("A tee or manifold where the code wants it; the fitter moves it.")
}))

func junctions(l *layout.Layout) *layout.Section[layout.Junction] { return &l.Junctions }

package vent

import (
	"slices"

	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "storage.flammables",
	Asks:       "Is what burns easily kept away from burners and stoves, and what gives off vapour out of lockers and of every space with a flame or spark?",
	Why:        "Vapour of petrol or thinner lies low as propane does and lights at a pilot; bedding against a heater chars until it burns.",
	NotCovered: "How much may be kept aboard, and in what; what stands there for an hour. Anything that can't burn.",
	Word:       report.Warning,
	Instead:    []string{"/tapeMeasures/*/is"},
	MayAct:     report.Owner,
	Limits:     []*code.Term{code.PracticeFlammablesApart.Term, code.PracticeStoredToBurner.Term},
	Reads: []string{"/storedGoods/*/kind", "/storedGoods/*/in", "/storedGoods/*/at", "/storedGoods/*/box/from", "/storedGoods/*/box/to",
		"/ignitionSources", "/ignitionSources/*/in", "/appliances", "/appliances/*/in", "/appliances/*/at", "/appliances/*/box/from", "/appliances/*/box/to",
		"/stoves", "/stoves/*/in", "/stoves/*/at", "/stoves/*/box/from", "/stoves/*/box/to",
		"/exhausts", "/exhausts/*/in", "/fans", "/fans/*/in", "/tapeMeasures/*/is"},
	Surveys:   []layout.SurveyList{layout.SurveyListIgnitionSources},
	Inventory: sparkLists,
	Sources:   []string{"Euclid, least distance between boxes"},
}, storedGoods, vapoursApart, offTheBurners))

func storedGoods(l *layout.Layout) *layout.Section[layout.Stored] { return &l.Stored }

// vapours are the stored goods that give off vapour or gas.
var vapours = []layout.StoredKind{layout.StoredKindPetrol, layout.StoredKindDiesel, layout.StoredKindPaint, layout.StoredKindAerosol,
	layout.StoredKindSolvent, layout.StoredKindGasCartridge}

func vapoursApart(s *check.Sheet, g *layout.Stored) check.Ruling {
	if kind := check.Read(s, &g.Kind); !slices.Contains(vapours, kind) {
		return check.NotApplicable(s, "it gives off no vapour")
	}
	duty := check.Asked(s, code.PracticeFlammablesApart, nil)
	place := check.Item(s, &g.In)
	const needed = "apart from lockers, flames and sparks"
	const mend = "Keep it outside, or in a box of its own that opens and vents only to the open air."
	switch place := place.(type) {
	case *layout.Locker:
		return check.Is(s, false, duty, standsIn(place), needed).Mend(mend)
	case *layout.Space:
		if lit := lightsIn(s, place); lit != "" {
			return check.Is(s, false, duty, standsIn(place)+", with "+lit, needed).Mend(mend)
		}
	}
	return check.Is(s, true, duty, standsIn(place), needed)
}

// lightsIn takes the first thing in a space that can light vapour, and otherwise asks
// that the lists are complete there.
func lightsIn(s *check.Sheet, space *layout.Space) string {
	if light := first(standingIn(s, space, lights(s))); light != nil {
		return light.Label()
	}
	surveyIn(s, space, layout.SurveyListIgnitionSources)
	sparks(s)
	return ""
}

// offTheBurners asks for the distance to every burner and stove that stands in the same
// place.
func offTheBurners(s *check.Sheet, g *layout.Stored) check.Ruling {
	check.Inventory(s, layout.InventoryListAppliances)
	check.Inventory(s, layout.InventoryListStoves)
	in := check.Read(s, &g.In)
	var burners []neighbour
	for _, a := range check.List(s, &s.Layout().Appliances) {
		if check.Read(s, &a.In) == in {
			burners = append(burners, standing(a))
		}
	}
	for _, x := range check.List(s, &s.Layout().Stoves) {
		if check.Read(s, &x.In) == in {
			burners = append(burners, standing(x))
		}
	}
	return keptClear(s, standing(g), burners, code.PracticeStoredToBurner, nil, "no burner and no stove is where it is kept",
		"Keep it further from the burner, where heat and sparks do not reach it.")
}

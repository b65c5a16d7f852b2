package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.ForDwelling(check.Descriptor{
	ID:         "sign.present",
	Asks:       "Are the signs there that the code asks for?",
	Why:        "Whoever comes to a fire or a leak has to find the cylinders and the valve without asking.",
	NotCovered: "Where a sign is, how large it is and in which words: the fitter and the text say.",
	Word:       report.Caution,
	MayAct:     report.Owner,
	Limits:     []*code.Term{code.SignKinds.Term, code.PracticeSigns.Term},
	Reads:      []string{"/signs", "/signs/*/says", "/cylinders", "/appliances"},
	Inventory:  []layout.InventoryList{layout.InventoryListCylinders, layout.InventoryListAppliances},
}, func(s *check.Sheet, l *layout.Layout) check.Ruling {
	if !gasAboard(s) {
		return check.NotApplicable(s, noGas)
	}
	return check.ByEither(s, code.SignKinds, code.PracticeSigns, func(s *check.Sheet, w code.WordLimit) check.Ruling {
		asked := check.AllowedWords(s, w, nil)
		there := signs(s)
		var each []func(*check.Sheet) check.Ruling
		for _, word := range layout.SignKind("").Choices() {
			if asked.Has(word) {
				each = append(each, func(s *check.Sheet) check.Ruling { return sign(s, w, layout.SignKind(word), there) })
			}
		}
		return check.All(s, each...)
	})
}))

// sign asks for one of the signs. What is found is that sign, or that there is none.
func sign(s *check.Sheet, w code.WordLimit, kind layout.SignKind, there map[layout.SignKind]bool) check.Ruling {
	asked := check.AllowedWords(s, w, nil)
	found := layout.SignKind("")
	if there[kind] {
		found = kind
	}
	ruling := check.OneOf(s, found, asked)
	if found == "" {
		ruling = ruling.Worded("no such sign", "a sign: "+string(kind))
	}
	return ruling.About("%s", kind).Points(s.Layout().Signs.Spot()).Mend("Put the sign up where it is read before it is needed.")
}

// signs takes what the signs of the dwelling say.
func signs(s *check.Sheet) map[layout.SignKind]bool {
	there := map[layout.SignKind]bool{}
	for _, each := range check.List(s, &s.Layout().Signs) {
		there[check.Read(s, &each.Says)] = true
	}
	return there
}

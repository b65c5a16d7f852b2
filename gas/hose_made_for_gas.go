package gas

import (
	"regexp"
	"slices"
	"strings"
	"sync"

	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.For(check.Descriptor{
	ID:         "hose.made-for-gas",
	Asks:       "Is the hose made for propane, by what is printed along it?",
	Why:        "Propane creeps into the rubber of a hose that is made for air, fuel or water: it swells and cracks, and bursts where nobody expects gas.",
	NotCovered: "Whether the print is true; its pressure (supply.hot-pressure), age and way; its fittings and clamps, which the fitter sees to.",
	Word:       report.Warning,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.HoseStandards.Term, code.PracticeHoseMadeFor.Term},
	Reads:      []string{"/lines/*/kind", "/lines/*/standard", "/lines/*/madeFor"},
}, lines, ofHose(madeForGas)))

func madeForGas(s *check.Sheet, h *layout.Line) check.Ruling {
	return check.OrPractice(s,
		func(s *check.Sheet) check.Ruling { return toStandard(s, h) },
		func(s *check.Sheet) check.Ruling {
			purposes := check.AllowedWords(s, code.PracticeHoseMadeFor, nil)
			return check.OneOf(s, check.Read(s, &h.MadeFor), purposes).Mend(gasHose)
		})
}

const gasHose = "Keep the gas off. A hose that is made for LP-gas and for the pressure in it; the fitter chooses and joins it."

// toStandard looks for a standard that the code allows in what is printed on the hose.
func toStandard(s *check.Sheet, h *layout.Line) check.Ruling {
	allowed := check.AllowedWords(s, code.HoseStandards, nil)
	printed := check.Read(s, &h.Standard)
	found := printed
	for _, standard := range code.HoseStandards.Words {
		if allowed.Has(standard) && names(printed, standard) {
			found = standard
		}
	}
	return check.OneOf(s, found, allowed).Worded(printed, allowed.String()).Mend(gasHose)
}

// names tells whether a print names a standard, however it spells it: "BS EN16436-1:2014"
// names EN 16436, and "EN 17632" does not name EN 1763.
func names(printed, standard string) bool {
	return strings.Contains(spelled(printed), spelled(standard))
}

// spelled parts a text into its runs of letters and of digits, with a space at both ends
// of each, and leaves out the year of an edition.
func spelled(text string) string {
	runs := runsOf().FindAllString(strings.ToUpper(text), -1)
	runs = slices.DeleteFunc(runs, func(run string) bool { return strings.HasPrefix(run, ":") })
	return " " + strings.Join(runs, " ") + " "
}

var runsOf = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`:(19|20)[0-9]{2}\b|[A-Z]+|[0-9]+`) })

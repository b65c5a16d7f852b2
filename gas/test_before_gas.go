package gas

import (
	"slices"

	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

var _ = add(check.ForDwelling(check.Descriptor{
	ID:         "test.before-gas",
	Asks:       "Has a licensed fitter tested every line into which gas is let now?",
	Why:        "An open valve on a line that nobody tested can fill a locker or a room within the hour, while its owner looks for the lighter.",
	NotCovered: "What the test was, and whether it was enough: test.tightness, test.pressure and test.high-side. Whether anything was changed since: inspection.current.",
	Word:       report.Danger,
	MayAct:     report.LicensedFitter,
	Limits:     []*code.Term{code.PracticeTestBeforeGas.Term},
	Reads:      []string{"/gas/connected", "/lines", "/tests", "/tests/*/kind", "/tests/*/covers", "/tests/*/on", "/tests/*/licence"},
	Inventory:  []layout.InventoryList{layout.InventoryListLines},
}, testedBeforeGas))

func testedBeforeGas(s *check.Sheet, l *layout.Layout) check.Ruling {
	if connected := check.Read(s, &l.Gas.Connected); !connected {
		return check.NotApplicable(s, "gas is stated not to be connected")
	}
	all := check.List(s, &l.Lines)
	check.Inventory(s, layout.InventoryListLines)
	none := func() check.Ruling { return check.NotApplicable(s, "there is no line") }
	return check.Every(s, all, none, testedLine)
}

// testedLine asks for any test for leaks; a fitter's licence has to stand with it.
func testedLine(s *check.Sheet, line *layout.Line) check.Ruling {
	duty := check.Asked(s, code.PracticeTestBeforeGas, nil)
	var tries []func(*check.Sheet) check.Ruling
	for _, t := range slices.Concat(testsOf(s, line.Ref(), layout.TestKindTightness), testsOf(s, line.Ref(), layout.TestKindHighSide)) {
		tries = append(tries, func(s *check.Sheet) check.Ruling {
			return check.Is(s, true, duty, "tested under the licence "+check.Read(s, &t.Licence), tested)
		})
	}
	if len(tries) == 0 {
		return check.Is(s, false, duty, "gas is let in, and no test is in the file", tested).Points(line.Spot()).
			Mend("A licensed fitter tests this line. Until then the valve of every cylinder is shut, which anybody may do, from clean air.")
	}
	return check.Any(s, tries...)
}

const tested = "a licensed fitter's test for leaks first"

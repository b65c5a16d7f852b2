package leak

import "lowvent.example/schema/unit"

// Rule is a figure from a published test procedure: a time to wait or a leak that
// someone else's rule bears.
type Rule struct {
	What    string
	Source  string
	Address string // where the text was read; empty if it was not
	Read    bool   // false: from memory or from a second hand
}

// Settling is how long a procedure waits before the first reading.
type Settling struct {
	Rule
	Time unit.Duration
}

// Settlings returns published waits, shortest first. Nothing was found that
// derives one from the volume or the pressure, so none is computed here.
//
// Own rule for the sheet: wait at least 5 min, then until two readings 5 min apart
// are the same to the gauge's step, and write the temperature beside each. Filling
// warms the gas and the pipe cools it again, so a line that has not settled seems
// to leak; one that the sun reaches meanwhile seems tight.
func Settlings() []Settling {
	return []Settling{
		{Rule{"gas tightness of an LP gas installation, \"e.g. 2 min\"", "AS/NZS-type appendix E.3.2", "www1.woaifanyi.com/Uu4AGy2Yt51=d", true}, 120},
		{Rule{"to equalise before 150 mbar is held for 5 min", "EN 1949:2011+A1 cl. 4.3, second hand", "123doc.top/document/13748385-bsi-bs-en-01949-2011-a1-2013.htm", false}, 300},
		{Rule{"gas piping of a building, first reading after pressure is on", "UFGS 15195N, testing of gas piping", "ufgscriteriadocreport.tpub.com/15195N/15195N0019.htm", true}, 3600},
	}
}

// OwnSettling is the least wait of the own rule of [Settlings]: 5 min, the longest
// of the published waits for installations of this size.
const OwnSettling unit.Duration = 300

// Verdict is one band of a published judgement by leak flow, from Least on.
type Verdict struct {
	Rule
	Least unit.VolumeFlow
}

// ServiceVerdicts returns the German bands for house lines in use on natural gas, by
// leak at operating pressure, lowest first. They are shown so that a reader can
// place a blind spot. They were made for houses, not for a van that people sleep
// in, and no check here passes anything by them.
func ServiceVerdicts() []Verdict {
	const litrePerHour = 1e-3 / 3600
	german := func(what string) Rule {
		return Rule{what, "DVGW G 600 (TRGI), as told on a meter maker's page", "www.ecom.de/en/glossar/trgi-checks/", true}
	}
	return []Verdict{
		{german("may stay in use"), 0},
		{german("to be repaired within four weeks"), 1 * litrePerHour},
		{german("to be shut at once"), 5 * litrePerHour},
	}
}

package code

import (
	"testing"

	"lowvent.example/schema/unit"
)

func flue(kind string) known { return known{FactFlueKind: kind} }

// fired is an appliance of so many Btu/h, with a flue of a kind.
func fired(kind, input string) known {
	return known{FactFlueKind: kind, FactApplianceInput: float64(unit.MustParse[unit.GrossPower](input))}
}

// Flues and where they end: the rows FLU of the table, and APP-05.
var workedFlues = []byHand{
	{"us-mobile-structure", TerminalNotUnder.Term, nil, "24 CFR 3280.710", "asked", "", ""},
	{"us-mobile-structure", TerminalIntakeReach.Term, nil, "24 CFR 3280.710, 2024 rule", "3.048 m", "119.9 in", "120.1 in"}, // 10 × 12 × 25.4 mm
	{"us-mobile-structure", TerminalOverIntake.Term, nil, "24 CFR 3280.710, 2024 rule", "0.9144 m", "35.9 in", "36.1 in"},

	{"us-commercial-vehicle", FlueTight.Term, kind("space-heater"), "49 CFR 393.77(b)(9)", "asked", "", ""},
	{"us-commercial-vehicle", FlueTight.Term, kind("refrigerator"), "49 CFR 393.77(b)(9)", "silent", "", ""},

	{"uk-inland-boat", TerminalToOpening.Term, nil, "BSS 8", "0.5 m", "499 mm", "501 mm"},
	{"uk-inland-boat", TerminalToFuel.Term, nil, "BSS 8", "0.5 m", "499 mm", "501 mm"},

	{"eu-leisure-vehicle", TerminalToOpening.Term, known{FactFlueWall: "ceiling"}, "G 607 (pages)", "0.3 m", "299 mm", "301 mm"},
	{"eu-leisure-vehicle", TerminalToOpening.Term, known{FactFlueWall: "left"}, "G 607 (pages)", "0.5 m", "499 mm", "501 mm"},
	{"eu-leisure-vehicle", TerminalToOpening.Term, known{FactFlueWall: "floor"}, "G 607 (pages)", "0.5 m", "499 mm", "501 mm"},

	// 6, 9 and 12 in are 152.4, 228.6 and 304.8 mm; a row holds up to and with its end.
	{"us-fixed-cabin", TerminalToOpening.Term, fired("room-sealed", "9999 BTU/h"), "NFPA 54 direct vent", "152.4 mm", "152 mm", "153 mm"},
	{"us-fixed-cabin", TerminalToOpening.Term, fired("room-sealed", "10000 BTU/h"), "NFPA 54 direct vent", "152.4 mm", "152 mm", "153 mm"},
	{"us-fixed-cabin", TerminalToOpening.Term, fired("room-sealed", "10001 BTU/h"), "NFPA 54 direct vent", "228.6 mm", "228 mm", "229 mm"},
	{"us-fixed-cabin", TerminalToOpening.Term, fired("room-sealed", "50000 BTU/h"), "NFPA 54 direct vent", "228.6 mm", "228 mm", "229 mm"},
	{"us-fixed-cabin", TerminalToOpening.Term, fired("room-sealed", "50001 BTU/h"), "NFPA 54 direct vent", "304.8 mm", "304 mm", "305 mm"},
	{"us-fixed-cabin", TerminalToOpening.Term, fired("open-flued", "8000 BTU/h"), "NFPA 54 direct vent", "1.2192 m", "47.9 in", "48.1 in"},
	{"us-fixed-cabin", TerminalIntakeReach.Term, flue("open-flued"), "NFPA 54 non-direct", "3.048 m", "119.9 in", "120.1 in"},
	{"us-fixed-cabin", TerminalOverIntake.Term, flue("open-flued"), "NFPA 54 non-direct", "0.9144 m", "35.9 in", "36.1 in"},
}

// TestTerminalsOfTwoCountries holds the rows of the United States and of Canada
// side by side: at small inputs they agree, above 100,000 Btu/h they are three
// times apart, and only the first is in a code of this program.
func TestTerminalsOfTwoCountries(t *testing.T) {
	rows := requirements(t)
	if got := rows["FLU-06"]["requirement"]; got != "≤10k 6 in; 10–100k 12 in; >100k 36 in; 6 ft from mechanical intake; 3 ft from regulator vent" {
		t.Fatalf("FLU-06 has other figures: %s", got)
	}
	us := func(input string) float64 {
		return use(t, "us-fixed-cabin").Ask(TerminalToOpening.Term, fired("room-sealed", input)).SI
	}
	inch := 0.0254
	if !near(us("8000 BTU/h"), 6*inch) || !near(3*us("120000 BTU/h"), 36*inch) || near(us("60000 BTU/h"), 36*inch) {
		t.Errorf("%v, %v", us("8000 BTU/h"), us("120000 BTU/h"))
	}
	if rowsWithoutEntry(t)["FLU-06"]["kind"] != "no text" {
		t.Error("the Canadian figures have leaked into a code")
	}
}

// TestALaterRuleIsTheStricter holds that whoever keeps the rule of 2024 keeps the
// older one: what is 3 ft above an intake, or 10 ft off, is 3 ft from it.
func TestALaterRuleIsTheStricter(t *testing.T) {
	codes := use(t, "us-mobile-structure")
	reach, over := codes.Ask(TerminalIntakeReach.Term, nil).SI, codes.Ask(TerminalOverIntake.Term, nil).SI
	if older := 3 * 0.3048; min(reach, over) < older {
		t.Errorf("%v and %v are less than %v", reach, over, older)
	}
}

// TestDirectVentsAndIntakes holds that the account of vents that are not direct
// says nothing of those that are.
func TestDirectVentsAndIntakes(t *testing.T) {
	for _, term := range []*Term{TerminalIntakeReach.Term, TerminalOverIntake.Term} {
		if a := use(t, "us-fixed-cabin").Ask(term, flue("room-sealed")); a.State != Silent {
			t.Errorf("%s: %+v", term.ID, a)
		}
	}
}

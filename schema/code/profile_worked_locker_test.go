package code

import (
	"math"
	"strings"
	"testing"

	"lowvent.example/schema/unit"
)

// lowOnly is a locker of that floor that opens to the outside and has no high vent.
func lowOnly(m2 float64) known {
	return known{FactLockerFloorArea: m2, FactLockerOpensTo: "open-air", FactLockerHighArea: 0.0, FactLockerHighShare: 0.0, FactLockerLowVents: "hole"}
}

// withHigh is the same with a high vent of so many cm².
func withHigh(m2, cm2 float64) known {
	k := lowOnly(m2)
	k[FactLockerHighArea], k[FactLockerHighShare] = cm2/1e4, cm2/1e4/m2
	return k
}

// inner is a locker that opens to the inside, with low vents of a kind and gas for so
// many kilograms.
func inner(m2 float64, vents string, kg float64) known {
	k := lowOnly(m2)
	k[FactLockerOpensTo], k[FactLockerLowVents], k[FactLockerGas] = "spaces", vents, kg
	return k
}

// used is a boat first used in that year, with gas for so many kilograms.
func used(year int, kg float64) known {
	return known{FactFirstUsed: unit.Date{Year: year, Month: 6, Day: 1}, FactLockerGas: kg}
}

func standing(in string) known { return known{FactCylinderPlace: in} }

func shield(word string) known { return known{FactLockerShield: word} }

// The documents behind each line are named in it; the rows that report them
// stand in testdata/requirements.csv.
var workedLockers = []byHand{
	{"us-commercial-vehicle", LockerLowVentDuty.Term, nil, "NFPA 58 6.24.3.3", "asked", "", ""},
	{"us-commercial-vehicle", LockerHighVentDuty.Term, nil, "NFPA 58 6.24.3.3", "asked", "", ""},
	{"us-commercial-vehicle", LockerVentEnds.Term, nil, "NFPA 58 6.24.3.3", "open-air", "", ""},
	{"us-commercial-vehicle", CylinderToIgnition.Term, nil, "NFPA 58 (fire page)", "1.524 m", "59.9 in", "60.1 in"},    // 5 × 12 × 25.4 mm
	{"us-commercial-vehicle", FillPointToIgnition.Term, nil, "NFPA 58 (fire page)", "3.048 m", "119.9 in", "120.1 in"}, // 10 ft
	{"us-commercial-vehicle", FillPointToIntake.Term, nil, "NFPA 58 (fire page)", "3.048 m", "119.9 in", "120.1 in"},   // 10 ft
	{"us-mobile-structure", LockerLowVentDuty.Term, nil, "675 IAC 15-2-74(c)(2)", "asked", "", ""},
	{"us-mobile-structure", LockerHighVentDuty.Term, nil, "675 IAC 15-2-74(c)(2)", "asked", "", ""},
	{"us-mobile-structure", LockerVentEnds.Term, nil, "675 IAC 15-2-74(c)(2)", "open-air, overboard", "", ""},

	{"us-inspected-vessel", LockerLowVentDuty.Term, nil, "46 CFR 58.16-18, -20", "asked", "", ""},
	{"us-inspected-vessel", LockerHighVentDuty.Term, nil, "46 CFR 58.16-18, -20", "asked", "", ""},
	{"us-inspected-vessel", LockerContents.Term, nil, "46 CFR 58.16-18, -30", "gas-gear", "", ""},

	{"eu-inland-vessel", LockerLowVentDuty.Term, nil, "Directive 2006/87/EC 14.04", "asked", "", ""},
	{"eu-inland-vessel", LockerHighVentDuty.Term, nil, "Directive 2006/87/EC 14.04", "asked", "", ""},
	{"eu-inland-vessel", LockerVentEnds.Term, nil, "Directive 2006/87/EC 14.04", "open-air, overboard", "", ""},
	{"eu-inland-vessel", LockerDrain.Term, nil, "Directive 2006/87/EC 14.04", "asked", "", ""},

	// A boat of 1999 with 15 kg may have 12 mm, one with more or of 2000 has 19 mm.
	// 12² × π / 4 is 113.1 mm², 19² × π / 4 is 283.5 mm².
	{"uk-inland-boat", LockerLowVentArea.Term, used(1999, 15), "BSS 7.5", "113.097335529 mm2", "113 mm2", "113.2 mm2"},
	{"uk-inland-boat", LockerLowVentArea.Term, used(1999, 15.1), "BSS 7.5", "283.528736986 mm2", "283 mm2", "284 mm2"},
	{"uk-inland-boat", LockerLowVentArea.Term, used(2000, 3), "BSS 7.5", "283.528736986 mm2", "283 mm2", "284 mm2"},
	{"uk-inland-boat", LockerDrainBore.Term, used(1999, 15), "BSS 7.5", "12 mm", "11.9 mm", "12.1 mm"},
	{"uk-inland-boat", LockerDrainBore.Term, used(1999, 15.1), "BSS 7.5", "19 mm", "18.9 mm", "19.1 mm"},
	{"uk-inland-boat", LockerDrainBore.Term, used(2000, 3), "BSS 7.5", "19 mm", "18.9 mm", "3/4 in"},
	{"uk-inland-boat", LockerLowVentDuty.Term, nil, "BSS 7.2, 7.5", "asked", "", ""},
	{"uk-inland-boat", LockerHighVentDuty.Term, nil, "BSS 7.2 checklist", "asked", "", ""},
	{"uk-inland-boat", LockerVentEnds.Term, nil, "BSS 7.2, 7.5", "overboard", "", ""},
	{"uk-inland-boat", LockerDrain.Term, nil, "BSS 7.2, 7.5", "asked", "", ""},
	{"uk-inland-boat", LockerDrainOverWater.Term, nil, "BSS 7.2, 7.5", "asked", "", ""},
	{"uk-inland-boat", CylinderToOpening.Term, standing("open-air"), "BSS 7.2", "1 m", "999 mm", "1001 mm"},
	{"uk-inland-boat", CylinderToIgnition.Term, standing("open-air"), "BSS 7.2", "1 m", "999 mm", "1001 mm"},
	{"uk-inland-boat", FuelFillerToFlue.Term, nil, "BSS 8", "0.5 m", "499 mm", "501 mm"},

	{"fr-small-craft", LockerLowVentDuty.Term, nil, "French division 244", "asked", "", ""},
	{"fr-small-craft", LockerVentEnds.Term, nil, "French division 244", "overboard", "", ""},
	{"fr-small-craft", LockerDrain.Term, nil, "French division 244", "asked", "", ""},
	{"fr-small-craft", LockerContents.Term, nil, "French division 244", "gas-gear, protected-electrics", "", ""},

	{"eu-leisure-vehicle", LockerDoorSill.Term, nil, "DVGW G 607", "50 mm", "49 mm", "51 mm"},
	{"eu-leisure-vehicle", LockerDoorSeal.Term, nil, "DVGW G 607", "gasket", "", ""},
	{"eu-leisure-vehicle", LockerLowVentDuty.Term, nil, "EN 1949 / G 607:2005", "asked", "", ""},
	// Low and high: 1 % of 0.4 m² is 40 cm², so 50 cm² holds; of 0.6 m² it is 60 cm²,
	// of 1 m² 100 cm². A high vent a hair under 50 cm², or under 1 %, buys nothing.
	{"eu-leisure-vehicle", LockerLowVentArea.Term, withHigh(0.4, 50), "EN 1949 / G 607:2005", "50 cm2", "49.9 cm2", "50.1 cm2"},
	{"eu-leisure-vehicle", LockerLowVentArea.Term, withHigh(0.4, 49.9), "EN 1949 / G 607:2005", "100 cm2", "99.9 cm2", "100.1 cm2"},
	{"eu-leisure-vehicle", LockerLowVentArea.Term, withHigh(0.6, 60), "EN 1949 / G 607:2005", "60 cm2", "59.9 cm2", "60.1 cm2"},
	{"eu-leisure-vehicle", LockerLowVentArea.Term, withHigh(0.6, 59.9), "EN 1949 / G 607:2005", "120 cm2", "119.9 cm2", "120.1 cm2"},
	{"eu-leisure-vehicle", LockerLowVentArea.Term, withHigh(1, 100), "EN 1949 / G 607:2005", "100 cm2", "99.9 cm2", "100.1 cm2"},
	// A small box inside: a shaft of 2 cm is π cm²; with more than 7 kg, or without a
	// shaft, the figure is that of any locker.
	{"eu-leisure-vehicle", LockerLowVentArea.Term, inner(0.1, "shaft", 7), "EN 1949 / G 607:2005", "3.14159265359 cm2", "3.14 cm2", "3.15 cm2"},
	{"eu-leisure-vehicle", LockerLowVentArea.Term, inner(0.1, "shaft", 7.01), "EN 1949 / G 607:2005", "100 cm2", "99.9 cm2", "100.1 cm2"},
	{"eu-leisure-vehicle", LockerLowVentArea.Term, inner(0.1, "hole", 7), "EN 1949 / G 607:2005", "100 cm2", "99.9 cm2", "100.1 cm2"},
	{"eu-leisure-vehicle", LockerVentEnds.Term, nil, "G 607 inspector page", "open-air", "", ""},
	{"eu-leisure-vehicle", LockerContents.Term, nil, "EN 1949:2002", "gas-gear, protected-electrics", "", ""},
	{"eu-leisure-vehicle", LockerToExhaust.Term, shield("bare"), "Inspector page (G 607)", "0.3 m", "299 mm", "301 mm"},

	{"anz-caravan-boat", LockerVentEnds.Term, nil, "AS 5601-2004 cl. 4.15.1 (traveller page)", "open-air, overboard", "", ""},
	{"anz-caravan-boat", LockerContents.Term, nil, "AS/NZS 5601.2 draft cl. 3.3.1(g)", "gas-gear, protected-electrics", "", ""},

	{"fr-dwelling", CylinderToOpening.Term, nil, "French arrêté 1977 art. 20", "1 m", "999 mm", "1001 mm"},
	{"fr-dwelling", LockerLowVentDuty.Term, nil, "French arrêté 2 Aug 1977 art. 20", "asked", "", ""},
	{"fr-dwelling", LockerHighVentDuty.Term, nil, "French arrêté 2 Aug 1977 art. 20", "asked", "", ""},
}

// TestWhatALockerIsSpared holds the cases of which a text says that it asks nothing, or
// has no figure.
func TestWhatALockerIsSpared(t *testing.T) {
	if a := use(t, "eu-leisure-vehicle").Ask(LockerToExhaust.Term, shield("shielded")); a.State != NotAsked {
		t.Errorf("a shielded locker is asked for a distance from an exhaust: %+v", a)
	}
	for _, term := range []*Term{CylinderToOpening.Term, CylinderToIgnition.Term} {
		if a := use(t, "uk-inland-boat").Ask(term, standing("lockers")); a.State != Silent {
			t.Errorf("BSS 7.2 speaks of cylinders on an open deck, and %s in a locker is %v", term.ID, a.State)
		}
	}
}

// TestNothingStatedSparesNoLocker holds that the figures for small and old things are
// given to nothing that is not stated small and old.
func TestNothingStatedSparesNoLocker(t *testing.T) {
	whole := inner(0.1, "shaft", 7)
	for _, missing := range []Fact{FactLockerOpensTo, FactLockerGas, FactLockerLowVents} {
		given := known{}
		for f, v := range whole {
			if f != missing {
				given[f] = v
			}
		}
		if a := use(t, "eu-leisure-vehicle").Ask(LockerLowVentArea.Term, given); a.State != Open {
			t.Errorf("without %s the low vent's area is %v", missing, a.State)
		}
	}
	for _, given := range []known{nil, {FactFirstUsed: day(t, "1990")}, {FactLockerGas: 3.0}} {
		if a := use(t, "uk-inland-boat").Ask(LockerDrainBore.Term, given); a.State != Open {
			t.Errorf("with %v the drain's bore is %v", given, a.State)
		}
	}
}

// TestPublishedFiguresOfLockersAgree holds rows that report the same figure twice.
func TestPublishedFiguresOfLockersAgree(t *testing.T) {
	rows := requirements(t)
	for id, phrases := range map[string][]string{
		"VNT-05": {"10 × 10 cm"}, "VNT-06": {"≥100 cm²"}, "VNT-07": {"≥2 cm diameter", "≤7 kg"}, "DRN-05": {"≥280 mm²"},
		"DRN-06": {"≥1 m from openings", "≥1.5 m from ignition"}, "DST-11": {"≥1 m from openings", "≥1.5 m from ignition"},
		"INT-09": {"≥50 mm high"}, "LCK-14": {"≥30 cm (beneath)", "≥25 cm (beside)", "unless shielded"}, "DST-07": {"≥1 m"}, "DST-08": {"≥1 m", "at or below"},
		"DST-05": {"≥5 ft from ignition", "filling ≥10 ft"}, "DST-13": {"≥500 mm"},
	} {
		for _, phrase := range phrases {
			if !strings.Contains(rows[id]["requirement"], phrase) {
				t.Errorf("row %s does not say %q: %s", id, phrase, rows[id]["requirement"])
			}
		}
	}
	// 10 cm by 10 cm is the 100 cm² of a low vent alone.
	if a := use(t, "eu-leisure-vehicle").Ask(LockerLowVentArea.Term, lowOnly(0.2)).SI; !near(a, 0.1*0.1) {
		t.Errorf("a low vent alone has %v m²", a)
	}
	// Bores and their areas: 2 cm, 12 mm and 19 mm.
	for limit, bore := range map[float64]float64{
		use(t, "eu-leisure-vehicle").Ask(LockerLowVentArea.Term, inner(0.1, "shaft", 7)).SI: 0.02,
		use(t, "uk-inland-boat").Ask(LockerLowVentArea.Term, used(1999, 15)).SI:             0.012,
		use(t, "uk-inland-boat").Ask(LockerLowVentArea.Term, used(2000, 15)).SI:             0.019,
	} {
		if area := math.Pi / 4 * bore * bore; math.Abs(area-limit) > 1e-9*area {
			t.Errorf("a bore of %v m has %v m², the limit is %v", bore, area, limit)
		}
	}
}

// TestNumberConditions holds a rule that chooses by a number at its figure and on both
// sides of it, and that a figure which came out of a computation a hair off is taken at
// its twelve digits.
func TestNumberConditions(t *testing.T) {
	const upTo = `{"when": [{"fact": "space.floorArea", "upTo": "0.3 m2", "then": {"fixed": "1 m2"}}], "otherwise": {"fixed": "2 m2"}}`
	const atLeast = `{"when": [{"fact": "space.floorArea", "atLeast": "0.3 m2", "then": {"fixed": "1 m2"}}], "otherwise": {"fixed": "2 m2"}}`
	hair := 0.1 + 0.2 // 0.30000000000000004
	for _, c := range []struct {
		rule       string
		area, want float64
	}{
		{upTo, 0.29, 1}, {upTo, 0.3, 1}, {upTo, hair, 1}, {upTo, 0.3001, 2}, {upTo, 0.30000001, 2},
		{atLeast, 0.2999, 2}, {atLeast, 0.3, 1}, {atLeast, hair, 1}, {atLeast, 0.29999999999999996, 1}, {atLeast, 0.31, 1},
	} {
		if a := asking(t, leastArea, c.rule, known{FactSpaceFloorArea: c.area}); a.State != Answered || a.SI != c.want {
			t.Errorf("%s at %v: %v %v, want %v", c.rule, c.area, a.State, a.SI, c.want)
		}
	}
	for _, given := range []known{nil, {FactSpaceFloorArea: math.NaN()}, {FactSpaceFloorArea: -1.0}, {FactSpaceFloorArea: "small"}} {
		if a := asking(t, leastArea, upTo, given); a.State != Open || len(a.Missing) != 1 {
			t.Errorf("with %v: %+v", given, a)
		}
	}
	silent := `{"when": [{"fact": "space.floorArea", "upTo": "0.3 m2", "then": "notAsked"}], "otherwise": "notCovered"}`
	for area, want := range map[float64]string{
		0.2: "the text does not ask this here: the floor area of the space is at most 0.3 m2",
		0.4: "the text has no figure for this case: the floor area of the space is 0.4 m2 (4.3 ft2)",
	} {
		if a := asking(t, leastArea, silent, known{FactSpaceFloorArea: area}); a.Text != want {
			t.Errorf("at %v it says %q", area, a.Text)
		}
	}
	rule := ruleFor(t, leastArea, atLeast)
	if got, want := rule.String(), "where the floor area of the space is at least 0.3 m2: 1 m2; otherwise: 2 m2"; got != want {
		t.Errorf("in words: %q", got)
	}
	const both = `{"when": [{"fact": "space.floorArea", "atLeast": "0.3 m2", "and": [{"fact": "dwelling.sleeps", "upTo": "2"}], "then": {"fixed": "1 m2"}}], "otherwise": {"fixed": "2 m2"}}`
	for _, c := range []struct {
		given known
		want  float64 // 0: open
	}{
		{known{FactSpaceFloorArea: 0.3, FactDwellingSleeps: 2.0}, 1}, {known{FactSpaceFloorArea: 0.3, FactDwellingSleeps: 3.0}, 2},
		{known{FactSpaceFloorArea: 0.2}, 2}, {known{FactSpaceFloorArea: 0.3}, 0}, {known{FactDwellingSleeps: 3.0}, 0},
	} {
		a := asking(t, leastArea, both, c.given)
		if open := a.State == Open; open != (c.want == 0) || !open && a.SI != c.want {
			t.Errorf("%v by both conditions: %v %v, want %v", c.given, a.State, a.SI, c.want)
		}
	}
	if got, want := ruleFor(t, leastArea, both).String(), "where the floor area of the space is at least 0.3 m2 and the number of people who sleep there is at most 2: 1 m2; otherwise: 2 m2"; got != want {
		t.Errorf("in words: %q", got)
	}
	for _, bad := range []string{
		`{"when": [{"fact": "space.floorArea", "upTo": "1 m2", "and": [], "then": "notAsked"}], "otherwise": {"fixed": "2 m2"}}`,
		`{"when": [{"fact": "space.floorArea", "upTo": "1 m2", "and": [{"fact": "space.floorArea"}], "then": "notAsked"}], "otherwise": {"fixed": "2 m2"}}`,
		`{"when": [{"fact": "space.floorArea", "upTo": "1 m2", "and": [{"fact": "moon.phase", "upTo": "1"}], "then": "notAsked"}], "otherwise": {"fixed": "2 m2"}}`,
		`{"when": [{"fact": "space.use", "upTo": "0.3 m2", "then": "notAsked"}], "otherwise": {"fixed": "2 m2"}}`,
		`{"when": [{"fact": "space.floorArea", "upTo": "0.3 m", "then": "notAsked"}], "otherwise": {"fixed": "2 m2"}}`,
		`{"when": [{"fact": "space.floorArea", "upTo": "0 m2", "then": "notAsked"}], "otherwise": {"fixed": "2 m2"}}`,
		`{"when": [{"fact": "space.floorArea", "upTo": "1 m2", "atLeast": "1 m2", "then": "notAsked"}], "otherwise": {"fixed": "2 m2"}}`,
	} {
		if _, faults := tryRule(t, leastArea, bad); faults == "" {
			t.Errorf("%s is taken", bad)
		}
	}
}

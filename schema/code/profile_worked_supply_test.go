package code

import (
	"math"
	"slices"
	"strings"
	"testing"
)

func feeds(what, pressure string) known {
	return known{FactLineFeeds: what, FactLinePressure: pressure}
}

// Cylinders, regulators and hoses, by the text that is cited on each line.
var supplyByHand = []byHand{
	{"us-commercial-vehicle", CylinderRestraint.Term, nil, "NFPA 58 6.24.3.4(B) (2014-era)", "held, load", "", ""},
	{"us-commercial-vehicle", CylinderRestraintLoad.Term, nil, "NFPA 58 6.24.3.4(B) (2014-era)", "asked", "", ""},
	{"us-commercial-vehicle", CylinderRestraintTimes.Term, nil, "NFPA 58 6.24.3.4(B) (2014-era)", "4", "3", "5"},
	{"us-commercial-vehicle", CylinderOverfillDevice.Term, nil, "NFPA 58 / OPD", "remembered", "", ""},
	{"us-commercial-vehicle", RegulatorMounted.Term, nil, "WAC 296-307-43517", "cylinder-valve, bracket", "", ""},
	{"us-commercial-vehicle", RegulatorVentFaces.Term, nil, "NFPA 58 6.24.4.2", "down", "", ""},
	{"us-commercial-vehicle", RegulatorCovered.Term, nil, "NFPA 58 6.24.4.2", "asked", "", ""},
	{"us-commercial-vehicle", RegulatorStages.Term, nil, "NFPA 58/1192", "remembered", "", ""},

	{"us-inspected-vessel", CylinderDamage.Term, nil, "46 CFR 58.16-10(b)", "none, bent-collar, missing-foot-ring", "", ""},
	{"us-inspected-vessel", CylinderTareLoss.Term, nil, "46 CFR 58.16-10(b)", "5 %", "4.9 %", "5.1 %"}, // more than 5 % is turned away

	{"eu-inland-vessel", CylinderLimited.Term, nil, "Directive 2006/87/EC Annex II 14.04", "in-service, aboard, propane, least-propane", "", ""},
	{"eu-inland-vessel", CylinderCountInService.Term, nil, "Directive 2006/87/EC Annex II 14.04", "4", "3", "5"},
	{"eu-inland-vessel", CylinderCountAboard.Term, nil, "Directive 2006/87/EC Annex II 14.04", "6", "5", "7"},
	{"eu-inland-vessel", CylinderLargestPropane.Term, nil, "Directive 2006/87/EC Annex II 14.03", "35 kg", "34.9 kg", "35.1 kg"},
	{"eu-inland-vessel", CylinderSmallestPropane.Term, nil, "Directive 2006/87/EC Annex II 14.03", "5 kg", "4.9 kg", "5.1 kg"},
	{"eu-inland-vessel", CylinderRestraint.Term, nil, "Directive 2006/87/EC 14.04", "held", "", ""},
	{"eu-inland-vessel", RegulatorFirstStageCeiling.Term, nil, "Directive 2006/87/EC 14.06–14.07", "250 kPa", "2.49 bar", "2.51 bar"}, // 1 bar is 100 kPa
	{"eu-inland-vessel", RegulatorFixed.Term, nil, "Directive 2006/87/EC 14.06–14.07", "asked", "", ""},
	{"eu-inland-vessel", RegulatorPlaces.Term, nil, "Directive 2006/87/EC 14.04", "lockers", "", ""},
	{"eu-inland-vessel", RegulatorMounted.Term, nil, "Directive 2006/87/EC 14.04", "wall, bracket", "", ""},
	{"eu-inland-vessel", HoseLength.Term, nil, "Directive 2006/87/EC 14.08", "1 m", "999 mm", "1001 mm"},
	{"eu-inland-vessel", HoseOnlyToMovable.Term, nil, "Directive 2006/87/EC 14.08", "asked", "", ""},

	{"uk-inland-boat", CylinderRestraint.Term, nil, "BSS 7.3", "held, by-hand", "", ""},
	{"uk-inland-boat", CylinderRestraintByHand.Term, nil, "BSS 7.3", "asked", "", ""},
	{"uk-inland-boat", HoseStandards.Term, nil, "BSS 7.12–7.13", "BS 3212 type 2, BS 3212/2, EN 16436, EN 1763", "", ""},
	{"uk-inland-boat", HoseLength.Term, nil, "BSS 7.12–7.13", "1 m", "99.9 cm", "100.1 cm"},
	{"uk-inland-boat", HoseOnlyToMovable.Term, nil, "BSS 7.12–7.13", "asked", "", ""},
	{"uk-inland-boat", ChangeoverNonReturn.Term, nil, "BSS 7.9–7.10", "asked", "", ""},

	{"fr-small-craft", CylinderRestraint.Term, nil, "French division 244", "held", "", ""},
	{"fr-small-craft", HoseStandards.Term, nil, "French division 244", "EN 1763", "", ""},
	{"fr-small-craft", HoseVisible.Term, nil, "French division 244", "asked", "", ""},
	{"fr-small-craft", ChangeoverNonReturn.Term, nil, "French division 244", "asked", "", ""},

	{"eu-leisure-vehicle", CylinderLimited.Term, nil, "EN 1949 / DVGW G 607:2005", "aboard, propane", "", ""},
	{"eu-leisure-vehicle", CylinderCountAboard.Term, nil, "EN 1949 / DVGW G 607:2005", "2", "1", "3"},
	{"eu-leisure-vehicle", CylinderLargestPropane.Term, nil, "EN 1949 / DVGW G 607:2005", "16 kg", "15.9 kg", "16.1 kg"},
	{"eu-leisure-vehicle", CylinderRestraint.Term, nil, "EN 1949 / G 607", "held, points, by-hand", "", ""},
	{"eu-leisure-vehicle", CylinderRestraintPoints.Term, nil, "EN 1949 / G 607", "2", "1", "3"},
	{"eu-leisure-vehicle", CylinderRestraintByHand.Term, nil, "EN 1949 / G 607", "asked", "", ""},
	{"eu-leisure-vehicle", RegulatorFixed.Term, nil, "EN 1949 / G 607:2005", "asked", "", ""},
	{"eu-leisure-vehicle", RegulatorForVehicles.Term, nil, "EN 1949 / G 607:2005", "asked", "", ""},
	{"eu-leisure-vehicle", RegulatorLife.Term, nil, "German hobby/inspector pages", "10", "9", "11"},
	{"eu-leisure-vehicle", HoseLife.Term, nil, "German hobby/inspector pages", "10", "9", "11"},
	{"eu-leisure-vehicle", HoseLength.Term, feeds("no-appliance", "high"), "G 607 inspector page", "0.4 m", "399 mm", "401 mm"},
	{"eu-leisure-vehicle", HoseRises.Term, nil, "G 607 inspector page", "asked", "", ""},

	{"anz-caravan-boat", CylinderLimited.Term, nil, "AS/NZS 5601.2:2020", "in-service, water-capacity", "", ""},
	{"anz-caravan-boat", CylinderCountInService.Term, nil, "AS/NZS 5601.2:2020", "2", "1", "3"},
	{"anz-caravan-boat", CylinderLargestWater.Term, nil, "AS/NZS 5601.2:2020", "24.975 kg", "24.9 L", "25.1 L"}, // 0.999 kg a litre
	{"anz-caravan-boat", CylinderRestraint.Term, nil, "AS/NZS 5601.2:2013 s. 3.3", "held, load, metal", "", ""},
	{"anz-caravan-boat", CylinderRestraintLoad.Term, nil, "AS/NZS 5601.2:2013 s. 3.3", "asked", "", ""},
	{"anz-caravan-boat", CylinderRestraintTimes.Term, nil, "AS/NZS 5601.2:2013 s. 3.3", "4", "3", "5"},
	{"anz-caravan-boat", CylinderRestraintMetal.Term, nil, "AS/NZS 5601.2:2013 s. 3.3", "asked", "", ""},
	{"anz-caravan-boat", CylinderReliefFaces.Term, nil, "AS/NZS 5601.2 s. 3.1", "up, down, outside, left, right, rear", "", ""},
	{"anz-caravan-boat", CylinderTestAge.Term, nil, "ESV consumer text", "10", "9", "11"},
	{"anz-caravan-boat", RegulatorVentFaces.Term, nil, "AS/NZS", "down", "", ""},
	{"anz-caravan-boat", RegulatorAbove.Term, nil, "AS/NZS", "asked", "", ""},

	{"us-mobile-structure", CylinderLimited.Term, nil, "675 IAC 15-2-74(a)", "aboard, water-capacity", "", ""},
	{"us-mobile-structure", CylinderCountAboard.Term, nil, "24 CFR 3280.704(b)(1), 2001 & 2006 ed.", "2", "1", "3"},
	{"us-mobile-structure", CylinderLargestWater.Term, nil, "675 IAC 15-2-74(a)", "47.62719885 kg", "104.9 lb", "105.1 lb"}, // 105 × 0.45359237 kg
	{"us-mobile-structure", CylinderRestraint.Term, nil, "24 CFR 3280.704(b)(3)", "remembered", "", ""},
	{"us-mobile-structure", CylinderReliefToOpening.Term, nil, "24 CFR 3280.704(b)(5)", "remembered", "", ""},
	{"us-mobile-structure", RegulatorPlaces.Term, nil, "675 IAC 15-2-74(c)(2)", "open-air, lockers", "", ""},
	{"us-mobile-structure", RegulatorMounted.Term, nil, "24 CFR 3280.704(b)(4)", "remembered", "", ""},
	{"us-mobile-structure", HoseLength.Term, feeds("cooking-appliance", "low"), "24 CFR 3280.705", "1.8288 m", "71.9 in", "72.1 in"}, // 6 × 0.3048 m
	{"us-mobile-structure", HoseLength.Term, feeds("other-appliance", "low"), "24 CFR 3280.705", "0.9144 m", "35.9 in", "36.1 in"},   // 3 × 0.3048 m
	{"us-mobile-structure", HoseNotThrough.Term, nil, "24 CFR 3280.705", "asked", "", ""},
}

// TestCylindersArePassedAgain holds the years of 49 CFR 180.209 for each way in
// which a cylinder can have been passed: 12 after its making (a) and after an
// expansion test, 10 after a proof test, 5 after a visual inspection (e), (g). Of
// a cylinder of another mark the text says nothing.
func TestCylindersArePassedAgain(t *testing.T) {
	codes := use(t, "")
	for _, mark := range FactSpecification.Words() {
		for way, years := range map[string]float64{"new": 12, "expansion-test": 12, "proof-test": 10, "external-visual": 5} {
			a := codes.Ask(CylinderRequalify.Term, known{FactSpecification: mark, FactQualification: way})
			if strings.HasPrefix(mark, "dot-") && (a.State != Answered || a.SI != years) || mark == "other" && a.State != Silent {
				t.Errorf("%s, %s: %s %v, want %v years", mark, way, a.State, a.SI, years)
			}
		}
	}
	if a := codes.Ask(CylinderRequalify.Term, known{FactSpecification: "dot-4ba"}); a.State != Open {
		t.Errorf("without the letter after the date: %s", a.State)
	}
}

// TestHosesOfOthersAreNotMeasured holds that a limit on one kind of hose says
// nothing of another.
func TestHosesOfOthersAreNotMeasured(t *testing.T) {
	for profile, given := range map[string]known{
		"us-mobile-structure": feeds("no-appliance", "high"),
		"eu-leisure-vehicle":  feeds("cooking-appliance", "low"),
	} {
		if a := use(t, profile).Ask(HoseLength.Term, given); a.State != Silent {
			t.Errorf("%s on %v: %s", profile, given, a.State)
		}
	}
}

// TestSupplyFiguresAgree holds figures that rows give in two measures, or that two
// texts give for one thing.
func TestSupplyFiguresAgree(t *testing.T) {
	rows := requirements(t)
	for id, phrase := range map[string]string{
		"CYL-01": "At most 2 containers", "CYL-02": "≤2 containers × ≤105 lb", "CYL-05": "each ≤16 kg fill", "CYL-07": "each ≤25 L", "CYL-08": "5–35 kg",
		"CYL-09": "≤4 receptacles in service", "CYL-11": "lost >5 % of tare", "CYL-12": "repeats every 5 years", "CYL-16": "≤10 years", "FIL-05": "2.35 L per kg",
		"REG-11": "medium stage ≤2.5 bar", "REG-18": "every 10 years", "SEC-01": "4 × filled weight", "SEC-02": "4 × full cylinder weight",
		"HOS-03": "≤3 ft; cooking ≤6 ft", "HOS-05": "Hose ≤1 m", "HOS-06": "≤1 m", "HOS-08": "≤40 cm",
	} {
		if !strings.Contains(rows[id]["requirement"], phrase) {
			t.Errorf("row %s does not say %q: %s", id, phrase, rows[id]["requirement"])
		}
	}
	codes := use(t, "us-mobile-structure")
	water := codes.Ask(CylinderLargestWater.Term, nil).SI
	fill := codes.Ask(CylinderFill.Term, known{FactWaterCapacity: water, FactCylinderGas: "propane"}).SI
	// 24 CFR 3280.704(b)(1) calls 105 lb of water about 45 lb of gas and 47.6 L: 42 % of it is 44.1 lb.
	if pounds := fill / 0.45359237; math.Abs(pounds-44.1) > 0.001 || math.Abs(water/0.999-47.67) > 0.01 {
		t.Errorf("105 lb of water are %v lb of gas and %v L", pounds, water/0.999)
	}
	// French division 222 art. 222-3.26 gives propane 2.35 L a kilogram, and 2.5 L in the tropics:
	// 42.6 % and 40 % by weight, on both sides of the 42 % of 49 CFR 173.304a.
	share := fill / water
	if temperate, tropical := 1/(2.35*0.999), 1/(2.5*0.999); !(tropical < share && share < temperate) || math.Abs(temperate-0.426) > 5e-4 {
		t.Errorf("%v lies not between %v and %v", share, tropical, temperate)
	}
	// A second account and a trade page have the restraint of NFPA 58 too: four times.
	us, au := use(t, "us-commercial-vehicle"), use(t, "anz-caravan-boat")
	if a, b := us.Ask(CylinderRestraintTimes.Term, nil).SI, au.Ask(CylinderRestraintTimes.Term, nil).SI; a != b {
		t.Errorf("%v and %v times", a, b)
	}
}

// TestWhatIsLimitedHasAFigure holds that whatever a code says it limits, or wants
// of a restraint, has its own entry: otherwise the question could never be met.
func TestWhatIsLimitedHasAFigure(t *testing.T) {
	of := map[string]*Term{
		"in-service": CylinderCountInService.Term, "aboard": CylinderCountAboard.Term, "water-capacity": CylinderLargestWater.Term,
		"propane": CylinderLargestPropane.Term, "least-propane": CylinderSmallestPropane.Term,
		"load": CylinderRestraintLoad.Term, "points": CylinderRestraintPoints.Term, "by-hand": CylinderRestraintByHand.Term, "metal": CylinderRestraintMetal.Term,
	}
	for _, p := range Profiles() {
		codes := use(t, "").With(p)
		said := slices.Concat(codes.Ask(CylinderLimited.Term, nil).Words, codes.Ask(CylinderRestraint.Term, nil).Words)
		for word, term := range of {
			if stated := codes.Ask(term, nil).State == Answered; p.Book == BookProfile && stated != slices.Contains(said, word) {
				t.Errorf("%s answers %s: %v, and says that it limits it: %v", p.ID, term.ID, stated, !stated)
			}
		}
		if restrained := codes.Ask(CylinderRestraint.Term, nil); restrained.State == Answered && !slices.Contains(restrained.Words, "held") {
			t.Errorf("%s lets a cylinder stand loose", p.ID)
		}
	}
}

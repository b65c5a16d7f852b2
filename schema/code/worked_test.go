package code

import (
	"math"
	"strings"
	"testing"

	"lowvent.example/schema/unit"
)

// near tells whether two figures agree but for the roundings on the way: each
// conversion and each product rounds once, to 1 part in 2⁵³.
func near(a, b float64) bool { return math.Abs(a-b) <= 4*0x1p-53*math.Abs(b) }

// TestVentsByHand works 675 IAC 15-2-74(c)(2) by hand for three floors: two
// vents with together 2 % of the floor, split evenly, so half of 2 % each.
func TestVentsByHand(t *testing.T) {
	c := use(t, "us-mobile-structure")
	cases := []struct{ floor, total, each string }{
		// 0.75 m × 0.40 m = 0.30 m²; 2 % is 0.006 m² = 60 cm²; half is 30 cm².
		{"0.30 m2", "60 cm2", "30 cm2"},
		// 0.60 m × 0.40 m = 0.24 m²; 2 % is 48 cm², the figure that a published
		// comparison of this rule with others gives for this floor; half is 24 cm².
		{"0.24 m2", "48 cm2", "24 cm2"},
		// 20 in × 14 in = 280 in²; 2 % is 5.6 in²; half is 2.8 in².
		{"280 in2", "5.6 in2", "2.8 in2"},
	}
	for _, each := range cases {
		f := known{FactLockerFloorArea: float64(unit.MustParse[unit.Area](each.floor))}
		low, high := c.Ask(LockerLowVentArea.Term, f), c.Ask(LockerHighVentArea.Term, f)
		want, total := float64(unit.MustParse[unit.Area](each.each)), float64(unit.MustParse[unit.Area](each.total))
		if low.State != Answered || !near(low.SI, want) || high.SI != low.SI || !near(low.SI+high.SI, total) {
			t.Errorf("%s: low %v, high %v, want %v each", each.floor, low.SI, high.SI, want)
		}
	}
	a := c.Ask(LockerLowVentArea.Term, known{FactLockerFloorArea: 0.30})
	if want := "half of 2 % of the locker's floor area of " + unit.Text(unit.Area(0.30)); a.Text != want {
		t.Errorf("%q, want %q", a.Text, want)
	}
	if a.Steps != "A_need = 0.02 * A_floor / 2" {
		t.Error(a.Steps)
	}
}

// TestFillByHand works 49 CFR 173.304a(d)(1): propane to 42 % of the water
// capacity by weight.
func TestFillByHand(t *testing.T) {
	cases := []struct{ water, propane string }{
		{"105 lb", "44.1 lb"}, // the largest that 24 CFR 3280.704(b)(1) allows, "about 45 lb of gas"
		{"2.5 lb", "1.05 lb"}, // what 675 IAC 15-2-74(c)(1) exempts, "about 1 lb of gas"
		{"100 kg", "42 kg"},
		{"47.6 lb", "19.992 lb"},  // so 20 lb is over
		{"47.7 lb", "20.034 lb"},  // and here it is within
		{"21.6 kg", "9.072 kg"},   // 21.6 × 0.42
		{"10 lb 0 oz", "67.2 oz"}, // 160 oz × 0.42
	}
	c := use(t, "")
	for _, each := range cases {
		water := float64(unit.MustParse[unit.WaterMass](each.water))
		a := c.Ask(CylinderFill.Term, known{FactWaterCapacity: water, FactCylinderGas: "propane"})
		if want := float64(unit.MustParse[unit.PropaneMass](each.propane)); a.State != Answered || !near(a.SI, want) {
			t.Errorf("%s: %v %v kg, want %v kg", each.water, a.State, a.SI, want)
		}
	}
}

// TestFillAgainstAHandbook holds the 42 % rule against the sizes that a
// technicians' handbook lists (8th edition, 2025, unit 11, figure 4-3; the rows
// name it). Both columns are printed rounded, so they may differ by half of the
// last digit of each: for water 0.42 of that.
func TestFillAgainstAHandbook(t *testing.T) {
	const digest = "90e947f4823789fefe58a4d75ce42ae4fca09788026471542bdf29fc9033e698"
	rows, c := published(t, "testdata/cylinders.csv", digest), use(t, "")
	if len(rows) != 9 {
		t.Fatalf("%d rows", len(rows))
	}
	for _, row := range rows {
		water, propane := row["water_capacity_lb"], row["propane_lb"]
		a := c.Ask(CylinderFill.Term, known{FactWaterCapacity: float64(unit.MustParse[unit.WaterMass](water + " lb")), FactCylinderGas: "propane"})
		got, want := a.SI/0.45359237, float64(unit.MustParse[unit.Ratio](propane))
		if slack := 0.42*lastDigit(water)/2 + lastDigit(propane)/2; math.Abs(got-want) > slack {
			t.Errorf("%s lb of water: %.2f lb of propane, the handbook has %s (within %.2f)", water, got, propane, slack)
		}
	}
}

// lastDigit is the size of one in the last digit of a printed number.
func lastDigit(text string) float64 {
	if _, decimals, found := strings.Cut(text, "."); found {
		return math.Pow(10, -float64(len(decimals)))
	}
	return 1
}

// TestFillOfOtherGases holds that no other gas is judged by propane's figure,
// nor taken to be exempt.
func TestFillOfOtherGases(t *testing.T) {
	c := use(t, "")
	for _, gas := range FactCylinderGas.Words() {
		a := c.Ask(CylinderFill.Term, known{FactWaterCapacity: 21.6, FactCylinderGas: gas})
		if (a.State == Answered) != (gas == "propane") || gas != "propane" && a.State != Silent {
			t.Errorf("%s: %v", gas, a.State)
		}
	}
	if a := c.Ask(CylinderFill.Term, known{FactWaterCapacity: 21.6}); a.State != Open {
		t.Errorf("gas not stated: %v", a.State)
	}
}

// TestFixedFigures holds the figures of 24 CFR 3280 and 675 IAC 15-2 against
// their own units, exactly: an inch is 25.4 mm by definition, and a conventional
// inch of water is 249.08891 Pa (NIST SP 811, 2008, B.8: 249.0889).
func TestFixedFigures(t *testing.T) {
	c := use(t, "us-mobile-structure")
	cases := []struct {
		term *Term
		want float64
		row  string
	}{
		{ClearanceAbove.Term, 0.6096, "COK-01"},             // 24 in × 25.4 mm
		{LockerHighVentEdge.Term, 0.3048, "VNT-02"},         // 12 in × 25.4 mm
		{LockerLowVentEdge.Term, 0, "VNT-02"},               // flush
		{RegulatorOutletCeiling.Term, 3487.24474, "REG-01"}, // 14 × 249.08891 Pa
		{PracticeVentToOpening.Term, 1, ""},
		{PracticeVentToIgnition.Term, 1.5, ""},
		{PracticeAlarmGasHeight.Term, 0.3, ""},
		{OwnTapeAgreement.Term, 0.05, ""},
	}
	for _, each := range cases {
		a := c.Ask(each.term, nil)
		if a.State != Answered || a.SI != each.want || a.Entry.Row != each.row {
			t.Errorf("%s: %v %v of row %q, want %v of row %q", each.term.ID, a.State, a.SI, a.Entry.Row, each.want, each.row)
		}
	}
	// Both ways of writing the clearance are the same number, so 609.6 mm is
	// within and the next number below it is not.
	limit := unit.Length(c.Ask(ClearanceAbove.Term, nil).SI)
	if !unit.AtLeast(unit.MustParse[unit.Length]("609.6 mm"), limit) || !unit.AtLeast(unit.MustParse[unit.Length]("24 in"), limit) ||
		unit.AtLeast(unit.MustParse[unit.Length]("609.59 mm"), limit) {
		t.Errorf("the clearance is %v", limit)
	}
}

// TestSealedFromTheRoom holds 24 CFR 3280.709 over every kind of appliance: all
// but ranges, ovens, lamps and dryers are parted from the room.
func TestSealedFromTheRoom(t *testing.T) {
	excepted := map[string]bool{"cooktop": true, "oven": true, "range": true, "lamp": true, "dryer": true}
	c := use(t, "us-mobile-structure")
	for _, kind := range FactApplianceKind.Words() {
		a := c.Ask(ApplianceFlue.Term, known{FactApplianceKind: kind})
		switch {
		case excepted[kind] && a.State != NotAsked:
			t.Errorf("%s: %v", kind, a.State)
		case !excepted[kind] && (a.State != Answered || len(a.Words) != 1 || a.Words[0] != "room-sealed"):
			t.Errorf("%s: %v %v", kind, a.State, a.Words)
		}
	}
}

// TestWordsOfTheCode holds the sets of words that the profiles allow.
func TestWordsOfTheCode(t *testing.T) {
	c := use(t, "us-mobile-structure")
	cases := map[WordLimit]string{
		CylinderPlaces: "open-air or lockers", LockerDoorOpensTo: "open-air", HighPressurePlaces: "open-air or lockers",
		ApplianceGas: "propane", ApplianceConvertedBy: "maker or licensed-fitter",
		PracticeTightGlands: "compression, bulkhead or welded", PracticeOpenEnd: "cap or plug",
	}
	for term, want := range cases {
		if a := c.Ask(term.Term, nil); a.State != Answered || a.Text != want {
			t.Errorf("%s: %v %q, want %q", term.ID, a.State, a.Text, want)
		}
	}
}

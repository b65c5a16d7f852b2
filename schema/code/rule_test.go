package code

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/schema/source"
	"lowvent.example/schema/unit"
)

func tree(t testing.TB, text string) *source.Node {
	t.Helper()
	root, fault := source.Parse(source.NewFile("test.json", []byte(text)), source.Limits{})
	if fault != nil {
		t.Fatal(fault)
	}
	return root
}

// Terms for the rule forms, of no book of the program.
var (
	leastArea = &Term{ID: "test.least-area", Kind: unit.KindArea, Sense: Least, Book: BookProfile,
		Facts: []Fact{FactLockerFloorArea, FactLockerGas, FactSpaceFloorArea, FactUnfluedInput, FactOpenFluedInput, FactApplianceKind, FactCylinderGas}}
	mostMass = &Term{ID: "test.most-mass", Kind: unit.KindPropaneMass, Sense: Most, Book: BookProfile,
		Facts: []Fact{FactWaterCapacity, FactCylinderGas}}
	someWords = &Term{ID: "test.words", Sense: Allowed, Book: BookProfile, Words: []string{"a", "b", "c"},
		Facts: []Fact{FactApplianceKind}}
	someDuty = &Term{ID: "test.duty", Sense: Duty, Book: BookProfile, Facts: []Fact{FactApplianceKind}}
)

// area is how the program prints an area; the printing is tested with unit.
func area(text string) string { return unit.Text(unit.MustParse[unit.Area](text)) }

// TestFigures holds each rule form just under, at and just over the point where
// it turns, against figures worked out by hand.
func TestFigures(t *testing.T) {
	const (
		lb, in2 = 0.45359237, 0.0254 * 0.0254

		kilo   = `{"perUnit": [{"of": "locker.gas", "rate": "0.5 in2/lb"}], "least": "10 in2"}`
		share  = `{"shareOf": "locker.floorArea", "share": "1 %", "least": "100 cm2"}`
		half   = `{"shareOf": "locker.floorArea", "share": "2 %", "splitOver": 2, "most": "100 cm2"}`
		rate   = `{"perUnit": [{"of": "space.unfluedInput", "rate": "22 cm2/kW"}, {"of": "dwelling.sleeps", "rate": "650 mm2"}], "least": "40 cm2"}`
		halves = `{"perUnit": [{"of": "space.unfluedInput", "rate": "22 cm2/kW"}, {"of": "dwelling.sleeps", "rate": "650 mm2"}], "splitOver": 2, "least": "20 cm2"}`
		rows   = `{"tableBy": "space.floorArea", "rows": [{"upTo": "5 m2", "is": "50 cm2"}, {"upTo": "10 m2", "is": "60 cm2"}, {"upTo": "20 m2", "is": "90 cm2"}]}`
		all    = `{"allOf": [{"fixed": "100 cm2"}, {"shareOf": "locker.floorArea", "share": "2 %"}]}`
		fill   = `{"allOf": [{"fixed": "9 kg"}, {"shareOf": "cylinder.waterCapacity", "share": "42 %"}]}`
	)
	cases := []struct {
		name string
		term *Term
		rule string
		with known
		want float64 // in SI
		text string
	}{
		{"fixed", leastArea, `{"fixed": "100 cm2"}`, nil, 0.01, "at least " + area("100 cm2")},
		{"fixed most", mostMass, `{"fixed": "20 lb"}`, nil, 9.0718474, "at most " + unit.Text(unit.MustParse[unit.PropaneMass]("20 lb"))},
		{"less than", mostMass, `{"fixed": "20 lb", "exclusive": true}`, nil, 9.0718474, "less than " + unit.Text(unit.MustParse[unit.PropaneMass]("20 lb"))},
		{"more than", leastArea, `{"fixed": "100 cm2", "exclusive": true}`, nil, 0.01, "more than " + area("100 cm2")},
		{"share below its least", leastArea, share, known{FactLockerFloorArea: 0.99}, 0.01, "1 % of the locker's floor area of " + area("0.99 m2") + ", and not less than " + area("100 cm2")},
		{"share at its least", leastArea, share, known{FactLockerFloorArea: 1.0}, 0.01, ""},
		{"share above its least", leastArea, share, known{FactLockerFloorArea: 1.01}, 0.0101, ""},
		{"half below its most", leastArea, half, known{FactLockerFloorArea: 0.99}, 0.0099, "half of 2 % of the locker's floor area of " + area("0.99 m2") + ", and not more than " + area("100 cm2")},
		{"half at its most", leastArea, half, known{FactLockerFloorArea: 1.0}, 0.01, ""},
		{"half above its most", leastArea, half, known{FactLockerFloorArea: 1.01}, 0.01, ""},
		// 22 cm2/kW × 1.22727… kW + 2 × 6.5 cm2 = 40 cm2 where the least governs up to.
		{"rates below the least", leastArea, rate, known{FactUnfluedInput: 1200.0, FactDwellingSleeps: 2.0}, 0.0040, ""},
		{"rates above the least", leastArea, rate, known{FactUnfluedInput: 1250.0, FactDwellingSleeps: 2.0}, 0.00405, unit.Text(unit.MustParse[unit.AreaPerPower]("22 cm2/kW")) + " times the heat input of flueless appliances in the space, " + unit.Text(unit.GrossPower(1250)) +
			", plus " + area("650 mm2") + " times the number of people who sleep there, 2, and not less than " + area("40 cm2")},
		// Half of 22 cm2/kW × 1.25 kW + 2 × 6.5 cm2: (27.5 + 13) / 2 = 20.25 cm2. At 1.22727… kW it is the least.
		{"rates split over two", leastArea, halves, known{FactUnfluedInput: 1250.0, FactDwellingSleeps: 2.0}, 0.002025, "half of (" + unit.Text(unit.MustParse[unit.AreaPerPower]("22 cm2/kW")) + " times the heat input of flueless appliances in the space, " + unit.Text(unit.GrossPower(1250)) +
			", plus " + area("650 mm2") + " times the number of people who sleep there, 2), and not less than " + area("20 cm2")},
		{"rates split over two, below the least", leastArea, halves, known{FactUnfluedInput: 1200.0, FactDwellingSleeps: 2.0}, 0.0020, ""},
		{"rates split over two, at the least", leastArea, halves, known{FactUnfluedInput: 27000.0 / 22, FactDwellingSleeps: 2.0}, 0.0020, ""},
		// A cabinet with ½ in² for each pound, and 10 in² at least: a maker's manual that
		// quotes the standard on enclosures (row VNT-13), at 20 lb and on both sides.
		{"by the kilogram, under its least", leastArea, kilo, known{FactLockerGas: 19.9 * lb}, 10 * in2, ""},
		{"by the kilogram, at its least", leastArea, kilo, known{FactLockerGas: 20 * lb}, 10 * in2, ""},
		{"by the kilogram, over its least", leastArea, kilo, known{FactLockerGas: 20.1 * lb}, 10.05 * in2, ""},
		{"rates of nothing", leastArea, rate, known{FactUnfluedInput: 0.0, FactDwellingSleeps: 0.0}, 0.0040, ""},
		{"table first row", leastArea, rows, known{FactSpaceFloorArea: 4.99}, 0.005, area("50 cm2") + " in the row for up to " + area("5 m2") + ": the floor area of the space is " + area("4.99 m2")},
		{"table at the end of a row", leastArea, rows, known{FactSpaceFloorArea: 5.0}, 0.005, ""},
		{"table just past a row", leastArea, rows, known{FactSpaceFloorArea: math.Nextafter(5, 6)}, 0.006, ""},
		{"table at its end", leastArea, rows, known{FactSpaceFloorArea: 20.0}, 0.009, ""},
		{"all of, least, first is stricter", leastArea, all, known{FactLockerFloorArea: 0.49}, 0.01, "at least " + area("100 cm2") + "; and 2 % of the locker's floor area of " + area("0.49 m2")},
		{"all of, least, equal", leastArea, all, known{FactLockerFloorArea: 0.5}, 0.01, ""},
		{"all of, least, second is stricter", leastArea, all, known{FactLockerFloorArea: 0.51}, 0.0102, ""},
		{"all of, most, first is stricter", mostMass, fill, known{FactWaterCapacity: 21.6}, 9, ""},
		{"all of, most, second is stricter", mostMass, fill, known{FactWaterCapacity: 20.0}, 8.4, ""},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			a := asking(t, c.term, c.rule, c.with)
			// One rounding a step: four units in the last place are ample.
			if a.State != Answered || math.Abs(a.SI-c.want) > 1e-15*4*c.want {
				t.Errorf("%v %v, want answered %v", a.State, a.SI, c.want)
			}
			if got := worked(t, a); got != a.SI {
				t.Errorf("working %q gives %v, the answer is %v", a.Steps, got, a.SI)
			}
			if c.text != "" && a.Text != c.text {
				t.Errorf("text %q\nwant %q", a.Text, c.text)
			}
		})
	}
}

// TestExclusive holds that of several figures the strictest says whether the figure
// itself is within.
func TestExclusive(t *testing.T) {
	for rule, want := range map[string]bool{
		`{"fixed": "9 kg"}`:                    false,
		`{"fixed": "9 kg", "exclusive": true}`: true,
		`{"allOf": [{"fixed": "9 kg", "exclusive": true}, {"fixed": "10 kg"}]}`:                                                              true,
		`{"allOf": [{"fixed": "10 kg"}, {"fixed": "9 kg", "exclusive": true}]}`:                                                              true,
		`{"allOf": [{"fixed": "9 kg"}, {"fixed": "9 kg", "exclusive": true}]}`:                                                               true,
		`{"allOf": [{"fixed": "9 kg", "exclusive": true}, {"fixed": "9 kg"}]}`:                                                               true,
		`{"allOf": [{"fixed": "9 kg", "exclusive": true}, {"fixed": "8 kg"}]}`:                                                               false,
		`{"allOf": [{"fixed": "8 kg"}, {"fixed": "9 kg", "exclusive": true}]}`:                                                               false,
		`{"when": [{"fact": "cylinder.gas", "isOneOf": ["butane"], "then": "notAsked"}], "otherwise": {"fixed": "9 kg", "exclusive": true}}`: true,
	} {
		if a := asking(t, mostMass, rule, known{FactCylinderGas: "propane"}); a.State != Answered || a.Exclusive != want {
			t.Errorf("%s: %s, exclusive %v", rule, a.State, a.Exclusive)
		}
	}
}

func TestSteps(t *testing.T) {
	f := known{FactLockerFloorArea: 0.3, FactUnfluedInput: 4000.0, FactDwellingSleeps: 2.0, FactWaterCapacity: 20.0}
	cases := []struct {
		term *Term
		rule string
		want string
	}{
		{leastArea, `{"fixed": "100 cm2"}`, "A_need = 0.01"},
		{leastArea, `{"shareOf": "locker.floorArea", "share": "1 %"}`, "A_need = 0.01 * A_floor"},
		{leastArea, `{"shareOf": "locker.floorArea", "share": "2 %", "splitOver": 2}`, "A_need = 0.02 * A_floor / 2"},
		{leastArea, `{"shareOf": "locker.floorArea", "share": "1 %", "least": "5 cm2", "most": "1 m2"}`, "A_need = min(max(0.01 * A_floor, 0.0005), 1)"},
		{leastArea, `{"perUnit": [{"of": "space.unfluedInput", "rate": "22 cm2/kW"}, {"of": "dwelling.sleeps", "rate": "650 mm2"}]}`, "A_need = 2.2e-06 * P_unflued + 0.00065 * n_sleeps"},
		{leastArea, `{"perUnit": [{"of": "space.unfluedInput", "rate": "22 cm2/kW"}, {"of": "dwelling.sleeps", "rate": "650 mm2"}], "splitOver": 2}`, "A_need = 2.2e-06 * P_unflued / 2 + 0.00065 * n_sleeps / 2"},
		{leastArea, `{"allOf": [{"fixed": "100 cm2"}, {"shareOf": "locker.floorArea", "share": "1 %"}]}`, "A_need = max(0.01, 0.01 * A_floor)"},
		{mostMass, `{"allOf": [{"fixed": "9 kg"}, {"shareOf": "cylinder.waterCapacity", "share": "42 %"}]}`, "m_most = min(9, 0.42 * m_water)"},
	}
	for _, c := range cases {
		a := asking(t, c.term, c.rule, f)
		if a.Steps != c.want {
			t.Errorf("%s: working %q, want %q", c.rule, a.Steps, c.want)
		}
		if got := worked(t, a); got != a.SI {
			t.Errorf("%s: working gives %v, the answer is %v", c.rule, got, a.SI)
		}
	}
}

func TestSymbolsAreListedOnce(t *testing.T) {
	a := asking(t, leastArea, `{"allOf": [{"shareOf": "locker.floorArea", "share": "1 %"}, {"shareOf": "locker.floorArea", "share": "2 %"}]}`,
		known{FactLockerFloorArea: 0.5})
	want := []Symbol{{"A_need", unit.KindArea, 0.01}, {"A_floor", unit.KindArea, 0.5}}
	if diff := cmp.Diff(want, a.Symbols); diff != "" {
		t.Error(diff)
	}
}

func TestWords(t *testing.T) {
	const oven = `{"when": [{"fact": "appliance.kind", "isOneOf": ["oven"], "then": {"oneOf": ["b", "c"]}}], "otherwise": {"oneOf": ["a"]}}`
	cases := []struct {
		rule string
		with known
		want []string
		text string
	}{
		{`{"oneOf": ["a"]}`, nil, []string{"a"}, "a"},
		{`{"oneOf": ["c", "a", "b"]}`, nil, []string{"c", "a", "b"}, "c, a or b"},
		{`{"allOf": [{"oneOf": ["a", "b"]}, {"oneOf": ["c", "b"]}]}`, nil, []string{"b"}, "b"},
		{`{"allOf": [{"oneOf": ["a"]}, {"oneOf": ["b"]}]}`, nil, []string{}, ""},
		{oven, known{FactApplianceKind: "oven"}, []string{"b", "c"}, "b or c"},
		{oven, known{FactApplianceKind: "range"}, []string{"a"}, "a"},
	}
	for _, c := range cases {
		a := asking(t, someWords, c.rule, c.with)
		if a.State != Answered || a.SI != 0 || a.Steps != "" || a.Text != c.text || !cmp.Equal(a.Words, c.want) {
			t.Errorf("%s: %+v, want %v", c.rule, a, c.want)
		}
	}
}

// TestWordsAreTheAskersOwn holds that a caller who changes an answer does not
// change the code.
func TestWordsAreTheAskersOwn(t *testing.T) {
	entry := Entry{Term: someWords.ID, Rule: ruleFor(t, someWords, `{"oneOf": ["a", "b"]}`), Provenance: Read}
	c := Codes{Profile: &Profile{Book: BookProfile, Entries: []Entry{entry}}}
	c.Ask(someWords, nil).Words[0] = "spoilt"
	if got := c.Ask(someWords, nil).Words; got[0] != "a" {
		t.Errorf("the second asker got %q", got)
	}
}

func TestDuty(t *testing.T) {
	a := asking(t, someDuty, `{"asked": true}`, nil)
	if a.State != Answered || a.Text != "it is asked" || a.SI != 0 || a.Words != nil || a.Steps != "" {
		t.Errorf("%+v", a)
	}
	both := asking(t, someDuty, `{"allOf": [{"asked": true}, {"when": [{"fact": "appliance.kind", "isOneOf": ["oven"], "then": "notAsked"}], "otherwise": {"asked": true}}]}`,
		known{FactApplianceKind: "oven"})
	if both.State != Answered {
		t.Errorf("one part of two asks, and the answer is %v", both.State)
	}
}

package code

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/schema/unit"
)

// TestNoLimit goes through the ways in which a rule sets no limit. None may
// leave a figure that a comparison could use.
func TestNoLimit(t *testing.T) {
	const (
		share  = `{"shareOf": "locker.floorArea", "share": "1 %", "least": "100 cm2"}`
		rates  = `{"perUnit": [{"of": "space.unfluedInput", "rate": "22 cm2/kW"}, {"of": "dwelling.sleeps", "rate": "650 mm2"}], "least": "40 cm2"}`
		rows   = `{"tableBy": "space.floorArea", "rows": [{"upTo": "5 m2", "is": "50 cm2"}]}`
		heads  = `{"tableBy": "dwelling.sleeps", "rows": [{"upTo": "2", "is": "50 cm2"}]}`
		oven   = `{"when": [{"fact": "appliance.kind", "isOneOf": ["oven"], "then": "notAsked"}], "otherwise": {"fixed": "1 cm2"}}`
		dated  = `{"when": [{"fact": "dwelling.firstUsed", "from": "2021", "then": {"fixed": "1 m2"}}, {"fact": "appliance.kind", "isOneOf": ["lamp"], "then": "notAsked"}], "otherwise": "notCovered"}`
		butane = `{"when": [{"fact": "cylinder.gas", "isOneOf": ["propane"], "then": {"fixed": "1 cm2"}}], "otherwise": "notCovered"}`
		spared = `{"when": [{"fact": "cylinder.gas", "isOneOf": ["butane"], "then": "notAsked"}], "otherwise": {"fixed": "1 cm2"}}`
	)
	cases := []struct {
		name    string
		rule    string
		with    known
		want    State
		missing []Fact
		text    string
	}{
		{"share of what is not stated", share, nil, Open, []Fact{FactLockerFloorArea}, "this depends on the locker's floor area"},
		{"share of no floor", share, known{FactLockerFloorArea: 0.0}, Open, []Fact{FactLockerFloorArea}, ""},
		{"share of less than nothing", share, known{FactLockerFloorArea: -1.0}, Open, []Fact{FactLockerFloorArea}, ""},
		{"share of no number", share, known{FactLockerFloorArea: math.NaN()}, Open, []Fact{FactLockerFloorArea}, ""},
		{"share without end", share, known{FactLockerFloorArea: math.Inf(1)}, Open, []Fact{FactLockerFloorArea}, ""},
		{"a word where a number belongs", share, known{FactLockerFloorArea: "large"}, Open, []Fact{FactLockerFloorArea}, ""},
		{"rates, both missing", rates, nil, Open, []Fact{FactDwellingSleeps, FactUnfluedInput},
			"this depends on the heat input of flueless appliances in the space and the number of people who sleep there"},
		{"rates, one missing", rates, known{FactUnfluedInput: 1e5}, Open, []Fact{FactDwellingSleeps}, ""},
		{"table beyond its end", rows, known{FactSpaceFloorArea: math.Nextafter(5, 6)}, Silent, nil, ""},
		{"table well beyond its end", rows, known{FactSpaceFloorArea: 6.0}, Silent, nil, "the floor area of the space is " + area("6 m2") + ", and the table ends at " + area("5 m2")},
		{"table by a count, beyond its end", heads, known{FactDwellingSleeps: 3.0}, Silent, nil, "the number of people who sleep there is 3, and the table ends at 2"},
		{"table by what is not stated", rows, nil, Open, []Fact{FactSpaceFloorArea}, ""},
		{"when, exempt", oven, known{FactApplianceKind: "oven"}, NotAsked, nil, "the text does not ask this here: the kind of appliance is oven"},
		{"when, not stated", oven, nil, Open, []Fact{FactApplianceKind}, "this depends on the kind of appliance"},
		{"when, a word outside the list", oven, known{FactApplianceKind: "Oven"}, Open, []Fact{FactApplianceKind}, ""},
		{"when, not covered", butane, known{FactCylinderGas: "butane"}, Silent, nil, "the text has no figure for this case: what the cylinder holds is butane"},
		{"when, dated", dated, known{FactFirstUsed: day(t, "2020"), FactApplianceKind: "oven"}, Silent, nil,
			"the text has no figure for this case: the date of first use is 2020 and the kind of appliance is oven"},
		{"when, gas not stated", butane, known{FactApplianceKind: "oven"}, Open, []Fact{FactCylinderGas}, ""},
		{"all of, one open", `{"allOf": [{"fixed": "1 m2"}, ` + share + `]}`, nil, Open, []Fact{FactLockerFloorArea}, ""},
		{"all of, two open", `{"allOf": [` + share + `, ` + oven + `]}`, nil, Open, []Fact{FactApplianceKind, FactLockerFloorArea}, ""},
		{"all of, one silent", `{"allOf": [{"fixed": "1 m2"}, ` + rows + `]}`, known{FactSpaceFloorArea: 6.0}, Silent, nil, ""},
		{"all of, all exempt", `{"allOf": [` + oven + `, ` + spared + `]}`, known{FactApplianceKind: "oven", FactCylinderGas: "butane"}, NotAsked, nil, ""},
		{"all of, one exempt", `{"allOf": [` + oven + `, ` + spared + `]}`, known{FactApplianceKind: "oven", FactCylinderGas: "propane"}, Answered, nil, "at least " + area("1 cm2")},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			a := asking(t, leastArea, c.rule, c.with)
			if a.State != c.want || !cmp.Equal(a.Missing, c.missing) {
				t.Errorf("%v, missing %v; want %v, missing %v", a.State, a.Missing, c.want, c.missing)
			}
			if c.text != "" && a.Text != c.text {
				t.Errorf("text %q\nwant %q", a.Text, c.text)
			}
			if a.State != Answered && (!math.IsNaN(a.SI) || a.Steps != "" || a.Symbols != nil || a.Words != nil) {
				t.Errorf("a limit leaks: %+v", a)
			}
			if a.Text == "" || a.Entry == nil {
				t.Errorf("no reason or no entry: %+v", a)
			}
		})
	}
}

// TestOverflow holds that a limit that is not finite is no limit.
func TestOverflow(t *testing.T) {
	const rule = `{"perUnit": [{"of": "dwelling.sleeps", "rate": "999999 m2"}]}`
	a := asking(t, leastArea, rule, known{FactDwellingSleeps: math.MaxFloat64})
	if a.State != Open || !math.IsNaN(a.SI) || !cmp.Equal(a.Missing, []Fact{FactDwellingSleeps}) {
		t.Errorf("%+v", a)
	}
}

// TestDates holds the date conditions of "when" the day before, on and after,
// and for stamps that have only a year or a month.
func TestDates(t *testing.T) {
	const from = `{"when": [{"fact": "dwelling.firstUsed", "from": "2021-03-15", "then": {"fixed": "1 m2"}}], "otherwise": "notAsked"}`
	const before = `{"when": [{"fact": "dwelling.firstUsed", "before": "2021-03-15", "then": {"fixed": "1 m2"}}], "otherwise": "notAsked"}`
	const fromMonth = `{"when": [{"fact": "dwelling.firstUsed", "from": "2021-03", "then": {"fixed": "1 m2"}}], "otherwise": "notAsked"}`
	cases := []struct {
		rule, first string
		want        State
	}{
		{from, "2021-03-14", NotAsked}, {from, "2021-03-15", Answered}, {from, "2021-03-16", Answered},
		{from, "2021-02", NotAsked}, {from, "2021-03", Open}, {from, "2021-04", Answered},
		{from, "2020", NotAsked}, {from, "2021", Open}, {from, "2022", Answered},
		{before, "2021-03-14", Answered}, {before, "2021-03-15", NotAsked}, {before, "2021", Open}, {before, "2022", NotAsked},
		{fromMonth, "2021-02-28", NotAsked}, {fromMonth, "2021-03-01", Answered}, {fromMonth, "2021-03", Answered}, {fromMonth, "2021", Open},
	}
	for _, c := range cases {
		a := asking(t, leastArea, c.rule, known{FactFirstUsed: day(t, c.first)})
		if a.State != c.want {
			t.Errorf("%s, first used %s: %v, want %v", c.rule, c.first, a.State, c.want)
		}
		if a.State == Open && !cmp.Equal(a.Missing, []Fact{FactFirstUsed}) {
			t.Errorf("missing %v", a.Missing)
		}
	}
	if a := asking(t, leastArea, from, nil); a.State != Open {
		t.Errorf("no date at all: %v", a.State)
	}
}

// TestFirstCaseWins holds the order of cases, and that an unknown fact of an
// earlier case is not skipped.
func TestFirstCaseWins(t *testing.T) {
	const rule = `{"when": [
		{"fact": "appliance.kind", "isOneOf": ["oven", "range"], "then": {"fixed": "1 m2"}},
		{"fact": "appliance.kind", "isOneOf": ["range"], "then": {"fixed": "2 m2"}},
		{"fact": "cylinder.gas", "isOneOf": ["butane"], "then": {"fixed": "3 m2"}}], "otherwise": {"fixed": "4 m2"}}`
	cases := []struct {
		with known
		want float64
	}{
		{known{FactApplianceKind: "range", FactCylinderGas: "butane"}, 1},
		{known{FactApplianceKind: "oven"}, 1},
		{known{FactApplianceKind: "lamp", FactCylinderGas: "butane"}, 3},
		{known{FactApplianceKind: "lamp", FactCylinderGas: "mix"}, 4},
	}
	for _, c := range cases {
		if a := asking(t, leastArea, rule, c.with); a.State != Answered || a.SI != c.want {
			t.Errorf("%v: %v %v, want %v", c.with, a.State, a.SI, c.want)
		}
	}
	a := asking(t, leastArea, rule, known{FactCylinderGas: "butane"})
	if a.State != Open || !cmp.Equal(a.Missing, []Fact{FactApplianceKind}) {
		t.Errorf("an unknown first case was skipped: %+v", a)
	}
}

func TestRulesInWords(t *testing.T) {
	cases := []struct {
		term *Term
		rule string
		want string
		uses []Fact
	}{
		{leastArea, `{"fixed": "4 in2"}`, "4 in2", nil},
		{leastArea, `{"shareOf": "locker.floorArea", "share": "2 %", "splitOver": 3, "least": "1 in2", "most": "9 in2"}`,
			"1/3 of 2 % of the locker's floor area, and not less than 1 in2, and not more than 9 in2", []Fact{FactLockerFloorArea}},
		{leastArea, `{"perUnit": [{"of": "space.unfluedInput", "rate": "22 cm2/kW"}, {"of": "dwelling.sleeps", "rate": "650 mm2"}], "least": "40 cm2"}`,
			"22 cm2/kW times the heat input of flueless appliances in the space plus 650 mm2 times the number of people who sleep there, and not less than 40 cm2",
			[]Fact{FactDwellingSleeps, FactUnfluedInput}},
		{leastArea, `{"tableBy": "space.floorArea", "rows": [{"upTo": "5 m2", "is": "50 cm2"}, {"upTo": "8 m2", "is": "60 cm2"}]}`,
			"a table of 2 rows by the floor area of the space, the next row up, from 50 cm2 for up to 5 m2 to 60 cm2 for up to 8 m2", []Fact{FactSpaceFloorArea}},
		{someWords, `{"allOf": [{"oneOf": ["a", "b"]}, {"oneOf": ["b"]}]}`, "the strictest of: a or b; b", nil},
		{someDuty, `{"when": [{"fact": "dwelling.firstUsed", "before": "2001", "then": "notAsked"}, {"fact": "dwelling.firstUsed", "from": "2021", "then": "notCovered"}, {"fact": "appliance.kind", "isOneOf": ["oven", "lamp"], "then": "notAsked"}], "otherwise": {"asked": true}}`,
			"where the date of first use is before 2001: not asked; where the date of first use is 2021 or later: not covered; where the kind of appliance is oven or lamp: not asked; otherwise: asked for",
			[]Fact{FactApplianceKind, FactFirstUsed}},
	}
	for _, c := range cases {
		r := ruleFor(t, c.term, c.rule)
		if r.String() != c.want {
			t.Errorf("%s\n got %q\nwant %q", c.rule, r, c.want)
		}
		if !cmp.Equal(r.Facts(), c.uses) {
			t.Errorf("%s reads %v, want %v", c.rule, r.Facts(), c.uses)
		}
	}
}

// careless gives a value with every answer, and says of none or of all that it
// is known.
type careless struct {
	known bool
	date  unit.Date
}

func (c careless) Number(Fact) (float64, bool) { return 1, c.known }

func (c careless) Word(Fact) (string, bool) { return "oven", c.known }

func (c careless) Date(Fact) (unit.Date, bool) { return c.date, c.known }

// TestKnownDecides holds that a value which comes with "not known" is not used,
// and that the zero date is no date even if it is called known.
func TestKnownDecides(t *testing.T) {
	rules := []string{
		`{"shareOf": "locker.floorArea", "share": "1 %"}`,
		`{"when": [{"fact": "appliance.kind", "isOneOf": ["oven"], "then": {"fixed": "1 m2"}}], "otherwise": "notAsked"}`,
		`{"when": [{"fact": "dwelling.firstUsed", "from": "2010", "then": {"fixed": "1 m2"}}], "otherwise": "notAsked"}`,
	}
	for _, rule := range rules {
		if a := asking(t, leastArea, rule, careless{known: true, date: day(t, "2020")}); a.State != Answered {
			t.Errorf("%s, known: %v", rule, a.State)
		}
		if a := asking(t, leastArea, rule, careless{known: false, date: day(t, "2020")}); a.State != Open {
			t.Errorf("%s, not known: %v", rule, a.State)
		}
	}
	if a := asking(t, leastArea, rules[2], careless{known: true}); a.State != Open {
		t.Errorf("the zero date: %v", a.State)
	}
}

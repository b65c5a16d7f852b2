package code

import (
	"bytes"
	"os"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/schema/source"
	"lowvent.example/schema/unit"
)

// mine is a good profile that uses every form of rule.
func mine(t testing.TB) []byte {
	t.Helper()
	data, err := os.ReadFile("testdata/mine.json")
	if err != nil {
		t.Fatal(err)
	}
	return data
}

func TestLoad(t *testing.T) {
	p, faults := Load("mine.json", mine(t))
	if faults != nil {
		t.Fatal(faults)
	}
	want := &Profile{
		ID: "mine-2020", Title: "An invented code, for tests", Jurisdiction: "Nowhere", Edition: "2020", Book: BookProfile,
		Scope:      Scope{Dwellings: []string{"cabin", "boat"}, Countries: []string{"NZ"}, Text: "Invented."},
		NotCovered: []string{"Everything else"}, Note: "Used by the tests of loading.", File: "mine.json",
		Entries: []Entry{
			{Term: "alarm.gas", Says: "A duty.", Document: "Invented 4", Provenance: Read},
			{Term: "clearance.above", Says: "A plain figure.", Document: "Invented 3", Provenance: Memory},
			{Term: "cylinder.places", Row: "X-1", Says: "Words by date and by gas.", Document: "Invented ", Clause: "2", Edition: "first",
				Address: "in no library", Provenance: Read, Note: "A note."},
			{Term: "locker.low-vent-area", Says: "Every rule that makes an area.", Document: "Invented 1", Provenance: SecondHand,
				From: unit.Date{Year: 2010, Month: 5}, Until: unit.Date{Year: 2030}},
		},
	}
	withoutRules := cmp.FilterPath(func(p cmp.Path) bool { return p.Last().String() == ".Rule" }, cmp.Ignore())
	if diff := cmp.Diff(want, p, withoutRules); diff != "" {
		t.Error(diff)
	}
	rules := []string{
		"asked for", "24 in",
		"where the date of first use is before 2015-01-01: open-air or lockers; where the date of first use is 2025 or later: not covered; where what the cylinder holds is butane or mix: not asked; otherwise: lockers",
		"the strictest of: half of 2 % of the locker's floor area, and not less than 50 cm2, and not more than 1 m2; 650 mm2 times the number of people who sleep there, and not less than 4000 mm2; a table of 2 rows by the locker's floor area, the next row up, from 100 cm2 for up to 0.5 m2 to 150 cm2 for up to 1 m2",
	}
	for i, rule := range rules {
		if got := p.Entries[i].Rule.String(); got != rule {
			t.Errorf("%s: %q, want %q", p.Entries[i].Term, got, rule)
		}
	}
}

// TestLoadedProfileIsAsked holds a user's own profile end to end.
func TestLoadedProfileIsAsked(t *testing.T) {
	p, faults := Load("mine.json", mine(t))
	if faults != nil {
		t.Fatal(faults)
	}
	c := use(t, "").With(p)
	f := known{FactLockerFloorArea: 0.4, FactDwellingSleeps: 2.0, FactFirstUsed: day(t, "2020-06-01"), FactCylinderGas: "propane"}
	if a := c.Ask(LockerLowVentArea.Term, f); a.State != Answered || a.SI != 0.01 || worked(t, a) != 0.01 {
		t.Errorf("%+v", a) // 40 cm², 40 cm² and the table's 100 cm²
	}
	if a := c.Ask(CylinderPlaces.Term, f); a.State != Answered || a.Text != "lockers" {
		t.Errorf("%+v", a)
	}
	if a := c.Ask(ClearanceAbove.Term, f); a.State != Remembered {
		t.Errorf("%+v", a)
	}
	if a := c.Ask(LockerSealed.Term, f); a.State != Silent {
		t.Errorf("%+v", a)
	}
}

// TestSharesOfTheRightKind holds which kinds of fact a share can be taken of.
func TestSharesOfTheRightKind(t *testing.T) {
	facts := []Fact{FactWaterCapacity, FactLockerFloorArea, FactUnfluedInput}
	cases := []struct {
		limit unit.Kind
		fact  Fact
		want  bool
	}{
		{unit.KindPropaneMass, FactWaterCapacity, true}, {unit.KindPropaneMass, FactLockerFloorArea, false}, {unit.KindPropaneMass, FactUnfluedInput, false},
		{unit.KindArea, FactLockerFloorArea, true}, {unit.KindArea, FactWaterCapacity, false}, {unit.KindMass, FactWaterCapacity, false},
		{unit.KindGrossPower, FactUnfluedInput, true}, {unit.KindWaterMass, FactWaterCapacity, true},
	}
	for _, c := range cases {
		term := &Term{ID: "test.share", Kind: c.limit, Sense: Most, Book: BookProfile, Facts: facts}
		_, faults := tryRule(t, term, `{"shareOf": "`+string(c.fact)+`", "share": "10 %"}`)
		if (faults == "") != c.want {
			t.Errorf("%s as a share of %s: %q", c.limit, c.fact, faults)
		}
	}
}

// TestRatesOfTheRightKind holds which rates make a limit out of a fact.
func TestRatesOfTheRightKind(t *testing.T) {
	facts := []Fact{FactWaterCapacity, FactLockerFloorArea, FactUnfluedInput}
	cases := []struct {
		limit unit.Kind
		fact  Fact
		rate  string
		want  bool
	}{
		{unit.KindArea, FactUnfluedInput, "22 cm2/kW", true}, {unit.KindArea, FactUnfluedInput, "22 cm2", false},
		{unit.KindArea, FactDwellingSleeps, "650 mm2", true}, {unit.KindVolume, FactDwellingSleeps, "1 m3", true}, {unit.KindVolume, FactDwellingSleeps, "1 m2", false},
		{unit.KindVolume, FactUnfluedInput, "1 m3", false}, {unit.KindArea, FactWaterCapacity, "1 cm2/kg", false},
	}
	for _, c := range cases {
		term := &Term{ID: "test.rate", Kind: c.limit, Sense: Least, Book: BookProfile, Facts: facts}
		_, faults := tryRule(t, term, `{"perUnit": [{"of": "`+string(c.fact)+`", "rate": "`+c.rate+`"}]}`)
		if (faults == "") != c.want {
			t.Errorf("%s for %s of %s: %q", c.rate, c.limit, c.fact, faults)
		}
	}
}

// TestEdgesAreTaken holds that what lies just within what a profile may say is
// not refused.
func TestEdgesAreTaken(t *testing.T) {
	const area = "/entries/locker.low-vent-area"
	for _, line := range []string{
		area + `/rule/allOf/0/most = "50 cm2"`, // as much as the least
		area + `/rule/allOf/0/share = "100 %"`,
		area + `/rule/allOf/0/splitOver = 4`,
		area + `/rule/allOf/2/rows/0/upTo = "0 m2"`,
		area + `/until = "2010-06-01"`,
		`/entries/cylinder.places/rule/otherwise = {"oneOf": ["open-air", "lockers", "spaces"]}`,
		`/entries/locker.low-vent-edge = {"says": "Flush.", "document": "X", "provenance": "read", "rule": {"fixed": "0 mm"}}`,
		`/entries/locker.sealed = {"says": "All.", "document": "X", "provenance": "read", "rule": {"when": [{"fact": "dwelling.kind", "isOneOf": ["boat"], "then": "notCovered"}], "otherwise": {"asked": true}}}`,
		`/notCovered = []`,
		`/scope/regions = []`,
		`/scope/dwellings = []`,
		`delete /note`,
		`delete /$schema`,
	} {
		if _, faults := Load("mine.json", edited(t, mine(t), line)); faults != nil {
			t.Errorf("%s: %s", line, faults)
		}
	}
}

// TestAllFaultsAtOnce holds that every fault of a file is told in one go, in
// file order.
func TestAllFaultsAtOnce(t *testing.T) {
	data := mine(t)
	for _, line := range []string{`/title = 7`, `/entries/alarm.gas/rule/asked = false`, `/scope/countries/0 = "nz"`, `/entries/clearance.above/rule/fixed = "24 kg"`} {
		data = edited(t, data, line)
	}
	_, faults := Load("mine.json", data)
	var at []string
	for _, f := range faults {
		at = append(at, f.Place.Pointer)
	}
	want := []string{"/title", "/scope/countries/0", "/entries/clearance.above/rule/fixed", "/entries/alarm.gas/rule/asked"}
	if diff := cmp.Diff(want, at); diff != "" {
		t.Error(diff)
	}
}

// TestNoJSON holds that a file that is no JSON has exactly one fault and yields
// nothing.
func TestNoJSON(t *testing.T) {
	for _, text := range []string{"", "{", "[]", `{"id": "a", "id": "b"}`, "\xff", `{"format": 1e999999}`, `null`} {
		if p, faults := Load("bad.json", []byte(text)); p != nil || len(faults) != 1 {
			t.Errorf("%q: %v %v", text, p, faults)
		}
	}
}

// TestOneCharacterAway holds that a good profile cut short anywhere is refused.
func TestOneCharacterAway(t *testing.T) {
	data := bytes.TrimRight(mine(t), "\n")
	for n := range data {
		if p, faults := Load("cut.json", data[:n]); p != nil || faults == nil {
			t.Fatalf("the first %d of %d bytes are taken for a profile", n, len(data))
		}
	}
}

func TestIDs(t *testing.T) {
	good := []string{"a", "z", "0", "9", "az-09", "us-mobile-structure", "a-b-c"}
	bad := []string{"", "-", "-a", "a-", "a--b", "A", "aZ", "a_b", "a b", "é", "a/b", "{", "`", ":"}
	for _, id := range good {
		if !isID(id) {
			t.Errorf("%q is refused", id)
		}
	}
	for _, id := range bad {
		if isID(id) {
			t.Errorf("%q is taken", id)
		}
	}
}

func TestCountries(t *testing.T) {
	for _, code := range []string{"US", "AZ", "ZA", "NZ"} {
		if !isCountry(code) {
			t.Errorf("%q is refused", code)
		}
	}
	for _, code := range []string{"", "U", "USA", "us", "Us", "uS", "U1", "1U", "É", "@A", "A[", "U "} {
		if isCountry(code) {
			t.Errorf("%q is taken", code)
		}
	}
}

// edited makes one edit to a file's bytes.
func edited(t testing.TB, data []byte, line string) []byte {
	t.Helper()
	edit, err := source.ParseEdit(line)
	if err != nil {
		t.Fatal(err)
	}
	file, err := source.Apply(source.NewFile("mine.json", data), nil, []source.Edit{edit})
	if err != nil {
		t.Fatal(err)
	}
	return file.Data
}

package code

import (
	"bytes"
	"flag"
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

var update = flag.Bool("update", false, "write testdata/side_by_side.txt anew")

// documents lists the texts that each published code is made of: an entry of any
// other text has leaked in from another code.
var documents = map[string][]string{
	"us-mobile-structure":   {"24 CFR 3280", "675 IAC 15-2"},
	"us-commercial-vehicle": {"NFPA 58", "WAC 296-307", "WAC 296-150", "49 CFR 393"},
	"us-inspected-vessel":   {"46 CFR 58.16", "46 CFR 184.240", "46 CFR 169.703"},
	"eu-inland-vessel":      {"Directive 2006/87/EC"},
	"uk-inland-boat":        {"BSS"},
	"fr-small-craft":        {"French division 244"},
	"eu-leisure-vehicle":    {"EN 1949", "EN 721", "DVGW G 607", "G 607", "German rule", "Germany StVZO", "German hobby/inspector pages", "Inspector page (G 607)"},
	"anz-caravan-boat":      {"AS 5601-2004", "AS/NZS", "ESV sheet 29", "ESV consumer text", "NZ trade page", "Queensland"},
	"fr-dwelling":           {"French arrêté 2 Aug 1977", "French arrêté 1977"},
	"us-fixed-cabin":        {"IRC M1703.2", "NFPA 54", "US IRC-type text"},
}

// TestNoLimitLeaksBetweenCodes holds that every entry rests on a text that its
// profile names in its title or edition, and that no row serves two profiles.
func TestNoLimitLeaksBetweenCodes(t *testing.T) {
	owner := map[string]string{}
	for _, p := range Profiles() {
		if p.Book != BookProfile {
			continue
		}
		own := documents[p.ID]
		for _, document := range own {
			if !strings.Contains(p.Title+" "+p.Edition, document) {
				t.Errorf("%s does not name %s", p.ID, document)
			}
		}
		for _, e := range p.Entries {
			if !beginsWithOne(e.Document, own) {
				t.Errorf("%s of %s rests on %s, which is none of its texts %v", e.Term, p.ID, e.Document, own)
			}
			if other := owner[e.Row]; other != "" && other != p.ID {
				t.Errorf("row %s serves %s and %s", e.Row, other, p.ID)
			}
			owner[e.Row] = p.ID
		}
	}
}

func beginsWithOne(document string, texts []string) bool {
	for _, each := range texts {
		if strings.HasPrefix(document, each) {
			return true
		}
	}
	return false
}

// TestRowsSayWhatTheEntriesSay holds the figures of the entries against the words
// of the rows that they were taken from.
func TestRowsSayWhatTheEntriesSay(t *testing.T) {
	rows := requirements(t)
	cases := map[string]string{
		"VNT-03": "≥3 ft horizontally", "REG-04": "≤18 in w.c.", "REG-11": "final ≤50 mbar", "DRN-01": "≥19 mm", "DRN-02": "lowest point",
		"VNT-12": "≥280 mm²", "VNT-04": "≥2 % of floor area and ≥100 cm²", "REG-12": "30 mbar only", "DST-11": "≥1 m from openings, ≥1.5 m from ignition",
		"REG-14": "<3 kPa", "VNT-10": "≥200 cm² each",
		"VEN-01": "V=610·U+650·P mm²", "VEN-02": "≤150 mm from floor and from roof", "VEN-03": "2200·U + 650·P + 440·F", "VEN-04": "roof 75 cm² + low 10 cm²; 5–10 m²: roof 100 + low 15 cm²",
		"VEN-05": "roof 15 cm² (or 30 cm² other high) + low 5 cm²", "VEN-06": "Low vents ≤100 mm above floor", "VEN-07": "≥150 cm² free each", "VEN-08": "≥4000 mm² each",
		"VEN-09": "≥100 cm² direct", "VEN-13": "1 in²/4000 Btu/h", "FLU-02": "≥3 ft above intake if within 10 ft", "FLU-04": "≤10k Btu/h 6 in; 10–50k 9 in; >50k 12 in",
		"FLU-05": "3 ft above forced intake within 10 ft", "FLU-07": "≥500 mm from openings, fuel fittings", "FLU-08": "≥30 cm from openings on roof, ≥50 cm on side wall",
		"ALM-08": "on wall 4–12 in below ceiling",
	}
	for id, phrase := range cases {
		if !strings.Contains(rows[id]["requirement"], phrase) {
			t.Errorf("row %s does not say %q: %s", id, phrase, rows[id]["requirement"])
		}
	}
}

// TestPublishedFiguresAgree holds pairs of figures that were published in two
// systems of units and are meant to be the same, or are not.
func TestPublishedFiguresAgree(t *testing.T) {
	rows := requirements(t)
	// ABYC A-1 keeps a vent 20 in from openings, ISO 10239 by the UK's guidance 500 mm.
	if !strings.Contains(rows["DRN-04"]["requirement"], "≥20 in") || !strings.Contains(rows["DRN-03"]["requirement"], "≥500 mm") {
		t.Error("the rows on vents of boats have other figures")
	}
	if mm := 20 * 25.4; math.Abs(mm-508) > 1e-9 || math.Abs(mm-500)/500 > 0.02 {
		t.Errorf("20 in is %v mm", mm)
	}
	// ISO 10239 and BSS 7.5 drain by 19 mm, division 244 by 280 mm²: 1.3 % apart.
	uk := use(t, "uk-inland-boat").Ask(LockerLowVentArea.Term, known{FactFirstUsed: day(t, "2000")}).SI
	fr := use(t, "fr-small-craft").Ask(LockerLowVentArea.Term, nil).SI
	if r := uk / fr; r < 1 || r > 1.02 {
		t.Errorf("a drain of the UK is %v of a French one", r)
	}
	// The half inch of ABYC A-1 is far less: 127 mm².
	if r := math.Pi / 4 * 12.7 * 12.7 * 1e-6 / uk; r > 0.5 {
		t.Errorf("half an inch is %v of 19 mm", r)
	}
	// On 0.24 m² of floor 675 IAC 15-2-74 wants 48 cm² in two halves, EN 1949 100 cm² low.
	low := use(t, "us-mobile-structure").Ask(LockerLowVentArea.Term, floor(0.24)).SI
	if en := use(t, "eu-leisure-vehicle").Ask(LockerLowVentArea.Term, lowOnly(0.24)).SI; !near(2*low, 0.0048) || !near(en, 0.01) {
		t.Errorf("a floor of 0.24 m²: %v and %v", 2*low, en)
	}
}

// TestWhereCodesGovern holds the scopes: what the texts do not show to be
// governed is not.
func TestWhereCodesGovern(t *testing.T) {
	governed := map[string]bool{
		"us-mobile-structure manufactured-home US": true, "us-inspected-vessel inspected-vessel US": true,
		"eu-leisure-vehicle road-vehicle DE": true, "eu-leisure-vehicle trailer DE": true,
	}
	for _, kind := range []string{"road-vehicle", "trailer", "boat", "tiny-house-on-wheels"} {
		for _, country := range []string{"AU", "NZ"} {
			governed["anz-caravan-boat "+kind+" "+country] = true
		}
	}
	for _, p := range Profiles() {
		for _, kind := range FactDwellingKind.Words() {
			for _, country := range []string{"US", "GB", "FR", "DE", "AU", "NZ", "CA"} {
				if got, why := p.Governs(kind, country, "IN"); p.Book == BookProfile && got != governed[p.ID+" "+kind+" "+country] {
					t.Errorf("%s governs a %s in %s: %v, %s", p.ID, kind, country, got, why)
				}
			}
		}
	}
}

// TestNotCoveredIsFrank holds that every code tells what it leaves out and what
// was not read, and that a second-hand one says so where a reader looks first.
func TestNotCoveredIsFrank(t *testing.T) {
	for _, p := range Profiles() {
		if p.Book != BookProfile {
			continue
		}
		said := strings.Join(p.NotCovered, "\n")
		for _, phrase := range []string{"In the text and not judged here", "Not found in ", " read"} {
			if !strings.Contains(said, phrase) {
				t.Errorf("%s does not say %q", p.ID, phrase)
			}
		}
		read := 0
		for _, e := range p.Entries {
			if e.Provenance == Read {
				read++
			}
		}
		if read == 0 && (!strings.Contains(p.Title, "second hand") || !strings.Contains(p.Scope.Text, "second hand")) {
			t.Errorf("nothing of %s was read, and its title or scope hides that", p.ID)
		}
	}
}

// TestSideBySide holds what every code says to every question, for one locker
// and one set of facts.
func TestSideBySide(t *testing.T) {
	const path = "testdata/side_by_side.txt"
	facts := everyFact(t)
	var b bytes.Buffer
	fmt.Fprintf(&b, "A locker of 0.30 m2 of floor, a water heater in a living space, a cylinder of propane in service.\n")
	for _, term := range Terms() {
		if term.Book != BookProfile {
			continue
		}
		fmt.Fprintf(&b, "\n%s: %s\n", term.ID, term.Asks)
		for _, p := range Profiles() {
			if p.Book == BookProfile {
				fmt.Fprintf(&b, "  %-22s %s\n", p.ID, said(use(t, p.ID).Ask(term, facts)))
			}
		}
	}
	if *update {
		if err := os.WriteFile(path, b.Bytes(), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), b.String()); diff != "" {
		t.Errorf("-want +got:\n%s", diff)
	}
}

func said(a Answer) string {
	if a.Entry == nil {
		return "silent"
	}
	return fmt.Sprintf("%s: %s [%s, %s]", a.State, a.Text, a.Entry.Cite(), a.Entry.Provenance)
}

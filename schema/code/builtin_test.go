package code

import (
	"bytes"
	"crypto/sha256"
	"encoding/csv"
	"fmt"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// published reads a table of published figures. The file is a copy of whole
// rows and never edited; its digest would tell.
func published(t *testing.T, name, digest string) []map[string]string {
	t.Helper()
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	if got := fmt.Sprintf("%x", sha256.Sum256(data)); got != digest {
		t.Fatalf("%s was edited: %s", name, got)
	}
	records, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []map[string]string
	for _, record := range records[1:] {
		row := map[string]string{}
		for i, name := range records[0] {
			row[name] = record[i]
		}
		rows = append(rows, row)
	}
	return rows
}

// requirements gives the rows of the table of published requirements, by id.
func requirements(t *testing.T) map[string]map[string]string {
	t.Helper()
	const digest = "00c2dd8bd202e9b2de0218bd3ce4b3bd1a34c29ea6d9f9346aa5aa3d546b81b2"
	rows := map[string]map[string]string{}
	for _, row := range published(t, "testdata/requirements.csv", digest) {
		rows[row["id"]] = row
	}
	return rows
}

// withoutRow lists the entries of published law that no row of the table
// covers, each with what was read instead.
var withoutRow = map[string]string{
	"appliance.gas":          "24 CFR 3285.904(d)(2)",
	"appliance.converted-by": "24 CFR 3285.904(d)(1)",
}

// rowsWithoutEntry gives the rows of published requirements that are no limit in any
// code of this program, with what they are instead and why.
func rowsWithoutEntry(t *testing.T) map[string]map[string]string {
	t.Helper()
	data, err := os.ReadFile("testdata/rows_without_entry.csv")
	if err != nil {
		t.Fatal(err)
	}
	records, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	rows := map[string]map[string]string{}
	for _, record := range records[1:] {
		if rows[record[0]] != nil {
			t.Errorf("row %s is listed twice", record[0])
		}
		rows[record[0]] = map[string]string{"kind": record[1], "why": record[2]}
	}
	return rows
}

// TestEntriesAgreeWithTheTable holds each entry's citation against the row that
// it was taken from.
func TestEntriesAgreeWithTheTable(t *testing.T) {
	words := map[string]Provenance{"read": Read, "read (secondary)": SecondHand, "memory": Memory}
	rows, used := requirements(t), map[string]bool{}
	for _, p := range Profiles() {
		for _, e := range p.Entries {
			if e.Row == "" {
				if p.Book == BookProfile || p.Book == BookComponent {
					if e.Cite() != withoutRow[e.Term] || e.Provenance != Read || e.Address == "" {
						t.Errorf("%s has no row, and cites %q, %s, %q", e.Term, e.Cite(), e.Provenance, e.Address)
					}
				}
				continue
			}
			row, found := rows[e.Row]
			used[e.Row] = true
			address := strings.TrimSuffix(row["address"], "—")
			if !found || e.Cite() != row["document"] || e.Provenance != words[row["provenance"]] || e.Address != address {
				t.Errorf("%s: %q, %s, %q; row %s has %+v", e.Term, e.Cite(), e.Provenance, e.Address, e.Row, row)
			}
		}
	}
	kinds := []string{"fitter's question", "computed", "compared", "no text", "no limit"}
	for id, row := range rowsWithoutEntry(t) {
		if used[id] || rows[id] == nil || !slices.Contains(kinds, row["kind"]) || row["why"] == "" {
			t.Errorf("row %s, used by an entry: %v, is listed as without one: %v", id, used[id], row)
		}
	}
}

// asWritten gives the facts of a case that a text does cover, where it does not
// cover the usual one.
var asWritten = map[string]known{
	"fr-dwelling appliance.flue":             {FactSpaceUse: "washroom"},
	"fr-small-craft line.joint-kinds":        {FactJointKind: "soldered"},
	"fr-small-craft line.supports-every":     {FactLineKind: "copper"},
	"us-commercial-vehicle line.materials":   {FactLineKind: "aluminium"},
	"us-inspected-vessel line.joint-kinds":   {FactLineKind: "copper"},
	"eu-leisure-vehicle hose.length":         {FactLinePressure: "high"},
	"us-mobile-structure line.in-sight":      {FactLineKind: "copper"},
	"us-mobile-structure line.strike-plates": {FactLineKind: "corrugated-stainless"},

	"fr-dwelling appliance.flue-by-room":         {FactSpaceUse: "washroom"},
	"eu-inland-vessel appliance.flue-by-room":    {FactSpaceUse: "sleeping"},
	"eu-leisure-vehicle room.vent-area-low":      {FactSpaceFloorArea: 9.5},
	"eu-leisure-vehicle room.vent-area-high":     {FactSpaceFloorArea: 9.5},
	"eu-leisure-vehicle room.vent-area-together": {FactSpaceFloorArea: 9.5},
	"us-commercial-vehicle appliance.portable":   {FactApplianceKind: "space-heater"},
	"us-commercial-vehicle flue.tight":           {FactApplianceKind: "space-heater"},
	"us-fixed-cabin flue.terminal-intake-reach":  {FactFlueKind: "open-flued"},
	"us-fixed-cabin flue.terminal-over-intake":   {FactFlueKind: "open-flued"},
	"us-inspected-vessel appliance.flame-guard":  {FactApplianceKind: "oven"},
}

// TestEveryEntryIsAnswered holds that each entry's rule evaluates when every
// fact is known, unless it is only remembered, and gives a figure above zero
// where zero would ask nothing.
func TestEveryEntryIsAnswered(t *testing.T) {
	facts := everyFact(t)
	for _, p := range Profiles() {
		c := use(t, "").With(p)
		for i := range p.Entries {
			e := &p.Entries[i]
			term := termByID(e.Term)
			given := maps.Clone(facts)
			maps.Copy(given, asWritten[p.ID+" "+e.Term])
			a := c.Ask(term, given)
			want := Answered
			if e.Provenance == Memory {
				want = Remembered
			}
			if a.State != want || a.Entry != e || a.Text == "" {
				t.Errorf("%s: %+v", e.Term, a)
			}
			if a.State != Answered {
				continue
			}
			switch {
			case term.Sense == Least && a.SI <= 0, term.Sense == Most && a.SI < 0:
				t.Errorf("%s asks nothing: %v", e.Term, a.SI)
			case term.numeric() && worked(t, a) != a.SI:
				t.Errorf("%s: working %q does not give %v", e.Term, a.Steps, a.SI)
			case term.Sense == Allowed && len(a.Words) == 0:
				t.Errorf("%s allows nothing", e.Term)
			}
		}
	}
}

// TestOtherBooksAnswerAll holds that every term outside the dwelling's code has
// an answer, whatever code is chosen.
func TestOtherBooksAnswerAll(t *testing.T) {
	c, facts := use(t, ""), everyFact(t)
	for _, term := range Terms() {
		if a := c.Ask(term, facts); (a.State == Answered) != (term.Book != BookProfile) {
			t.Errorf("%s of the book %s is %v with no code chosen", term.ID, term.Book, a.State)
		}
	}
}

// TestWhatUSMobileStructureLeavesOpen holds the exact list of terms that the
// profile does not answer, so that none is added or lost unseen.
func TestWhatUSMobileStructureLeavesOpen(t *testing.T) {
	want := map[string]State{
		VentToOpening.ID: Silent, VentToIgnition.ID: Silent, AlarmGasDuty.ID: Silent, AlarmGasHeight.ID: Silent,
		AlarmCODuty.ID:           Remembered,
		InspectionCertificate.ID: Silent, InspectionInterval.ID: Silent, TestPoint.ID: Silent, TestHighSide.ID: Silent,
		TestTightnessHeld.ID: Silent, TestTightnessDrop.ID: Silent, TransitDevices.ID: Silent, ShutoffMainReach.ID: Silent,
		JointsAccessible.ID: Silent, JunctionPlaces.ID: Silent, LineNotInEngineSpace.ID: Silent, LineToHeat.ID: Silent, LineToWiring.ID: Silent,
		LineInSight.ID: Silent, LineStrikePlates.ID: Silent, // of the steel tube that is asked about here
		// Cylinders and regulators: what was read limits number, size, place and pressure.
		CylinderCountInService.ID: Silent, CylinderLargestPropane.ID: Silent, CylinderSmallestPropane.ID: Silent, CylinderRestraint.ID: Remembered,
		CylinderRestraintLoad.ID: Silent, CylinderRestraintTimes.ID: Silent, CylinderRestraintPoints.ID: Silent, CylinderRestraintByHand.ID: Silent,
		CylinderRestraintMetal.ID: Silent, CylinderDamage.ID: Silent, CylinderTareLoss.ID: Silent, CylinderTestAge.ID: Silent,
		CylinderOverfillDevice.ID: Silent, CylinderReliefFaces.ID: Silent, CylinderReliefToOpening.ID: Remembered,
		RegulatorFirstStageCeiling.ID: Silent, RegulatorStages.ID: Silent, RegulatorFixed.ID: Silent, RegulatorForVehicles.ID: Silent,
		RegulatorMounted.ID: Remembered, RegulatorVentFaces.ID: Silent, RegulatorCovered.ID: Silent, RegulatorAbove.ID: Silent, RegulatorLife.ID: Silent,
		HoseLife.ID: Silent, HoseStandards.ID: Silent, HoseVisible.ID: Silent, HoseRises.ID: Silent, HoseOnlyToMovable.ID: Silent, ChangeoverNonReturn.ID: Silent,
		CylinderToIgnition.ID: Silent, CylinderToOpening.ID: Silent, FillPointToIgnition.ID: Silent, FillPointToIntake.ID: Silent, FuelFillerToFlue.ID: Silent,
		LockerContents.ID: Silent, LockerDoorSeal.ID: Silent, LockerDoorSill.ID: Silent, LockerToExhaust.ID: Silent,
		LockerDrain.ID: Silent, LockerDrainBore.ID: Silent, LockerDrainOverWater.ID: Silent,
		ApplianceFlameGuard.ID: Silent, AppliancePilot.ID: Silent, AppliancePortable.ID: Silent, CookingNotForHeat.ID: Silent, ApplianceListed.ID: Silent,
		FlueTight.ID: Silent, TerminalToOpening.ID: Silent, TerminalToFuel.ID: Silent, ExitClear.ID: Silent,
		RoomVentLow.ID: Silent, RoomVentHigh.ID: Silent, RoomVentAll.ID: Silent, RoomVentFixed.ID: Silent, RoomVentLowHeight.ID: Silent, RoomVentHighDepth.ID: Silent,
	}
	got := map[string]State{}
	c, facts := use(t, "us-mobile-structure"), everyFact(t)
	for _, term := range Terms() {
		if a := c.Ask(term, facts); a.State != Answered {
			got[term.ID] = a.State
		}
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	said := strings.Join(c.Profile.NotCovered, "\n")
	for _, phrase := range []string{"distances from a locker's vent to openings and to ignition sources", "a propane alarm and where it goes"} {
		if !strings.Contains(said, phrase) {
			t.Errorf("the profile does not say that it is silent on %s", phrase)
		}
	}
}

// TestProfilesShareNothing holds that no two profiles have an entry in common
// in memory, and that the list handed out is the caller's own.
func TestProfilesShareNothing(t *testing.T) {
	owner := map[*Entry]string{}
	for _, p := range Profiles() {
		for i := range p.Entries {
			if other, shared := owner[&p.Entries[i]]; shared {
				t.Errorf("%s and %s share the entry %s", p.ID, other, p.Entries[i].Term)
			}
			owner[&p.Entries[i]] = p.ID
		}
	}
	Profiles()[0] = nil
	if Profiles()[0] == nil {
		t.Error("a caller emptied the list of profiles")
	}
}

func TestProfilesAreWhole(t *testing.T) {
	var ids []string
	books := map[Book]int{}
	for _, p := range Profiles() {
		ids = append(ids, p.ID)
		books[p.Book]++
		if p.Title == "" || p.Jurisdiction == "" || p.Edition == "" || p.Scope.Text == "" || p.File != "" {
			t.Errorf("%s is not whole: %+v", p.ID, p)
		}
		if !slices.IsSortedFunc(p.Entries, func(a, b Entry) int { return strings.Compare(a.Term, b.Term) }) {
			t.Errorf("the entries of %s are not sorted", p.ID)
		}
		for _, e := range p.Entries {
			if e.Says == "" || e.Rule == nil {
				t.Errorf("%s says nothing in %s", e.Term, p.ID)
			}
			if p.Book == BookProfile && e.Provenance != Memory && (e.Address == "" || e.Edition == "") {
				t.Errorf("%s does not tell where and in which edition %s was read", p.ID, e.Term)
			}
		}
	}
	if !slices.IsSorted(ids) || books[BookComponent] != 1 || books[BookPractice] != 1 || books[BookOwn] != 1 {
		t.Errorf("profiles %v, books %v", ids, books)
	}
}

// TestPracticeSaysThatItIsNoSource holds that no custom is dressed up as a code.
func TestPracticeSaysThatItIsNoSource(t *testing.T) {
	for _, p := range Profiles() {
		for _, e := range p.Entries {
			custom := p.Book == BookPractice && e.Provenance == CommonPractice
			own := p.Book == BookOwn && e.Provenance == OwnRule
			published := e.Provenance == Read || e.Provenance == SecondHand || e.Provenance == Memory
			if !custom && !own && !published {
				t.Errorf("%s of the book %s is %s", e.Term, p.Book, e.Provenance)
			}
			if published != (e.Document != "") {
				t.Errorf("%s is %s and cites %q", e.Term, e.Provenance, e.Cite())
			}
		}
	}
}

// TestBooksByName: a file is found by the id in it, and the books that every run is
// judged by are those that can't be chosen.
func TestBooksByName(t *testing.T) {
	for id, read := range builtIn() {
		p := read()
		if p.ID != id || slices.Contains(alwaysAsked, id) != (p.Book != BookProfile) {
			t.Errorf("%s.json is the %s %s", id, p.Book, p.ID)
		}
	}
}

package sarif

import (
	"bytes"
	"encoding/json"
	"errors"
	"runtime"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"lowvent.example/cmd/lowvent/internal/render/rendertest"
	"lowvent.example/schema/report"
)

func at(file string, line int, pointer string) report.Place {
	return report.Place{File: file, Line: line, Column: 7, EndLine: line, EndColumn: 12, Pointer: pointer}
}

// someRun has one of each thing that the form tells in a way of its own.
func someRun() *report.Run {
	here := at("a b.json", 3, "/cylinders/A")
	waiver := report.Waiver{ID: "w1", Check: "cylinder.fill", Subject: "/cylinders/A", Reason: "till spring", DecidedBy: "owner", Until: "2027-04", State: report.WaiverInForce, Place: at("a b.json", 90, "/waivers/w1")}
	expired := waiver
	expired.ID, expired.State = "w0", report.WaiverExpired
	r := &report.Run{Program: report.Program{Name: "lowvent", Version: "v1"}, On: "2026-11-25", FailAt: report.Warning, Caution: report.Cautions(), Status: 2, Files: []report.FileReport{
		{File: "a b.json", SHA256: "00ff", Title: "A {van}", Gas: "not connected", Waivers: []report.Waiver{expired, waiver}, Findings: []report.Finding{
			{Check: "cylinder.fill", Subject: "/cylinders/A", Label: "cylinder A", Asks: "Is it?", Why: "It kills.", Word: report.Danger, Outcome: report.NotMet, Place: here, Waiver: &waiver,
				Parts: []report.Part{{Outcome: report.NotMet, Found: report.Words("10 kg"), Needed: report.Words("9 kg"), Place: here},
					{Outcome: report.NotMet, About: "sleeve", Found: report.Words("11 kg"), Needed: report.Words("9 kg"), Place: at("a b.json", 4, "/cylinders/A/x")}}},
			{Check: "cylinder.date", Subject: "/cylinders/A", Label: "cylinder A", Word: report.Caution, Outcome: report.NotMet, Place: here},
			{Check: "line.size", Subject: "/lines/x", Label: "line x", Word: report.Warning, Outcome: report.NotKnown, Reason: report.MissingInput, Place: here,
				Parts: []report.Part{{Outcome: report.NotKnown, Missing: []report.Missing{{What: "wall", Measure: "Use calipers.", Place: at("a b.json", 9, "/lines/x/wall")}}},
					{Outcome: report.NotKnown, Missing: []report.Missing{{What: "wall", Measure: "Use calipers.", Place: at("a b.json", 9, "/lines/x/wall")}}}}},
			{Check: "alarm.gas", Subject: "/spaces/c", Word: report.Warning, Outcome: report.Within, Place: here}}},
		{File: "broken.json", Faults: []report.Fault{{Place: report.Place{File: "broken.json"}, What: "it is empty", Expected: "a layout", Related: []report.Place{at("broken.json", 1, "")}}}}}}
	for i := range r.Files {
		r.Files[i].Counts = report.Count(r.Files[i].Findings, r.FailAt)
	}
	return r
}

func TestResults(t *testing.T) {
	type short struct{ Rule, Kind, Level, Begins string }
	want := []short{
		{"file.not-known", "fail", "error", "NOT KNOWN, and counted like not met: 1 question. line.size, line x. "},
		{"cylinder.fill", "fail", "error", "DANGER: cylinder.fill, cylinder A: not met: found 10 kg, needed 9 kg; sleeve: found 11 kg, needed 9 kg (a waiver is written for it, in force). Is it? It kills."},
		{"cylinder.date", "fail", "warning", "CAUTION: cylinder.date, cylinder A: not met."},
		{"line.size", "open", "none", "WARNING: line.size, line x: not known: /lines/x/wall. Measure: Use calipers."},
		{"file.unusable", "fail", "error", "UNUSABLE: it is empty; expected a layout. Nothing in the file was judged."},
	}
	b := build(someRun())
	var got []short
	for i, each := range b.out.Results {
		begins := each.Message.Text
		if i < len(want) && strings.HasPrefix(begins, want[i].Begins) {
			begins = want[i].Begins
		}
		got = append(got, short{each.RuleID, each.Kind, each.Level, begins})
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

func TestLevels(t *testing.T) {
	got := map[report.Signal]string{}
	for _, w := range report.Signals() {
		got[w] = level(w)
	}
	if diff := cmp.Diff(map[report.Signal]string{report.Danger: "error", report.Warning: "error", report.Caution: "warning", report.Notice: "note"}, got); diff != "" {
		t.Error(diff)
	}
}

func TestPlacesAndRelatedPlaces(t *testing.T) {
	b := build(someRun())
	fill := b.out.Results[1]
	if diff := cmp.Diff(&region{3, 7, 3, 12}, fill.Locations[0].Physical.Region); diff != "" || fill.Locations[0].Logical[0].FullName != "/cylinders/A" {
		t.Errorf("%s%+v", diff, fill.Locations)
	}
	if len(fill.Related) != 1 || fill.Related[0].Physical.Region.StartLine != 4 || fill.Related[0].Message.Text != "not met: sleeve: found 11 kg, needed 9 kg" {
		t.Errorf("the further part is told as %+v", fill.Related)
	}
	if size := b.out.Results[3]; len(size.Related) != 1 || size.Related[0].Message.Text != "not stated: wall; to be measured: Use calipers." {
		t.Errorf("what is missing twice is told as %+v", size.Related)
	}
	if fault := b.out.Results[4]; fault.Locations[0].Physical.Region != nil || len(fault.Related) != 1 {
		t.Errorf("a fault without a line is told as %+v", fault)
	}
}

func TestSuppressions(t *testing.T) {
	for _, tt := range []struct {
		name   string
		accept bool
		want   []string
	}{
		{"waivers are not accepted: no viewer may hide what still counts", false, []string{"w1 inSource underReview 90", "w0 inSource rejected 90"}},
		{"waivers are accepted", true, []string{"w1 inSource accepted 90", "w0 inSource rejected 90"}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			r := someRun()
			r.Accept = tt.accept
			var got []string
			for _, s := range build(r).out.Results[1].Suppressions {
				id := strings.TrimPrefix(strings.Split(s.Justification, ",")[0], "Waiver ")
				line, _ := json.Marshal(s.Location.Physical.Region.StartLine)
				got = append(got, id+" "+s.Kind+" "+s.Status+" "+string(line))
			}
			if diff := cmp.Diff(tt.want, got); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// TestNotKnownIsCounted: the result that counts what is not known follows the threshold
// and accepted waivers, as the exit status does.
func TestNotKnownIsCounted(t *testing.T) {
	unknown := func(w report.Signal, waived bool) report.Finding {
		f := report.Finding{Check: "a.b", Subject: "/x", Word: w, Outcome: report.NotKnown}
		if waived {
			f.Waiver = &report.Waiver{State: report.WaiverInForce}
		}
		return f
	}
	for _, tt := range []struct {
		name   string
		f      report.Finding
		failAt report.Signal
		accept bool
		want   bool
	}{
		{"danger", unknown(report.Danger, false), report.Warning, false, true},
		{"warning below the threshold", unknown(report.Warning, false), report.Danger, false, false},
		{"caution never counts", unknown(report.Caution, false), report.Notice, false, false},
		{"waived, and waivers are not accepted", unknown(report.Danger, true), report.Warning, false, true},
		{"waived, and waivers are accepted", unknown(report.Danger, true), report.Warning, true, false},
	} {
		t.Run(tt.name, func(t *testing.T) {
			b := build(&report.Run{FailAt: tt.failAt, Accept: tt.accept, Files: []report.FileReport{{File: "x", Findings: []report.Finding{tt.f}}}})
			if got := b.out.Results[0].RuleID == notKnownRule; got != tt.want {
				t.Errorf("%+v", b.out.Results)
			}
			if last := b.out.Results[len(b.out.Results)-1]; last.RuleID != "a.b" || last.Kind != "open" {
				t.Errorf("the question itself is %+v", last)
			}
		})
	}
}

func TestAddresses(t *testing.T) {
	tests := []struct{ file, uri, base string }{
		{"layout.json", "layout.json", baseID}, {"./van/layout.json", "van/layout.json", baseID}, {"../a//b.json", "../a/b.json", baseID},
		{"a b.json", "a%20b.json", baseID}, {"100%.json", "100%25.json", baseID}, {"a?b#c.json", "a%3Fb%23c.json", baseID},
		{"c:x.json", "./c:x.json", baseID}, {"::error::.json", "./::error::.json", baseID}, {"a\nb\".json", "a%0Ab%22.json", baseID},
		{"é.json", "%C3%A9.json", baseID}, {"\xff.json", "%FF.json", baseID}, {"[x].json", "%5Bx%5D.json", baseID},
	}
	if runtime.GOOS != "windows" {
		tests = append(tests, struct{ file, uri, base string }{"/home/a b/x.json", "file:///home/a%20b/x.json", ""}, struct{ file, uri, base string }{"//x.json", "file:///x.json", ""})
	}
	for _, tt := range tests {
		got := address(tt.file)
		if got.URI != tt.uri || got.BaseID != tt.base {
			t.Errorf("%q: %q from %q, want %q from %q", tt.file, got.URI, got.BaseID, tt.uri, tt.base)
		}
	}
}

func TestStandardInputHasNoAddress(t *testing.T) {
	place := report.Place{File: "<stdin>", Line: 1, Column: 1, EndLine: 1, EndColumn: 2}
	b := build(&report.Run{Files: []report.FileReport{{File: "x.json"}, {File: "<stdin>", Title: "T", Findings: []report.Finding{{Check: "a.b", Outcome: report.NotMet, Place: place}}}}})
	if diff := cmp.Diff(artifactLocation{Index: new(1)}, b.out.Results[0].Locations[0].Physical.Artifact); diff != "" {
		t.Error(diff)
	}
	if a := b.out.Artifacts[1]; a.Location != nil || a.Description.Text != "Standard input: T" || a.Roles[1] != "standardStream" {
		t.Errorf("%+v", a)
	}
}

func TestTextsLeadNowhere(t *testing.T) {
	if got, want := say("a {0}", "[click](http://x)\n\x1b", "\\[]").Text, "a {{0}} [click] (http://x) \ufffd \\[]"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// TestTheHeadStandsWhereReadersLook: in the properties, the notifications, the program's
// own description; the result with the last words stands there as well.
func TestTheHeadStandsWhereReadersLook(t *testing.T) {
	out := build(someRun()).out
	var notes []string
	for _, n := range out.Invocations[0].Notifications {
		notes = append(notes, n.Level+": "+n.Message.Text)
	}
	want := []string{"note: " + report.Cautions()[0], "note: " + report.Cautions()[1],
		"note: Result of this file check: 2 files, of which 1 can't be used and 1 have findings at WARNING or above. " + report.KeepOff,
		"error: broken.json can't be used, and nothing in it was judged: 1 fault."}
	if diff := cmp.Diff(want, notes); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff(report.Cautions(), out.Properties.Cautions); diff != "" || !strings.Contains(out.Properties.Result, "Keep the gas off") {
		t.Errorf("%s%+v", diff, out.Properties)
	}
	if !strings.HasPrefix(out.Tool.Driver.Description.Text, report.Cautions()[0]) {
		t.Error(out.Tool.Driver.Description.Text)
	}
}

// TestFingerprintsOutliveMovedLines: when only lines move, no fingerprint changes, and
// two questions of a file never share one.
func TestFingerprintsOutliveMovedLines(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := rendertest.Run().Draw(t, "run")
		before := fingerprints(r)
		for i := range r.Files {
			for j := range r.Files[i].Findings {
				move(&r.Files[i].Findings[j].Place)
			}
			for j := range r.Files[i].Faults {
				move(&r.Files[i].Faults[j].Place)
			}
		}
		if diff := cmp.Diff(before, fingerprints(r)); diff != "" {
			t.Fatal(diff)
		}
		for i := range r.Files {
			seen := map[string]bool{}
			for _, f := range fingerprints(&report.Run{FailAt: r.FailAt, Files: r.Files[i : i+1]}) {
				if seen[f] && len(r.Files[i].Faults) == 0 {
					t.Fatalf("%q comes twice", f)
				}
				seen[f] = true
			}
		}
	})
}

func move(p *report.Place) {
	if p.Line > 0 {
		p.Line, p.EndLine = p.Line+17, p.EndLine+17
	}
}

func fingerprints(r *report.Run) []string {
	var all []string
	for _, each := range build(r).out.Results {
		all = append(all, each.Fingerprints["checkAndSubject/v1"])
	}
	return all
}

func TestRulesAreSortedAndCarryTheWorstWord(t *testing.T) {
	r := &report.Run{Files: []report.FileReport{{Findings: []report.Finding{{Check: "b.x", Asks: "B?", Word: report.Caution}, {Check: "a.x", Word: report.Notice}, {Check: "b.x", Asks: "B?", Word: report.Danger}}}}}
	var got []string
	for _, each := range rules(r) {
		got = append(got, each.ID+" "+each.Properties.Word+" "+each.Configuration.Level)
	}
	if diff := cmp.Diff([]string{"a.x NOTICE note", "b.x DANGER error", "file.not-known DANGER error", "file.unusable DANGER error"}, got); diff != "" {
		t.Error(diff)
	}
}

func TestStatusIsNeverTakenForApproval(t *testing.T) {
	for s, want := range map[int]string{0: "no pass of the installation", 1: "not met, or not known", 2: "can't be used"} {
		if got := status(s); !strings.Contains(got, want) {
			t.Errorf("%d: %q", s, got)
		}
	}
}

type noRoom struct{}

func (noRoom) Write([]byte) (int, error) { return 0, errors.New("no room on the disk") }

func TestWriteTellsWhatWentWrong(t *testing.T) {
	if err := Write(noRoom{}, someRun()); err == nil || err.Error() != "no room on the disk" {
		t.Errorf("the error is %v", err)
	}
	var out bytes.Buffer
	if err := Write(&out, someRun()); err != nil || !strings.HasSuffix(out.String(), "}\n") {
		t.Errorf("%v, %q", err, out.String())
	}
}

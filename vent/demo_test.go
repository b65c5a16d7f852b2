package vent_test

import (
	"context"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/gas"
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
	"lowvent.example/schema/unit"
	"lowvent.example/vent"
)

var update = flag.Bool("update", false, "rewrite the expected verdicts beside the demos and in the hazards; read the changes before you keep them")

const (
	layoutsFolder = "../testdata/layouts/"
	sorrelFile    = layoutsFolder + "sorrel.json"
	tealFile      = layoutsFolder + "teal.json"
	faultyFile    = layoutsFolder + "sorrel-faulty.json"
)

func allChecks() check.Set { return check.Join(gas.Checks(), vent.Checks()) }

func readDemo(t testing.TB, path string) *layout.Layout {
	t.Helper()
	l, faults := layout.ReadFile(path)
	if faults != nil {
		t.Fatal(faults)
	}
	return l
}

// judged runs every check over a layout by the code that it names, on the day
// that its papers were made for.
func judged(t testing.TB, l *layout.Layout) check.Result {
	t.Helper()
	name, _ := l.Where.Code.Get()
	codes, err := code.Use(name)
	if err != nil {
		t.Fatal(err)
	}
	day, err := unit.ParseDate("2026-11-25")
	if err != nil {
		t.Fatal(err)
	}
	result, err := check.Run(context.Background(), allChecks().WithoutDetail(), l, codes, check.Options{On: day, Workers: 1})
	if err != nil {
		t.Fatal(err)
	}
	return result
}

// subjectOf writes a finding's subject as the hazards and goldens do.
func subjectOf(f report.Finding) string {
	if f.Subject == "" {
		return "dwelling"
	}
	return strings.TrimPrefix(f.Subject, "/")
}

// verdict is a finding in one line, without the words and figures that may be
// put better one day.
func verdict(f report.Finding) string {
	return strings.TrimSpace(fmt.Sprintf("%s %s %s %s", f.Check, subjectOf(f), f.Outcome, f.Reason))
}

func verdicts(r check.Result) []string {
	var lines []string
	for _, f := range r.Findings {
		lines = append(lines, verdict(f))
	}
	slices.Sort(lines)
	return lines
}

// Nothing that could hurt anybody may be found in a good demo, and nothing in it
// may be left open: else no hazard patched onto it could be told apart.
func TestGoodDemosHaveNothingAmiss(t *testing.T) {
	for _, path := range []string{sorrelFile, tealFile} {
		t.Run(filepath.Base(path), func(t *testing.T) {
			toProve := 0
			for _, f := range judged(t, readDemo(t, path)).Findings {
				switch {
				case f.Outcome == report.NotKnown:
					t.Errorf("not known: %s, missing %v", verdict(f), f.Parts[0].Missing)
				case f.Counts(report.Warning):
					t.Errorf("counts towards the exit status: %s", verdict(f))
				case f.Outcome == report.NotMet && f.Waiver == nil:
					t.Errorf("not met and not waived: %s", verdict(f))
				case f.Reason == report.ToProve:
					toProve++
				}
			}
			if toProve < 5 {
				t.Errorf("%d findings for the fitter to prove; a demo in which hardly anything rests on a fitter's proof shows the wrong thing", toProve)
			}
		})
	}
}

// Each check must have something to say of Sorrel, so that a change in any of
// them shows in the golden.
func TestSorrelIsAskedEveryCheck(t *testing.T) {
	answered := map[string]bool{}
	for _, f := range judged(t, readDemo(t, sorrelFile)).Findings {
		asked := f.Reason != report.NoSubject
		answered[f.Check] = answered[f.Check] || asked
	}
	silent := map[string]string{"line.open-end": "Sorrel has no open end; Teal has a capped one", "outdoor-outlet.place": "Sorrel has no outlet outside; Teal has one",
		"fill-point.place": "Sorrel has no fill point; Teal has one", "room.solid-fuel": "Sorrel has no stove; Teal has one"}
	for _, c := range allChecks().Checks {
		if !answered[c.ID] && silent[c.ID] == "" {
			t.Errorf("%s says nothing of any thing of Sorrel", c.ID)
		}
	}
}

func TestTealsWaiverIsInForce(t *testing.T) {
	result := judged(t, readDemo(t, tealFile))
	var states []string
	for _, w := range result.Waivers {
		states = append(states, w.ID+" "+w.State)
	}
	if diff := cmp.Diff([]string{"range-sum " + report.WaiverInForce}, states); diff != "" {
		t.Error(diff)
	}
}

func TestDemoVerdicts(t *testing.T) {
	for _, path := range []string{sorrelFile, tealFile, faultyFile} {
		t.Run(filepath.Base(path), func(t *testing.T) {
			got := strings.Join(verdicts(judged(t, readDemo(t, path))), "\n") + "\n"
			golden := strings.TrimSuffix(path, ".json") + ".want"
			if *update {
				if err := os.WriteFile(golden, []byte(got), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(golden)
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(got, "\n")); diff != "" {
				t.Errorf("verdicts (-want +got):\n%s", diff)
			}
		})
	}
}

// TestFaultyDemoIsFoundOut names each fault that was built in and the finding
// that must speak of it, whatever else is found.
func TestFaultyDemoIsFoundOut(t *testing.T) {
	found := verdicts(judged(t, readDemo(t, faultyFile)))
	for fault, want := range map[string]string{
		"a spare cylinder in the galley cupboard":     "cylinder.outside-living cylinders/spare not-met",
		"a cylinder in service in an underfloor bay":  "cylinder.in-locker cylinders/B not-met",
		"a cylinder filled until no more would go in": "cylinder.fill cylinders/A not-met",
		"a low vent too small, over a mat":            "locker.low-vent lockers/skirt not-met",
		"a slide in the high vent":                    "locker.high-vent lockers/skirt not-met",
		"a conduit from the locker into the bay":      "locker.sealed lockers/skirt not-met",
		"the pipe through a rubber ring":              "locker.penetrations lockers/skirt not-met",
		"a cordless drill kept beside the cylinder":   "ignition.near-gas cylinders/A not-met",
		"a cable hole below the high vent":            "locker.vent-clear lockers/skirt not-met",
		"a second cylinder past the regulator":        "regulator.present appliances/fridge not-met",
		"a Y of two supplies that names one cylinder": "changeover.no-return changeovers/y-piece not-met",
		"a regulator for less than what hangs on it":  "regulator.capacity regulators/main not-met",
		"more pressure than the hob's plate allows":   "regulator.outlet regulators/main not-met",
		"a household hob made for mains gas":          "appliance.gas-kind appliances/hob not-met",
		"a water heater without a flue":               "appliance.room-sealed appliances/water not-met",
		"that hob in a bus":                           "appliance.listed appliances/hob not-met",
		"a burner that lets its gas run on":           "appliance.flame-guard appliances/hob not-met",
		"a water heater made for outdoors":            "appliance.outdoor-only appliances/water not-met",
		"a taped pipe end behind the drawers":         "line.open-end openEnds/old-oven not-met",
		"a wooden rack 45 cm over the hob":            "clearance.above appliances/hob not-met",
		"no carbon monoxide alarm where people sleep": "alarm.co spaces/berth not-met",
		"a propane alarm past its date":               "alarm.gas spaces/berth not-met",
		"a propane alarm at the height of a nose":     "alarm.gas spaces/studio not-met",
		"nobody looked below the bed":                 "survey.complete spaces/berth not-met",
		"a bay that nobody surveyed":                  "survey.complete spaces/tonewood-bay not-known missing-input",
		"a ring where a flare belongs":                "line.joints lines/trunk not-met",
		"a pipe bare in the hole of the floor":        "line.route lines/to-old-oven not-met",
		"a hose whose joints nobody tested":           "test.high-side lines/tail-A not-met",
		"pipes that no test covers":                   "test.pressure lines/to-hob not-met",
		"no certificate at all":                       "inspection.current dwelling not-met",
		"a spark in the same bay as the spare":        "ignition.near-gas cylinders/spare not-met",
	} {
		if !slices.Contains(found, want) {
			t.Errorf("%s: no finding %q", fault, want)
		}
	}
}

// TestTheYPieceIsLeftToTheFitter: where regulated gas and cylinder pressure meet, no
// finding on the piece offers an edit or leaves it to the owner, who would tidy the file
// and have the hazard gone from it.
func TestTheYPieceIsLeftToTheFitter(t *testing.T) {
	asked := map[string]bool{}
	for _, f := range judged(t, readDemo(t, faultyFile)).Findings {
		if f.Subject != "/changeovers/y-piece" || f.Outcome != report.NotMet {
			continue
		}
		asked[f.Check] = true
		if m := f.Parts[0].Mend; f.MayAct != report.LicensedFitter || m.Text != gas.PartSupplies || len(m.Set) != 0 {
			t.Errorf("%s: %s may act, by %+v", f.Check, f.MayAct, m)
		}
	}
	if diff := cmp.Diff(map[string]bool{"changeover.no-return": true, "layout.consistent": true}, asked); diff != "" {
		t.Error(diff)
	}
}

// TestNoTestIsNoReading: a line that no test covers is shown as that, not as one that
// held nothing at all.
func TestNoTestIsNoReading(t *testing.T) {
	n := 0
	for _, f := range judged(t, readDemo(t, faultyFile)).Findings {
		if (f.Check == "test.pressure" || f.Check == "test.tightness") && f.Outcome == report.NotMet {
			n++
			if p := f.Parts[0]; p.Found.Text != "no such test in the file" || p.Found.SI != nil || p.Short != nil || p.Needed.SI == nil {
				t.Errorf("%s: found %+v, needed %+v, short by %+v", verdict(f), p.Found, p.Needed, p.Short)
			}
		}
	}
	if n < 8 {
		t.Errorf("%d lines that no test covers; the demo has more", n)
	}
}

// Demos are read by people: they stay within a screen's width and end in one
// line feed.
func TestDemosReadWell(t *testing.T) {
	const widest = 190
	for _, path := range []string{sorrelFile, tealFile, faultyFile} {
		file, fault := source.ReadPath(path, source.DefaultLimits())
		if fault != nil {
			t.Fatal(fault)
		}
		text := string(file.Data)
		for i, line := range strings.Split(text, "\n") {
			if n := len([]rune(line)); n > widest && !strings.Contains(line, `"note"`) {
				t.Errorf("%s:%d: %d columns", path, i+1, n)
			}
			if strings.ContainsAny(line, "\t\r") || strings.TrimRight(line, " ") != line {
				t.Errorf("%s:%d: a tab or blanks at the end", path, i+1)
			}
		}
		if !strings.HasSuffix(text, "}\n") || strings.HasSuffix(text, "\n\n") {
			t.Errorf("%s does not end in one line feed", path)
		}
		if title, _ := readDemo(t, path).Title.Get(); !strings.Contains(title, "invented") {
			t.Errorf("%s: the title does not say that it is invented", path)
		}
	}
}

package main

import (
	"bytes"
	"encoding/json"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/santhosh-tekuri/jsonschema/v5"

	"lowvent.example/schema/report"
)

// swept runs a sweep over Sorrel on a given day and gives what it found, held against the
// published schema.
func swept(t *testing.T, args ...string) *report.Sweep {
	t.Helper()
	got := run(nil, append([]string{"trial", sorrel, "--on", "2026-11-25", "--format", "json"}, args...)...)
	if got.status != statusNothing || got.stderr != "" {
		t.Fatalf("status %d: %s%s", got.status, got.stderr, got.stdout)
	}
	c := jsonschema.NewCompiler()
	c.Draft = jsonschema.Draft2020
	if err := c.AddResource("sweep", bytes.NewReader(report.SweepSchema())); err != nil {
		t.Fatal(err)
	}
	var plain any
	d := json.NewDecoder(strings.NewReader(got.stdout))
	d.UseNumber()
	if err := d.Decode(&plain); err != nil {
		t.Fatal(err)
	}
	if err := c.MustCompile("sweep").Validate(plain); err != nil {
		t.Fatal(err)
	}
	var s report.Sweep
	if err := json.Unmarshal([]byte(got.stdout), &s); err != nil {
		t.Fatal(err)
	}
	return &s
}

func question(t *testing.T, s *report.Sweep, check string) *report.SweptQuestion {
	t.Helper()
	i := slices.IndexFunc(s.Turning, func(q report.SweptQuestion) bool { return q.Check == check })
	if i < 0 {
		t.Fatalf("%s does not turn", check)
	}
	return &s.Turning[i]
}

// TestSweepTurnsAtTheLimit: the questions turn where the text puts the limit, to within
// the resolution, and the text is cited.
func TestSweepTurnsAtTheLimit(t *testing.T) {
	tests := map[string]struct {
		args             []string
		check            string
		needed           float64 // SI
		document, clause string
		share            float64 // what part of the value the limit is held against
		step             float64
		below, above     string
	}{
		// 675 IAC 15-2-74(c)(2), read: vents of 2 % of the locker's floor, half of it low;
		// the floor is 0.90 m by 0.62 m, and 65 % of the mesh is open.
		"the low vent of the locker": {[]string{"--unset", "/lockers/skirt/vents/low-outer", "--sweep", gross + "=20 cm2..200 cm2"},
			"locker.low-vent", 0.01 * 0.90 * 0.62, "675 IAC 15-2-74", "(c)(2)", 0.65, 1e-5, "85.8 cm2", "85.9 cm2"},
		// 24 CFR 3280.204, read: 24 in over the cooktop, which is 609.6 mm.
		"over the hob": {[]string{"--sweep", "/tapeMeasures/hob-to-rack/is=20 in..32 in"},
			"clearance.above", 0.6096, "24 CFR 3280.204", "", 1, 0.000254, "23.99 in", "24 in"},
		"over the hob, in metres": {[]string{"--sweep", "/tapeMeasures/hob-to-rack/is=0.5 m..0.8 m/7"},
			"clearance.above", 0.6096, "24 CFR 3280.204", "", 1, 0.0001, "0.6095 m", "0.6096 m"},
	}
	for name, c := range tests {
		t.Run(name, func(t *testing.T) {
			q := question(t, swept(t, c.args...), c.check)
			if len(q.Turns) != 1 || len(q.Turns[0].Limits) != 1 {
				t.Fatalf("%+v", q.Turns)
			}
			turn := q.Turns[0]
			limit := turn.Limits[0]
			if limit.Source.Document != c.document || limit.Source.Clause != c.clause || limit.Source.Provenance != "read" || math.Abs(*limit.Needed.SI-c.needed) > 1e-12 {
				t.Errorf("limit %+v of %+v", limit.Needed, limit.Source)
			}
			if turn.Below.Written != c.below || turn.Above.Written != c.above || turn.Below.Ended != report.EndsNotMet || turn.Above.Ended != report.EndsWithin {
				t.Errorf("turns between %+v and %+v", turn.Below, turn.Above)
			}
			// Where a floor is reckoned in binary, a hair of it is rounded away (decisions, 6).
			if low, high := turn.Below.SI*c.share, turn.Above.SI*c.share; low >= *limit.Needed.SI || high < *limit.Needed.SI-1e-12 {
				t.Errorf("%v needed, between %v and %v", *limit.Needed.SI, low, high)
			}
			if width := turn.Above.SI - turn.Below.SI; math.Abs(width-c.step) > 1e-9 || *limit.Found.SI >= *limit.Needed.SI {
				t.Errorf("told to within %v, want %v; found %v where it is not met", width, c.step, *limit.Found.SI)
			}
		})
	}
}

// TestSweepIsTrialAtEachSide: on both sides of every turn, and at both ends, a trial with
// that value in its place ends as the sweep says.
func TestSweepIsTrialAtEachSide(t *testing.T) {
	const rack = "/tapeMeasures/hob-to-rack/is"
	s := swept(t, "--set", "/dwelling/sleeps=4", "--sweep", rack+"=20 in..32 in/5")
	ended := map[string]map[string]report.Ending{} // value, question
	for _, q := range s.Turning {
		put := func(value string, e report.Ending) {
			if ended[value] == nil {
				ended[value] = map[string]report.Ending{}
			}
			ended[value][q.Check+q.Subject] = e
		}
		put(s.Values[0].Written, q.Ended[0])
		put(s.Values[len(s.Values)-1].Written, q.Ended[len(q.Ended)-1])
		for _, turn := range q.Turns {
			put(turn.Below.Written, turn.Below.Ended)
			put(turn.Above.Written, turn.Above.Ended)
		}
	}
	if len(ended) < 6 {
		t.Fatalf("only %d values to try", len(ended))
	}
	for value, want := range ended {
		r, _ := tried(t, sorrel, "--set", "/dwelling/sleeps=4", "--set", rack+"="+value)
		got := map[string]report.Ending{}
		for i := range r.Files[0].Findings {
			f := &r.Files[0].Findings[i]
			if key := f.Check + f.Subject; want[key] != "" {
				got[key] = report.EndingOf(f)
			}
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%s (-sweep +trial)\n%s", value, diff)
		}
	}
}

// TestSweepTellsEveryTurn: the outlet of a regulator suits its appliances from the highest
// of their least pressures (10.5 inH2O, the hob's plate) up to the lowest of their highest
// (13 inH2O, the water heater's). Both turns are told, by rising value.
func TestSweepTellsEveryTurn(t *testing.T) {
	q := question(t, swept(t, "--sweep", "/regulators/main/outlet=6 inH2O..16 inH2O/6"), "regulator.outlet")
	var got []string
	for _, turn := range q.Turns {
		got = append(got, turn.Below.Written+" "+string(turn.Below.Ended), turn.Above.Written+" "+string(turn.Above.Ended))
	}
	if diff := cmp.Diff([]string{"10.49 inH2O not-met", "10.5 inH2O within", "13 inH2O within", "13.01 inH2O not-met"}, got); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
}

// TestSweepCounts: every question either turns or stands still.
func TestSweepCounts(t *testing.T) {
	s := swept(t, "--sweep", gross+"=1 cm2..300 cm2/4", "--unset", "/lockers/skirt/vents/low-outer")
	r, _ := tried(t, sorrel, "--unset", "/lockers/skirt/vents/low-outer")
	if n := len(s.Turning) + s.Steady.NotMet + s.Steady.NotKnown + s.Steady.Within + s.Steady.Others; n != len(r.Files[0].Findings) {
		t.Errorf("%d questions in the sweep, %d in the trial", n, len(r.Files[0].Findings))
	}
	for _, q := range s.Turning {
		if len(q.Ended) != len(s.Values) || len(q.Turns) == 0 {
			t.Errorf("%s: %d endings for %d values, %d turns", q.Check, len(q.Ended), len(s.Values), len(q.Turns))
		}
	}
	i := slices.IndexFunc(s.Figures, func(f report.SweptFigure) bool { return f.ID == "locker.low-vent-free-area" })
	if i < 0 || len(s.Figures[i].Values) != len(s.Values) || math.Abs(*s.Figures[i].Values[0]-0.65e-4) > 1e-12 {
		t.Errorf("figures %+v", s.Figures)
	}
	if len(s.Trial.Edits) != 2 || s.Trial.Edits[1].Pointer != "/lockers/skirt/vents/low-inner/evidence/gross" {
		t.Errorf("what is swept is not measured: %+v", s.Trial.Edits)
	}
}

// TestSweepIsTheSameForAnyNumberOfWorkers, in both forms.
func TestSweepIsTheSameForAnyNumberOfWorkers(t *testing.T) {
	for _, form := range sweepForms() {
		var first outcome
		for i, workers := range []string{"1", "2", "16"} {
			got := run(nil, "trial", sorrel, "--unset", "/lockers/skirt/vents/low-outer", "--sweep", gross+"=20 cm2..200 cm2/6", "--on", "2026-11-25", "--format", form, "--workers", workers)
			if i == 0 {
				first = got
			}
			if got != first || got.status != statusNothing {
				t.Errorf("%s with %s workers: status %d\n%s", form, workers, got.status, cmp.Diff(first.stdout, got.stdout))
			}
		}
	}
}

// TestSweepPage keeps to its columns, says what a sweep must say, and advises nothing.
func TestSweepPage(t *testing.T) {
	for width, count := range map[int]string{60: "70", 80: "9", 200: "5"} { // 60 columns are fewer than 70 values
		got := run(nil, "trial", sorrel, "--sweep", "/climate/coldest=-30 degC..10 degC/"+count, "--figure", "regulator.cold-draw", "--on", "2026-11-25", "--width", strconv.Itoa(width))
		inPage(t, got.stdout, width)
		says(t, got.stdout, "TRIAL of values that stand in no file: /climate/coldest from -30 degC to 10 degC", report.NoDwelling, report.Edge, report.Unseen, report.KeepOff,
			"which is no judgement and advises no value", "told to within 0.01 degC", "what the file says", "supply.cold-pressure, regulator main")
		for _, word := range []string{"passes", "pass at", "safe ", "recommend", "✓", "choose "} {
			if strings.Contains(strings.ToLower(got.stdout), word) {
				t.Errorf("a sweep says %q", word)
			}
		}
	}
}

// TestSweepFigure plots a figure that was asked for, and refuses one that does not change.
func TestSweepFigure(t *testing.T) {
	args := []string{"trial", sorrel, "--sweep", gross + "=20 cm2..200 cm2/5", "--on", "2026-11-25"}
	for _, name := range []string{"locker.low-vent-free-area", "locker.low-vent-free-area:/lockers/skirt", "locker.low-vent-free-area:lockers/skirt"} {
		got := run(nil, append(slices.Clone(args), "--figure", name)...)
		if got.status != statusNothing || strings.Count(got.stdout, "*") < 5 {
			t.Errorf("%s: status %d, %s\n%s", name, got.status, got.stderr, got.stdout)
		}
	}
	for name, want := range map[string]string{"locker.low-vent-free-aera": `did you mean "locker.low-vent-free-area"?`, "dwelling.connected-load": "does not change", "locker.low-vent-free-area:/lockers/other": "does not change"} {
		got := run(nil, append(slices.Clone(args), "--figure", name)...)
		if got.status != statusUnusable || !strings.Contains(got.stderr, want) || got.stdout != "" {
			t.Errorf("%s: status %d, %s", name, got.status, got.stderr)
		}
	}
}

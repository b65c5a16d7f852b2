package report_test

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

// TestBanner: a trial says that it is one, of which file, what was tried and what it is
// worth; a run over a file as it is says nothing of the kind.
func TestBanner(t *testing.T) {
	run := runWith()
	if got := run.Banner(); got != "" {
		t.Errorf("no trial, and the banner says %q", got)
	}
	run.Trial = &report.Trial{Of: "van.json", Edits: []report.TrialEdit{
		{Pointer: "/a/b", Old: `"20 cm2"`, New: `"40 cm2"`}, {Pointer: "/a/c", New: "true"}, {Pointer: "/a/d", Old: `"` + strings.Repeat("x", 90) + `"`}}}
	got := run.Banner()
	for _, want := range []string{"TRIAL of edits that stand in no file", `/a/b = "40 cm2" (the file says "20 cm2")`, "/a/c = true (the file does not state it)",
		"/a/d left out (the file says \"xxx", "x…)", "van.json is as it was", "a dwelling that does not exist", "nothing to hand to anybody"} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is missing in %q", want, got)
		}
	}
	if len(got) > 400 {
		t.Errorf("a long value fills the page: %q", got)
	}
}

// TestTrialFollowsTheSchema: compared, not comparable, nothing changed.
func TestTrialFollowsTheSchema(t *testing.T) {
	s := compiled(t)
	old, later := finding(report.Danger, report.Within, ""), finding(report.Danger, report.NotMet, "")
	changes := report.Told([]report.Change{{Turn: report.Worse, Old: &old, New: &later}, {Turn: report.Unasked, Old: &old}})
	want := []report.TrialChange{{Turn: report.Worse, Check: "a.b", Word: report.Danger, Was: report.Within, Is: report.NotMet},
		{Turn: report.Unasked, Check: "a.b", Word: report.Danger, Was: report.Within}}
	if diff := cmp.Diff(want, changes); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
	for _, changed := range [][]report.TrialChange{nil, report.Told(nil), changes} {
		run := runWith(later)
		run.Trial = &report.Trial{Of: "x.json", Edits: []report.TrialEdit{{Pointer: "/a", New: "1"}}, Changed: changed}
		if err := s.Validate(plain(t, run)); err != nil {
			t.Errorf("%v: %v", changed, err)
		}
	}
	if report.Told(nil) == nil {
		t.Error("nothing changed reads like nothing compared")
	}
	for _, turn := range report.Turns() {
		run := runWith()
		run.Trial = &report.Trial{Edits: []report.TrialEdit{}, Changed: []report.TrialChange{{Turn: turn, Word: report.Notice}}}
		if err := s.Validate(plain(t, run)); err != nil {
			t.Errorf("%s: %v", turn, err)
		}
	}
}

// TestSweepFollowsItsSchema holds every ending against the schema and against the
// findings that it comes from.
func TestSweepFollowsItsSchema(t *testing.T) {
	s := compile(t, report.SweepSchema())
	var ended []report.Ending
	words := map[string]bool{}
	for _, c := range []struct {
		outcome report.Outcome
		reason  report.Reason
		want    report.Ending
	}{
		{report.Within, report.ToProve, report.EndsWithin}, {report.NotMet, "", report.EndsNotMet}, {report.NotKnown, report.NotSurveyed, report.EndsNotKnown},
		{report.NotApplicable, report.NotCovered, report.EndsNotCovered}, {report.NotApplicable, report.AskFitter, report.EndsAskFitter},
		{report.NotApplicable, report.NoSubject, report.EndsNotApplies},
	} {
		f := finding(report.Danger, c.outcome, c.reason)
		if got := report.EndingOf(&f); got != c.want {
			t.Errorf("%s %s ends as %s", c.outcome, c.reason, got)
		}
		ended = append(ended, c.want)
	}
	ended = append(ended, report.EndingOf(nil))
	for _, each := range ended {
		words[each.Words()] = true
	}
	if len(words) != 7 {
		t.Errorf("%d endings read as %d", len(ended), len(words))
	}
	one := 1.0
	sweep := report.Sweep{Format: report.SweepFormat, On: "2026-11-25", Caution: report.Cautions(), Trial: &report.Trial{Edits: []report.TrialEdit{}},
		Code: &report.Code{}, Overlay: &report.Overlay{Limits: []report.LocalLimit{{State: report.LocalInForce}}}, Values: []report.SweptValue{{Written: "1 m", SI: 1}},
		Turning: []report.SweptQuestion{{Word: report.Danger, Ended: ended, Turns: []report.SweptTurn{{
			Below:  report.SweptSide{SweptValue: report.SweptValue{Written: "1 m", SI: 1}, Ended: report.EndsNotMet},
			Above:  report.SweptSide{SweptValue: report.SweptValue{Written: "2 m", SI: 2}, Ended: report.EndsWithin},
			Limits: []report.SweptLimit{{Found: report.Quantity(unit.KindLength, 1), Needed: report.Words("x"), Source: &report.Source{Provenance: "read"}}}}}}},
		Figures: []report.SweptFigure{{Values: []*float64{nil, &one}}}}
	if err := s.Validate(plain(t, sweep)); err != nil {
		t.Error(err)
	}
	sweep.Turning[0].Ended = []report.Ending{"good"}
	if err := s.Validate(plain(t, sweep)); err == nil {
		t.Error("the schema lets an ending pass that is none")
	}
}

// TestTheTwoSchemasAgree: what the schema of sweeps shares with that of reports reads
// alike in both.
func TestTheTwoSchemasAgree(t *testing.T) {
	var run, sweep struct {
		Defs map[string]any `json:"$defs"`
	}
	if err := json.Unmarshal(report.Schema(), &run); err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(report.SweepSchema(), &sweep); err != nil {
		t.Fatal(err)
	}
	shared := 0
	for name, def := range sweep.Defs {
		if of, is := run.Defs[name]; is {
			shared++
			if diff := cmp.Diff(of, def); diff != "" {
				t.Errorf("%s (-report +sweep)\n%s", name, diff)
			}
		}
	}
	if shared < 10 {
		t.Errorf("only %d definitions are shared", shared)
	}
}

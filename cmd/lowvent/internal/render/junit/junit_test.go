package junit

import (
	"bytes"
	"errors"
	"fmt"
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"lowvent.example/cmd/lowvent/internal/render/rendertest"
	"lowvent.example/cmd/lowvent/internal/render/saying"
	"lowvent.example/schema/report"
)

func written(t interface {
	Helper()
	Fatalf(string, ...any)
}, r *report.Run) *suites {
	t.Helper()
	var out bytes.Buffer
	if err := Write(&out, r); err != nil {
		t.Fatalf("%v", err)
	}
	root, err := read(out.String())
	if err != nil {
		t.Fatalf("%v\n%s", err, out.String())
	}
	return root
}

// TestEveryReportIsWellFormed: whatever the report holds, the document keeps the grammar,
// its counts agree with what is there and with the exit status, and every finding that is
// to be told is in it.
func TestEveryReportIsWellFormed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := rendertest.Run().Draw(t, "run")
		root := written(t, r)
		status := 0
		switch {
		case root.Errors > 0:
			status = 2
		case root.Failures > 0:
			status = 1
		}
		if status != r.Status {
			t.Fatalf("%d errors and %d failures, exit status %d", root.Errors, root.Failures, r.Status)
		}
		told := 0
		for _, s := range root.Suites {
			for _, c := range s.Cases {
				for _, o := range []*outcome{c.Failure, c.Skipped} {
					if o != nil && o.Type != "" {
						told++
					}
				}
			}
		}
		if want := len(saying.Worst(r)); told != want {
			t.Fatalf("%d findings told, want %d", told, want)
		}
	})
}

func TestCases(t *testing.T) {
	waiver := &report.Waiver{State: report.WaiverInForce}
	finding := func(w report.Signal, o report.Outcome, why report.Reason) report.Finding {
		return report.Finding{Check: "a.b", Label: "thing x", Word: w, Outcome: o, Reason: why}
	}
	waived := finding(report.Danger, report.NotMet, "")
	waived.Waiver = waiver
	tests := []struct {
		name   string
		f      report.Finding
		accept bool
		want   string // element, type and message
	}{
		{"not met", finding(report.Danger, report.NotMet, ""), false, "failure DANGER DANGER: not met"},
		{"not known, and counts like not met", finding(report.Warning, report.NotKnown, report.MissingInput), false, "failure WARNING WARNING: not known"},
		{"not known, and does not count", finding(report.Caution, report.NotKnown, report.NotSurveyed), false, "skipped CAUTION CAUTION: not known; the finding stands, and is below what counts towards the exit status"},
		{"not met below the threshold", finding(report.Notice, report.NotMet, ""), false, "skipped NOTICE NOTICE: not met; the finding stands, and is below what counts towards the exit status"},
		{"waived", waived, false, "failure DANGER DANGER: not met (a waiver is written for it, in force)"},
		{"waived, and waivers are accepted", waived, true, "skipped DANGER DANGER: not met (a waiver is written for it, in force); the finding stands, and by --accept-waivers does not count towards the exit status"},
		{"within", finding(report.Danger, report.Within, ""), false, "out Within limit, as stated. Nothing was inspected."},
		{"within, to be proved", finding(report.Danger, report.Within, report.ToProve), false, "skipped  stated, and only a fitter can prove it"},
		{"not covered", finding(report.Danger, report.NotApplicable, report.NotCovered), false, "skipped  the code does not cover it"},
		{"ask the fitter", finding(report.Danger, report.NotApplicable, report.AskFitter), false, "skipped  for the fitter to answer"},
		{"none", finding(report.Danger, report.NotApplicable, report.NoSubject), false, "skipped  the file states that there is none"},
		{"exempt", finding(report.Danger, report.NotApplicable, report.RuleExempts), false, "skipped  the question does not arise"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			c := findingCase(&report.Run{FailAt: report.Warning, Accept: tt.accept}, &tt.f)
			got := "out " + c.Out
			for element, o := range map[string]*outcome{"failure": c.Failure, "error": c.Error, "skipped": c.Skipped} {
				if o != nil {
					got = fmt.Sprintf("%s %s %s", element, o.Type, o.Message)
				}
			}
			if diff := cmp.Diff(tt.want, got); diff != "" || c.Class != "a.b" || c.Name != "thing x" {
				t.Errorf("%s%+v", diff, c)
			}
		})
	}
}

func TestAnUnusableFile(t *testing.T) {
	root := written(t, &report.Run{FailAt: report.Warning, Caution: report.Cautions(), Files: []report.FileReport{{File: "x.json", Faults: []report.Fault{
		{Place: report.Place{File: "x.json", Line: 2, Column: 3, Pointer: "/a"}, What: "twice", Mend: "drop one", Related: []report.Place{{File: "x.json", Line: 1, Column: 1}}}}}}})
	c := root.Suites[0].Cases[0]
	if root.Errors != 1 || c.Class != "file.unusable" || c.Name != "x.json:2:3 /a" || c.Error.Type != "UNUSABLE" || c.Error.Message != "twice; drop one" || c.Error.Body != "\nx.json:2:3\nsee also x.json:1:1\n" {
		t.Errorf("%+v %+v", c, c.Error)
	}
}

// TestTheWordsThatEveryReportCarries: each suite begins with the cautions and ends with
// the last words, and every name says that this is a check of a file.
func TestTheWordsThatEveryReportCarries(t *testing.T) {
	root := written(t, &report.Run{FailAt: report.Warning, Accept: true, On: "2026-11-25", Caution: report.Cautions(), Files: []report.FileReport{{File: "x.json", Title: "T", Gas: "off", SHA256: "00"}, {File: "y.json"}}})
	if !strings.Contains(root.Name, "file check, not inspection") {
		t.Error(root.Name)
	}
	for i, s := range root.Suites {
		if s.Name != "file check, not inspection: "+[]string{"x.json", "y.json"}[i] {
			t.Error(s.Name)
		}
		if s.Properties[0] != (property{"caution", report.Cautions()[0]}) || s.Properties[1] != (property{"caution", report.Cautions()[1]}) {
			t.Errorf("%+v", s.Properties)
		}
		if last := s.Properties[len(s.Properties)-1]; last != (property{"keep off", report.KeepOff}) || !strings.HasSuffix(s.Out, report.KeepOff) {
			t.Errorf("%+v, %q", last, s.Out)
		}
	}
	names := map[string]string{}
	for _, p := range root.Suites[0].Properties {
		names[p.Name] = p.Value
	}
	for name, want := range map[string]string{"title": "T", "gas now": "off", "sha256": "00", "judged on": "2026-11-25", "counts from": "WARNING", "waivers": "accepted: findings with a waiver in force do not count"} {
		if names[name] != want {
			t.Errorf("%s is %q", name, names[name])
		}
	}
}

// TestNothingReadsAsApproval: what is within its limit is never told as passed or safe.
func TestNothingReadsAsApproval(t *testing.T) {
	var out bytes.Buffer
	if err := Write(&out, &report.Run{FailAt: report.Warning, Caution: report.Cautions(), Files: []report.FileReport{{File: "x.json", Findings: []report.Finding{{Check: "a.b", Outcome: report.Within}}}}}); err != nil {
		t.Fatal(err)
	}
	if word := regexp.MustCompile(`(?i)\b(safe|pass(ed)?|ok|success|compliant|approved)\b`).FindString(out.String()); word != "" {
		t.Errorf("it says %q:\n%s", word, out.String())
	}
}

func TestDetailsTellFurtherPlaces(t *testing.T) {
	here, there := report.Place{File: "x", Line: 1, Column: 2}, report.Place{File: "x", Line: 3, Column: 4}
	f := report.Finding{Asks: "Is it?", Outcome: report.NotMet, Place: here, Parts: []report.Part{{Outcome: report.NotMet, Place: here},
		{Outcome: report.NotMet, Place: there, Found: report.Words("2"), Needed: report.Words("1")}, {Outcome: report.Within, Place: report.Place{File: "x", Line: 9}}}}
	if got, want := details(&f), "\nx:1:2\nIs it?\nx:3:4: not met: found 2, needed 1\n"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

type room struct{ left int }

func (r *room) Write(p []byte) (int, error) {
	if r.left -= len(p); r.left < 0 {
		return 0, errors.New("no room on the disk")
	}
	return len(p), nil
}

func TestWriteTellsWhatWentWrong(t *testing.T) {
	r := &report.Run{FailAt: report.Warning, Files: []report.FileReport{{File: "x.json"}}}
	var whole bytes.Buffer
	if err := Write(&whole, r); err != nil {
		t.Fatal(err)
	}
	for left := range whole.Len() {
		if err := Write(&room{left}, r); err == nil || err.Error() != "no room on the disk" {
			t.Fatalf("with room for %d bytes of %d: %v", left, whole.Len(), err)
		}
	}
}

func FuzzTexts(f *testing.F) {
	for _, each := range rendertest.Hostile() {
		f.Add(each)
	}
	f.Fuzz(func(t *testing.T, s string) {
		root := written(t, &report.Run{FailAt: report.Warning, Files: []report.FileReport{{File: s, Title: s, Findings: []report.Finding{
			{Check: s, Label: s, Asks: s, Word: report.Danger, Outcome: report.NotMet, Place: report.Place{File: s}}}}}})
		if root.Failures != 1 || len(root.Suites[0].Cases) != 1 {
			t.Errorf("%+v", root)
		}
	})
}

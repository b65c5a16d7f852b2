package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/check"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

// in gives the path of a layout of this package's tests.
func in(t *testing.T, name string) string {
	t.Helper()
	return filepath.Join(home(t), "testdata", "layouts", name)
}

func TestExitStatus(t *testing.T) {
	bare, sedge, broken := in(t, "bare.json"), in(t, "sedge.json"), in(t, "broken.json")
	tests := []struct {
		name string
		want int
		args []string
	}{
		{"nothing found", statusNothing, []string{"check", bare}},
		{"findings", statusFindings, []string{"check", sedge}},
		{"findings beside a good file", statusFindings, []string{"check", bare, sedge}},
		{"a file that can't be used", statusUnusable, []string{"check", broken}},
		{"the worst of all counts", statusUnusable, []string{"check", sedge, broken, bare}},
		{"no such file", statusUnusable, []string{"check", "nowhere.json"}},
		{"no file named", statusUnusable, []string{"check"}},
		{"no command", statusUnusable, nil},
		{"an unknown flag", statusUnusable, []string{"check", "--no-such", bare}},
		{"an unknown code", statusUnusable, []string{"check", "--code", "nope", bare}},
		{"looking something up", statusNothing, []string{"explain"}},
		{"a working is no judgement", statusNothing, []string{"explain", "locker.low-vent", sedge}},
		{"a working of a file that can't be used", statusUnusable, []string{"explain", "locker.low-vent", broken}},
		{"help", statusNothing, []string{"help", "check"}},
		{"version", statusNothing, []string{"version"}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got := run(nil, tt.args...)
			if got.status != tt.want {
				t.Errorf("exit status %d, want %d\n%s%s", got.status, tt.want, got.stdout, got.stderr)
			}
			if got.status == statusUnusable && got.stdout == "" && !strings.HasPrefix(got.stderr, "lowvent: ") {
				t.Errorf("nothing says what was wrong: %q", got.stderr)
			}
		})
	}
}

func TestStatusHangsOnThresholdNotOnForm(t *testing.T) {
	for _, name := range []string{"bare.json", "willow.json", "sedge.json", "broken.json"} {
		for _, word := range signals() {
			var before int
			for i, form := range formatNames() {
				got := run(nil, "check", "--fail-at", word, "--format", form, in(t, name))
				if i > 0 && got.status != before {
					t.Errorf("%s at %s: status %d as %s, and %d as %s", name, word, got.status, form, before, formatNames()[0])
				}
				before = got.status
			}
		}
	}
}

// oneCheck is the program with a single check, asked of the dwelling.
func oneCheck(word report.Signal, within bool) func(*app) {
	d := check.Descriptor{ID: "test.one", Asks: "Is it so?", Why: "Because.", Word: word, MayAct: report.Owner}
	c := check.ForDwelling(d, func(s *check.Sheet, l *layout.Layout) check.Ruling {
		return check.Is(s, within, check.Duty{}, "found", "needed")
	})
	return func(a *app) { a.parts = []part{{"test", "Test", check.Set{Checks: []check.Check{c}}}} }
}

// TestWaivers holds that a waived finding keeps the exit status at 1, that it does not
// where that was asked, and that the report tells of it either way.
func TestWaivers(t *testing.T) {
	waived := func(state, check, until string) string {
		return write(t, state+".json", `{"format":"lowvent-layout/1", "waivers": {"w": {"check": "`+check+`", "reason": "r", "decidedBy": "d", "until": "`+until+`"}}}`)
	}
	for _, tt := range []struct {
		state, path   string
		status        int // with --accept-waivers
		told, unasked string
	}{
		{report.WaiverInForce, waived("in-force", "test.one", "2099"), statusNothing, "1 not met and 0 not known at WARNING or above, of which 1 waived and by --accept-waivers not counted", "of which 1 waived;"},
		{report.WaiverExpired, waived("expired", "test.one", "2001"), statusFindings, "w, expired", ""},
		{report.WaiverUnused, waived("unused", "test.two", "2099"), statusFindings, "w, unused", ""},
	} {
		if got := run(oneCheck(report.Warning, false), "check", tt.path); got.status != statusFindings {
			t.Errorf("%s: status %d", tt.state, got.status)
		} else if says(t, got.stdout, tt.unasked); strings.Contains(flat(got.stdout), "accept-waivers") {
			t.Errorf("%s: told as asked for:\n%s", tt.state, got.stdout)
		}
		got := run(oneCheck(report.Warning, false), "check", "--accept-waivers", tt.path)
		if got.status != tt.status {
			t.Errorf("%s, accepted: status %d", tt.state, got.status)
		}
		says(t, got.stdout, tt.told)
	}
	two := func(a *app) {
		oneCheck(report.Danger, false)(a)
		other := check.ForDwelling(check.Descriptor{ID: "test.other", Asks: "Is it?", Why: "Because.", Word: report.Danger, MayAct: report.Owner},
			func(s *check.Sheet, l *layout.Layout) check.Ruling {
				return check.Is(s, false, check.Duty{}, "found", "needed")
			})
		a.parts[0].set.Checks = append(a.parts[0].set.Checks, other)
	}
	if got := run(two, "check", "--accept-waivers", waived("one-of-two", "test.one", "2099")); got.status != statusFindings {
		t.Errorf("one of two findings waived: status %d", got.status)
	}
}

func TestThreshold(t *testing.T) {
	path := write(t, "x.json", `{"format":"lowvent-layout/1"}`)
	for _, word := range report.Signals() {
		for _, failAt := range report.Signals() {
			want := statusNothing
			if word.Rank() >= failAt.Rank() {
				want = statusFindings
			}
			if got := run(oneCheck(word, false), "check", "--fail-at", string(failAt), path); got.status != want {
				t.Errorf("%s not met, at a threshold of %s: status %d, want %d", word, failAt, got.status, want)
			}
		}
		if got := run(oneCheck(word, true), "check", "--fail-at", "NOTICE", path); got.status != statusNothing {
			t.Errorf("%s within: status %d", word, got.status)
		}
	}
}

func write(t *testing.T, name, content string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, []byte(content), 0o666); err != nil {
		t.Fatal(err)
	}
	return path
}

func TestFaultOfTheProgram(t *testing.T) {
	clock := func(a *app) { a.now = func() time.Time { panic("the clock has stopped") } }
	subjects := func(a *app) {
		c := check.ForItems(check.Descriptor{ID: "test.panics"}, func(*layout.Layout) ([]layout.Item, *layout.Spot, bool) { panic("no subjects") })
		a.parts = []part{{"test", "Test", check.Set{Checks: []check.Check{c}}}}
	}
	clause := func(a *app) {
		c := check.ForDwelling(check.Descriptor{ID: "test.panics"}, func(*check.Sheet, *layout.Layout) check.Ruling { panic("no ruling") })
		a.parts = []part{{"test", "Test", check.Set{Checks: []check.Check{c}}}}
	}
	tests := []struct {
		name, says string
		breaks     func(*app)
	}{{"in the command", "the clock has stopped", clock}, {"in a goroutine that judges a file", "no subjects", subjects}, {"in a worker of the run", "no ruling", clause}}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got := run(tt.breaks, "check", in(t, "willow.json"))
			if got.status != statusFault || got.stdout != "" {
				t.Errorf("status %d with output %q", got.status, got.stdout)
			}
			if !strings.Contains(got.stderr, "a fault of the program, not of your file: "+tt.says) || !strings.Contains(got.stderr, "report it") {
				t.Errorf("the message does not help: %s", got.stderr)
			}
			if strings.Contains(got.stderr, "goroutine") {
				t.Errorf("a stack that nobody asked for: %s", got.stderr)
			}
			traced := run(func(a *app) {
				tt.breaks(a)
				a.env = func(name string) (string, bool) { return "1", name == traceVariable }
			}, "check", in(t, "willow.json"))
			if traced.status != statusFault || !strings.Contains(traced.stderr, "goroutine") {
				t.Errorf("no stack although it was asked for: %s", traced.stderr)
			}
		})
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("no room on the disk") }

func TestStandardOutputThatCantBeWritten(t *testing.T) {
	for _, args := range [][]string{{"check", in(t, "willow.json")}, {"explain"}, {"codes"}, {"version"}, {"schema", "code"}, {"starter", "--out", "-"}} {
		got := run(func(a *app) { a.stdout = full{} }, args...)
		if got.status != statusUnusable || !strings.Contains(got.stderr, "no room on the disk") {
			t.Errorf("%v: status %d, %q", args, got.status, got.stderr)
		}
	}
}

func TestColourPrecedence(t *testing.T) {
	tests := []struct {
		flag     string
		env      map[string]string
		terminal bool
		want     bool
	}{
		{"auto", nil, true, true},
		{"auto", nil, false, false},
		{"always", nil, false, true},
		{"always", map[string]string{"NO_COLOR": "1", "TERM": "dumb"}, false, true},
		{"never", map[string]string{"CLICOLOR_FORCE": "1"}, true, false},
		{"auto", map[string]string{"NO_COLOR": "1"}, true, false},
		{"auto", map[string]string{"NO_COLOR": ""}, true, true},
		{"auto", map[string]string{"NO_COLOR": "1", "CLICOLOR_FORCE": "1"}, true, false},
		{"auto", map[string]string{"CLICOLOR_FORCE": "1"}, false, true},
		{"auto", map[string]string{"CLICOLOR_FORCE": "0"}, false, false},
		{"auto", map[string]string{"CLICOLOR_FORCE": "1", "TERM": "dumb"}, false, true},
		{"auto", map[string]string{"TERM": "dumb"}, true, false},
		{"auto", map[string]string{"TERM": "xterm"}, true, true},
	}
	for _, tt := range tests {
		t.Run(fmt.Sprint(tt), func(t *testing.T) {
			a, _, _ := bench(func(a *app) {
				a.env = func(name string) (string, bool) { v, ok := tt.env[name]; return v, ok }
			})
			if got := a.coloured(tt.flag, tt.terminal); got != tt.want {
				t.Errorf("coloured = %t, want %t", got, tt.want)
			}
		})
	}
}

func TestWidthOfThePage(t *testing.T) {
	tests := []struct {
		name     string
		args     []string
		terminal int // 0 is none
		most     int
		least    int
	}{
		{"no terminal", nil, 0, text.Usual, text.Usual - 5},
		{"a terminal", nil, 100, 100, 95},
		{"a narrow terminal", nil, 30, text.Narrowest, text.Narrowest - 5},
		{"a very wide terminal", nil, 500, text.Widest, text.Widest - 30},
		{"asked for", []string{"--width", "90"}, 120, 90, 85},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got := run(func(a *app) { a.terminal = func() (int, bool) { return tt.terminal, tt.terminal > 0 } },
				append([]string{"check", "--color", "never", in(t, "sedge.json")}, tt.args...)...)
			widest := 0
			for line := range strings.SplitSeq(got.stdout, "\n") {
				widest = max(widest, text.Width(line))
			}
			if widest > tt.most || widest < tt.least {
				t.Errorf("the widest line has %d columns, want %d to %d", widest, tt.least, tt.most)
			}
		})
	}
}

func TestWorkersChangeNothing(t *testing.T) {
	args := []string{"check", "--working", in(t, "willow.json"), in(t, "broken.json"), in(t, "sedge.json")}
	for _, form := range formatNames() {
		var first outcome
		for i, n := range []string{"1", "2", "3", "16", "256"} {
			got := run(nil, append(args, "--format", form, "--workers", n)...)
			if i == 0 {
				first = got
			}
			if diff := cmp.Diff(first, got, cmp.AllowUnexported(outcome{})); diff != "" {
				t.Errorf("%s by %s workers differs from that by one:\n%s", form, n, diff)
			}
		}
	}
}

func TestTheReportSaysWhatMadeIt(t *testing.T) {
	got := run(nil, "check", "--format", "json", "--fail-at", "CAUTION", "--on", "2027-02-03", in(t, "willow.json"), in(t, "broken.json"))
	var back report.Run
	if err := json.Unmarshal([]byte(got.stdout), &back); err != nil {
		t.Fatal(err)
	}
	if back.Format != report.Format || back.Program != (report.Program{Name: "lowvent", Version: "v0.0.0-test"}) ||
		back.On != "2027-02-03" || back.FailAt != report.Caution || back.Status != got.status {
		t.Errorf("the head of the report is wrong: %+v", back)
	}
	if diff := cmp.Diff(report.Cautions(), back.Caution); diff != "" {
		t.Error(diff)
	}
	if len(back.Files) != 2 || len(back.Files[0].Findings) == 0 || len(back.Files[1].Faults) != 3 || len(back.Files[1].Findings) != 0 {
		t.Errorf("the files of the report are wrong: %d", len(back.Files))
	}
	for _, f := range back.Files[0].Findings {
		for _, part := range f.Parts {
			if len(part.Working) > 0 {
				t.Fatalf("a working that was not asked for, in %s", f.Check)
			}
		}
	}
}

func TestTodayIsTheClocks(t *testing.T) {
	got := run(func(a *app) {
		a.now = func() time.Time { return time.Date(2031, 4, 1, 23, 59, 0, 0, time.FixedZone("far", 9*3600)) }
	}, "check", in(t, "willow.json"))
	if !strings.Contains(got.stdout, "Judged on 2031-04-01") {
		t.Errorf("not judged as on the clock's own day:\n%s", got.stdout)
	}
	if got.status != statusFindings || !strings.Contains(got.stdout, "alarm.gas, space cabin") {
		t.Errorf("an alarm whose date is over raised nothing:\n%s", got.stdout)
	}
}

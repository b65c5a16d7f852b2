package main

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"github.com/fsnotify/fsnotify"
	"github.com/google/go-cmp/cmp"

	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/cmd/lowvent/internal/watch"
	"lowvent.example/schema/check"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

// pages gives each page that is printed to a test that waits for it.
type pages chan string

func (p pages) Write(b []byte) (int, error) {
	p <- string(b)
	return len(b), nil
}

// desk is a check that watches, with a test that saves files and reads the pages.
type desk struct {
	t         *testing.T
	pages     pages
	changed   chan fsnotify.Event
	trouble   chan error
	rest      chan time.Time // ends every timer
	interrupt context.CancelFunc
	stderr    bytes.Buffer
	status    chan int
}

// watches starts "check --watch" with a made-up disk, timer and interrupt.
func watches(t *testing.T, change func(*app), args ...string) *desk {
	d := &desk{t: t, pages: make(pages), changed: make(chan fsnotify.Event), trouble: make(chan error), rest: make(chan time.Time), status: make(chan int, 1)}
	ctx, cancel := context.WithCancel(t.Context())
	d.interrupt = cancel
	a, _, _ := bench(change)
	a.stdout, a.stderr = d.pages, &d.stderr
	a.outside = surroundings{
		events: func() (*watch.Events, error) {
			return &watch.Events{Changed: d.changed, Trouble: d.trouble, Follow: func(string) error { return nil }, Close: func() error { return nil }}, nil
		},
		after:     func(time.Duration) <-chan time.Time { return d.rest },
		interrupt: func(context.Context) (context.Context, context.CancelFunc) { return ctx, cancel },
	}
	go func() { d.status <- a.run(append([]string{"check", "--watch"}, args...)) }()
	return d
}

// page waits for the next page, and holds that it is one whole report.
func (d *desk) page(want ...string) string {
	d.t.Helper()
	var got string
	select {
	case got = <-d.pages:
	case status := <-d.status:
		d.t.Fatalf("it ended with status %d instead: %s", status, &d.stderr)
	}
	for line := range strings.SplitSeq(got, "\n") {
		if text.Width(line) > text.Usual || strings.HasSuffix(line, " ") {
			d.t.Errorf("a line of %d columns, or a space at its end: %q", text.Width(line), line)
		}
	}
	if plain := flat(got); !strings.HasPrefix(plain, flat(report.Cautions()[0])) || !strings.HasSuffix(plain, report.KeepOff) || strings.Count(plain, report.KeepOff) != 1 {
		d.t.Errorf("the caution is not first, or the result not last:\n%s", got)
	}
	says(d.t, got, want...)
	return got
}

// save puts files as they are after a save, when the look before is over, and lets the
// disk come to rest.
func (d *desk) save(files map[string]string) {
	d.t.Helper()
	d.changed <- fsnotify.Event{Name: "something"}
	for path, content := range files {
		err := os.WriteFile(path, []byte(content), 0o666)
		if content == "" {
			err = os.Remove(path)
		}
		if err != nil {
			d.t.Fatal(err)
		}
	}
	d.rest <- time.Time{}
}

// ends interrupts, and holds the status and what stands on standard error.
func (d *desk) ends(status int, said ...string) {
	d.t.Helper()
	d.interrupt()
	if got := <-d.status; got != status {
		d.t.Errorf("status %d, want %d: %s", got, status, &d.stderr)
	}
	says(d.t, d.stderr.String(), said...)
}

func content(t *testing.T, path string) string {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// TestASaveTellsWhatChanged: worse, better again, and nothing else; the files of --out are
// each time those of a check of the same state, and the status that of the last.
func TestASaveTellsWhatChanged(t *testing.T) {
	willow := content(t, in(t, "willow.json"))
	t.Chdir(t.TempDir())
	put(t, ".", map[string]string{"van.json": willow})
	d := watches(t, nil, "van.json", "--out", "json=r", "--only", "locker.")
	whole := func() {
		t.Helper()
		if diff := cmp.Diff(run(nil, "check", "van.json", "--format", "json").stdout, content(t, "r")); diff != "" {
			t.Errorf("the file of --out (-fresh check +watching):\n%s", diff)
		}
	}
	d.page("shown", "locker.low-vent")
	d.save(map[string]string{"van.json": strings.Replace(willow, `"upright": true`, `"upright": false`, 1)})
	d.page("since its last report: 1 worse, 0 newly unknown, 0 no longer judged, 0 better.", "Worse DANGER cylinder.upright, cylinder a", "old within, as stated", "new not met",
		"Counted: not met: 1 danger", "Result of this file check: 1 not met and 0 not known at WARNING or above")
	whole()
	d.save(map[string]string{"van.json": strings.Replace(willow, `"upright": true,`, ``, 1)})
	d.page("0 worse, 1 newly unknown, 0 no longer judged, 0 better", "0 not met and 1 not known")
	d.save(map[string]string{"van.json": willow})
	d.page("0 worse, 0 newly unknown, 0 no longer judged, 1 better", "no finding at WARNING or above")
	whole()
	d.save(map[string]string{"van.json": willow + "\n"})
	d.page("0 worse, 0 newly unknown, 0 no longer judged, 0 better")
	d.ends(statusNothing, "watching for saves")
}

// TestAFileThatCantBeUsed: its faults are told, nothing that was told before is in any
// output any more, and the next report with findings is held against the last such.
func TestAFileThatCantBeUsed(t *testing.T) {
	willow := content(t, in(t, "willow.json"))
	t.Chdir(t.TempDir())
	put(t, ".", map[string]string{"van.json": willow})
	d := watches(t, nil, "van.json", "--out", "json=r")
	d.page()
	for _, broken := range []string{"{", ""} {
		d.save(map[string]string{"van.json": broken})
		got := d.page("UNUSABLE van.json: 1 fault, and so nothing in it was judged", "What was told of van.json before is not known to be true any more.",
			"the file can't be used, and nothing was judged")
		if strings.Contains(got, "Counted") || strings.Contains(got, "since") {
			t.Errorf("a file that can't be used has counts:\n%s", got)
		}
		var r report.Run
		if err := json.Unmarshal([]byte(content(t, "r")), &r); err != nil || r.Status != statusUnusable || len(r.Files) != 1 || len(r.Files[0].Findings) != 0 || len(r.Files[0].Faults) != 1 {
			t.Errorf("%v, status %d, %d files", err, r.Status, len(r.Files))
		}
	}
	d.save(map[string]string{"van.json": strings.Replace(willow, `"upright": true`, `"upright": false`, 1)})
	d.page("since its last report with findings, before the faults", "1 worse", "DANGER cylinder.upright, cylinder a")
	d.save(map[string]string{"van.json": "{"})
	d.page("UNUSABLE")
	d.ends(statusUnusable)
}

// counting is the program with one check that counts how often it is asked.
func counting(asked *atomic.Int32) func(*app) {
	return func(a *app) {
		c := check.ForDwelling(check.Descriptor{ID: "test.one", Asks: "Is it so?", Why: "Because.", Word: report.Danger, MayAct: report.Owner},
			func(s *check.Sheet, l *layout.Layout) check.Ruling {
				asked.Add(1)
				return check.Is(s, true, check.Duty{}, "found", "needed")
			})
		a.parts = []part{{"test", "Test", check.Set{Checks: []check.Check{c}}}}
	}
}

// TestOnlyWhatChangedIsJudged: files that come, go, break and stay in a watched folder.
func TestOnlyWhatChangedIsJudged(t *testing.T) {
	var asked atomic.Int32
	t.Chdir(t.TempDir())
	titled := func(title string) string { return `{"format":"lowvent-layout/1", "title": "` + title + `"}` }
	put(t, ".", map[string]string{"a.json": titled("A"), "b.json": titled("B"), "other.json": "{}"})
	d := watches(t, counting(&asked), ".")
	step := func(judged int32, files map[string]string, want ...string) string {
		t.Helper()
		before := asked.Load()
		if files != nil {
			d.save(files)
		}
		got := d.page(want...)
		if n := asked.Load() - before; n != judged {
			t.Errorf("%d judged, want %d:\n%s", n, judged, got)
		}
		return got
	}
	step(2, nil, "a.json: A", "b.json: B")
	if got := step(1, map[string]string{"a.json": titled("A2")}, "a.json: A2", "since its last report"); strings.Contains(got, "b.json: B") {
		t.Errorf("a file that nobody saved is told of:\n%s", got)
	}
	step(1, map[string]string{"c.json": titled("C")}, "c.json: C", "asked 1 check", "3 files")
	step(0, map[string]string{"b.json": ""}, "GONE b.json: it is not there any more, and nothing of it is judged any more. That mends nothing.", "2 files")
	step(0, map[string]string{"c.json": "{"}, "UNUSABLE c.json", "2 files, of which 1 can't be used")
	step(2, map[string]string{"c.json": titled("C"), "a.json": titled("A3")}, "a.json: A3", "c.json: C", "before the faults")
	d.save(nil)
	d.save(map[string]string{"a.json": titled("A3"), "more.json": "[]"}) // as it was: nothing is told
	step(1, map[string]string{"d.json": titled("D")}, "d.json: D")
	d.ends(statusNothing, "passed over 1 JSON file in . that is no layout", "passed over 2 JSON files")
	if n := strings.Count(d.stderr.String(), "passed over"); n != 2 {
		t.Errorf("said %d times: %s", n, &d.stderr)
	}
}

// TestWhatIsJudgedByChanges: with another overlay all is judged anew; with one that can't
// be used nothing is, until it can.
func TestWhatIsJudgedByChanges(t *testing.T) {
	var asked atomic.Int32
	t.Chdir(t.TempDir())
	overlay := `{"format": "lowvent-overlay/1", "title": "County", "over": "us-mobile-structure",
  "entries": { "clearance.above": { "says": "Two yards.", "rule": { "fixed": "6 ft" }, "document": "County", "clause": "1" } } }`
	put(t, ".", map[string]string{"a.json": `{"format":"lowvent-layout/1"}`, "b.json": `{"format":"lowvent-layout/1"}`, "county.json": overlay})
	d := watches(t, counting(&asked), "a.json", "b.json", "--overlay", "county.json")
	if first := d.page(); strings.Contains(first, "UNUSABLE") {
		t.Fatalf("the overlay of this test can't be used:\n%s", first)
	}
	before := asked.Load()
	d.save(map[string]string{"county.json": strings.Replace(overlay, "County", "Shire", 1)})
	d.page("What is judged by has changed: every file is judged by it as it is now.", "Result of this file check: 2 files")
	if n := asked.Load() - before; n != 2 {
		t.Errorf("%d judged, want 2", n)
	}
	for _, broken := range []string{"{", `{"format": "lowvent-overlay/1"`, ""} {
		d.save(map[string]string{"county.json": broken})
		got := d.page("What is judged by has changed, and can't be used: nothing is judged until it can.", "UNUSABLE county.json", "the file can't be used, and nothing was judged")
		if strings.Contains(got, "a.json") {
			t.Errorf("a layout is told of:\n%s", got)
		}
	}
	d.save(map[string]string{"a.json": `{"format":"lowvent-layout/1", "title": "A"}`}) // told of with the mended overlay
	d.save(map[string]string{"county.json": overlay})
	d.page("What is judged by has changed", "a.json: A", "since its last report:", "2 files")
	d.ends(statusNothing)
}

// TestANewDay: without --on the clock is asked at each look; a day alone changes nothing
// until something is saved, and then all is judged by it.
func TestANewDay(t *testing.T) {
	var days atomic.Int32
	clock := func(a *app) {
		a.now = func() time.Time { return time.Date(2026, 11, 25+int(days.Load()), 0, 0, 0, 0, time.UTC) }
	}
	willow := in(t, "willow.json")
	d := watches(t, clock, willow)
	d.page("Judged on 2026-11-25")
	days.Store(4000)
	d.save(nil)
	d.page("It is 2037-11-07 now, no more 2026-11-25: every file was judged anew.", "WARNING alarm.co, space cabin", "Judged on 2037-11-07")
	d.ends(statusFindings)
	d = watches(t, clock, willow, "--on", "2026-11-25")
	d.page("Judged on 2026-11-25")
	days.Store(8000)
	d.save(nil)
	d.trouble <- errors.New("too many at once")
	d.rest <- time.Time{}
	d.ends(statusNothing, "some changes may have been missed: too many at once")
}

func TestWhatCantBeWatched(t *testing.T) {
	willow := in(t, "willow.json")
	none := func(a *app) {
		a.outside = surroundings{interrupt: func(ctx context.Context) (context.Context, context.CancelFunc) { return ctx, func() {} },
			events: func() (*watch.Events, error) { return nil, errors.New("no more watches") }}
	}
	for _, tt := range []struct {
		args []string
		want string
	}{
		{[]string{"-"}, "standard input can't be watched"},
		{[]string{willow, "-"}, "standard input can't be watched"},
		{[]string{willow, "--format", "json"}, "--out json=FILE"},
		{[]string{}, "name a layout to check"},
		{[]string{willow}, "no more watches"},
	} {
		got := run(none, append([]string{"check", "--watch"}, tt.args...)...)
		if got.status != statusUnusable || got.stdout != "" || !strings.Contains(got.stderr, tt.want) {
			t.Errorf("%v: status %d, %q", tt.args, got.status, got.stderr)
		}
	}
	for _, args := range [][]string{{willow, "--only", "loker."}, {willow, "--code", "nope"}} {
		d := watches(t, nil, args...)
		if got := <-d.status; got != statusUnusable || !strings.Contains(d.stderr.String(), "did you mean") && !strings.Contains(d.stderr.String(), "There are") {
			t.Errorf("%v: status %d, %s", args, got, &d.stderr)
		}
	}
	d := watches(t, func(a *app) {}, willow)
	d.page()
	d.ends(statusNothing)
	if got := run(func(a *app) { none(a); a.outside = realSurroundings(); a.stdout = full{} }, "check", "--watch", willow); got.status != statusUnusable || !strings.Contains(got.stderr, "no room on the disk") {
		t.Errorf("a screen that can't be written: status %d, %s", got.status, got.stderr)
	}
}

// TestWatchingTheDisk: real files, saved as editors do, by a rename over the old one; and
// a real interrupt.
func TestWatchingTheDisk(t *testing.T) {
	willow := content(t, in(t, "willow.json"))
	t.Chdir(t.TempDir())
	put(t, ".", map[string]string{"van.json": willow})
	d := &desk{t: t, pages: make(pages), status: make(chan int, 1)}
	a, _, _ := bench(func(a *app) { a.outside = realSurroundings() })
	a.stdout, a.stderr = d.pages, &d.stderr
	go func() { d.status <- a.run([]string{"check", "--watch", "van.json", "--out", "lines=r"}) }()
	d.page("no finding at WARNING or above")
	for _, upright := range []string{"false", "true", "false"} {
		put(t, ".", map[string]string{".van.json.swap": strings.Replace(willow, `"upright": true`, `"upright": `+upright, 1)})
		if err := os.Rename(".van.json.swap", "van.json"); err != nil {
			t.Fatal(err)
		}
		d.page(map[string]string{"false": "1 worse", "true": "1 better"}[upright])
	}
	if want := filepath.Clean("van.json"); !strings.Contains(content(t, "r"), want) {
		t.Errorf("the file of --out tells of no finding in %s", want)
	}
	self, err := os.FindProcess(os.Getpid())
	if err != nil {
		t.Fatal(err)
	}
	if err := self.Signal(os.Interrupt); err != nil {
		t.Fatal(err)
	}
	if got := <-d.status; got != statusFindings {
		t.Errorf("status %d: %s", got, &d.stderr)
	}
}

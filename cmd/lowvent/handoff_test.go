package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	demonstrations "lowvent.example/cmd/lowvent/internal/demos"
	"lowvent.example/cmd/lowvent/internal/handoff"
	"lowvent.example/cmd/lowvent/internal/render/pdf"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
)

// handed runs handoff on a layout, and gives what it wrote in the form that was asked for.
func handed(t *testing.T, form, path string, args ...string) (outcome, string) {
	t.Helper()
	file := filepath.Join(t.TempDir(), "paper")
	got := run(nil, append([]string{"handoff", path, "--on", "2026-11-25", "--out", form + "=" + file}, args...)...)
	data, err := os.ReadFile(file)
	if err != nil && got.status == statusNothing {
		t.Fatal(err)
	}
	return got, string(data)
}

// TestHandoffOfEveryDemo: each demonstration gives each form, and what is on the screen
// begins and ends as every report does.
func TestHandoffOfEveryDemo(t *testing.T) {
	begins := map[string]string{"html": "<!", "pdf": "%PDF-", "card": "%PDF-", "calendar": "BEGIN:VCALENDAR\r\n"}
	for _, d := range demonstrations.All(t) {
		folder := t.TempDir()
		args := []string{"handoff", filepath.Join(moduleTop(t), filepath.FromSlash(d.Name)+".json"), "--on", "2026-11-25"}
		for _, form := range handoffNames() {
			args = append(args, "--out", form+"="+filepath.Join(folder, form))
		}
		got := run(nil, args...)
		if got.status != statusNothing || got.stderr != "" {
			t.Errorf("%s: status %d, %q", d.Name, got.status, got.stderr)
		}
		for form, first := range begins {
			written, err := os.ReadFile(filepath.Join(folder, form))
			if err != nil || !strings.HasPrefix(string(written), first) {
				t.Errorf("%s as %s begins %.20q (%v)", d.Name, form, written, err)
			}
		}
		screen := strings.Join(strings.Fields(got.stdout), " ")
		if !strings.HasPrefix(screen, strings.Join(report.Cautions(), " ")) || !strings.HasSuffix(screen, report.KeepOff) {
			t.Errorf("%s: on the screen stands %q", d.Name, got.stdout)
		}
	}
}

// TestHandoffDates: every date of a layout that falls due stands in its calendar, one that
// is past on the day judged.
func TestHandoffDates(t *testing.T) {
	for _, name := range []string{"sorrel", "sorrel-faulty", "teal"} {
		_, written := handed(t, "calendar", filepath.Join(moduleTop(t), "testdata", "layouts", name+".json"))
		unfolded := strings.ReplaceAll(written, "\r\n ", "") // RFC 5545, 3.1
		dates := handoff.Dates(demonstrations.One(t, name).Layout)
		if len(dates) == 0 || strings.Count(unfolded, "BEGIN:VEVENT") != len(dates) {
			t.Errorf("%s: %d entries for %d dates", name, strings.Count(unfolded, "BEGIN:VEVENT"), len(dates))
		}
		for _, d := range dates {
			on := max(d.On.String(), "2026-11-25") // what is past stands on the day judged
			if day := "DTSTART;VALUE=DATE:" + strings.ReplaceAll(on, "-", "") + "\r\n"; !strings.Contains(unfolded, day) || !strings.Contains(unfolded, "at "+d.Subject+".") {
				t.Errorf("%s: %s on %s is not in the calendar", name, d.Subject, d.On)
			}
		}
	}
}

// TestHandoffLeavesTheFile: the layout is enclosed as it is, and never written to.
func TestHandoffLeavesTheFile(t *testing.T) {
	path := in(t, "sedge.json")
	before, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	handed(t, "pdf", path)
	after, err := os.ReadFile(path)
	if err != nil || string(after) != string(before) {
		t.Errorf("the layout was changed (%v)", err)
	}
}

// TestHandoffFoot: every printed page is to say what it is; the page of the form html says
// so once at least.
func TestHandoffFoot(t *testing.T) {
	_, written := handed(t, "html", in(t, "sedge.json"))
	if !strings.Contains(written, handoff.Foot) {
		t.Error("the foot is missing")
	}
	for _, far := range []string{"<script", "http://", "url(http"} {
		if strings.Contains(written, far) {
			t.Errorf("the page has %q in it", far)
		}
	}
}

// TestSheetFor is the sheet that a PDF is laid out for.
func TestSheetFor(t *testing.T) {
	for _, tt := range []struct {
		word, country string
		want          pdf.Sheet
	}{
		{sheetOfCountry, "US", pdf.Letter}, {sheetOfCountry, "CA", pdf.Letter}, {sheetOfCountry, "MX", pdf.Letter},
		{sheetOfCountry, "GB", pdf.A4}, {sheetOfCountry, "", pdf.A4},
		{sheetA4, "US", pdf.A4}, {sheetLetter, "GB", pdf.Letter}, {sheetLetter, "", pdf.Letter},
	} {
		root := demonstrations.One(t, "sedge").Layout.Root()
		edit := source.Edit{Pointer: "/where/country", Value: source.Quote(tt.country), Delete: tt.country == ""}
		file, err := source.Apply(root.File(), root, []source.Edit{edit})
		if err != nil {
			t.Fatal(err)
		}
		l, faults := layout.Load(file)
		if faults != nil {
			t.Fatalf("country %q: %v", tt.country, faults)
		}
		if got := sheetFor(tt.word, l); got != tt.want {
			t.Errorf("%s in %q: %v, want %v", tt.word, tt.country, got, tt.want)
		}
	}
}

// TestHandoffHasNoTrial: each flag of a trial is refused with the reason, and only those.
func TestHandoffHasNoTrial(t *testing.T) {
	for flag, want := range map[string]string{
		"--set=/a=1": "handoff takes no --set", "--unset=/a": "handoff takes no --unset", "--sweep=/a=1..2": "handoff takes no --sweep",
		"--figure=x": "unknown flag: --figure", "--se=1": "unknown flag: --se", "-s": "unknown shorthand flag",
	} {
		got, written := handed(t, "html", in(t, "sedge.json"), flag)
		if got.status != statusUnusable || !strings.Contains(got.stderr, want) || written != "" || got.stdout != "" {
			t.Errorf("%s: status %d, %q", flag, got.status, got.stderr)
		}
	}
}

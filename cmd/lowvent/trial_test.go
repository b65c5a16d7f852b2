package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
)

const (
	sorrel = "../../testdata/layouts/sorrel.json"
	faulty = "../../testdata/layouts/sorrel-faulty.json"
	gross  = "/lockers/skirt/vents/low-inner/gross"
)

// tried runs a trial on a given day and gives its report.
func tried(t *testing.T, args ...string) (*report.Run, outcome) {
	t.Helper()
	got := run(nil, append([]string{"trial", "--on", "2026-11-25", "--format", "json"}, args...)...)
	var r report.Run
	if err := json.Unmarshal([]byte(got.stdout), &r); err != nil {
		t.Fatalf("%v: %s%s", err, got.stdout, got.stderr)
	}
	return &r, got
}

// TestTrial: what an edit turns, told in JSON and on the page, with the status of check.
func TestTrial(t *testing.T) {
	tests := map[string]struct {
		args    []string
		status  int
		changed []report.TrialChange // those of locker.low-vent and alarm.gas-present
		page    []string
	}{
		// 675 IAC 15-2-74(c)(2): half of 2 % of 0.558 m2 is 55.8 cm2 of free area; 100 cm2 of mesh at 65 % is 65 cm2, less its tolerance
		"a vent made too small": {[]string{"--set", gross + "=1 cm2", "--set", "/lockers/skirt/vents/low-outer/gross=50 cm2"}, statusFindings,
			[]report.TrialChange{{Turn: report.Worse, Check: "locker.low-vent", Subject: "/lockers/skirt", Label: "locker skirt", Word: report.Danger, Was: report.Within, Is: report.NotMet}},
			[]string{"Worse DANGER", "not met: found 33.1 cm2", "675 IAC 15-2 as posted", "Against the file as it is: 3 worse"}},
		"a vent not stated": {[]string{"--unset", gross}, statusFindings,
			[]report.TrialChange{{Turn: report.NewlyUnknown, Check: "locker.low-vent", Subject: "/lockers/skirt", Label: "locker skirt", Word: report.Danger, Was: report.Within, Is: report.NotKnown}},
			[]string{"Newly unknown", gross + " left out (the file says \"150 cm2 ± 3 cm2\")"}},
		"a vent made larger": {[]string{"--set", gross + "=300 cm2"}, statusNothing, nil,
			[]string{"Every question ends as it does in the file as it is.", "0 worse, 0 newly unknown, 0 no longer judged, 0 better"}},
		"left out and put back": {[]string{"--unset", "/lockers/skirt/vents/low-inner/cover/open", "--set", "/lockers/skirt/vents/low-inner/cover={\"kind\":\"mesh\",\"open\":\"65 %\"}"}, statusNothing, nil, nil},
	}
	for name, c := range tests {
		t.Run(name, func(t *testing.T) {
			r, got := tried(t, append([]string{sorrel}, c.args...)...)
			page := run(nil, append([]string{"trial", "--on", "2026-11-25", sorrel}, c.args...)...)
			if got.status != c.status || page.status != c.status || r.Status != c.status {
				t.Errorf("status %d, %d in JSON, %d of the page; want %d", got.status, r.Status, page.status, c.status)
			}
			var changed []report.TrialChange
			for _, each := range r.Trial.Changed {
				if each.Check == "locker.low-vent" {
					changed = append(changed, each)
				}
			}
			if diff := cmp.Diff(c.changed, changed); diff != "" {
				t.Errorf("(-want +got)\n%s", diff)
			}
			says(t, page.stdout, append(c.page, "TRIAL of edits that stand in no file", "The file "+sorrel+" is as it was", report.NoDwelling, "Result of this TRIAL", report.KeepOff)...)
		})
	}
}

// TestWhatIsTriedIsNotMeasured: an edit that changes a value leaves out its evidence, and
// says so; one that changes nothing keeps it.
func TestWhatIsTriedIsNotMeasured(t *testing.T) {
	seal := "/lockers/skirt/sealedFrom/studio/seal" // proved by a test of the fitter
	evidence := "/lockers/skirt/sealedFrom/studio/evidence/seal"
	for _, c := range []struct {
		args  []string
		edits []string
	}{
		{[]string{"--set", seal + "=not-sealed"}, []string{seal, evidence}},
		{[]string{"--set", seal + "=gas-tight"}, []string{seal}},
		{[]string{"--set", seal + "=not-sealed", "--unset", evidence}, []string{seal, evidence}},
		{[]string{"--unset", "/lockers/skirt/sealedFrom/studio"}, []string{"/lockers/skirt/sealedFrom/studio"}},
		{[]string{"--set", "/lockers/skirt/vents/low-inner/cover/open=60 %"}, []string{"/lockers/skirt/vents/low-inner/cover/open"}},
	} {
		r, _ := tried(t, append([]string{sorrel}, c.args...)...)
		var edits []string
		for _, e := range r.Trial.Edits {
			edits = append(edits, e.Pointer)
		}
		if diff := cmp.Diff(c.edits, edits); diff != "" || len(r.Files[0].Faults) > 0 {
			t.Errorf("%q: %+v (-want +got)\n%s", c.args, r.Files[0].Faults, diff)
		}
	}
}

// TestTrialOfBetter: a fault of the faulty bus that an edit mends is told as better.
func TestTrialOfBetter(t *testing.T) {
	r, got := tried(t, faulty, "--set", "/appliances/hob/flameGuard=every-burner", "--set", "/appliances/hob/burners/front/flameGuard=true",
		"--set", "/appliances/hob/burners/rear-left/flameGuard=true", "--set", "/appliances/hob/burners/rear-right/flameGuard=true")
	want := report.TrialChange{Turn: report.Better, Check: "space.leak-time", Subject: "/spaces/studio", Label: "space studio", Word: report.Warning, Was: report.NotMet, Is: report.Within}
	if got.status != statusFindings || !slices.Contains(r.Trial.Changed, want) {
		t.Errorf("status %d, %+v", got.status, r.Trial.Changed)
	}
}

// TestEveryFormatSaysTrial: whatever the form, an output of a trial says that it is one,
// at its head and in every line on a finding; and a check says nothing of the kind.
func TestEveryFormatSaysTrial(t *testing.T) {
	for _, file := range []string{faulty, sorrel, "testdata/layouts/sedge.json"} {
		for _, form := range formatNames() {
			got := run(nil, "trial", file, "--set", "/title=Another", "--on", "2026-11-25", "--format", form)
			if !strings.Contains(got.stdout, report.TrialWord) || got.stderr != "" {
				t.Errorf("%s as %s does not say TRIAL: %s%.300s", file, form, got.stderr, got.stdout)
			}
			bare := strings.ReplaceAll(strings.ReplaceAll(flat(got.stdout), report.TrialName(file), ""), strings.ReplaceAll(report.TrialName(file), " ", "%20"), "")
			if place := filepath.Base(file) + ":"; strings.Contains(bare, place) {
				t.Errorf("%s as %s tells of a place without the word", file, form)
			}
			if plain := run(nil, "check", file, "--on", "2026-11-25", "--format", form); strings.Contains(plain.stdout, report.TrialWord) {
				t.Errorf("check %s as %s speaks of a trial", file, form)
			}
		}
	}
	lines := run(nil, "trial", faulty, "--set", "/title=Another", "--on", "2026-11-25", "--format", "lines")
	told := 0
	for line := range strings.SplitSeq(lines.stdout, "\n") {
		if strings.Contains(line, ": DANGER: ") || strings.Contains(line, ": WARNING: ") {
			told++
			if !strings.Contains(line, report.TrialWord) {
				t.Errorf("a finding without the word: %s", line)
			}
		}
	}
	if told < 10 {
		t.Errorf("only %d lines on findings", told)
	}
}

// TestTheOutputsOfATrial: the files that --out writes are the reports that --format
// prints, whatever is printed.
func TestTheOutputsOfATrial(t *testing.T) {
	dir := t.TempDir()
	args := []string{"trial", sorrel, "--unset", gross, "--on", "2026-11-25"}
	with := slices.Clone(args)
	for _, form := range formatNames() {
		with = append(with, "--out", form+"="+filepath.Join(dir, form))
	}
	page := run(nil, with...)
	if alone := run(nil, args...); page != alone {
		t.Errorf("files change what is printed:\n%s", cmp.Diff(alone.stdout, page.stdout))
	}
	for _, form := range formatNames() {
		got := run(nil, append(slices.Clone(args), "--format", form)...)
		if diff := cmp.Diff(got.stdout, tree(t, dir)[form]); diff != "" {
			t.Errorf("%s (-standard output +file):\n%s", form, diff)
		}
	}
}

// TestATrialOfNothing: setting what the file says already, wherever it is, judges as check
// does: the same findings, figures, claims and counts, but for the name of the text.
func TestATrialOfNothing(t *testing.T) {
	f, fault := source.ReadPath(faulty, source.DefaultLimits())
	if fault != nil {
		t.Fatal(fault)
	}
	root, fault := source.Parse(f, source.DefaultLimits())
	if fault != nil {
		t.Fatal(fault)
	}
	var leaves []*source.Node
	var walk func(*source.Node)
	walk = func(n *source.Node) {
		for _, child := range n.Children {
			walk(child)
		}
		if len(n.Children) == 0 {
			leaves = append(leaves, n)
		}
	}
	walk(root)
	var plain report.Run
	if err := json.Unmarshal([]byte(run(nil, "check", faulty, "--on", "2026-11-25", "--format", "json", "--working").stdout), &plain); err != nil {
		t.Fatal(err)
	}
	const parts = 2
	for part := range parts {
		args := []string{faulty, "--working"}
		for i := part; i < len(leaves); i += 20 * parts { // a sample of everything, all of it in a few runs
			args = append(args, "--set", leaves[i].Pointer()+"="+leaves[i].Raw())
		}
		r, got := tried(t, args...)
		if got.status != plain.Status || len(r.Trial.Changed) != 0 || r.Trial.Changed == nil || len(r.Trial.Edits) < 15 {
			t.Fatalf("%q: status %d, changed %+v", args, got.status, r.Trial.Changed)
		}
		want := plain
		want.Caution = append(slices.Clone(plain.Caution), r.Banner())
		name := cmpopts.AcyclicTransformer("name", func(p report.Place) report.Place {
			p.File = strings.TrimPrefix(p.File, report.TrialName(""))
			return p
		})
		r.Files[0].File = strings.TrimPrefix(r.Files[0].File, report.TrialName(""))
		if diff := cmp.Diff(want, *r, name, cmpopts.IgnoreFields(report.Run{}, "Trial")); diff != "" {
			t.Fatalf("%q (-check +trial):\n%s", args, diff)
		}
	}
}

// TestATrialTouchesNothing: neither the bytes of the file nor its time change, nor does a
// new file appear, whether the trial can be judged or not.
func TestATrialTouchesNothing(t *testing.T) {
	dir := t.TempDir()
	data, err := os.ReadFile(sorrel)
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(dir, "layout.json")
	put(t, dir, map[string]string{"layout.json": string(data)})
	then := time.Date(2026, 1, 2, 3, 4, 5, 0, time.UTC)
	if err := os.Chtimes(path, then, then); err != nil {
		t.Fatal(err)
	}
	for _, args := range [][]string{{"--set", gross + "=1 cm2"}, {"--unset", gross}, {"--set", gross + "=1 kg"}, {"--set", "/nothing=1"}, {"--sweep", gross + "=1 cm2..90 cm2/3"}} {
		if got := run(nil, append([]string{"trial", path}, args...)...); got.status > statusUnusable {
			t.Errorf("%q: status %d: %s", args, got.status, got.stderr)
		}
		info, err := os.Stat(path)
		if err != nil || !info.ModTime().Equal(then) {
			t.Errorf("%q: the file's time is %v, %v", args, info.ModTime(), err)
		}
		if diff := cmp.Diff(map[string]string{"layout.json": string(data)}, tree(t, dir)); diff != "" {
			t.Errorf("%q:\n%s", args, diff)
		}
	}
}

// TestTrialIsTheSameForAnyNumberOfWorkers, in every form.
func TestTrialIsTheSameForAnyNumberOfWorkers(t *testing.T) {
	for _, form := range []string{"", "terminal", "json", "lines"} {
		var first outcome
		for i, workers := range []string{"1", "2", "16"} {
			args := []string{"trial", faulty, "--set", gross + "=30 cm2", "--on", "2026-11-25", "--workers", workers}
			if form != "" {
				args = append(args, "--format", form)
			}
			got := run(nil, args...)
			if i == 0 {
				first = got
			}
			if got != first {
				t.Errorf("%s with %s workers:\n%s", form, workers, cmp.Diff(first.stdout, got.stdout))
			}
		}
	}
}

func TestTrialPage(t *testing.T) {
	for _, width := range []int{60, 80, 200} {
		got := run(nil, "trial", faulty, "--unset", gross, "--set", "/title=Another", "--on", "2026-11-25", "--width", strconv.Itoa(width))
		if got.status != statusFindings || got.stderr != "" {
			t.Fatalf("status %d: %s", got.status, got.stderr)
		}
		inPage(t, got.stdout, width)
	}
}

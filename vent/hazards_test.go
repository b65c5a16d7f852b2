package vent_test

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
)

// A hazard is a patch on Sorrel: what happened and why it kills, in words; the
// edits, one a line; and the findings that the edits must raise, one a line.
// Nothing but those may be raised.
type hazard struct {
	path   string
	words  []string // up to the first edit
	edits  []source.Edit
	raises []string
}

const raisesLine = "raises:"

func readHazards(t *testing.T) []hazard {
	t.Helper()
	paths, err := filepath.Glob("../testdata/hazards/*.txt")
	if err != nil || len(paths) < 30 {
		t.Fatalf("%d hazards, %v; at least 30 are kept", len(paths), err)
	}
	var all []hazard
	for _, path := range paths {
		all = append(all, readHazard(t, path))
	}
	return all
}

func readHazard(t *testing.T, path string) hazard {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	h := hazard{path: path}
	head, raises, found := strings.Cut(string(data), "\n"+raisesLine+"\n")
	if !found {
		t.Fatalf("%s has no line %q", path, raisesLine)
	}
	for _, line := range strings.Split(head, "\n") {
		switch {
		case strings.HasPrefix(line, "/") || strings.HasPrefix(line, "delete "):
			edit, err := source.ParseEdit(line)
			if err != nil {
				t.Fatalf("%s: %v", path, err)
			}
			h.edits = append(h.edits, edit)
		case len(h.edits) == 0:
			h.words = append(h.words, line)
		case strings.TrimSpace(line) != "":
			t.Fatalf("%s: %q stands among the edits", path, line)
		}
	}
	h.raises = strings.Split(strings.TrimSuffix(raises, "\n"), "\n")
	return h
}

// sorrel is the demo that hazards are patched onto, with what is found in it as
// it is.
type sorrel struct {
	file   *source.File
	before map[string]report.Outcome
}

func newSorrel(t *testing.T) sorrel {
	t.Helper()
	l := readDemo(t, sorrelFile)
	s := sorrel{file: l.File(), before: map[string]report.Outcome{}}
	for _, f := range judged(t, l).Findings {
		s.before[f.Check+" "+subjectOf(f)] = f.Outcome
	}
	return s
}

// raised applies the edits and lists, sorted, what is newly not met or not known.
func (s sorrel) raised(t *testing.T, edits []source.Edit) ([]string, error) {
	t.Helper()
	patched, err := source.Apply(s.file, nil, edits)
	if err != nil {
		return nil, err
	}
	l, faults := layout.Load(patched)
	if faults != nil {
		return nil, faults
	}
	var raised []string
	for _, f := range judged(t, l).Findings {
		open := f.Outcome == report.NotMet || f.Outcome == report.NotKnown
		if open && s.before[f.Check+" "+subjectOf(f)] != f.Outcome {
			raised = append(raised, fmt.Sprintf("%s %s %s %s", f.Word, f.Check, subjectOf(f), f.Outcome))
		}
	}
	slices.Sort(raised)
	return raised, nil
}

func TestHazardsRaiseExactlyWhatTheyMust(t *testing.T) {
	base := newSorrel(t)
	for _, h := range readHazards(t) {
		t.Run(filepath.Base(h.path), func(t *testing.T) {
			got, err := base.raised(t, h.edits)
			if err != nil {
				t.Fatal(err)
			}
			if *update {
				h.raises = got
				h.write(t)
			}
			if diff := cmp.Diff(h.raises, got); diff != "" {
				t.Errorf("raised (-want +got):\n%s", diff)
			}
		})
	}
}

// write puts the hazard back with its list of findings; words and edits stay.
func (h hazard) write(t *testing.T) {
	t.Helper()
	text := strings.TrimRight(strings.Join(h.words, "\n"), "\n") + "\n\n"
	for _, e := range h.edits {
		text += e.String() + "\n"
	}
	text += "\n" + raisesLine + "\n" + strings.Join(h.raises, "\n") + "\n"
	if err := os.WriteFile(h.path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}

// Every hazard tells what happened, why it kills, and what that rests on, so that
// a reader can judge its list of findings without running anything.
func TestHazardsSayWhatTheyAreAbout(t *testing.T) {
	for _, h := range readHazards(t) {
		words := strings.TrimSpace(strings.Join(h.words, "\n"))
		told, rest, sourced := strings.Cut(words, "\nSource: ")
		if !sourced || len(strings.Fields(told)) < 12 || len(strings.Fields(rest)) < 3 {
			t.Errorf("%s: expected what happened and why it kills, then a line \"Source: …\"", h.path)
		}
		if len(h.edits) == 0 || len(h.raises) == 0 || h.raises[0] == "" {
			t.Errorf("%s has %d edits and raises %q", h.path, len(h.edits), h.raises)
		}
		for i, line := range strings.Split(words, "\n") {
			if len([]rune(line)) > 100 {
				t.Errorf("%s:%d is wider than 100 columns", h.path, i+1)
			}
		}
	}
}

// No edit stands idle in a hazard: without it, the patch would not apply, not
// load, or raise something else. Only what draws a thing in its place, and the
// pipe that leads to it, may be there for the sake of a true picture.
func TestHazardsHaveNoIdleEdit(t *testing.T) {
	base := newSorrel(t)
	for _, h := range manyEdits(readHazards(t)) {
		for i := range h.edits {
			if draws(h.edits[i]) {
				continue
			}
			fewer := slices.Delete(slices.Clone(h.edits), i, i+1)
			got, err := base.raised(t, fewer)
			if err == nil && cmp.Equal(got, h.raises) {
				t.Errorf("%s: %q changes nothing", h.path, h.edits[i])
			}
		}
	}
}

// manyEdits leaves out the hazards of one edit, of which the exact list already
// tells all.
func manyEdits(all []hazard) []hazard {
	return slices.DeleteFunc(all, func(h hazard) bool { return len(h.edits) < 2 })
}

func draws(e source.Edit) bool {
	return strings.HasPrefix(e.Pointer, "/lines/") || strings.HasSuffix(e.Pointer, "/at") || strings.HasSuffix(e.Pointer, "/box")
}

// Every check is raised both ways by some hazard: by what is wrong, and by what
// nobody stated.
func TestHazardsReachEveryCheckBothWays(t *testing.T) {
	reached := map[string]bool{}
	for _, h := range readHazards(t) {
		for _, line := range h.raises {
			if word := strings.Fields(line); len(word) == 4 {
				reached[word[1]+" "+word[3]] = true
			}
		}
	}
	for _, c := range allChecks().Checks {
		for _, outcome := range []report.Outcome{report.NotMet, report.NotKnown} {
			if !reached[c.ID+" "+string(outcome)] {
				t.Errorf("no hazard makes %s %s", c.ID, outcome)
			}
		}
	}
}

// What a hazard raises does not hang on the order in which its edits are made,
// and so not on where in the file they stand.
func TestHazardsRaiseTheSameHoweverWritten(t *testing.T) {
	base := newSorrel(t)
	for _, h := range manyEdits(readHazards(t)) {
		backwards := slices.Clone(h.edits)
		slices.Reverse(backwards)
		forward, err := base.raised(t, h.edits)
		if err != nil {
			t.Fatalf("%s: %v", h.path, err)
		}
		got, err := base.raised(t, backwards)
		if err == nil && !cmp.Equal(got, forward) {
			t.Errorf("%s with its edits made in the other order (-forward +backward):\n%s", h.path, cmp.Diff(forward, got))
		}
	}
}

// A list is written by hand and judged by a reader: this guards it against a slip
// of the pen.
func TestHazardsNameRealChecks(t *testing.T) {
	words := map[string]report.Signal{}
	for _, c := range allChecks().Checks {
		words[c.ID] = c.Word
	}
	for _, h := range readHazards(t) {
		for _, line := range h.raises {
			field := strings.Fields(line)
			if len(field) != 4 || words[field[1]] != report.Signal(field[0]) {
				t.Errorf("%s: %q is not a signal word, a check, a subject and an outcome", h.path, line)
			}
		}
	}
}

// onlyACodeKnows lists what nothing but a code finds, by hazard and check, with the
// reason; all other DANGERs stand whatever code is chosen, or none.
var onlyACodeKnows = map[string]string{
	"heater-on-room-air.txt appliance.room-sealed":                  "an open flue is no flue to some codes only",
	"water-heater-takes-the-washroom-air.txt appliance.room-sealed": "the same, where the washroom makes it a DANGER anyway",
	"low-vents-too-small.txt locker.low-vent":                       "how large a vent has to be, a code says",
	"low-vents-too-small.txt cylinder.in-locker":                    "the same",
}

// TestDangersStandWithoutACode holds that a newcomer who has chosen no code is told of
// what kills all the same: each DANGER that is not met by the demonstration's code is
// found by the law on the thing itself, common practice or the program's own rules.
func TestDangersStandWithoutACode(t *testing.T) {
	choose := source.Edit{Pointer: "/where/code", Delete: true}
	base := newSorrel(t)
	for _, h := range readHazards(t) {
		found, err := base.raised(t, append([]source.Edit{choose}, h.edits...))
		if err != nil {
			t.Fatalf("%s: %v", h.path, err)
		}
		for _, each := range h.raises {
			known := onlyACodeKnows[filepath.Base(h.path)+" "+strings.Fields(each)[1]] != ""
			if strings.HasPrefix(each, string(report.Danger)) && strings.HasSuffix(each, string(report.NotMet)) && slices.Contains(found, each) == known {
				t.Errorf("%s, without a code: %s, listed as what only a code knows: %v", h.path, each, known)
			}
		}
	}
}

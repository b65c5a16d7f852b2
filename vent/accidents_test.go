package vent_test

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"

	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
)

// An accident is what an investigation published, as a layout: the facts alone, then
// what had to be assumed to complete it, and what the investigation found wrong. No
// name of a person, a maker or a vessel stands in one.
type accident struct {
	name    string
	facts   *source.File
	assumed []source.Edit
	raises  []string // "WORD check subject"
}

func readAccidents(t *testing.T) []accident {
	t.Helper()
	paths, err := filepath.Glob("../testdata/accidents/*.txtar")
	if err != nil || len(paths) < 15 {
		t.Fatalf("%d accidents, %v; fifteen are kept", len(paths), err)
	}
	var all []accident
	for _, path := range paths {
		archive, err := txtar.ParseFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(string(archive.Comment), "Source: ") || len(archive.Files) != 3 {
			t.Fatalf("%s: an accident has a source, and three files", path)
		}
		a := accident{name: strings.TrimSuffix(filepath.Base(path), ".txtar"), facts: source.NewFile(path, archive.Files[0].Data)}
		for line := range strings.Lines(string(archive.Files[1].Data)) {
			if line = strings.TrimSpace(line); line != "" && !strings.HasPrefix(line, "#") {
				edit, err := source.ParseEdit(line)
				if err != nil {
					t.Fatalf("%s: %v", path, err)
				}
				a.assumed = append(a.assumed, edit)
			}
		}
		a.raises = strings.Split(strings.TrimSpace(string(archive.Files[2].Data)), "\n")
		all = append(all, a)
	}
	return all
}

// raised judges the facts of an accident with some edits, and gives the outcome of each
// check of each subject.
func (a accident) raised(t *testing.T, edits []source.Edit) map[string]report.Outcome {
	t.Helper()
	file, err := source.Apply(a.facts, nil, edits)
	if err != nil {
		t.Fatal(err)
	}
	l, faults := layout.Load(file)
	if faults != nil {
		t.Fatalf("%s:\n%s\n%s", a.name, faults, file.Data)
	}
	found := map[string]report.Outcome{}
	for _, f := range judged(t, l).Findings {
		found[fmt.Sprintf("%s %s %s", f.Word, f.Check, subjectOf(f))] = f.Outcome
	}
	return found
}

// TestAccidents holds that what each investigation found is raised as not met, and that
// it is raised or not known when nothing is assumed: whatever is left out of a file can't
// hide what killed people.
func TestAccidents(t *testing.T) {
	for _, a := range readAccidents(t) {
		t.Run(a.name, func(t *testing.T) {
			with, alone := a.raised(t, a.assumed), a.raised(t, nil)
			for _, each := range a.raises {
				if with[each] != report.NotMet {
					t.Errorf("%s: %q", each, with[each])
				}
				if alone[each] != report.NotMet && alone[each] != report.NotKnown {
					t.Errorf("%s, from the facts alone: %q", each, alone[each])
				}
			}
			// each value that was assumed, and by itself
			for i := range a.assumed {
				without := slices.Delete(slices.Clone(a.assumed), i, i+1)
				found := a.raisedIfItLoads(t, without)
				for _, each := range a.raises {
					if found != nil && found[each] != report.NotMet && found[each] != report.NotKnown {
						t.Errorf("%s, without %v: %q", each, a.assumed[i], found[each])
					}
				}
			}
		})
	}
}

// raisedIfItLoads is raised, and nil where the edits that are left make no layout.
func (a accident) raisedIfItLoads(t *testing.T, edits []source.Edit) map[string]report.Outcome {
	t.Helper()
	file, err := source.Apply(a.facts, nil, edits)
	if err != nil {
		return nil
	}
	if _, faults := layout.Load(file); faults != nil {
		return nil
	}
	return a.raised(t, edits)
}

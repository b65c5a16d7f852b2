package vent_test

import (
	"context"
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/schema/check"
	"lowvent.example/schema/check/checktest"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
)

const workingGolden = "testdata/working.golden"

// TestWorkingOfTheDemos holds what every figure of the demos comes to, what is said to be
// missing for it, and by which lines each figure and each check shows its working: a line
// that is lost is a step that a fitter can't follow. Read the changes before you keep
// them: go test ./vent -run WorkingOf -update
func TestWorkingOfTheDemos(t *testing.T) {
	var got, worked []string
	for _, s := range unasked(t) {
		if !strings.HasSuffix(s.name, "every-term") {
			continue
		}
		r, err := check.Run(context.Background(), allChecks(), s.layout, s.codes, check.Options{On: checktest.Day, Workers: 2, Working: true})
		if err != nil {
			t.Fatal(err)
		}
		got = append(got, "== "+s.name)
		for _, f := range r.Figures {
			got = append(got, f.ID+" "+f.Subject+":"+valueOf(f))
			worked = append(worked, f.ID+" | "+symbolsOf(f.Working))
		}
		for _, f := range r.Findings {
			for _, p := range f.Parts {
				worked = append(worked, f.Check+" | "+symbolsOf(p.Working)+" | "+strings.Join(restsOn(p), " "))
			}
		}
	}
	got = append(append(got, "== sorrel.json with nothing stated complete"), withoutSurveys(t)...)
	got = append(append(got, "== sorrel.json, its vents shut, its regulator and its hob outside"), withNothingThere(t)...)
	slices.Sort(worked)
	got = append(append(got, "== working"), slices.Compact(worked)...)
	if *update {
		if err := os.WriteFile(workingGolden, []byte(strings.Join(got, "\n")+"\n"), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(workingGolden)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(strings.Split(strings.TrimSuffix(string(want), "\n"), "\n"), got); diff != "" {
		t.Errorf("working (-want +got):\n%s", changedLines(diff))
	}
}

// withoutSurveys is what is left open where no list is stated complete.
func withoutSurveys(t *testing.T) (lines []string) {
	t.Helper()
	s, err := bareScene(t, goodFiles[0], everyTerm)
	if err != nil {
		t.Fatal(err)
	}
	var edits []source.Edit
	for _, pointer := range memberPointers(s.layout.Root()) {
		if strings.HasSuffix(pointer, "/complete") {
			edits = append(edits, source.Edit{Pointer: pointer, Value: "[]"})
		}
	}
	r := foundWith(t, s, edits)
	for _, f := range r.Figures {
		if f.Note != "" || len(f.Missing) > 0 {
			lines = append(lines, f.ID+" "+f.Subject+": "+f.Note+gapsIn(f.Missing))
		}
	}
	for _, f := range r.Findings {
		for _, p := range f.Parts {
			if line := fmt.Sprintf("%s: %s %s", f.Check, p.Outcome, p.Reason) + gapsIn(p.Missing); len(p.Missing) > 0 && !slices.Contains(lines, line) {
				lines = append(lines, line)
			}
		}
	}
	return lines
}

// withNothingThere is what the figures miss where what they tell of is not there.
func withNothingThere(t *testing.T) (lines []string) {
	t.Helper()
	s, err := bareScene(t, goodFiles[0], everyTerm)
	if err != nil {
		t.Fatal(err)
	}
	edits := editsIn(t, `/regulators/main/in = "open-air";;/appliances/hob/in = "open-air"`)
	for _, vent := range s.layout.Lockers.Get("skirt").Vents.All() {
		edits = append(edits, source.Edit{Pointer: vent.Spot().Pointer() + "/closable", Value: "true"})
	}
	r := foundWith(t, s, edits)
	for _, f := range r.Figures {
		for _, m := range f.Missing {
			lines = append(lines, f.ID+" "+f.Subject+": "+m.What)
		}
	}
	return lines
}

// foundWith is what is found of a scene with edits.
func foundWith(t *testing.T, s *scene, edits []source.Edit) check.Result {
	t.Helper()
	l, loads := s.changed(t, edits...)
	if !loads {
		t.Fatal("it does not load")
	}
	r, err := check.Run(context.Background(), allChecks(), l, s.codes, check.Options{On: checktest.Day, Workers: 2})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// gapsIn tells by place what is missing.
func gapsIn(missing []report.Missing) string {
	var all []string
	for _, m := range missing {
		all = append(all, layout.Template(m.Place.Pointer)+"#"+m.What[strings.LastIndex(m.What, " all ")+1:])
	}
	slices.Sort(all)
	return " " + strings.Join(slices.Compact(all), " ")
}

// valueOf is what a figure comes to: its value, its course at some points, or what is
// missing.
func valueOf(f report.Figure) (text string) {
	if f.Value != nil {
		text += " " + f.Value.Text
	}
	if c := f.Course; c != nil {
		text += fmt.Sprintf(" %d points", len(c.Points))
		for i := range 5 {
			if n := len(c.Points); n > 0 {
				p := c.Points[i*(n-1)/4]
				text += fmt.Sprintf(" %.4g→%.4g", p[0], p[1])
			}
		}
		for _, l := range c.Levels {
			text += fmt.Sprintf(", %s at %.4g", l.Title, l.At)
		}
	}
	for _, m := range f.Missing {
		text += " missing " + m.What + ";"
	}
	return text
}

// restsOn is what a part took and relied on, each once.
func restsOn(p report.Part) (all []string) {
	for _, in := range p.Inputs {
		all = append(all, layout.Template(in.Pointer))
	}
	for _, limit := range p.Limits {
		all = append(all, "limit:"+limit)
	}
	for _, survey := range p.Surveys {
		pointer, list, _ := strings.Cut(survey, "#")
		all = append(all, layout.Template(pointer)+"#"+list)
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// symbolsOf lists the lines of a working, each kind of line once. Those that are named
// after a thing are all of one kind.
func symbolsOf(working []report.Line) string {
	var all []string
	for _, l := range working {
		symbol, _, _ := strings.Cut(l.Symbol, "_")
		if l.Role != "figure" {
			symbol = l.Symbol
		}
		if symbol == "" && l.Place != nil {
			symbol = l.Place.Pointer[strings.LastIndex(l.Place.Pointer, "/")+1:]
		}
		if l.Formula != "" {
			symbol += "=" // and by a formula that can be reckoned
		}
		all = append(all, strings.TrimSpace(l.Role+" "+symbol))
	}
	slices.Sort(all)
	return strings.Join(slices.Compact(all), ", ")
}

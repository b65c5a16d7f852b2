package vent_test

import (
	"context"
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/gas/solve/physicstest"
	"lowvent.example/schema/check"
	"lowvent.example/schema/check/checktest"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

// everyFinding is all that was found in all layouts of the tests: the demos by both
// codes, and every case of every example.
func everyFinding(t testing.TB) []report.Finding {
	t.Helper()
	var all []report.Finding
	for _, s := range scenes(t) {
		all = append(all, slices.Collect(maps.Values(s.found))...)
	}
	for _, a := range actedCases(t) {
		all = append(all, a.findings...)
	}
	return all
}

// everyFindingOf is what is found so of one check.
func everyFindingOf(t testing.TB, id string) []report.Finding {
	t.Helper()
	var all []report.Finding
	for _, s := range unasked(t) {
		all = append(all, slices.Collect(maps.Values(s.of(t, s.layout, id)))...)
	}
	for _, a := range actedCasesOf(t, id) {
		all = append(all, a.findings...)
	}
	return all
}

// TestDescriptorsTellTheTruth: what a check took, over all layouts of the tests, is
// what its descriptor declares, both ways: keys, limits, surveys and inventories. What
// is declared and never taken is as wrong as what is taken and not declared, since
// docs and tests are made of it.
func TestDescriptorsTellTheTruth(t *testing.T) {
	for _, c := range allChecks().Checks {
		t.Run(c.ID, func(t *testing.T) {
			took := map[string]bool{}
			for _, f := range everyFindingOf(t, c.ID) {
				tookBy(f, took)
			}
			if diff := cmp.Diff(declared(c.Descriptor), slices.Sorted(maps.Keys(took))); diff != "" {
				t.Errorf("%s declares (-) and took (+):\n%s", c.ID, changedLines(diff))
			}
		})
	}
}

// tookBy notes what a finding says that it took.
func tookBy(f report.Finding, took map[string]bool) {
	for _, pointer := range inputsOf(f) {
		took["reads "+layout.Template(pointer)] = true
	}
	for _, term := range limitsOf(f) {
		took["limit "+term] = true
	}
	for _, survey := range surveysOf(f) {
		pointer, list, _ := strings.Cut(survey, "#")
		kind := "survey "
		if pointer == "/surveyedBy/complete" {
			kind = "inventory "
		}
		took[kind+list] = true
	}
}

func declared(d check.Descriptor) []string {
	var all []string
	for _, r := range d.Reads {
		all = append(all, "reads "+r)
	}
	for _, l := range d.Limits {
		all = append(all, "limit "+l.ID)
	}
	for _, s := range d.Surveys {
		all = append(all, "survey "+string(s))
	}
	for _, i := range d.Inventory {
		all = append(all, "inventory "+string(i))
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// TestDescriptorsAreWhole: each says all that help and reports show of it, names only
// keys of the contract, and declares as a claim or a substitute only what it reads.
func TestDescriptorsAreWhole(t *testing.T) {
	for _, c := range allChecks().Checks {
		if !strings.HasSuffix(c.Asks, "?") || len(c.Why) < 30 || !strings.HasSuffix(c.Why, ".") || len(c.NotCovered) < 15 || c.Word.Rank() == 0 || c.MayAct == "" || len(c.Limits) == 0 {
			t.Errorf("%s does not say all: %+v", c.ID, c.Descriptor)
		}
		if c.Word == report.Danger && c.MayAct != report.LicensedFitter {
			t.Errorf("%s is DANGER, and %s may act on it", c.ID, c.MayAct)
		}
		for _, template := range slices.Concat(c.Reads, c.Claims, c.Instead) {
			if layout.Template(strings.ReplaceAll(template, "*", "x")) != template {
				t.Errorf("%s names %s, which no layout can have", c.ID, template)
			}
		}
		for _, template := range slices.Concat(c.Claims, c.Instead) {
			if !slices.Contains(c.Reads, template) {
				t.Errorf("%s does not read %s", c.ID, template)
			}
		}
	}
}

// TestWorkingCanBeReckonedAgain: in the working of every part and every figure, each
// formula uses only symbols of lines before it, and with the printed values it gives
// the printed result. So the sheet that a fitter recomputes is the sheet that was
// judged by.
func TestWorkingCanBeReckonedAgain(t *testing.T) {
	formulas := map[string]bool{}
	seen := map[string]bool{}
	reckon := func(t *testing.T, where string, lines []report.Line) {
		key := fmt.Sprint(lines)
		for _, l := range lines {
			if l.Value != nil {
				key += l.Value.Text
			}
		}
		if seen[key] {
			return // the same sheet, met in another case
		}
		seen[key] = true
		symbols := map[string]float64{}
		for i, l := range lines {
			if l.Formula != "" {
				formulas[l.Role] = true
				symbol, value, err := physicstest.Evaluate(l.Formula, symbols)
				if err != nil || symbol != l.Symbol || !nearly(value, *l.Value.SI) {
					t.Errorf("%s, line %d: %s gives %s = %v, printed is %s = %v, %v", where, i, l.Formula, symbol, value, l.Symbol, *l.Value.SI, err)
				}
			}
			if l.Symbol != "" && l.Value != nil && l.Value.SI != nil {
				symbols[l.Symbol] = *l.Value.SI
			}
			if l.Value == nil || l.Value.Text == "" {
				t.Errorf("%s, line %d: %+v has no value to print", where, i, l)
			}
		}
	}
	all := func(t *testing.T, name string, findings []report.Finding, figures []report.Figure) {
		for _, f := range findings {
			for _, p := range f.Parts {
				reckon(t, name+": "+pairOf(f)+" "+p.About, p.Working)
			}
		}
		for _, f := range figures {
			reckon(t, name+": figure "+f.ID+" "+f.Subject, f.Working)
		}
	}
	for _, c := range allChecks().Checks {
		t.Run(c.ID, func(t *testing.T) {
			for _, a := range actedCasesOf(t, c.ID) {
				all(t, a.name, a.findings, a.figures)
			}
		})
	}
	t.Run("demos", func(t *testing.T) {
		demosReckoned(t, all)
		if !formulas["step"] || !formulas["limit"] {
			t.Errorf("no formula of a step or of a limit was reckoned: %v", formulas)
		}
	})
}

// demosReckoned gives the findings and figures of the demos, with their working.
func demosReckoned(t *testing.T, reckon func(*testing.T, string, []report.Finding, []report.Figure)) {
	for _, s := range scenes(t) {
		r, err := check.Run(context.Background(), allChecks(), s.layout, s.codes, check.Options{On: checktest.Day, Workers: 2, Working: true})
		if err != nil {
			t.Fatal(err)
		}
		reckon(t, s.name, r.Findings, r.Figures)
	}
}

// nearly tells whether two numbers are one to nine digits.
func nearly(a, b float64) bool { return a == b || max(a-b, b-a) <= 1e-9*max(a, -a, b, -b) }

package checktest

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/schema/check"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

// Run runs the examples of a folder against the checks that they stand beside. It
// fails where a check has no examples, where an example has no check, where a kind
// of case is lacking, and where a check says anything but what the example wants.
func Run(t *testing.T, set check.Set, folder string) {
	t.Helper()
	examples, err := Read(folder)
	if err != nil {
		t.Fatal(err)
	}
	bench, err := NewBench(folder)
	if err != nil {
		t.Fatal(err)
	}
	paired(t, set, examples)
	for i := range examples {
		e := &examples[i]
		at := slices.IndexFunc(set.Checks, func(c check.Check) bool { return c.ID == e.Check })
		if at < 0 {
			continue
		}
		t.Run(e.Check, func(t *testing.T) {
			numeric := false
			for j := range e.Cases {
				t.Run(e.Cases[j].Name, func(t *testing.T) {
					numeric = bench.try(t, set, e, &e.Cases[j]) || numeric
				})
			}
			for _, word := range kindsFor(&set.Checks[at], numeric) {
				if e.Case(word) == nil {
					t.Errorf("%s has no case %q", e.File, word)
				}
			}
		})
	}
}

// paired holds that each check has its file of examples, and each file its check.
func paired(t *testing.T, set check.Set, examples []Example) {
	t.Helper()
	var ids, files []string
	for _, c := range set.Checks {
		ids = append(ids, c.ID)
	}
	for _, e := range examples {
		files = append(files, e.Check)
	}
	slices.Sort(files)
	if diff := cmp.Diff(ids, files); diff != "" {
		t.Errorf("checks (-) and their files of examples (+):\n%s", diff)
	}
}

// kindsFor lists the kinds of case that a check must have.
func kindsFor(c *check.Check, numeric bool) []string {
	kinds := []string{"good", "bad", "unknown"}
	if numeric {
		kinds = append(kinds, "at-limit", "past-limit")
	}
	if len(c.Surveys)+len(c.Inventory) > 0 {
		kinds = append(kinds, "unsurveyed")
	}
	return kinds
}

// try runs one case. It tells whether the check compared numbers.
func (b *Bench) try(t *testing.T, set check.Set, e *Example, c *Case) bool {
	t.Helper()
	_, findings, err := b.Case(set, e, c)
	if err != nil {
		t.Fatal(err)
	}
	before, err := b.unpatched(set, e, c.Code)
	if err != nil {
		t.Fatal(err)
	}
	want := wanted(c, before, findings)
	if diff := cmp.Diff(want, verdicts(findings)); diff != "" {
		t.Errorf("%s, %s (-want +got):\n%s%s", e.File, c.Name, diff, reasons(want, findings))
	}
	listed := slices.DeleteFunc(slices.Clone(findings), func(f report.Finding) bool {
		return !slices.ContainsFunc(c.Want, func(v Verdict) bool { return v.Subject == Of(f).Subject })
	})
	trueToName(t, c, listed)
	return slices.ContainsFunc(findings, func(f report.Finding) bool { return slices.ContainsFunc(f.Parts, isNumeric) })
}

// wanted is what the whole list of verdicts should be: what the case lists, and
// for every other subject that is still there what it was before.
func wanted(c *Case, before, after []report.Finding) []string {
	listed := map[string]bool{}
	var want []string
	for _, v := range c.Want {
		listed[v.Subject] = true
		want = append(want, v.String())
	}
	for _, f := range before {
		still := slices.ContainsFunc(after, func(g report.Finding) bool { return g.Subject == f.Subject })
		if v := Of(f); still && !listed[v.Subject] {
			want = append(want, v.String())
		}
	}
	slices.Sort(want)
	return want
}

func verdicts(findings []report.Finding) []string {
	var all []string
	for _, f := range findings {
		all = append(all, Of(f).String())
	}
	slices.Sort(all)
	return all
}

// reasons tells what the check found where that is not what is wanted.
func reasons(want []string, findings []report.Finding) string {
	var b strings.Builder
	for _, f := range findings {
		if slices.Contains(want, Of(f).String()) {
			continue
		}
		for _, p := range f.Parts {
			b.WriteString(Of(f).Subject + ": " + string(p.Outcome) + " " + string(p.Reason) + " " + p.About + " " + p.Text)
			if p.Found != nil {
				b.WriteString(" found " + p.Found.Text + ", needed " + p.Needed.Text)
			}
			for _, m := range p.Missing {
				b.WriteString(", missing " + m.What + " at " + m.Place.Pointer)
			}
			b.WriteString("\n")
		}
	}
	return b.String()
}

// trueToName holds that a case shows what its name says.
func trueToName(t testing.TB, c *Case, listed []report.Finding) {
	t.Helper()
	has := func(ok func(report.Finding) bool) bool { return slices.ContainsFunc(listed, ok) }
	anyPart := func(ok func(report.Part) bool) bool {
		return has(func(f report.Finding) bool { return slices.ContainsFunc(f.Parts, ok) })
	}
	kind, _, _ := strings.Cut(c.Name, "-")
	fair := true
	switch {
	case kind == "good":
		fair = has(func(f report.Finding) bool { return f.Outcome == report.Within })
	case kind == "bad":
		fair = has(func(f report.Finding) bool { return f.Outcome == report.NotMet })
	case kind == "unknown":
		fair = has(func(f report.Finding) bool { return f.Outcome == report.NotKnown && f.Reason == report.MissingInput })
	case kind == "unsurveyed":
		fair = has(func(f report.Finding) bool { return f.Outcome == report.NotKnown && f.Reason == report.NotSurveyed })
	case strings.HasPrefix(c.Name, "at-limit"):
		fair = anyPart(func(p report.Part) bool {
			return p.Outcome == report.Within && isNumeric(p) && atLimit(*p.Found.SI, *p.Needed.SI)
		})
	case strings.HasPrefix(c.Name, "past-limit"):
		fair = anyPart(justPast)
	}
	if !fair {
		t.Errorf("the case is called %q, and nothing in it is that", c.Name)
	}
}

// atLimit tells that a figure is at its limit: to the last digit where it was read, to a
// millionth where a formula that cannot be met exactly stands between.
func atLimit(found, needed float64) bool { return math.Abs(found-needed) <= 1e-6*math.Abs(needed) }

func isNumeric(p report.Part) bool {
	return p.Found != nil && p.Needed != nil && p.Found.SI != nil && p.Needed.SI != nil
}

// justPast tells that a part is not met by less than 1 % of the limit, by one where
// things are counted, or by less
// than a thousandth of the unit where the limit is zero.
func justPast(p report.Part) bool {
	if p.Outcome != report.NotMet || !isNumeric(p) {
		return false
	}
	off, size := math.Abs(*p.Found.SI-*p.Needed.SI), math.Abs(*p.Needed.SI)
	if p.Found.Kind == unit.KindCount.String() {
		return off == 1
	}
	return size > 0 && off < size/100 || size == 0 && off <= 1e-3
}

package vent_test

import (
	"context"
	"slices"
	"sync"
	"testing"

	"lowvent.example/schema/check"
	"lowvent.example/schema/check/checktest"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

// examples are the examples of all checks, gas and vent.
func examples(t testing.TB) []checktest.Example {
	t.Helper()
	var all []checktest.Example
	for _, folder := range []string{"../gas/testdata", "testdata"} {
		some, err := checktest.Read(folder)
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, some...)
	}
	return all
}

// acted is one case of an example, judged by its check with the working kept.
type acted struct {
	name     string
	example  *checktest.Example
	edits    *checktest.Case
	codes    code.Codes
	layout   *layout.Layout
	findings []report.Finding
	figures  []report.Figure
}

// allActed judges every case of every example, once for all tests.
var allActed = sync.OnceValues(func() ([]*acted, error) {
	b, err := theBench()
	if err != nil {
		return nil, err
	}
	var all []*acted
	for _, folder := range []string{"../gas/testdata", "testdata"} {
		some, err := checktest.Read(folder)
		if err != nil {
			return nil, err
		}
		for i := range some {
			for j := range some[i].Cases {
				all = append(all, &acted{name: some[i].Check + ", " + some[i].Cases[j].Name, example: &some[i], edits: &some[i].Cases[j]})
			}
		}
	}
	var failed sync.Map
	forEach(all, func(a *acted) {
		if err := a.act(b); err != nil {
			failed.Store(a.name, err)
		}
	})
	failed.Range(func(_, e any) bool { err = e.(error); return false })
	return all, err
})

func (a *acted) act(b *checktest.Bench) (err error) {
	if a.codes, err = b.Codes(a.edits.Code); err != nil {
		return err
	}
	if a.layout, err = b.Layout(a.example.Base, a.edits.Edits); err != nil {
		return err
	}
	set := onlyCheck(a.example.Check)
	set.Figures = allChecks().WithoutDetail().Figures
	r, err := check.Run(context.Background(), set, a.layout, a.codes, check.Options{On: checktest.Day, Workers: 1, Working: true})
	a.findings, a.figures = r.Findings, r.Figures
	return err
}

func onlyCheck(id string) check.Set {
	return check.Set{Checks: slices.DeleteFunc(slices.Clone(allChecks().Checks), func(c check.Check) bool { return c.ID != id })}
}

func actedCases(t testing.TB) []*acted {
	t.Helper()
	all, err := allActed()
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// waiverOn judges a layout with one waiver, and gives the waiver's state and whether
// it is attached to its finding.
func waiverOn(t *testing.T, l *layout.Layout, e checktest.Example, c *checktest.Case) (state string, attached bool) {
	t.Helper()
	codes, err := bench(t).Codes(c.Code)
	if err != nil {
		t.Fatal(err)
	}
	r, err := check.Run(context.Background(), onlyCheck(e.Check), l, codes, check.Options{On: checktest.Day})
	at := slices.IndexFunc(r.Waivers, func(w report.Waiver) bool { return w.ID == "try" })
	if err != nil || at < 0 {
		t.Fatalf("%s: %d waivers, %v", e.Check, len(r.Waivers), err)
	}
	for _, f := range r.Findings {
		if f.Waiver != nil {
			attached = f.Outcome == report.NotMet && f.Subject == r.Waivers[at].Subject
		}
	}
	return r.Waivers[at].State, attached
}

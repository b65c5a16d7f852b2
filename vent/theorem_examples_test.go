package vent_test

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"sync"
	"testing"

	"lowvent.example/schema/check"
	"lowvent.example/schema/check/checktest"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

// allExamples are the examples of all checks, gas and vent.
var allExamples = sync.OnceValues(func() ([]checktest.Example, error) {
	var all []checktest.Example
	for _, folder := range []string{"../gas/testdata", "testdata"} {
		some, err := checktest.Read(folder)
		if err != nil {
			return nil, err
		}
		all = append(all, some...)
	}
	return all, nil
})

func examples(t testing.TB) []checktest.Example {
	t.Helper()
	all, err := allExamples()
	if err != nil {
		t.Fatal(err)
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
	some, err := allExamples()
	if err != nil {
		return nil, err
	}
	var ids []string
	for _, e := range some {
		ids = append(ids, e.Check)
	}
	byCheck := make([][]*acted, len(ids))
	errs := make([]error, len(ids))
	forEach(ids, func(id string) {
		i := slices.Index(ids, id)
		byCheck[i], errs[i] = actedOf(id)
	})
	return slices.Concat(byCheck...), errors.Join(errs...)
})

var actedByCheck sync.Map

// actedOf judges every case of one check's examples, once for all tests.
func actedOf(id string) ([]*acted, error) {
	once, _ := actedByCheck.LoadOrStore(id, sync.OnceValues(func() ([]*acted, error) {
		b, err := theBench()
		if err != nil {
			return nil, err
		}
		some, err := allExamples()
		at := slices.IndexFunc(some, func(e checktest.Example) bool { return e.Check == id })
		if err != nil || at < 0 {
			return nil, errors.Join(err, fmt.Errorf("%d examples, and those of %s at %d", len(some), id, at))
		}
		var all []*acted
		for j := range some[at].Cases {
			a := &acted{name: id + ", " + some[at].Cases[j].Name, example: &some[at], edits: &some[at].Cases[j]}
			if err := a.act(b); err != nil {
				return nil, fmt.Errorf("%s: %w", a.name, err)
			}
			all = append(all, a)
		}
		return all, nil
	}))
	return once.(func() ([]*acted, error))()
}

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

func actedCasesOf(t testing.TB, id string) []*acted {
	t.Helper()
	some, err := actedOf(id)
	if err != nil {
		t.Fatal(err)
	}
	return some
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

package vent_test

import (
	"context"
	"os"
	"slices"
	"strings"
	"testing"

	"lowvent.example/schema/check"
	"lowvent.example/schema/check/checktest"
	"lowvent.example/schema/code"
	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
)

// byCode is one limit of a code, tried on a layout.
type byCode struct {
	line                        int
	code, check, subject, cites string
	at, past                    []source.Edit
}

func readByCode(t *testing.T) []byCode {
	t.Helper()
	data, err := os.ReadFile("testdata/by-code.txt")
	if err != nil {
		t.Fatal(err)
	}
	var all []byCode
	for i, line := range strings.Split(string(data), "\n") {
		cells := strings.Split(line, " | ")
		if len(cells) != 6 || strings.HasPrefix(line, " ") {
			continue
		}
		all = append(all, byCode{i + 1, cells[0], cells[1], cells[2], cells[3], editsIn(t, cells[4]), editsIn(t, cells[5])})
	}
	return all
}

func editsIn(t *testing.T, cell string) []source.Edit {
	t.Helper()
	var all []source.Edit
	for each := range strings.SplitSeq(cell, ";;") {
		e, err := source.ParseEdit(each)
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, e)
	}
	return all
}

// ended gives how the parts that cite the text ended.
func (c byCode) ended(t *testing.T, b *checktest.Bench, edits []source.Edit) []report.Outcome {
	t.Helper()
	l, err := b.Layout(checktest.DefaultBase, edits)
	if err != nil {
		t.Fatalf("line %d: %v", c.line, err)
	}
	codes, err := code.Use(c.code)
	if err != nil {
		t.Fatal(err)
	}
	set := allChecks().WithoutDetail()
	set.Checks = slices.DeleteFunc(set.Checks, func(each check.Check) bool { return each.ID != c.check })
	r, err := check.Run(context.Background(), check.Set{Checks: set.Checks}, l, codes, check.Options{On: checktest.Day, Workers: 1})
	if err != nil {
		t.Fatal(err)
	}
	var outcomes []report.Outcome
	for _, f := range r.Findings {
		for _, p := range f.Parts {
			if subjectOf(f) == c.subject && p.Source != nil && (&code.Entry{Document: p.Source.Document, Clause: p.Source.Clause}).Cite() == c.cites {
				outcomes = append(outcomes, p.Outcome)
			}
		}
	}
	return outcomes
}

// TestLimitsOnALayout tries limits of every code through the whole of it: a layout that
// keeps the limit just, and one that breaks it just.
func TestLimitsOnALayout(t *testing.T) {
	b, err := checktest.NewBench("..")
	if err != nil {
		t.Fatal(err)
	}
	count := map[string]int{}
	for _, c := range readByCode(t) {
		count[c.code]++
		at, past := c.ended(t, b, c.at), c.ended(t, b, c.past)
		if !slices.Contains(at, report.Within) || slices.Contains(at, report.NotMet) {
			t.Errorf("testdata/by-code.txt:%d: %s, %s at the limit: %v", c.line, c.code, c.check, at)
		}
		if !slices.Contains(past, report.NotMet) {
			t.Errorf("testdata/by-code.txt:%d: %s, %s past it: %v", c.line, c.code, c.check, past)
		}
	}
	for _, p := range code.Profiles() {
		if p.Book == code.BookProfile && count[p.ID] < min(6, len(p.Entries)) {
			t.Errorf("%d limits of %s are tried, of %d", count[p.ID], p.ID, len(p.Entries))
		}
	}
}

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
	"lowvent.example/schema/code"
	"lowvent.example/schema/report"
)

// mark is one letter for how a check ended for all of its subjects together: the worst.
func mark(worst int) string { return [...]string{".", "w", "c", "f", "?", "X"}[worst] }

// TestOneDwellingUnderEveryCode holds what every check says of the demonstration bus under
// every code and under none. The bus is the same; what differs is what each text asks.
func TestOneDwellingUnderEveryCode(t *testing.T) {
	l := readDemo(t, sorrelFile)
	ids := []string{""}
	for _, p := range code.Profiles() {
		if p.Book == code.BookProfile {
			ids = append(ids, p.ID)
		}
	}
	ended := map[string][]int{}
	for i, id := range ids {
		codes, err := code.Use(id)
		if err != nil {
			t.Fatal(err)
		}
		r, err := check.Run(context.Background(), allChecks().WithoutDetail(), l, codes, check.Options{On: checktest.Day, Workers: 2})
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range r.Findings {
			if ended[f.Check] == nil {
				ended[f.Check] = make([]int, len(ids))
			}
			ended[f.Check][i] = max(ended[f.Check][i], worse(f))
			for _, p := range f.Parts {
				if p.Source != nil && p.Source.Book == code.BookProfile.String() && !citedBy(codes.Profile, p.Source) {
					t.Errorf("%s under %s cites %s %s, which that code does not", f.Check, id, p.Source.Document, p.Source.Clause)
				}
			}
		}
	}
	var b strings.Builder
	b.WriteString("How each check ends for Sorrel under each code: X not met, ? not known, f for the fitter, c not covered, w within, . does not apply.\n\n")
	for i, id := range ids {
		if id == "" {
			id = "no code"
		}
		fmt.Fprintf(&b, "%c %s\n", 'a'+i, id)
	}
	b.WriteString("\n")
	var names []string
	for name := range ended {
		names = append(names, name)
	}
	slices.Sort(names)
	for _, name := range names {
		fmt.Fprintf(&b, "%-28s", name)
		for _, worst := range ended[name] {
			b.WriteString(" " + mark(worst))
		}
		b.WriteString("\n")
	}
	const path = "testdata/every-code.golden"
	if *update {
		if err := os.WriteFile(path, []byte(b.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), b.String()); diff != "" {
		t.Error(diff)
	}
}

// citedBy tells whether a text is one that a code's own entries cite.
func citedBy(p *code.Profile, s *report.Source) bool {
	return p != nil && slices.ContainsFunc(p.Entries, func(e code.Entry) bool { return e.Document == s.Document && e.Clause == s.Clause })
}

package main

import (
	"slices"
	"strings"
	"testing"

	"lowvent.example/schema/code"
)

// Every question of the codes stands in just one place of a comparison: told in
// full, the same in both, or silent in both.
func TestEveryTermOfTwoCodesIsAccountedFor(t *testing.T) {
	for _, left := range code.Profiles() {
		for _, right := range code.Profiles() {
			got := run(nil, "codes", "diff", left.ID, right.ID, "--width", "100")
			if got.status != statusNothing || got.stderr != "" {
				t.Fatalf("%s %s: status %d: %s", left.ID, right.ID, got.status, got.stderr)
			}
			inPage(t, got.stdout, 100)
			full, rest, _ := strings.Cut(got.stdout, "The same rule in both: ")
			told := strings.Split(full, "\n")
			alike, silent, _ := strings.Cut(flat(rest), " Silent in both: ")
			for _, term := range code.Terms() {
				if term.Book != left.Book && term.Book != right.Book {
					continue
				}
				places := 0
				for _, list := range [][]string{told, strings.Split(alike, ", "), strings.Split(silent, ", ")} {
					if slices.Contains(list, term.ID) {
						places++
					}
				}
				if places != 1 {
					t.Errorf("%s %s: %s stands in %d places", left.ID, right.ID, term.ID, places)
				}
			}
		}
	}
}

// A code differs from itself in nothing.
func TestACodeComparedWithItself(t *testing.T) {
	for _, book := range code.Profiles() {
		got := flat(run(nil, "codes", "diff", book.ID, book.ID).stdout)
		for _, e := range book.Entries {
			_, alike, _ := strings.Cut(got, "The same rule in both: ")
			if !strings.Contains(alike, e.Term) || strings.Contains(got, book.ID+": ") {
				t.Errorf("%s differs from itself in %s", book.ID, e.Term)
			}
		}
	}
}

// What is only remembered equals nothing that is judged, whatever its rule.
func TestRememberedIsADifference(t *testing.T) {
	duty := bookByID("uk-inland-boat").Entry(code.AlarmCODuty.Term)
	remembered := bookByID("us-mobile-structure").Entry(code.AlarmCODuty.Term)
	tests := []struct {
		a, b *code.Entry
		want bool
	}{
		{nil, nil, true}, {duty, nil, false}, {nil, duty, false}, {duty, duty, true}, {duty, remembered, false}, {remembered, remembered, true},
	}
	for _, tt := range tests {
		if got := sameRule(code.AlarmCODuty.Term, tt.a, tt.b); got != tt.want {
			t.Errorf("%+v and %+v: the same %v, want %v", tt.a, tt.b, got, tt.want)
		}
	}
	if bookByID("yurt") != nil {
		t.Error("there is a book of no id")
	}
}

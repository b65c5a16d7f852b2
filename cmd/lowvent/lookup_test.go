package main

import (
	"encoding/json"
	"strings"
	"testing"

	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/report"
)

// flat draws all spaces and line ends together.
func flat(s string) string { return strings.Join(strings.Fields(s), " ") }

// says holds that each text stands in what was printed, whatever the line
// breaks.
func says(t *testing.T, got string, want ...string) {
	t.Helper()
	for _, each := range want {
		if !strings.Contains(flat(got), flat(each)) {
			t.Errorf("%q is missing in:\n%s", each, got)
		}
	}
}

func inPage(t *testing.T, got string, width int) {
	t.Helper()
	for line := range strings.SplitSeq(got, "\n") {
		if text.Width(line) > width || strings.HasSuffix(line, " ") {
			t.Errorf("a line of %d columns on a page of %d, or a space at its end: %q", text.Width(line), width, line)
		}
	}
}

// Whatever a check's descriptor says, explain says; nothing of it falls silent.
func TestEveryCheckIsExplained(t *testing.T) {
	a, _, _ := bench(nil)
	listed := run(nil, "explain")
	for _, c := range a.set().Checks {
		t.Run(c.ID, func(t *testing.T) {
			got := run(nil, "explain", c.ID, "--width", "72")
			if got.status != statusNothing || got.stderr != "" {
				t.Fatalf("status %d: %s", got.status, got.stderr)
			}
			inPage(t, got.stdout, 72)
			says(t, listed.stdout, c.ID)
			says(t, got.stdout, c.ID+" "+string(c.Word), c.Asks, c.Why, c.NotCovered, c.Word.Meaning(), string(c.MayAct))
			for _, term := range c.Limits {
				says(t, got.stdout, term.ID+": "+term.Asks)
			}
			for _, template := range c.Reads {
				if howTo(template) == "" {
					t.Errorf("nothing tells how to measure %s", template)
				}
				says(t, got.stdout, template, howTo(template))
			}
			says(t, got.stdout, c.Claims...)
			says(t, got.stdout, c.Sources...)
			for _, each := range c.Surveys {
				says(t, got.stdout, string(each)+`, under "surveyed"`)
			}
			if strings.Contains(got.stdout, "never set aside") != c.NeverWaive {
				t.Error("it is not told right whether a waiver counts")
			}
		})
	}
}

// A limit is told in every book that may answer it, with how that is known.
func TestEveryLimitIsTracedToItsBook(t *testing.T) {
	a, _, _ := bench(nil)
	for _, c := range a.set().Checks {
		got := flat(run(nil, "explain", c.ID).stdout)
		for _, term := range c.Limits {
			for _, book := range code.Profiles() {
				if book.Book == term.Book && !strings.Contains(got, book.ID+": ") {
					t.Errorf("%s does not say what %s answers to %s", c.ID, book.ID, term.ID)
				}
			}
		}
	}
}

func TestEveryBookIsShownWhole(t *testing.T) {
	listed := run(nil, "codes")
	for _, book := range code.Profiles() {
		got := run(nil, "codes", "show", book.ID, "--width", "64")
		inPage(t, got.stdout, 64)
		says(t, listed.stdout, book.ID, book.Title, book.Edition)
		for _, e := range book.Entries {
			says(t, got.stdout, e.Term, e.Says, e.Note, e.Document)
			if e.Provenance == code.Memory {
				says(t, got.stdout, "only remembered, never judged")
			}
		}
		for _, each := range book.NotCovered {
			says(t, got.stdout, "- "+each)
		}
	}
}

// The working of every check and figure can be shown, and each line of it that
// comes from the file names its place.
func TestEveryWorkingNamesItsPlaces(t *testing.T) {
	a, _, _ := bench(nil)
	path := in(t, "sedge.json")
	for _, id := range a.explainable() {
		got := run(nil, "explain", id, path, "--width", "100")
		if got.status != statusNothing {
			t.Fatalf("%s: status %d: %s", id, got.status, got.stderr)
		}
		inPage(t, got.stdout, 100)
		if !strings.HasPrefix(flat(got.stdout), flat(strings.Join(report.Cautions(), " "))) || !strings.HasSuffix(flat(got.stdout), flat(report.KeepOff)) {
			t.Errorf("the working of %s lacks its caution or its last sentence", id)
		}
	}
	says(t, run(nil, "explain", "dwelling.connected-load", path, "--width", "200").stdout, path+":", "/appliances/hob/plate/input", "4.25 kW", "P_load = 0 + P_hob")
}

func TestWorkingLinesThatAreSharedStandOnce(t *testing.T) {
	line := report.Line{Role: "read", Symbol: "A_gross", What: "/x/gross", Value: report.Words("90 cm2"), Place: &report.Place{File: "x.json", Line: 3, Column: 4, Pointer: "/x/gross"}}
	other := line
	other.Value = report.Words("80 cm2")
	p := text.New(80, nil)
	workingLines(p, []report.Line{line, other, line, {Role: "limit", What: "so it is", Value: report.Words("so it is")}})
	want := "    A_gross  90 cm2\n             x.json:3:4 /x/gross\n    A_gross  80 cm2\n             x.json:3:4 /x/gross\n    limit    so it is\n"
	if p.String() != want {
		t.Errorf("got\n%swant\n%s", p.String(), want)
	}
}

func TestSchemasAreWholeAndNamed(t *testing.T) {
	for _, name := range schemaNames() {
		got := run(nil, "schema", name)
		var schema struct {
			Dialect string `json:"$schema"`
			ID      string `json:"$id"`
		}
		if err := json.Unmarshal([]byte(got.stdout), &schema); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if schema.Dialect != "https://json-schema.org/draft/2020-12/schema" || schema.ID == "" {
			t.Errorf("%s: dialect %q, id %q", name, schema.Dialect, schema.ID)
		}
	}
	if published("yurt") != nil {
		t.Error("an unknown schema gave text")
	}
}

func TestMeant(t *testing.T) {
	known := []string{"us-mobile-structure", "common-practice", "layout", "layers"}
	tests := []struct{ word, want string }{
		{"us-mobile-strcture", `; did you mean "us-mobile-structure"?`},
		{"US-mobile", `; did you mean "us-mobile-structure"?`},
		{"lay", ""}, // two begin so
		{"yurt", ""},
		{"", ""},
	}
	for _, tt := range tests {
		if got := meant(tt.word, known); got != tt.want {
			t.Errorf("meant(%q) = %q, want %q", tt.word, got, tt.want)
		}
	}
}

// The checks of a set come by their ids, so explain can find each by its own.
func TestIDsAreUnique(t *testing.T) {
	a, _, _ := bench(nil)
	seen := map[string]bool{}
	for _, id := range a.explainable() {
		if seen[id] {
			t.Errorf("two checks or figures are called %s", id)
		}
		seen[id] = true
		only, err := a.only(id)
		if err != nil || len(only.Checks)+len(only.Figures) != 1 {
			t.Errorf("%s finds %d checks and %d figures: %v", id, len(only.Checks), len(only.Figures), err)
		}
	}
	if len(seen) == 0 || len(a.set().Checks) != len(check.Join(a.parts[0].set, a.parts[1].set).Checks) {
		t.Error("the program has lost a check")
	}
}

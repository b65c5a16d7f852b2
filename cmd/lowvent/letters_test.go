package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"lowvent.example/cmd/lowvent/internal/letter"
)

// TestTheLettersHaveAllThatIsSaid: nothing in the reports of the demonstrations, in any
// check's explanation or working, in the codes or in what the schema tells to measure,
// would be printed as a question mark.
func TestTheLettersHaveAllThatIsSaid(t *testing.T) {
	said := map[string]string{"the schema": run(nil, "schema", "layout").stdout}
	layouts, err := filepath.Glob(filepath.Join(moduleTop(t), "testdata", "layouts", "*.json"))
	if err != nil || len(layouts) < 3 {
		t.Fatalf("%d demonstrations, %v", len(layouts), err)
	}
	for _, name := range layouts {
		said[name] = run(nil, "check", "--on", "2026-11-25", "--format", "json", name).stdout
	}
	a, _, _ := bench(nil)
	for _, c := range a.set().Checks {
		said["explain "+c.ID] = run(nil, "explain", c.ID).stdout + run(nil, "explain", c.ID, layouts[0]).stdout
	}
	books, err := filepath.Glob(filepath.Join(moduleTop(t), "schema", "code", "codes", "*.json"))
	if err != nil || len(books) < 3 {
		t.Fatalf("%d codes, %v", len(books), err)
	}
	for _, name := range books {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		said[name] = string(text)
	}
	for name, text := range said {
		if text == "" {
			t.Errorf("%s says nothing", name)
		}
		for line := range strings.SplitSeq(text, "\n") {
			if got := letter.Printable(line); strings.Count(got, "?") != strings.Count(line, "?") {
				t.Errorf("%s: %q is printed as %q", name, line, got)
			}
		}
	}
}

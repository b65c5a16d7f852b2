package main

import (
	"slices"
	"strings"
	"testing"

	"lowvent.example/cmd/lowvent/internal/render/calcsheet"
)

// TestDocsSheet: docs/calculation-sheet.md names every form, every column and every role,
// and no column that there is not.
func TestDocsSheet(t *testing.T) {
	doc := readDoc(t, "docs/calculation-sheet.md")
	_, table, _ := strings.Cut(doc, "| column | holds |\n|---|---|\n")
	table, _, _ = strings.Cut(table, "\n\n")
	var named []string
	for _, row := range lines(table) {
		for i, piece := range strings.Split(strings.Split(row, "|")[1], "`") {
			if i%2 == 1 {
				named = append(named, piece)
			}
		}
	}
	if !slices.Equal(named, calcsheet.Columns()) {
		t.Errorf("the columns are %v, and the document names %v", calcsheet.Columns(), named)
	}
	for _, form := range workingFormats() {
		if !strings.Contains(doc, "| `"+form+"` |") {
			t.Errorf("the form %s is not told", form)
		}
	}
	roles := map[string]bool{}
	for _, file := range []string{"sedge.json", "broken.json"} {
		for _, id := range []string{"locker.low-vent", "regulator.cold-course"} {
			for _, r := range recordsOf(t, run(nil, "explain", id, in(t, file), "--format", "csv").stdout) {
				roles[r["role"]] = true
			}
		}
	}
	for role := range roles {
		if !strings.Contains(table, "`"+role+"`") {
			t.Errorf("the role %s is not told", role)
		}
	}
	if len(roles) < 10 {
		t.Errorf("only the roles %v were met", roles)
	}
}

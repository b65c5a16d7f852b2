package main

import (
	"encoding/json"
	"regexp"
	"strconv"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/schema/report"
)

// TestLinesAreTheFindings: each finding of the JSON form that is not met or not known has
// its line, with its place, signal word and check, in the same order, and there is no other.
func TestLinesAreTheFindings(t *testing.T) {
	finding := regexp.MustCompile(`(?m)^(.+):(\d+):(\d+): ([A-Z]+): ([a-z.-]+), (.+?): (?:not met|not known)`)
	told := 0
	for _, path := range []string{"../../testdata/layouts/sorrel-faulty.json", "../../testdata/layouts/teal.json", "testdata/layouts/sedge.json"} {
		lines := run(nil, "check", path, "--on", "2026-11-25", "--format", "lines")
		given := run(nil, "check", path, "--on", "2026-11-25", "--format", "json")
		var r report.Run
		if err := json.Unmarshal([]byte(given.stdout), &r); err != nil || given.status != lines.status {
			t.Fatalf("%s: %v, status %d and %d", path, err, lines.status, given.status)
		}
		var want, got [][]string
		for _, f := range r.Files[0].Findings {
			if f.Outcome == report.NotMet || f.Outcome == report.NotKnown {
				want = append(want, []string{f.Place.File, strconv.Itoa(f.Place.Line), strconv.Itoa(f.Place.Column), string(f.Word), f.Check, f.Label})
			}
		}
		for _, m := range finding.FindAllStringSubmatch(lines.stdout, -1) {
			got = append(got, m[1:])
		}
		told += len(got)
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%s (-json +lines):\n%s", path, diff)
		}
	}
	if told < 50 {
		t.Errorf("%d lines in all", told)
	}
}

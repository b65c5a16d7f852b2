package main

import (
	"strconv"
	"testing"
)

// TestComparePage: the page of a faulty bus held against a sound one keeps to its columns.
func TestComparePage(t *testing.T) {
	sound, faulty := "../../testdata/layouts/sorrel.json", "../../testdata/layouts/sorrel-faulty.json"
	for _, width := range []int{60, 100, 200} {
		got := run(nil, "compare", sound, faulty, "--on", "2026-11-25", "--width", strconv.Itoa(width))
		if got.status != statusFindings || got.stderr != "" {
			t.Fatalf("status %d: %s", got.status, got.stderr)
		}
		inPage(t, got.stdout, width)
	}
}

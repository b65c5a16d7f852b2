package gas

import (
	"testing"

	"lowvent.example/schema/unit"
)

// TestBetweenCountsDays holds the age of a paper against the calendar: years of 365
// days and of 366, and dates of which the earliest day counts.
func TestBetweenCountsDays(t *testing.T) {
	for _, c := range []struct {
		from, to string
		days     float64
	}{
		{"2026-11-25", "2026-11-25", 0},
		{"2026-11-24", "2026-11-25", 1},
		{"2026-11-26", "2026-11-25", -1},
		{"2023-02-28", "2023-03-01", 1},
		{"2024-02-28", "2024-03-01", 2}, // 2024 has a 29 February
		{"2025-11-25", "2026-11-25", 365},
		{"2023-11-25", "2024-11-25", 366},
		{"2024-11-25", "2026-11-25", 730},
		{"2026-11", "2026-11-25", 24}, // from the first of the month
		{"2026", "2026-11-25", 328},   // from the first of the year: 304 days to 1 November, and 24
	} {
		from, err := unit.ParseDate(c.from)
		if err != nil {
			t.Fatal(err)
		}
		to, err := unit.ParseDate(c.to)
		if err != nil {
			t.Fatal(err)
		}
		if got := float64(between(from, to)) / 86400; got != c.days {
			t.Errorf("from %s to %s: %v days, want %v", c.from, c.to, got, c.days)
		}
	}
}

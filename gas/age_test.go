package gas

import (
	"testing"
	"time"

	"pgregory.net/rapid"

	"lowvent.example/schema/unit"
)

func day(t *testing.T, text string) unit.Date {
	t.Helper()
	d, err := unit.ParseDate(text)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// TestYearsBegun holds the count on and around anniversaries, by the calendar.
func TestYearsBegun(t *testing.T) {
	for _, row := range []struct {
		from, to string
		want     unit.Count
	}{
		{"2016-11-25", "2016-11-25", 0},
		{"2016-11-25", "2016-11-26", 1},
		{"2016-11-25", "2026-11-24", 10},
		{"2016-11-25", "2026-11-25", 10},
		{"2016-11-25", "2026-11-26", 11},
		{"2016-11", "2026-11-01", 10}, // a month may mean its first day
		{"2016-11", "2026-11-02", 11},
		{"2016", "2026-01-01", 10},
		{"2016", "2026-01-02", 11},
		{"2016-02-29", "2017-02-28", 1}, // so that a term never runs a day too long
		{"2016-02-29", "2017-03-01", 2},
		{"2027-01-01", "2026-11-25", 0}, // not made yet
		{"2026-12", "2026-11-25", 0},
	} {
		if got := yearsBegun(day(t, row.from), day(t, row.to)); got != row.want {
			t.Errorf("from %s to %s: %v years, want %v", row.from, row.to, got, row.want)
		}
	}
	if got := yearsBegun(unit.Date{}, day(t, "2026-11-25")); got != 0 {
		t.Errorf("since no date: %v", got)
	}
}

// TestYearsBegunBracketTheDay: the day lies after the last anniversary but one and
// not after the last.
func TestYearsBegunBracketTheDay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		date := func(name string) unit.Date {
			return unit.Date{Year: rapid.IntRange(1950, 2080).Draw(t, name), Month: time.Month(rapid.IntRange(1, 12).Draw(t, name+" month")),
				Day: rapid.IntRange(1, 28).Draw(t, name+" day")}
		}
		from, to := date("from"), date("to")
		n := int(yearsBegun(from, to))
		if from.AddYears(n).Before(to) || n > 0 && !from.AddYears(n-1).Before(to) {
			t.Fatalf("from %s to %s: %d", from, to, n)
		}
	})
}

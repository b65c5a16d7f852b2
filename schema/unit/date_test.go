package unit

import (
	"cmp"
	"errors"
	"regexp"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"
)

func TestParseDate(t *testing.T) {
	for _, row := range []struct {
		text        string
		want        Date
		first, last Date
	}{
		{"2031", Date{Year: 2031}, Date{2031, 1, 1}, Date{2031, 12, 31}},
		{"2031-05", Date{Year: 2031, Month: 5}, Date{2031, 5, 1}, Date{2031, 5, 31}},
		{"2031-02", Date{Year: 2031, Month: 2}, Date{2031, 2, 1}, Date{2031, 2, 28}},
		{"2032-02", Date{Year: 2032, Month: 2}, Date{2032, 2, 1}, Date{2032, 2, 29}},
		{"2032-02-29", Date{2032, 2, 29}, Date{2032, 2, 29}, Date{2032, 2, 29}},
		{"2000-02-29", Date{2000, 2, 29}, Date{2000, 2, 29}, Date{2000, 2, 29}},
		{"2026-11-25", Date{2026, 11, 25}, Date{2026, 11, 25}, Date{2026, 11, 25}},
		{"2026-12", Date{Year: 2026, Month: 12}, Date{2026, 12, 1}, Date{2026, 12, 31}},
		{"0001-01-01", Date{1, 1, 1}, Date{1, 1, 1}, Date{1, 1, 1}},
		{"9999-12-31", Date{9999, 12, 31}, Date{9999, 12, 31}, Date{9999, 12, 31}},
	} {
		got, err := ParseDate(row.text)
		if err != nil || got != row.want {
			t.Errorf("%s: %v, %v", row.text, got, err)
		}
		if got.First() != row.first || got.Last() != row.last {
			t.Errorf("%s: from %v to %v, want %v to %v", row.text, got.First(), got.Last(), row.first, row.last)
		}
		if got.String() != row.text {
			t.Errorf("%s prints %s", row.text, got)
		}
	}
}

func TestParseDateRefuses(t *testing.T) {
	for _, row := range []struct{ text, why string }{
		{"", "not in the form"}, {"31", "not in the form"}, {"20311", "not in the form"}, {"2031-5", "not in the form"},
		{"2031-05-1", "not in the form"}, {"2031/05", "not in the form"}, {"05-2031", "not in the form"}, {"2031-05-", "not in the form"},
		{"2031-0a", "not in the form"}, {" 2031", "not in the form"}, {"2031-05-01T00:00", "not in the form"}, {"２０３１", "not in the form"},
		{"0000", "no year 0"}, {"2031-00", "no month 00"}, {"2031-13", "no month 13"},
		{"2031-05-00", "May 2031 has no day 00"}, {"2031-05-32", "May 2031 has no day 32, its last is 31"},
		{"2031-04-31", "its last is 30"}, {"2031-02-29", "its last is 28"}, {"2032-02-30", "its last is 29"},
		{"1900-02-29", "its last is 28"}, {"2100-02-29", "its last is 28"},
	} {
		got, err := ParseDate(row.text)
		var refused *ParseError
		if !errors.As(err, &refused) || !got.IsZero() {
			t.Errorf("%q: %v, %v", row.text, got, err)
			continue
		}
		if !strings.Contains(refused.Why, row.why) || refused.Kind != 0 || refused.Text != row.text {
			t.Errorf("%q: %+v, want %q", row.text, refused, row.why)
		}
		if want := `a date is written YYYY, YYYY-MM or YYYY-MM-DD, for example "2031-05"`; !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v", row.text, err)
		}
	}
}

// The calendar agrees with package time over a whole cycle of 400 years.
func TestCalendarOverItsCycle(t *testing.T) {
	days := 0
	for day := time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC); day.Year() < 2400; day = day.AddDate(0, 0, 1) {
		d, err := ParseDate(day.Format(time.DateOnly))
		if err != nil || d != (Date{day.Year(), day.Month(), day.Day()}) {
			t.Fatalf("%s: %v, %v", day.Format(time.DateOnly), d, err)
		}
		next := day.AddDate(0, 0, 1)
		if last := (Date{Year: d.Year, Month: d.Month}).Last(); (next.Month() != d.Month) != (last == d) {
			t.Fatalf("%v: the month ends on %v", d, last)
		}
		days++
	}
	if days != 146097 { // 400 Gregorian years
		t.Errorf("%d days", days)
	}
}

func TestDateOrder(t *testing.T) {
	// In the order of Compare.
	sorted := []Date{{}, {Year: 2030}, {2030, 12, 31}, {2031, 1, 1}, {Year: 2031, Month: 1}, {Year: 2031}, {2031, 5, 1}, {Year: 2031, Month: 5}, {2031, 5, 31}, {Year: 2032, Month: 1}}
	for i, a := range sorted {
		for j, b := range sorted {
			if got := a.Compare(b); got != cmp.Compare(i, j) {
				t.Errorf("%q.Compare(%q) = %d", a, b, got)
			}
		}
	}
	for _, row := range []struct {
		a, b   string
		before bool
	}{
		{"2031-05-01", "2031-05-02", true}, {"2031-05-02", "2031-05-01", false}, {"2031-05-01", "2031-05-01", false},
		{"2031", "2032-01", true}, {"2031", "2031-12-31", false}, {"2031", "2031-05", false}, {"2031-05", "2031", false},
		{"2031-05", "2031-06-01", true}, {"2031-05", "2031-05-31", false}, {"2030-12-31", "2031", true}, {"2031-01-01", "2031", false},
	} {
		a, _ := ParseDate(row.a)
		b, _ := ParseDate(row.b)
		if got := a.Before(b); got != row.before {
			t.Errorf("%s before %s: %v", row.a, row.b, got)
		}
	}
}

func TestDateAddYears(t *testing.T) {
	for _, row := range []struct {
		text string
		n    int
		want string
	}{
		{"2031", 5, "2036"}, {"2031-05", 12, "2043-05"}, {"2031-05-31", -1, "2030-05-31"}, {"2032-02-29", 1, "2033-02-28"},
		{"2032-02-29", 4, "2036-02-29"}, {"2096-02-29", 4, "2100-02-28"}, {"2032-02", 1, "2033-02"}, {"2031-02-28", 1, "2032-02-28"},
	} {
		d, _ := ParseDate(row.text)
		if got := d.AddYears(row.n).String(); got != row.want {
			t.Errorf("%s + %d = %s, want %s", row.text, row.n, got, row.want)
		}
	}
}

func TestNoDate(t *testing.T) {
	var none Date
	if !none.IsZero() || none.String() != "" || none.First() != none || none.Last() != none || none.AddYears(10) != none {
		t.Errorf("%v %v %v", none, none.First(), none.Last())
	}
	if (Date{Year: 2031}).IsZero() {
		t.Error("a year is a date")
	}
}

// The order is total and agrees with Before; spans never run backwards.
func TestDateProperties(t *testing.T) {
	dates := rapid.Custom(func(t *rapid.T) Date {
		d := Date{Year: rapid.IntRange(1999, 2004).Draw(t, "year")}
		d.Month = time.Month(rapid.IntRange(0, 12).Draw(t, "month"))
		if d.Month != 0 {
			d.Day = rapid.IntRange(0, daysIn(d.Year, d.Month)).Draw(t, "day")
		}
		return d
	})
	rapid.Check(t, func(t *rapid.T) {
		a, b, c := dates.Draw(t, "a"), dates.Draw(t, "b"), dates.Draw(t, "c")
		if back, err := ParseDate(a.String()); err != nil || back != a {
			t.Fatalf("%v prints %q, which reads %v, %v", a, a.String(), back, err)
		}
		if a.Last().Before(a.First()) || a.First().Compare(a.Last()) > 0 {
			t.Fatalf("%v runs from %v to %v", a, a.First(), a.Last())
		}
		if a.Compare(b) != -b.Compare(a) || a.Compare(b) <= 0 && b.Compare(c) <= 0 && a.Compare(c) > 0 {
			t.Fatalf("no order: %v %v %v", a, b, c)
		}
		if a.Before(b) && (a.Compare(b) >= 0 || b.Before(a)) {
			t.Fatalf("%v is before %v and is not", a, b)
		}
		if n := rapid.IntRange(0, 20).Draw(t, "n"); a.AddYears(n).Compare(a) < 0 || a.AddYears(n).Year != a.Year+n {
			t.Fatalf("%v + %d = %v", a, n, a.AddYears(n))
		}
	})
}

// DatePattern holds for what ParseDate takes, and beyond it only for days that
// the calendar lacks and the year 0.
func TestDatePatternAgrees(t *testing.T) {
	re := regexp.MustCompile(DatePattern)
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`[0-9]{3,5}(-[0-9]{1,2}(-[0-9]{1,2}[0-9 ]?)?)?`).Draw(t, "text")
		_, err := ParseDate(text)
		if matches := re.MatchString(text); err == nil && !matches {
			t.Fatalf("%q is read but does not match", text)
		} else if err != nil && matches && !strings.Contains(err.Error(), "has no day") && !strings.Contains(err.Error(), "no year 0") {
			t.Fatalf("%q matches but: %v", text, err)
		}
	})
}

func TestClockTime(t *testing.T) {
	re := regexp.MustCompile(ClockPattern)
	for m := range 24 * 60 {
		c := ClockTime{Minutes: m}
		got, err := ParseClockTime(c.String())
		if err != nil || got != c || !re.MatchString(c.String()) {
			t.Fatalf("%d: %q reads %v, %v", m, c, got, err)
		}
	}
	if got, _ := ParseClockTime("07:30"); got.Minutes != 450 {
		t.Errorf("07:30 = %d min", got.Minutes)
	}
	for _, text := range []string{"", "7:30", "24:00", "07:60", "07.30", "0730", "07:30 ", "-7:30", "07:3a", "07:30:00", "7:30pm", "ab:cd", "３０:00"} {
		got, err := ParseClockTime(text)
		var refused *ParseError
		if !errors.As(err, &refused) || got != (ClockTime{}) || !strings.Contains(err.Error(), `for example "07:30"`) || re.MatchString(text) {
			t.Errorf("%q: %v, %v", text, got, err)
		}
	}
}

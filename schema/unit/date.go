package unit

import (
	"cmp"
	"fmt"
	"time"
)

// DatePattern is the form of a date, for JSON Schema. ParseDate also checks
// that the day exists.
const DatePattern = `^[0-9]{4}(-(0[1-9]|1[0-2])(-(0[1-9]|[12][0-9]|3[01]))?)?$`

// Date is a day, a month or a year of the Gregorian calendar. Month and Day
// are 0 when they were not given, as on a stamp that reads "2031-05". The zero
// Date is no date.
type Date struct {
	Year  int
	Month time.Month
	Day   int
}

// ParseDate reads YYYY, YYYY-MM or YYYY-MM-DD, years 0001 to 9999, and refuses
// a month or a day that the calendar does not have. The error is a *ParseError
// whose Kind is 0.
func ParseDate(text string) (Date, error) {
	d, why := scanDate(text)
	if why != "" {
		return Date{}, &ParseError{Text: text, Why: why + `; a date is written YYYY, YYYY-MM or YYYY-MM-DD, for example "2031-05"`}
	}
	return d, nil
}

// scanDate reads a date; why is "" when it could.
func scanDate(text string) (d Date, why string) {
	if !dateShaped(text) {
		return d, "not in the form of a date"
	}
	d.Year = int(digits(text[:4]))
	if d.Year == 0 {
		return d, "there is no year 0"
	}
	if len(text) >= 7 {
		d.Month = time.Month(digits(text[5:7]))
		if d.Month < time.January || d.Month > time.December {
			return d, fmt.Sprintf("there is no month %s", text[5:7])
		}
	}
	if len(text) == 10 {
		d.Day = int(digits(text[8:]))
		if last := daysIn(d.Year, d.Month); d.Day < 1 || d.Day > last {
			return d, fmt.Sprintf("%s %d has no day %s, its last is %d", d.Month, d.Year, text[8:], last)
		}
	}
	return d, ""
}

// dateShaped tells whether text has digits and hyphens where a date has them.
func dateShaped(text string) bool {
	if len(text) != 4 && len(text) != 7 && len(text) != 10 {
		return false
	}
	for i := 0; i < len(text); i++ {
		hyphen := i == 4 || i == 7
		if hyphen && text[i] != '-' || !hyphen && !isDigit(text[i]) {
			return false
		}
	}
	return true
}

// daysIn gives the number of days of a month.
func daysIn(year int, month time.Month) int {
	return time.Date(year, month+1, 0, 0, 0, 0, 0, time.UTC).Day()
}

// First gives the earliest full day that d can mean: 1 January of a bare year.
// The zero Date gives itself.
func (d Date) First() Date {
	if d.IsZero() {
		return d
	}
	return Date{Year: d.Year, Month: max(d.Month, time.January), Day: max(d.Day, 1)}
}

// Last gives the latest full day that d can mean: 31 December of a bare year.
// The zero Date gives itself.
func (d Date) Last() Date {
	if d.IsZero() || d.Day != 0 {
		return d
	}
	if d.Month == 0 {
		d.Month = time.December
	}
	d.Day = daysIn(d.Year, d.Month)
	return d
}

// Before tells whether every day that d can mean lies before every day that o
// can mean: "2031" is before "2032-01", and neither before nor after "2031-05".
func (d Date) Before(o Date) bool { return d.Last().order(o.First()) < 0 }

// Compare orders dates by their first day, and of two that begin together puts
// the one that ends sooner first. It gives -1, 0 or +1, and 0 only for equal
// spans of days. The zero Date comes before all others.
func (d Date) Compare(o Date) int {
	return cmp.Or(d.First().order(o.First()), d.Last().order(o.Last()))
}

// order compares full days.
func (d Date) order(o Date) int {
	return cmp.Or(cmp.Compare(d.Year, o.Year), cmp.Compare(d.Month, o.Month), cmp.Compare(d.Day, o.Day))
}

// AddYears gives the same day n years on, as exact as d was. 29 February
// becomes 28 February in a year without one, so that a term never runs a day
// too long. The zero Date stays.
func (d Date) AddYears(n int) Date {
	if d.IsZero() {
		return d
	}
	d.Year += n
	if d.Day != 0 {
		d.Day = min(d.Day, daysIn(d.Year, d.Month))
	}
	return d
}

// String gives the date as ParseDate reads it; the zero Date gives "".
func (d Date) String() string {
	switch {
	case d.IsZero():
		return ""
	case d.Month == 0:
		return fmt.Sprintf("%04d", d.Year)
	case d.Day == 0:
		return fmt.Sprintf("%04d-%02d", d.Year, d.Month)
	}
	return fmt.Sprintf("%04d-%02d-%02d", d.Year, d.Month, d.Day)
}

// IsZero tells whether d is no date.
func (d Date) IsZero() bool { return d == Date{} }

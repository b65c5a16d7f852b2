package unit

import "fmt"

// ClockPattern is the form of a time of day, for JSON Schema; every text that
// matches is accepted.
const ClockPattern = `^([01][0-9]|2[0-3]):[0-5][0-9]$`

// ClockTime is a time of day, in minutes after midnight: 0 to 1439.
type ClockTime struct{ Minutes int }

// ParseClockTime reads HH:MM, 00:00 to 23:59. The error is a *ParseError whose
// Kind is 0.
func ParseClockTime(text string) (ClockTime, error) {
	if len(text) == 5 && text[2] == ':' && isDigit(text[0]) && isDigit(text[1]) && isDigit(text[3]) && isDigit(text[4]) {
		h, m := digits(text[:2]), digits(text[3:])
		if h < 24 && m < 60 {
			return ClockTime{Minutes: int(h*60 + m)}, nil
		}
	}
	return ClockTime{}, &ParseError{Text: text, Why: `not a time of day; it is written HH:MM from 00:00 to 23:59, for example "07:30"`}
}

// String gives the time as ParseClockTime reads it.
func (c ClockTime) String() string {
	return fmt.Sprintf("%02d:%02d", c.Minutes/60, c.Minutes%60)
}

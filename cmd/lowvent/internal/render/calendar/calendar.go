// Package calendar writes dates that fall due as iCalendar (RFC 5545), for any calendar to
// take in. It reminds and proves nothing, and each entry says so.
package calendar

import (
	"bufio"
	"crypto/sha256"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

// ahead is how long before its day an entry reminds: time enough to find a fitter.
const ahead = "-P30D"

// proof is what every entry says of itself.
const proof = "A reminder, and no proof that anything is in order until then. " + report.KeepOff

// none stands in a calendar that would else be empty, which the standard forbids (RFC
// 5545, 3.6: one component or more) and which would read as if nothing ran out.
const none = "The file states no date that falls due: not known"

// Entry is a date on which something that a file states runs out.
type Entry struct {
	On      unit.Date // a whole day
	Written string    // as the file has it, which may be a month or a year
	What    string
	Subject string // JSON Pointer of the date
}

// Of is the file that the entries are from, the day on which it was judged, and what judged it.
type Of struct{ Title, On, Program string }

// Write writes the entries. The error is that of the writer.
func Write(w io.Writer, of Of, entries []Entry) error {
	c := &writer{to: bufio.NewWriter(w)}
	c.line("BEGIN", "VCALENDAR")
	c.line("VERSION", "2.0")
	c.line("PRODID", "-//lowvent.example//"+quoted(of.Program)+"//EN")
	for _, e := range entries {
		c.entry(of, e)
	}
	if len(entries) == 0 {
		c.event(of, none, strings.ReplaceAll(of.On, "-", ""), none, of.Title+": "+none)
	}
	c.line("END", "VCALENDAR")
	return c.to.Flush()
}

type writer struct{ to *bufio.Writer }

// entry stands on its date; one that is past stands on the day judged, or nobody would be
// reminded.
func (c *writer) entry(of Of, e Entry) {
	on, what := day(e.On), e.What
	if judged := strings.ReplaceAll(of.On, "-", ""); on < judged {
		on, what = judged, "OVERDUE since "+e.Written+": "+what
	}
	c.event(of, e.Subject+"\n"+e.Written, on, what, fmt.Sprintf("%s: the file states %s, at %s", of.Title, e.Written, e.Subject))
}

// event is a day without a time of day, with a reminder ahead of it. The key tells it from
// all others of the same title.
func (c *writer) event(of Of, key, on, what, about string) {
	summary := quoted(what + " (reminder, no proof)")
	c.line("BEGIN", "VEVENT")
	c.line("UID", fmt.Sprintf("%x@lowvent.example", sha256.Sum256([]byte(of.Title+"\n"+key))))
	c.line("DTSTAMP", strings.ReplaceAll(of.On, "-", "")+"T000000Z")
	c.line("DTSTART;VALUE=DATE", on)
	c.line("SUMMARY", summary)
	c.line("DESCRIPTION", quoted(about+". "+proof))
	c.line("TRANSP", "TRANSPARENT")
	c.line("BEGIN", "VALARM")
	c.line("ACTION", "DISPLAY")
	c.line("DESCRIPTION", summary)
	c.line("TRIGGER", ahead)
	c.line("END", "VALARM")
	c.line("END", "VEVENT")
}

func day(d unit.Date) string { return fmt.Sprintf("%04d%02d%02d", d.Year, d.Month, d.Day) }

// octets is the most of a line; what is longer goes on in the next after a space (RFC 5545, 3.1).
const octets = 75

// line writes a property, folded between characters and ended as the standard asks.
func (c *writer) line(name, value string) {
	rest, room := name+":"+value, octets
	for len(rest) > room {
		cut := room
		for !utf8.RuneStart(rest[cut]) {
			cut--
		}
		c.to.WriteString(rest[:cut] + "\r\n ")
		rest, room = rest[cut:], octets-1
	}
	c.to.WriteString(rest + "\r\n")
}

// quoted writes a text as the standard asks (RFC 5545, 3.3.11), without what no calendar
// can show.
func quoted(s string) string {
	return strings.NewReplacer(`\`, `\\`, ";", `\;`, ",", `\,`, "\n", `\n`).Replace(text.Clean(s))
}

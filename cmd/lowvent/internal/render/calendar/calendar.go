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

	"lowvent.example/cmd/lowvent/internal/handoff"
	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

// ahead is how long before its day an entry reminds: time enough to find a fitter.
const ahead = "-P30D"

// proof is what every entry says of itself.
const proof = "A reminder, and no proof that anything is in order until then. " + report.KeepOff

// Write writes the dates of a layout, on the day on which it was judged. The error is that of
// the writer.
func Write(w io.Writer, m *handoff.Matter) error {
	c := &writer{to: bufio.NewWriter(w)}
	c.line("BEGIN", "VCALENDAR")
	c.line("VERSION", "2.0")
	c.line("PRODID", "-//lowvent.example//"+quoted(m.Run.Program.Name+" "+m.Run.Program.Version)+"//EN")
	for _, d := range handoff.Dates(m.Layout) {
		c.entry(m, d)
	}
	c.line("END", "VCALENDAR")
	return c.to.Flush()
}

type writer struct{ to *bufio.Writer }

// entry is a day without a time of day, with a reminder ahead of it.
func (c *writer) entry(m *handoff.Matter, d handoff.Due) {
	summary := quoted(d.What + " (reminder, no proof)")
	c.line("BEGIN", "VEVENT")
	c.line("UID", fmt.Sprintf("%x@lowvent.example", sha256.Sum256([]byte(m.Report.Title+"\n"+d.Subject+"\n"+d.Written))))
	c.line("DTSTAMP", strings.ReplaceAll(m.Run.On, "-", "")+"T000000Z")
	c.line("DTSTART;VALUE=DATE", day(d.On))
	c.line("SUMMARY", summary)
	c.line("DESCRIPTION", quoted(fmt.Sprintf("%s: the file states %s, at %s. %s", m.Report.Title, d.Written, d.Subject, proof)))
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

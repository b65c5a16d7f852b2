// Package annotate writes a report as workflow commands, lines that a CI of that kind
// reads in a program's output and shows beside the file and on the page of the run:
//
//	::error file=layout.json,line=3,endLine=3,col=7,title=DANGER cylinder.fill::…
//
// The form and its escapes are those of the public documentation, "Workflow commands",
// and of the command function of that CI's public toolkit. The limits are those of the
// toolkit's document docs/problem-matchers.md, part "Limitations": of each step at most
// ten errors, ten warnings and ten notices are shown, and fifty in all of a job.
package annotate

import (
	"bufio"
	"fmt"
	"io"
	"strings"

	"lowvent.example/cmd/lowvent/internal/render/saying"
	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/report"
)

// mostOfAKind is how many errors, warnings and notices of a step are shown.
const mostOfAKind = 10

// Write writes the report of a run: the cautions as plain lines, then what makes files
// unusable, then what is not met and what is not known, the worst first, as far as it is
// shown. The last notice tells how many more there are, and the result. The error is
// that of the writer.
func Write(w io.Writer, run *report.Run) error {
	out := &commands{w: bufio.NewWriter(w), left: map[string]int{}, room: map[string]int{}}
	for _, kind := range kinds {
		out.room[kind] = mostOfAKind
	}
	out.room["notice"]-- // the last one is for the result
	for _, each := range head(run) {
		out.line(saying.OneLine(each))
	}
	for i := range run.Files {
		for _, each := range saying.Unverified(&run.Files[i]) {
			out.line(each)
		}
	}
	for i := range run.Files {
		for j := range run.Files[i].Faults {
			f := &run.Files[i].Faults[j]
			out.command("error", f.Place, "UNUSABLE", saying.Fault(f))
		}
	}
	out.findings(saying.Worst(run))
	out.line("::notice title=" + property("lowvent: file check, not inspection") + "::" + data(out.notShown()+saying.Result(run)))
	return out.w.Flush()
}

// head is the words that come before all others.
func head(run *report.Run) []string { return run.Caution }

// kinds are the kinds of annotation, the gravest first.
var kinds = []string{"error", "warning", "notice"}

func kind(w report.Signal) string {
	switch w {
	case report.Danger, report.Warning:
		return "error"
	case report.Caution:
		return "warning"
	}
	return "notice"
}

// commands writes commands as long as the CI shows them, and counts the rest.
type commands struct {
	w          *bufio.Writer
	room, left map[string]int
}

// line writes a line. A bufio.Writer keeps its first error for Flush.
func (c *commands) line(s string) { _, _ = c.w.WriteString(s + "\n") }

func (c *commands) command(kind string, at report.Place, title, said string) {
	if c.room[kind] == 0 {
		c.left[kind]++
		return
	}
	c.room[kind]--
	c.line("::" + kind + " " + where(at) + "title=" + property(saying.OneLine(title)) + "::" + data(said))
}

// findings writes a command for each finding, errors first, then warnings, then notices.
func (c *commands) findings(worst []report.Finding) {
	for _, each := range kinds {
		for i := range worst {
			if f := &worst[i]; kind(f.Word) == each {
				said := append([]string{saying.EndedWithWaiver(f) + "."}, saying.Why(f)...)
				c.command(each, f.Place, string(f.Word)+" "+saying.Subject(f), strings.Join(said, " "))
			}
		}
	}
}

// where tells the place. A column goes with a place on one line only, and standard input
// is no file that could be shown.
func where(p report.Place) string {
	if p.File == "" || p.File == saying.StandardInput {
		return ""
	}
	s := "file=" + property(p.File) + ","
	if p.Line > 0 {
		s += fmt.Sprintf("line=%d,endLine=%d,", p.Line, max(p.Line, p.EndLine))
	}
	if p.Line > 0 && p.EndLine == p.Line {
		s += fmt.Sprintf("col=%d,", p.Column)
	}
	return s
}

// notShown tells what there was no room for.
func (c *commands) notShown() string {
	var words []string
	for _, kind := range kinds {
		if n := c.left[kind]; n > 0 {
			words = append(words, saying.Count(n, kind))
		}
	}
	if len(words) == 0 {
		return ""
	}
	return "Not shown beside the file: " + strings.Join(words, ", ") + ", for which a CI has no room; --format lines has every one. "
}

// data escapes the text of a command.
func data(s string) string {
	return strings.NewReplacer("%", "%25", "\r", "%0D", "\n", "%0A").Replace(saying.OneLine(s))
}

// property escapes the value of a property. A path keeps its ends of line, escaped; other
// characters that could steer a terminal are replaced.
func property(s string) string {
	return text.Clean(strings.NewReplacer("%", "%25", "\r", "%0D", "\n", "%0A", ":", "%3A", ",", "%2C").Replace(s))
}

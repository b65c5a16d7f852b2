// Package lineout writes a report as one line a finding, with its place before it as
// compilers write it, for editors and for search.
package lineout

import (
	"bufio"
	"io"
	"strings"

	"lowvent.example/cmd/lowvent/internal/render/term"
	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/report"
)

// Write writes the report of a run: what is not met and what is not known, the worst
// first, a line each. The lines with the cautions and the result have no place, so that
// no editor takes them for findings. What is within its limit, not covered or a fitter's
// to answer is only counted, in the result. The error is that of the writer.
func Write(w io.Writer, run *report.Run) error {
	out := bufio.NewWriter(w)
	say := func(parts ...string) {
		// a bufio.Writer keeps its first error for Flush
		_, _ = out.WriteString(oneLine(strings.Join(parts, "")) + "\n")
	}
	for _, each := range run.Caution {
		say(each)
	}
	for i := range run.Files {
		f := &run.Files[i]
		for j := range f.Faults {
			fault := &f.Faults[j]
			say(term.At(fault.Place), ": UNUSABLE: ", fault.What, after("; expected ", fault.Expected), after("; ", fault.Mend))
		}
		for j := range f.Findings {
			one := &f.Findings[j]
			if told(one) {
				say(term.At(one.Place), ": ", string(one.Word), ": ", one.Check, ", ", one.Label, ": ", term.Ended(one), waived(one))
			}
		}
	}
	say(term.Result(run))
	return out.Flush()
}

func told(f *report.Finding) bool {
	return f.Outcome == report.NotMet || f.Outcome == report.NotKnown
}

func waived(f *report.Finding) string {
	if f.Waiver == nil {
		return ""
	}
	return " (a waiver is written for it, " + f.Waiver.State + ")"
}

func after(lead, s string) string {
	if s == "" {
		return ""
	}
	return lead + s
}

// oneLine keeps a text from breaking its line or steering a terminal.
func oneLine(s string) string { return strings.Join(strings.Fields(text.Clean(s)), " ") }

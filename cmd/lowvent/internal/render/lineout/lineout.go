// Package lineout writes a report as one line a finding, with its place before it as
// compilers write it, for editors and for search.
package lineout

import (
	"bufio"
	"io"
	"strings"

	"lowvent.example/cmd/lowvent/internal/render/saying"
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
		_, _ = out.WriteString(saying.OneLine(strings.Join(parts, "")) + "\n")
	}
	for _, each := range run.Caution {
		say(each)
	}
	for i := range run.Files {
		f := &run.Files[i]
		for _, each := range saying.Unverified(f) {
			say(each)
		}
		for j := range f.Faults {
			fault := &f.Faults[j]
			say(saying.At(fault.Place), ": UNUSABLE: ", saying.Fault(fault))
		}
		for j := range f.Findings {
			one := &f.Findings[j]
			if saying.Told(one) {
				say(saying.At(one.Place), ": ", string(one.Word), ": ", saying.Subject(one), ": ", saying.EndedWithWaiver(one))
			}
		}
	}
	say(saying.Result(run))
	return out.Flush()
}

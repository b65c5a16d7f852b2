// Package junit writes a report as JUnit XML, for what shows the results of tests. The
// form has no published standard; this is the common part that consumers agree on.
package junit

import (
	"encoding/xml"
	"io"

	"lowvent.example/cmd/lowvent/internal/render/saying"
	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/report"
)

// what is how the run and each of its files are called, wherever a name is shown alone.
const what = "file check, not inspection"

// Write writes the report of a run: a suite for each file, a case for each check and
// subject. The counts follow the exit status: an error is what makes a file unusable
// (status 2), a failure is a finding that counts (status 1), whether not met or not
// known, and without either the status is 0. A finding that does not count, being below
// the threshold or waived where waivers are accepted, is skipped with its words, and so is
// every question that has no answer or whose answer only a fitter can prove. The error is
// that of the writer.
func Write(w io.Writer, run *report.Run) error {
	root := suites{Name: "lowvent: " + what}
	for i := range run.Files {
		s := suiteOf(run, &run.Files[i])
		root.Tests, root.Failures, root.Errors = root.Tests+s.Tests, root.Failures+s.Failures, root.Errors+s.Errors
		root.Suites = append(root.Suites, s)
	}
	out := &firstError{w: w}
	_, _ = io.WriteString(out, xml.Header) // firstError keeps it
	enc := xml.NewEncoder(out)
	enc.Indent("", "  ")
	if err := enc.Encode(root); err != nil {
		return err
	}
	_, err := io.WriteString(out, "\n")
	return err
}

// firstError is a writer that goes on failing once it has failed.
type firstError struct {
	w   io.Writer
	err error
}

func (f *firstError) Write(p []byte) (int, error) {
	if f.err != nil {
		return 0, f.err
	}
	n, err := f.w.Write(p)
	f.err = err
	return n, err
}

// head is the words that come before all others, in the properties of each suite.
func head(run *report.Run) []string { return run.Caution }

func suiteOf(run *report.Run, f *report.FileReport) suite {
	s := suite{Name: what + ": " + text.Clean(f.File), Properties: properties(run, f), Out: text.Clean(saying.Result(run))}
	for i := range f.Faults {
		s.add(faultCase(&f.Faults[i]))
	}
	for i := range f.Findings {
		s.add(findingCase(run, &f.Findings[i]))
	}
	return s
}

func properties(run *report.Run, f *report.FileReport) []property {
	var all []property
	add := func(name, value string) {
		if value = text.Clean(value); value != "" {
			all = append(all, property{name, value})
		}
	}
	for _, each := range head(run) {
		add("caution", each)
	}
	add("title", f.Title)
	add("sha256", f.SHA256)
	add("gas now", f.Gas)
	if len(f.Faults) == 0 {
		add("judged by", saying.JudgedBy(f))
	}
	for _, each := range saying.Unverified(f) {
		add("not verified", each)
	}
	add("judged on", run.On)
	add("counts from", string(run.FailAt))
	if run.Accept {
		add("waivers", "accepted: findings with a waiver in force do not count")
	}
	add("keep off", report.KeepOff)
	return all
}

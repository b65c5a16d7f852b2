// Package saying is what is said of findings, limits, places and results in words, so
// that every form says the same. How a form lays words out is no matter of it: it knows no
// form, and every form may ask it.
package saying

import (
	"slices"
	"strings"

	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/report"
)

// StandardInput is how a report names standard input, which is no file that a viewer
// could open.
const StandardInput = "<stdin>"

// Told tells whether a finding is one to tell by itself: not met, or not known.
func Told(f *report.Finding) bool {
	return f.Outcome == report.NotMet || f.Outcome == report.NotKnown
}

// Worst lists the findings of all files that are to be told, in reading order: what is
// not met before what is not known, the worst word first.
func Worst(run *report.Run) []report.Finding {
	var all []report.Finding
	for i := range run.Files {
		for j := range run.Files[i].Findings {
			if f := &run.Files[i].Findings[j]; Told(f) {
				all = append(all, *f)
			}
		}
	}
	report.Sort(all)
	return all
}

// Subject is the check and what it was asked of: "cylinder.fill, cylinder A".
func Subject(f *report.Finding) string { return f.Check + ", " + f.Label }

// Why is the rest of what is to be said of a finding, a sentence each: the question, why
// it is asked, what it rests on, what would mend it and who may act.
func Why(f *report.Finding) []string {
	said := []string{f.Asks, f.Why}
	if len(f.Parts) > 0 {
		first := &f.Parts[0]
		if first.Source != nil {
			said = append(said, after("Rule: ", first.Source.Rule), "Source: "+Cite(first.Source))
		}
		if first.Mend != nil {
			said = append(said, after("Mend: ", first.Mend.Text))
		}
	}
	missing := Missing(f)
	for i, each := range missing {
		if i == mostMissing {
			said = append(said, "And "+Count(len(missing)-i, "more thing")+" to be measured")
			break
		}
		said = append(said, after("Measure: ", each.Measure))
	}
	if f.Waiver != nil {
		said = append(said, "Waiver by "+f.Waiver.DecidedBy+" until "+f.Waiver.Until+": "+strings.TrimRight(f.Waiver.Reason, ". ")+"; the finding stands")
	}
	return sentences(append(said, after("May act: ", string(f.MayAct))))
}

// mostMissing bounds how many missing things are told in one text.
const mostMissing = 3

// Missing lists what a finding waits for, each thing once.
func Missing(f *report.Finding) []report.Missing {
	var all []report.Missing
	for i := range f.Parts {
		for _, m := range f.Parts[i].Missing {
			if !slices.Contains(all, m) {
				all = append(all, m)
			}
		}
	}
	return all
}

// Fault is what is wrong with a file, what was expected and how to mend it.
func Fault(f *report.Fault) string {
	return f.What + after("; expected ", f.Expected) + after("; ", f.Mend)
}

func after(lead, s string) string {
	if s == "" {
		return ""
	}
	return lead + s
}

// sentences ends each text with a stop, and leaves out what is empty or was said before.
func sentences(texts []string) []string {
	var out []string
	for _, each := range texts {
		each = OneLine(each)
		if each != "" && !strings.ContainsAny(each[len(each)-1:], ".?!") {
			each += "."
		}
		if each != "" && !slices.Contains(out, each) {
			out = append(out, each)
		}
	}
	return out
}

// OneLine keeps a text from breaking its line, from steering a terminal, and from being
// taken for a command by a CI that reads commands in what a program prints: those begin
// a line with "::", or have "##[" anywhere.
func OneLine(s string) string {
	s = strings.Join(strings.Fields(text.Clean(s)), " ")
	s = strings.ReplaceAll(s, "##[", "## [")
	if strings.HasPrefix(s, "::") {
		s = "./" + s
	}
	return s
}

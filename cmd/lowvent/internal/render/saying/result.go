package saying

import (
	"fmt"
	"strings"

	"lowvent.example/schema/report"
)

// Result is the sentences with which every report of a run ends.
func Result(run *report.Run) string {
	of := "file check"
	if run.Trial != nil {
		of = report.TrialWord + ", which is of a dwelling that does not exist"
	}
	return "Result of this " + of + ": " + overall(run) + ". " + report.KeepOff
}

func overall(run *report.Run) string {
	if len(run.Files) == 1 {
		return ResultOf(run, &run.Files[0])
	}
	found, unusable := 0, 0
	for i := range run.Files {
		switch {
		case len(run.Files[i].Faults) > 0:
			unusable++
		case run.Files[i].Counts.AtOrAbove > 0:
			found++
		}
	}
	return fmt.Sprintf("%s, of which %d can't be used and %d have findings at %s or above", Count(len(run.Files), "file"), unusable, found, run.FailAt)
}

// ResultOf tells in a few words what became of a file.
func ResultOf(run *report.Run, f *report.FileReport) string {
	threshold := run.FailAt
	if len(f.Faults) > 0 {
		return "the file can't be used, and nothing was judged"
	}
	var notMet, notKnown, below int
	for i := range f.Findings {
		switch one := &f.Findings[i]; {
		case one.Counts(threshold) && one.Outcome == report.NotMet:
			notMet++
		case one.Counts(threshold):
			notKnown++
		case one.Outcome == report.NotMet || one.Outcome == report.NotKnown:
			below++
		}
	}
	var words []string
	switch {
	case notMet+notKnown == 0:
		words = append(words, fmt.Sprintf("no finding at %s or above in what the file states", threshold))
	default:
		words = append(words, fmt.Sprintf("%d not met and %d not known at %s or above", notMet, notKnown, threshold))
	}
	if f.Counts.Excused > 0 {
		words = append(words, fmt.Sprintf("of which %d waived%s", f.Counts.Excused, accepted(run)))
	}
	if below > 0 {
		words = append(words, fmt.Sprintf("%d below that", below))
	}
	if left := openQuestions(f); left != "" {
		return strings.Join(words, ", ") + "; still open: " + left
	}
	return strings.Join(words, ", ")
}

// accepted says what the exit status makes of waivers.
func accepted(run *report.Run) string {
	if run.Accept {
		return " and by --accept-waivers not counted towards the exit status"
	}
	return ""
}

// openQuestions tells what no result of this program can settle.
func openQuestions(f *report.FileReport) string {
	var left []string
	for _, each := range []struct {
		n    int
		what string
	}{{f.Counts.ToProve, "for the fitter to prove"}, {f.Counts.AskFitter, "for the fitter to answer"}, {f.Counts.NotCovered, "not covered"}} {
		if each.n > 0 {
			left = append(left, fmt.Sprintf("%d %s", each.n, each.what))
		}
	}
	switch {
	case f.Code == nil:
		left = append(left, "which code is the law here")
	case !f.Code.Governs:
		left = append(left, "whether this code is the law here")
	}
	return strings.Join(left, ", ")
}

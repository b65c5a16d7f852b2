package term

import (
	"fmt"
	"strings"

	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/report"
)

// counted counts every question of a file: nothing that was asked is left out.
func (p *page) counted(run *report.Run, f *report.FileReport) {
	c := &f.Counts
	p.Blank()
	p.Item(text.Plain, 0, indent, fmt.Sprintf("Counted: not met: %d danger, %d warning, %d caution, %d notice; %d not known; %d within limit as stated (%d to prove); "+
		"%d not covered; %d for the fitter; %d not applicable; %d waived.",
		c.Danger, c.Warning, c.Caution, c.Notice, c.NotKnown, c.Within, c.ToProve, c.NotCovered, c.AskFitter, c.NoSubject+c.RuleExempts, c.Waived))
	p.Item(text.Plain, 0, indent, "Judged on "+run.On+"; what hangs on a date may end otherwise on a later day.")
	if f.Code != nil && !f.Code.Governs {
		p.Para(strong, 0, f.Code.Title+" is a borrowed yardstick here: it is not shown to be the law for this dwelling.")
	}
}

// result is the last paragraph of every report, clean or not.
func (p *page) result(run *report.Run) {
	p.Blank()
	if len(run.Files) != 1 {
		for i := range run.Files {
			p.Item(text.Plain, 0, indent, run.Files[i].File+": "+outcome(run, &run.Files[i])+".")
		}
	}
	p.Para(strong, 0, Result(run))
}

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
		return outcome(run, &run.Files[0])
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

// outcome tells in a few words what became of a file.
func outcome(run *report.Run, f *report.FileReport) string {
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

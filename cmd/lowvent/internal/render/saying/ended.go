package saying

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"lowvent.example/schema/report"
)

// mostParts bounds how many parts of one question are told.
const mostParts = 3

// Ended tells in one line how a question ended, with what was found or what is missing;
// of nil, that the thing is not listed.
func Ended(f *report.Finding) string {
	if f == nil {
		return "not listed"
	}
	var parts []string
	for i := range f.Parts {
		if part := &f.Parts[i]; part.Outcome == f.Outcome {
			if said := Part(part); said != "" && !slices.Contains(parts, said) {
				parts = append(parts, said)
			}
		}
	}
	words := outcomeWords(f)
	if left := len(parts) - mostParts; left > 0 {
		parts = append(parts[:mostParts], fmt.Sprintf("%d more", left))
	}
	if len(parts) > 0 {
		words += ": " + strings.Join(parts, "; ")
	}
	return words
}

// EndedWithWaiver is how a finding ended, with what was found or is missing, and with the waiver
// that is written for it.
func EndedWithWaiver(f *report.Finding) string { return Ended(f) + waived(f) }

func waived(f *report.Finding) string {
	if f.Waiver == nil {
		return ""
	}
	return " (a waiver is written for it, " + f.Waiver.State + ")"
}

// Part tells of one part what was compared, or what is missing.
func Part(part *report.Part) string {
	if len(part.Missing) > 0 {
		return Lacking(part.Missing)
	}
	said := About(part)
	if part.Found == nil {
		return said
	}
	found := Amount(part.Found)
	switch {
	case part.Outcome == report.NotMet && part.Needed != nil:
		asked, rule := Needed(part)
		return strings.TrimPrefix(said+": found "+found+", needed "+cmp.Or(asked, rule), ": ")
	case said == "":
		return found
	}
	return said + " " + found
}

func outcomeWords(f *report.Finding) string {
	switch {
	case f.Reason == report.NotCovered:
		return "the code does not cover it"
	case f.Reason == report.AskFitter:
		return "for the fitter to answer"
	case f.Outcome == report.NotMet:
		return "not met"
	case f.Outcome == report.NotKnown:
		return "not known"
	case f.Outcome == report.Within:
		return "within, as stated"
	}
	return "does not apply"
}

// About says what a part compares, where a check compares several.
func About(part *report.Part) string {
	switch {
	case part.About == "":
		return part.Text
	case part.Text == "":
		return part.About
	}
	return part.About + ": " + part.Text
}

// Needed tells what is needed and the rule that it comes from; a rule that is
// just the figure with its sense ("at most 50 mm") is told as what is needed.
func Needed(part *report.Part) (needed, rule string) {
	needed = Amount(part.Needed)
	if part.Source == nil {
		return needed, ""
	}
	rule = part.Source.Rule
	if needed != "" && (rule == needed || rule == "at most "+needed || rule == "at least "+needed) {
		return rule, ""
	}
	return needed, rule
}

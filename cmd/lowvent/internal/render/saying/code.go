package saying

import (
	"cmp"
	"fmt"
	"strings"

	"lowvent.example/schema/report"
)

// JudgedBy tells by what a file was judged, with the words on a borrowed yardstick.
func JudgedBy(f *report.FileReport) string {
	if f.Code == nil {
		return "no code was chosen: only the law on the thing itself, common practice and this program's own rules were judged"
	}
	said := f.Code.Title + " [" + f.Code.ID + "]"
	if !f.Code.Governs {
		said += "; a borrowed yardstick, not shown to be the law here: " + cmp.Or(f.Code.Borrowed, "its scope is not shown to fit")
	}
	return OneLine(said)
}

// Unverified tells what a file was judged by that nobody has verified: a code from a file
// of the user's own, a local overlay, and each of its limits that may ask less than the
// code, with who answers for it.
func Unverified(f *report.FileReport) []string {
	var all []string
	add := func(format string, values ...any) {
		all = append(all, OneLine("Not verified by anybody: "+fmt.Sprintf(format, values...)))
	}
	if f.Code != nil && f.Code.File != "" {
		add("the code that %s was judged by was read from %s, a file of the user's own.", f.File, f.Code.File)
	}
	if f.Overlay == nil {
		return all
	}
	add("%s was judged by local rules as well, %s from %s.", f.File, f.Overlay.Title, f.Overlay.File)
	for _, l := range f.Overlay.Limits {
		if l.Loosens && l.State == report.LocalInForce {
			add("a local rule that may ask less than the code: %s: %s (%s); by %s, licence %s, until %s: %s.", l.Term, l.Says, l.Document, l.By, l.Licence, l.Until, l.Reason)
		}
	}
	return all
}

// ChosenCode names the code, or says what a run without one is worth and which codes
// would fit. Unlike JudgedBy it leaves a borrowed yardstick to its caller, which has a
// line for it.
func ChosenCode(f *report.FileReport) string {
	if f.Code != nil {
		line := f.Code.Title + " [" + f.Code.ID + "]"
		if f.Code.Edition != "" {
			line += "; " + f.Code.Edition
		}
		return line
	}
	line := "none chosen, so only the law on the thing itself, common practice and this program's own rules are judged. "
	if len(f.Candidates) == 0 {
		return line + "No built-in code is shown to be the law for what the file states of the dwelling and where it is used; \"lowvent codes\" lists them."
	}
	var fitting []string
	for _, c := range f.Candidates {
		fitting = append(fitting, fmt.Sprintf("--code %s (%s)", c.ID, c.Title))
	}
	return line + "What the file states fits " + strings.Join(fitting, ", ") + "; or name the code in the file, under /where/code."
}

// Overlay says how much of a local overlay is heeded.
func Overlay(o *report.Overlay) string {
	heeded, looser := 0, 0
	for _, l := range o.Limits {
		if l.State != report.LocalInForce {
			continue
		}
		heeded++
		if l.Loosens {
			looser++
		}
	}
	return fmt.Sprintf("%s: %s heeded of %d, of which %d may ask less than the code; nobody has verified them", o.Title, Count(heeded, "local limit"), len(o.Limits), looser)
}

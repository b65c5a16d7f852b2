// Package calcsheet writes the working of one check or figure as a calculation sheet:
// a page to read and to print, and a table for spreadsheets. Both have every line of
// the working, in the order in which it was reckoned and with enough digits to reckon
// it again.
package calcsheet

import (
	"strings"

	"lowvent.example/cmd/lowvent/internal/render/saying"
	"lowvent.example/schema/report"
)

// entry is one thing that is told before the working: of the file, or what it was
// judged by.
type entry struct{ Label, Text string }

// head tells of a file what every sheet begins with, after the cautions.
func head(run *report.Run, f *report.FileReport) []entry {
	all := []entry{
		{"file", f.File},
		{"title", f.Title},
		{"SHA-256 of the file", f.SHA256},
		{"judged on", run.On},
		{"gas now", f.Gas},
	}
	if len(f.Faults) == 0 {
		all = append(all, judgedBy(f)...)
	}
	all = append(all, entry{"made by", strings.TrimSpace(run.Program.Name + " " + run.Program.Version)})
	var told []entry
	for _, each := range all {
		if each.Text != "" {
			told = append(told, each)
		}
	}
	return told
}

// judgedBy tells of the code, whether it is the law here, and of local rules over it.
func judgedBy(f *report.FileReport) []entry {
	all := []entry{{"code", saying.ChosenCode(f)}}
	if f.Code != nil && !f.Code.Governs {
		all = append(all, entry{"borrowed yardstick", "This code is not shown to be the law here: " + f.Code.Borrowed})
	}
	if f.Code != nil && f.Code.File != "" {
		all = append(all, entry{"unverified", "This code was read from " + f.Code.File + ", a file of the user's own: nobody has verified it."})
	}
	if f.Overlay != nil {
		all = append(all, entry{"overlay", saying.Overlay(f.Overlay)})
	}
	return all
}

// subject names what a sheet is about: the one check or figure that its run asked for.
func subject(run *report.Run) string {
	for i := range run.Files {
		f := &run.Files[i]
		if len(f.Findings) > 0 {
			return f.Findings[0].Check
		}
		if len(f.Figures) > 0 {
			return f.Figures[0].ID
		}
	}
	return ""
}

// bases tells by pointer how a part's inputs came to be stated.
func bases(inputs []report.Input) map[string]string {
	all := map[string]string{}
	for _, each := range inputs {
		all[each.Pointer] = each.Basis
	}
	return all
}

// basis is how the value of a line came to be stated, "" for what was not read.
func basis(of map[string]string, l *report.Line) string {
	if l.Place == nil {
		return ""
	}
	return of[l.Place.Pointer]
}

// waived tells of a waiver, which changes no outcome.
func waived(w *report.Waiver) string {
	if w == nil {
		return ""
	}
	return "a waiver is written for it (" + w.State + "); it changes no outcome"
}

package main

import (
	"io"

	"lowvent.example/cmd/lowvent/internal/render/calcsheet"
	"lowvent.example/cmd/lowvent/internal/render/jsonout"
	"lowvent.example/cmd/lowvent/internal/render/term"
	"lowvent.example/schema/report"
)

// workingForms lists the forms of a working, the usual one first. Each also tells of a
// layout that can't be used.
func workingForms() []format {
	return []format{
		{"terminal", writeWorking},
		ofRun("json", jsonout.Write),
		ofRun("html", calcsheet.HTML),
		ofRun("csv", calcsheet.CSV),
	}
}

// workingFormats are the names of the forms of a working.
func workingFormats() []string { return namesOf(workingForms()) }

// writeWorking shows a working on the terminal, or why there is none.
func writeWorking(w io.Writer, run *report.Run, v view, excerpt excerptFunc) error {
	if len(run.Files[0].Faults) > 0 {
		return term.Write(w, run, term.Options{Width: v.width, Colour: v.colour, Excerpt: excerpt})
	}
	_, err := workingPage(v, &run.Files[0], run.On).WriteTo(w)
	return err
}

package main

import (
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/pflag"

	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
)

// bookFlags choose what a run judges by, beside what each layout names.
type bookFlags struct{ code, overlay string }

func (f *bookFlags) register(flags *pflag.FlagSet) {
	flags.StringVar(&f.code, "code", "", "judge by the code of this `ID`, whatever the file says; a path names a code of your own, in a file")
	flags.StringVar(&f.overlay, "overlay", "", "heed the local rules of this `FILE` over the code; reports say that nobody has verified them")
}

// files lists the files that are chosen.
func (f *bookFlags) files() []string {
	var names []string
	if isPath(f.code) {
		names = append(names, f.code)
	}
	if f.overlay != "" {
		names = append(names, f.overlay)
	}
	return names
}

// books is what the command line chose to judge by.
type books struct {
	codeID  string        // of a built-in code; "" leaves the choice to each file
	code    *code.Profile // of the user's own file, instead of any other
	overlay *code.Overlay
}

// books reads the files that the flags name. Those that can't be used are told like a
// layout that can't be: then nothing is judged.
func (a *app) books(f bookFlags) (b books, inputs []input, unusable []report.FileReport, err error) {
	refuse := func(in input, faults source.Faults) {
		if faults != nil {
			unusable = append(unusable, check.FaultReport(in.name, faults))
		}
	}
	file := func(path string, load func(*source.File) source.Faults) {
		in := read(path)
		inputs = append(inputs, in)
		if in.fault != nil {
			refuse(in, source.Faults{*in.fault})
			return
		}
		refuse(in, load(in.file))
	}
	switch {
	case isPath(f.code):
		file(f.code, func(in *source.File) (faults source.Faults) {
			b.code, faults = code.Load(in.Name, in.Data)
			return faults
		})
	default:
		b.codeID, err = f.code, chosen(f.code)
	}
	if f.overlay != "" {
		file(f.overlay, func(in *source.File) (faults source.Faults) {
			b.overlay, faults = code.LoadOverlay(in.Name, in.Data, a.set().NeverLoosened())
			return faults
		})
	}
	return b, inputs, unusable, err
}

// isPath tells a path from the id of a code, which has neither strokes nor dots.
func isPath(s string) bool {
	return strings.ContainsRune(s, os.PathSeparator) || strings.ContainsAny(s, `/\.`) || filepath.Ext(s) != ""
}

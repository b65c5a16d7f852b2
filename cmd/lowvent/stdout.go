package main

import (
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"slices"

	"github.com/spf13/cobra"
)

// standardOutput is what an output is sent to in place of a file, wherever a command takes
// one. A file of that name is written ./-.
const standardOutput = "-"

// whither is the same text for two outputs that would go to the same place.
func whither(file string) string {
	if file == standardOutput {
		return "standard output"
	}
	return "file " + filepath.Clean(file)
}

// taken refuses a second output to a place.
func taken(file string) error {
	if file == standardOutput {
		return errors.New("two outputs go to standard output, and it takes one: send the other into a file, FORMAT=FILE")
	}
	return fmt.Errorf("two outputs go into %s", file)
}

// onStandardOutput is the form that is asked for there; "" for none.
func (o *outFlag) onStandardOutput() string {
	for _, each := range o.asked {
		if each.file == standardOutput {
			return each.format
		}
	}
	return ""
}

// oneScreen makes --out FORMAT=- of a command the same as --format FORMAT, so that nothing
// else goes to standard output. Asked for both ways, it is refused before anything is read.
func oneScreen(cmd *cobra.Command, format *choice, out *outFlag) {
	cmd.PreRunE = func(*cobra.Command, []string) error {
		form := out.onStandardOutput()
		switch {
		case form == "":
			return nil
		case format.given:
			return fmt.Errorf("--format %s and --out %s=- both go to standard output, and it takes one: send one of them into a file, --out %s=FILE", format.value, form, form)
		}
		var files []outSpec
		for _, each := range out.asked {
			if each.file != standardOutput {
				files = append(files, each)
			}
		}
		out.asked, format.value, format.given = files, form, true
		return nil
	}
}

// show writes what was made to standard output.
func (a *app) show(body []byte) error {
	if _, err := a.stdout.Write(body); err != nil {
		return fmt.Errorf("standard output could not be written to: %w", err)
	}
	return nil
}

// noBinaryAtTerminal refuses a form there that nobody could read, and that could upset it.
func (a *app) noBinaryAtTerminal(form string) error {
	_, is := a.terminal()
	i := slices.IndexFunc(handoffForms(), func(each handoffForm) bool { return each.name == form })
	if !is || i < 0 || !handoffForms()[i].binary {
		return nil
	}
	return fmt.Errorf("%s is no text, and standard output is a terminal: send it into a file, --out %s=%s.pdf, or through a pipe", form, form, form)
}

// beside is where what is told beside an output goes, and its look: to standard output,
// unless the output does.
func (a *app) beside(v *viewFlags, taken bool) (io.Writer, view) {
	if taken {
		return a.stderr, a.inFile(v)
	}
	return a.stdout, a.onTerminal(v)
}

// writePaper writes a paper where it was asked for, and names that place.
func (a *app) writePaper(spec outSpec, body []byte) (string, error) {
	if spec.file == standardOutput {
		return spec.format + " to standard output", a.show(body)
	}
	return spec.file, writeWhole(spec.file, body)
}

package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"lowvent.example/cmd/lowvent/internal/render/annotate"
	"lowvent.example/cmd/lowvent/internal/render/jsonout"
	"lowvent.example/cmd/lowvent/internal/render/junit"
	"lowvent.example/cmd/lowvent/internal/render/lineout"
	"lowvent.example/cmd/lowvent/internal/render/sarif"
	"lowvent.example/cmd/lowvent/internal/render/term"
	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
)

// format is one form in which a report can be written.
type format struct {
	name  string
	write func(io.Writer, *report.Run, view, excerptFunc) error
}

// ofRun is a form that hangs on the run alone, and on no terminal.
func ofRun(name string, write func(io.Writer, *report.Run) error) format {
	return format{name, func(w io.Writer, run *report.Run, _ view, _ excerptFunc) error { return write(w, run) }}
}

// excerptFunc shows the line of a file that a place begins on.
type excerptFunc = func(report.Place, int) source.Excerpt

// terminalForm is the form for people at a terminal, the only one that can be narrowed.
const terminalForm = "terminal"

// formats lists the forms, the usual one first. The exit status depends on none.
func formats() []format {
	return []format{
		{terminalForm, func(w io.Writer, run *report.Run, v view, excerpt excerptFunc) error {
			return term.Write(w, run, term.Options{Width: v.width, Colour: v.colour, Excerpt: excerpt, View: v.shown})
		}},
		ofRun("json", jsonout.Write),
		ofRun("lines", lineout.Write),
		ofRun("sarif", sarif.Write),
		ofRun("junit", junit.Write),
		ofRun("annotations", annotate.Write),
	}
}

func formatNames() []string { return namesOf(formats()) }

func namesOf(forms []format) []string {
	var names []string
	for _, each := range forms {
		names = append(names, each.name)
	}
	return names
}

// render writes a report in one of the forms into memory, so that no output is ever
// half a report.
func render(forms []format, name string, run *report.Run, v view, excerpt excerptFunc) []byte {
	var out bytes.Buffer
	for _, each := range forms {
		if each.name != name {
			continue
		}
		if err := each.write(&out, run, v, excerpt); err != nil {
			panic(fmt.Errorf("the %s report could not be made: %w", name, err))
		}
	}
	return out.Bytes()
}

// outFlag collects what --out asks for, in the forms that are allowed.
type outFlag struct {
	allowed []string
	asked   []outSpec
}

type outSpec struct{ format, file string }

func (o *outFlag) Set(s string) error {
	word, file, _ := strings.Cut(s, "=")
	if file == "" {
		return fmt.Errorf("an output is written FORMAT=FILE, for example json=report.json")
	}
	name, err := oneWord("format", word, o.allowed)
	if err != nil {
		return err
	}
	for _, each := range o.asked {
		if whither(each.file) == whither(file) {
			return taken(file)
		}
	}
	o.asked = append(o.asked, outSpec{name, file})
	return nil
}

func (o *outFlag) String() string { return "" }

// Type names the flag's value in help.
func (o *outFlag) Type() string { return "FORMAT=FILE" }

// delivery is the forms in which a run is written: on standard output, and into files.
type delivery struct {
	forms  []format
	screen string
	files  []outSpec
	shown  shown // of the terminal form
}

// asked lists the forms of all outputs.
func (d *delivery) asked() []string {
	forms := []string{d.screen}
	for _, each := range d.files {
		forms = append(forms, each.format)
	}
	return forms
}

// deliver makes every output before it writes any.
func (a *app) deliver(d delivery, run *report.Run, status int, v *viewFlags, excerpt excerptFunc) error {
	look := a.onTerminal(v)
	look.shown = d.shown
	return a.put(d, run, status, v, excerpt, render(d.forms, d.screen, run, look, excerpt))
}

// put makes the outputs that go into files, and writes them and the screen.
func (a *app) put(d delivery, run *report.Run, status int, v *viewFlags, excerpt excerptFunc, screen []byte) error {
	return a.hand(screen, d.files, a.bodies(d, run, v, excerpt), status)
}

// bodies makes the outputs that go into files.
func (a *app) bodies(d delivery, run *report.Run, v *viewFlags, excerpt excerptFunc) [][]byte {
	look := a.inFile(v)
	look.shown = d.shown
	bodies := make([][]byte, len(d.files))
	for i, each := range d.files {
		bodies[i] = render(d.forms, each.format, run, look, excerpt)
	}
	return bodies
}

// hand writes what was made, all of it, into files and on the screen. A file that can't
// be written makes the status that of unusable input, and does not keep back the others.
func (a *app) hand(screen []byte, files []outSpec, bodies [][]byte, status int) error {
	for i, each := range files {
		if err := writeWhole(each.file, bodies[i]); err != nil {
			a.say("%s", err)
			status = max(status, statusUnusable)
		}
	}
	if err := a.show(screen); err != nil {
		return err
	}
	return exit(status)
}

// writeWhole writes a file whole or not at all: into a neighbour that then takes
// its name.
func writeWhole(path string, data []byte) error {
	if linked, err := filepath.EvalSymlinks(path); err == nil {
		path = linked
	}
	if info, err := os.Stat(path); err == nil && !info.Mode().IsRegular() {
		return advice{fmt.Errorf("%s is no ordinary file, and can't be replaced by a report", path), "Name another file; - is standard output."}
	}
	beside, err := neighbour(path)
	if err != nil {
		return fmt.Errorf("%s could not be written: %w", path, err)
	}
	_, err = beside.Write(data)
	err = errors.Join(err, beside.Close())
	if err == nil {
		err = os.Rename(beside.Name(), path)
	}
	if err != nil {
		return fmt.Errorf("%s was not written: %w", path, errors.Join(err, os.Remove(beside.Name())))
	}
	return nil
}

// neighbour makes a new file in the folder of a path.
func neighbour(path string) (*os.File, error) {
	for n := 0; ; n++ {
		name := filepath.Join(filepath.Dir(path), fmt.Sprintf(".%s.%d.part", filepath.Base(path), n))
		f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
		if !errors.Is(err, fs.ErrExist) || n == 100 {
			return f, err
		}
	}
}

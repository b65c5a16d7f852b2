package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"lowvent.example/cmd/lowvent/internal/ask"
	page "lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/cmd/lowvent/internal/starter"
	"lowvent.example/schema/code"
	"lowvent.example/schema/report"
)

type starterFlags struct {
	scene     choice
	out       string
	overwrite bool
	ask       bool
}

func (a *app) starterCommand() *cobra.Command {
	f := &starterFlags{scene: choice{what: "scene", kind: "SCENE", value: starter.Scenes()[0], allowed: starter.Scenes()}}
	cmd := &cobra.Command{
		Use:   "starter",
		Short: "Write a first layout to fill in",
		Long: `Starter writes the skeleton of a layout: the spaces, the locker, the cylinder, the
lines, the appliances and alarms that such a dwelling has, all of them invented,
and a note on each that says what to fill in. Whatever decides on safety is left
out, so that the first check of it tells you what to go and measure.

With --ask it asks you instead, in plain words and one question at a time, what
there is and what you measured, and writes the layout from your answers. What you
leave open is left out.`,
		Example: `  lowvent starter
  lowvent starter --ask --scene van
  lowvent starter --scene boat --out wren.json
  lowvent starter --scene cabin --out -`,
		Args: noArguments,
		RunE: func(*cobra.Command, []string) error { return a.starter(f) },
	}
	cmd.Flags().Var(&f.scene, "scene", "kind of dwelling: "+strings.Join(starter.Scenes(), ", "))
	cmd.Flags().StringVar(&f.out, "out", "layout.json", "`FILE` to write; - is standard output")
	cmd.Flags().BoolVar(&f.ask, "ask", false, "ask on standard input, one question at a time, and write the layout from the answers")
	cmd.Flags().BoolVar(&f.overwrite, "overwrite", false, "replace the file if there is one")
	complete(cmd, "scene", starter.Scenes)
	return cmd
}

func (a *app) starter(f *starterFlags) error {
	text, answered := starter.Layout(f.scene.value), false
	if f.ask {
		var err error
		if text, answered, err = a.asked(f); err != nil {
			return err
		}
	}
	if err := a.writeTo(f.out, f.overwrite, text); err != nil || f.out == standardOutput {
		return err
	}
	if answered {
		a.say("wrote %s from your answers; what you left open is not known. Next:\nlowvent check %s", f.out, f.out)
		return nil
	}
	a.say("wrote %s, an invented %s: put your own things in the place of these, then\nlowvent check %s", f.out, f.scene.value, f.out)
	return nil
}

// writeTo writes what was made to a file, or to standard output.
func (a *app) writeTo(out string, overwrite bool, text []byte) error {
	switch {
	case out == standardOutput:
		return a.show(text)
	case overwrite:
		return writeWhole(out, text)
	}
	return writeNew(out, text)
}

// askOptions are what is asked about a scene.
func (a *app) askOptions(scene string) ask.Options {
	var codes []ask.Code
	for _, p := range code.Profiles() {
		if p.Book == code.BookProfile {
			codes = append(codes, ask.Code{ID: p.ID, Title: p.Title})
		}
	}
	return ask.Options{Scene: scene, First: starter.Layout(scene), Needs: ask.NeedsOf(a.set()), Codes: codes}
}

// asked asks for a layout. The questions go where the layout does not.
func (a *app) asked(f *starterFlags) (text []byte, answered bool, err error) {
	to := a.stdout
	if f.out == standardOutput {
		to = a.stderr
	} else if err := writable(f.out, f.overwrite); err != nil {
		return nil, false, err
	}
	text, answered, err = ask.Run(a.stdin, to, a.askOptions(f.scene.value))
	if errors.Is(err, ask.ErrEnded) {
		err = advice{err, `Answer "." to stop early and have what there is written.`}
	}
	if err == nil {
		p := page.New(page.Usual, nil)
		p.Blank()
		p.Para(page.Plain, 0, report.KeepOff)
		_, err = p.WriteTo(to)
	}
	return text, answered, err
}

// writable refuses, before anybody answers a hundred questions, what could not be
// written in the end.
func writable(path string, overwrite bool) error {
	if _, err := os.Stat(path); err == nil && !overwrite {
		return inTheWay(path)
	}
	if info, err := os.Stat(filepath.Dir(path)); err != nil {
		return fmt.Errorf("%s could not be written: %w", path, err)
	} else if !info.IsDir() {
		return fmt.Errorf("%s could not be written: %s is no folder", path, filepath.Dir(path))
	}
	return nil
}

func inTheWay(path string) error {
	return advice{fmt.Errorf("%s is there already, and was left as it is", path), "Name another file with --out, or replace this one with --overwrite."}
}

// writeNew writes a file that must not be there yet; it never touches one that
// is.
func writeNew(path string, data []byte) error {
	file, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if errors.Is(err, fs.ErrExist) {
		return inTheWay(path)
	}
	if err != nil {
		return fmt.Errorf("%s could not be written: %w", path, err)
	}
	_, err = file.Write(data)
	if err = errors.Join(err, file.Close()); err != nil {
		return fmt.Errorf("%s could not be written: %w", path, errors.Join(err, os.Remove(path)))
	}
	return nil
}

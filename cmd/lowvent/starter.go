package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"lowvent.example/cmd/lowvent/internal/starter"
)

type starterFlags struct {
	scene     choice
	out       string
	overwrite bool
}

func (a *app) starterCommand() *cobra.Command {
	f := &starterFlags{scene: choice{what: "scene", kind: "SCENE", value: starter.Scenes()[0], allowed: starter.Scenes()}}
	cmd := &cobra.Command{
		Use:   "starter",
		Short: "Write a first layout to fill in",
		Long: `Starter writes the skeleton of a layout: the spaces, the locker, the cylinder, the
lines, the appliances and alarms that such a dwelling has, all of them invented,
and a note on each that says what to fill in. Whatever decides on safety is left
out, so that the first check of it tells you what to go and measure.`,
		Example: `  lowvent starter
  lowvent starter --scene boat --out wren.json
  lowvent starter --scene cabin --out -`,
		Args: noArguments,
		RunE: func(*cobra.Command, []string) error { return a.starter(f) },
	}
	cmd.Flags().Var(&f.scene, "scene", "kind of dwelling: "+strings.Join(starter.Scenes(), ", "))
	cmd.Flags().StringVar(&f.out, "out", "layout.json", "`FILE` to write; - is standard output")
	cmd.Flags().BoolVar(&f.overwrite, "overwrite", false, "replace the file if there is one")
	complete(cmd, "scene", starter.Scenes)
	return cmd
}

func (a *app) starter(f *starterFlags) error {
	text := starter.Layout(f.scene.value)
	switch {
	case f.out == "-":
		_, err := a.stdout.Write(text)
		return err
	case f.overwrite:
		if err := writeWhole(f.out, text); err != nil {
			return err
		}
	default:
		if err := writeNew(f.out, text); err != nil {
			return err
		}
	}
	a.say("wrote %s, an invented %s: put your own things in the place of these, then\nlowvent check %s", f.out, f.scene.value, f.out)
	return nil
}

// writeNew writes a file that must not be there yet; it never touches one that
// is.
func writeNew(path string, data []byte) error {
	file, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if errors.Is(err, fs.ErrExist) {
		return advice{fmt.Errorf("%s is there already, and was left as it is", path), "Name another file with --out, or replace this one with --overwrite."}
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

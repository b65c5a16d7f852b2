package main

import (
	"strings"

	"github.com/spf13/cobra"

	"lowvent.example/cmd/lowvent/internal/starter"
	"lowvent.example/cmd/lowvent/internal/worksheet"
)

type worksheetFlags struct {
	scene     choice
	out       string
	overwrite bool
}

func (a *app) worksheetCommand() *cobra.Command {
	f := &worksheetFlags{scene: choice{what: "scene", kind: "SCENE", value: starter.Scenes()[0], allowed: starter.Scenes()}}
	cmd := &cobra.Command{
		Use:   "worksheet",
		Short: "Write pages to print and fill in with a tape and a pencil",
		Long: `Worksheet writes pages to take to the dwelling: a drawing of where to measure, and
a blank for each thing that "lowvent starter --ask" asks first, with how to
measure it. It is one HTML file that needs nothing else; print it from any
browser, on A4 or Letter. A blank stays not known.`,
		Example: `  lowvent worksheet
  lowvent worksheet --scene boat --out wren.html`,
		Args: noArguments,
		RunE: func(*cobra.Command, []string) error { return a.worksheet(f) },
	}
	cmd.Flags().Var(&f.scene, "scene", "kind of dwelling: "+strings.Join(starter.Scenes(), ", "))
	cmd.Flags().StringVar(&f.out, "out", "worksheet.html", "`FILE` to write; - is standard output")
	cmd.Flags().BoolVar(&f.overwrite, "overwrite", false, "replace the file if there is one")
	complete(cmd, "scene", starter.Scenes)
	return cmd
}

func (a *app) worksheet(f *worksheetFlags) error {
	pages, err := worksheet.Write(a.askOptions(f.scene.value))
	if err != nil {
		return err
	}
	if err := a.writeTo(f.out, f.overwrite, pages); err != nil || f.out == standardOutput {
		return err
	}
	a.say("wrote %s: print it, fill it in, and leave blank what you did not look at. Then\nlowvent starter --ask --scene %s", f.out, f.scene.value)
	return nil
}

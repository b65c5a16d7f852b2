package main

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"lowvent.example/cmd/lowvent/internal/render/term"
	"lowvent.example/cmd/lowvent/internal/starter"
	"lowvent.example/cmd/lowvent/internal/worksheet"
	"lowvent.example/schema/check"
	"lowvent.example/schema/report"
)

type worksheetFlags struct {
	scene     choice
	books     bookFlags
	on        dateFlag
	out       string
	overwrite bool
}

func (a *app) worksheetCommand(v *viewFlags) *cobra.Command {
	f := &worksheetFlags{scene: choice{what: "scene", kind: "SCENE", value: starter.Scenes()[0], allowed: starter.Scenes()}}
	cmd := &cobra.Command{
		Use:   "worksheet [FILE]",
		Short: "Write pages to print and fill in with a tape and a pencil",
		Long: `Worksheet writes pages to take to the dwelling: a drawing of where to measure, and
a blank for each thing that "lowvent starter --ask" asks first, with how to
measure it. It is one HTML file that needs nothing else; print it from any
browser, on A4 or Letter. A blank stays not known.

With a layout it asks only what that does not state yet and a check waits for, with
the place in the file where each answer belongs. It judges to find that out, and
tells no result: for that, check the layout.

Exit status: 0 the pages were written (no approval of the installation), 2 a file or
the command line can't be used, 3 a fault of the program.`,
		Example: `  lowvent worksheet
  lowvent worksheet --scene boat --out wren.html
  lowvent worksheet layout.json`,
		ValidArgsFunction: func(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
			if len(args) > 0 {
				return nil, cobra.ShellCompDirectiveNoFileComp
			}
			return []string{"json"}, cobra.ShellCompDirectiveFilterFileExt
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			if err := f.agree(cmd, args); err != nil {
				return err
			}
			if len(args) == 0 {
				return a.worksheet(f)
			}
			return a.openWorksheet(cmd, v, f, args[0])
		},
	}
	cmd.Flags().Var(&f.scene, "scene", "kind of dwelling: "+strings.Join(starter.Scenes(), ", "))
	cmd.Flags().StringVar(&f.out, "out", "worksheet.html", "`FILE` to write; - is standard output")
	cmd.Flags().BoolVar(&f.overwrite, "overwrite", false, "replace the file if there is one")
	f.books.register(cmd.Flags())
	cmd.Flags().Var(&f.on, "on", "judge as on this day (default today)")
	complete(cmd, "scene", starter.Scenes)
	complete(cmd, "code", codeIDs)
	return cmd
}

// agree refuses what means nothing together.
func (f *worksheetFlags) agree(cmd *cobra.Command, args []string) error {
	switch {
	case len(args) > 1:
		return fmt.Errorf("worksheet takes one layout, and was given %d files", len(args))
	case len(args) == 1 && f.scene.given:
		return errors.New("a layout tells of its own dwelling: name the layout, or a --scene for blank pages, not both")
	}
	for _, name := range []string{"code", "overlay", "on"} {
		if len(args) == 0 && cmd.Flags().Changed(name) {
			return fmt.Errorf("--%s is for what a layout does not state yet: name the layout as well, for example: lowvent worksheet layout.json", name)
		}
	}
	return nil
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

// openWorksheet writes the pages of what a layout does not state yet.
func (a *app) openWorksheet(cmd *cobra.Command, v *viewFlags, f *worksheetFlags, name string) error {
	books, bookFiles, unusable, err := a.books(f.books)
	if err != nil {
		return err
	}
	in, err := a.oneInput(name)
	if err != nil {
		return err
	}
	j := judging{set: check.Set{Checks: a.set().Checks}, books: books, failAt: report.Warning,
		options: check.Options{On: a.day(f.on), Workers: workersFlag(0).count(), Overlay: books.overlay}}
	files := unusable
	if files == nil {
		bookFiles = []input{in}
		files = j.all(cmd.Context(), bookFiles)
	}
	run := a.reportOf(j, files)
	if run.Status == statusUnusable {
		to, look := a.beside(v, f.out == standardOutput)
		return a.tellFaults(to, run, term.Options{Width: look.width, Colour: look.colour, Excerpt: excerpts(bookFiles)})
	}
	pages, err := worksheet.Open(in.file.Data, &files[0], run.On)
	if err != nil {
		return err
	}
	if err := a.writeTo(f.out, f.overwrite, pages); err != nil || f.out == standardOutput {
		return err
	}
	a.say("wrote %s: print it, fill it in, and leave blank what you did not look at. Then write\nwhat you found into %s, and check it again", f.out, in.name)
	return nil
}

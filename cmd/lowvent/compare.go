package main

import (
	"errors"
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"lowvent.example/cmd/lowvent/internal/render/term"
	"lowvent.example/schema/check"
	"lowvent.example/schema/report"
)

type compareFlags struct {
	books bookFlags
	on    dateFlag
}

func (a *app) compareCommand(v *viewFlags) *cobra.Command {
	f := &compareFlags{}
	cmd := &cobra.Command{
		Use:   "compare OLD NEW",
		Short: "Tell what a change to a layout made worse, unknown or better",
		Long: `Compare judges two layouts on the same day, matches their questions by check and
by thing, and tells which went another way: worse, newly unknown, no longer judged,
better. A statement that was left out is newly unknown and never better; a thing
that is listed no more is no longer judged. What is alike in both is not told, so
check the new layout as well.

Exit status: 0 nothing worse or newly unknown (no approval of the installation),
1 something is, 2 a file or the command line can't be used, 3 a fault of the
program.`,
		Example: `  lowvent compare before.json layout.json
  git show HEAD:layout.json | lowvent compare - layout.json
  lowvent compare --code us-mobile-structure --on 2026-11-25 before.json layout.json`,
		ValidArgsFunction: func(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
			if len(args) > 1 {
				return nil, cobra.ShellCompDirectiveNoFileComp
			}
			return []string{"json"}, cobra.ShellCompDirectiveFilterFileExt
		},
		RunE: func(cmd *cobra.Command, args []string) error { return a.compare(cmd, v, f, args) },
	}
	f.books.register(cmd.Flags())
	cmd.Flags().Var(&f.on, "on", "judge both as on this day (default today)")
	complete(cmd, "code", codeIDs)
	return cmd
}

// compare judges two layouts and tells how they differ. Where one can't be used it tells
// that, and compares nothing.
func (a *app) compare(cmd *cobra.Command, v *viewFlags, f *compareFlags, names []string) error {
	if len(names) != 2 {
		return errors.New("name two layouts, the old one first: lowvent compare before.json layout.json")
	}
	if names[0] == names[1] {
		return fmt.Errorf("%s is named twice: name the layout as it was, then the layout as it is", names[0])
	}
	books, bookFiles, unusable, err := a.books(f.books)
	if err != nil {
		return err
	}
	var both []input
	for _, name := range names {
		in, err := a.oneInput(name)
		if err != nil {
			return err
		}
		both = append(both, in)
	}
	j := judging{set: check.Set{Checks: a.set().Checks}, books: books, failAt: report.Warning,
		options: check.Options{On: a.day(f.on), Workers: workersFlag(0).count(), Overlay: books.overlay}}
	files := unusable
	if files == nil {
		files, bookFiles = j.all(cmd.Context(), both), both
	}
	run, options := a.reportOf(j, files), a.onTerminal(v)
	look := term.Options{Width: options.width, Colour: options.colour, Excerpt: excerpts(bookFiles)}
	if run.Status == statusUnusable {
		return a.tellFaults(a.stdout, run, look)
	}
	changes := report.Compare(&files[0], &files[1])
	if err := term.Compare(a.stdout, run, changes, look); err != nil {
		return err
	}
	for i := range changes {
		if changes[i].Turn == report.Worse || changes[i].Turn == report.NewlyUnknown {
			return exit(statusFindings)
		}
	}
	return nil
}

// oneInput reads the one layout that a name stands for.
func (a *app) oneInput(name string) (input, error) {
	inputs, err := a.inputs([]string{name})
	if err != nil {
		return input{}, err
	}
	if len(inputs) != 1 {
		return input{}, fmt.Errorf("%s holds %d layouts: name one of them", name, len(inputs))
	}
	return inputs[0], nil
}

// tellFaults tells people what is wrong with the files that can't be used, and of no other.
func (a *app) tellFaults(to io.Writer, run *report.Run, look term.Options) error {
	if err := term.Write(to, faultsOf(run), look); err != nil {
		return err
	}
	return exit(statusUnusable)
}

// faultsOf is a run's report of the files that can't be used, without the others.
func faultsOf(run *report.Run) *report.Run {
	only := *run
	only.Files = nil
	for i := range run.Files {
		if len(run.Files[i].Faults) > 0 {
			only.Files = append(only.Files, run.Files[i])
		}
	}
	return &only
}

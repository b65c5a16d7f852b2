package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"lowvent.example/cmd/lowvent/internal/render/term"
	"lowvent.example/schema/check"
	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
)

type trialFlags struct {
	checkFlags
	edits   []source.Edit
	sweep   sweepFlag
	figures []string
}

func (a *app) trialCommand(v *viewFlags) *cobra.Command {
	f := &trialFlags{checkFlags: newCheckFlags()}
	cmd := &cobra.Command{
		Use:   "trial FILE --set /path=VALUE...",
		Short: "Judge a layout with edits that stand in no file; sweep one quantity",
		Long: `Trial judges a layout with edits that are made in memory: the file is never
touched. It tells what the edits make worse, unknown or better against the file
as it is; with --format, it writes the whole report of the trial instead, in that
form. Every output says TRIAL, and names its places "` + report.TrialName("FILE") + `": it
describes a dwelling that does not exist, and is nothing to hand to anybody.
Handoff, the report for a fitter, takes no --set.

--set puts a value where a JSON Pointer leads; --unset leaves a key out, so that
it is not known. Both can be repeated, and are made in the order given. A value
that reads as JSON is JSON; anything else is a text, as quantities are: "24 in".
A thing that the file does not list can only be added whole, as an object. What
is changed loses its evidence: nobody measured what is only tried.

--sweep judges the layout at many values of one quantity, and tells each question
that turns: between which two values, from what to what, and at which limit of
which text. The values lie at equal distances, 25 of them unless /COUNT at the
end asks for another number. Both ends are written as the file would have them,
and all values in the unit of the first. It advises no value, and a turn is no
place to build at. --figure plots one of the figures that change with the value.

Exit status: of a trial that of check; of a sweep, which is no judgement, 0 when
it could be made, 2 when it could not.`,
		Example: `  lowvent trial layout.json --set "/lockers/side/vents/low/gross=120 cm2"
  lowvent trial layout.json --set /cylinders/A/upright=true --unset /climate/coldest
  lowvent trial layout.json --set "/climate/coldest=-15 degC" --format json
  lowvent trial layout.json --sweep "/lockers/side/vents/low/gross=20 cm2..200 cm2"
  lowvent trial layout.json --sweep "/climate/coldest=-30 degC..10 degC/41" \
      --figure regulator.cold-draw`,
		ValidArgsFunction: func(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
			if len(args) > 0 {
				return nil, cobra.ShellCompDirectiveNoFileComp
			}
			return []string{"json"}, cobra.ShellCompDirectiveFilterFileExt
		},
		RunE: func(cmd *cobra.Command, args []string) error { return a.trial(cmd, v, f, args) },
	}
	flags := cmd.Flags()
	flags.Var(&editsFlag{&f.edits, "/PATH=VALUE", source.ParseSet}, "set", "judge as if this stood in the file; may be repeated")
	flags.Var(&editsFlag{&f.edits, "/PATH", source.ParseUnset}, "unset", "judge as if the file did not state this; may be repeated")
	flags.Var(&f.sweep, "sweep", "judge at values from one to the other, and tell what turns where")
	flags.StringArrayVar(&f.figures, "figure", nil, "with --sweep: plot the figure of this `ID[:SUBJECT]` against the value; may be repeated")
	f.register(cmd)
	return cmd
}

// trial judges a layout as it is and with edits, and tells of the second; or sweeps.
func (a *app) trial(cmd *cobra.Command, v *viewFlags, f *trialFlags, names []string) error {
	if err := f.agree(names); err != nil {
		return err
	}
	books, bookFiles, unusable, err := a.books(f.books)
	if err != nil {
		return err
	}
	j := f.judging(a, books)
	if unusable != nil {
		run := a.reportOf(j, unusable)
		return a.deliver(f.delivery(), run, run.Status, v, excerpts(bookFiles))
	}
	in, err := a.oneInput(names[0])
	if err != nil {
		return err
	}
	root, fault := parsed(in)
	if fault != nil { // there is nothing to try the edits on
		run := a.reportOf(j, []report.FileReport{check.FaultReport(in.name, source.Faults{*fault})})
		return a.deliver(f.delivery(), run, run.Status, v, excerpts([]input{in}))
	}
	t, err := newTrial(in, root, f.edits)
	if err != nil {
		return err
	}
	if f.sweep.asked {
		return a.sweepTrial(cmd.Context(), v, f, j, t)
	}
	return a.tryEdits(cmd, v, f, j, t)
}

// tryEdits judges the file and the trial. Where both can be used and no form was asked
// for by name, it tells how they differ; else it writes the report of the trial.
func (a *app) tryEdits(cmd *cobra.Command, v *viewFlags, f *trialFlags, j judging, t *trial) error {
	both := []input{t.base, t.input}
	files := j.all(cmd.Context(), both)
	if len(files[0].Faults)+len(files[1].Faults) == 0 {
		t.Changed = report.Told(report.Compare(&files[0], &files[1]))
	}
	run, excerpt := a.trialReport(j, t, files[1]), excerpts(both)
	if f.format.given || t.Changed == nil {
		return a.deliver(f.delivery(), run, run.Status, v, excerpt)
	}
	look := a.onTerminal(v)
	screen := inMemory(func(w io.Writer) error {
		return term.Trial(w, run, &files[0], term.Options{Width: look.width, Colour: look.colour, Excerpt: excerpt})
	})
	return a.put(f.delivery(), run, run.Status, v, excerpt, screen)
}

// trialReport is the report of a trial, which says of itself that it is one.
func (a *app) trialReport(j judging, t *trial, f report.FileReport) *report.Run {
	t.placed(&f)
	run := a.reportOf(j, []report.FileReport{f})
	run.Trial = &t.Trial
	run.Caution = append(run.Caution, run.Banner())
	return run
}

// agree refuses flags that mean nothing together.
func (f *trialFlags) agree(names []string) error {
	switch {
	case len(names) != 1:
		return errors.New(`name one layout to try edits on, for example: lowvent trial layout.json --set "/climate/coldest=-15 degC"`)
	case len(f.edits) == 0 && !f.sweep.asked:
		return advice{errors.New("a trial needs an edit to try: --set, --unset or --sweep"), "To check the file as it is: lowvent check " + names[0]}
	case len(f.figures) > 0 && !f.sweep.asked:
		return errors.New("--figure plots a figure against the values of a --sweep, and there is none")
	}
	return nil
}

// inMemory makes an output, so that none is ever half one.
func inMemory(write func(io.Writer) error) []byte {
	var out bytes.Buffer
	if err := write(&out); err != nil {
		panic(fmt.Errorf("the output could not be made: %w", err))
	}
	return out.Bytes()
}

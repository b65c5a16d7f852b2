package main

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/check"
)

type explainFlags struct {
	subject string
	format  choice
	out     outFlag
	books   bookFlags
	on      dateFlag
}

func (a *app) explainCommand(v *viewFlags) *cobra.Command {
	f := &explainFlags{
		format: choice{what: "format", kind: "FORMAT", value: workingFormats()[0], allowed: workingFormats()},
		out:    outFlag{allowed: workingFormats()},
	}
	cmd := &cobra.Command{
		Use:   "explain [CHECK|FIGURE [FILE]]",
		Short: "Tell what a check asks and why, or show its working for a layout",
		Long: `Explain lists the checks and figures. With a check it tells what that asks, why,
what it leaves out, by which limits it judges, what it reads and how to measure
that. With a layout as well it shows the working: every value with its place in
the file, every limit with its source, every formula. A figure that is a course over
time is drawn. The form html is a calculation sheet to read and to print, csv the
same for a spreadsheet; both have the digits to reckon it again.`,
		Example: `  lowvent explain
  lowvent explain locker.low-vent
  lowvent explain locker.low-vent layout.json --subject lockers/gas
  lowvent explain dwelling.connected-load layout.json
  lowvent explain regulator.cold-course layout.json --format json
  lowvent explain locker.low-vent layout.json --out html=low-vent.html --out csv=low-vent.csv`,
		ValidArgsFunction: a.explainWords,
		RunE:              func(cmd *cobra.Command, args []string) error { return a.explain(cmd, v, f, args) },
	}
	cmd.Flags().StringVar(&f.subject, "subject", "", "only the working for this `THING` of the file, such as lockers/gas")
	cmd.Flags().Var(&f.format, "format", "form of the working for a layout: "+strings.Join(workingFormats(), ", "))
	cmd.Flags().Var(&f.out, "out", "write the working into a file as well, whole or not at all; may be repeated. As FILE, - is standard output, and nothing else goes there")
	f.books.register(cmd.Flags())
	cmd.Flags().Var(&f.on, "on", "judge as on this day (default today)")
	oneScreen(cmd, &f.format, &f.out)
	complete(cmd, "format", workingFormats)
	complete(cmd, "code", codeIDs)
	return cmd
}

// explainWords offers ids to the shell, then files.
func (a *app) explainWords(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
	if len(args) > 0 {
		return []string{"json"}, cobra.ShellCompDirectiveFilterFileExt
	}
	return a.explainable(), cobra.ShellCompDirectiveNoFileComp
}

// explainable lists the ids of all checks and figures, sorted.
func (a *app) explainable() []string {
	var ids []string
	set := a.set()
	for _, c := range set.Checks {
		ids = append(ids, c.ID)
	}
	for _, f := range set.Figures {
		ids = append(ids, f.ID)
	}
	slices.Sort(ids)
	return ids
}

func (a *app) explain(cmd *cobra.Command, v *viewFlags, f *explainFlags, args []string) error {
	switch {
	case len(args) > 2:
		return errors.New("explain takes one check or figure, and one layout")
	case len(args) < 2 && (f.format.value != workingFormats()[0] || len(f.out.asked) > 0):
		return errors.New("--format and --out are for the working of a layout: name the layout as well, after the check")
	case len(args) < 2 && f.subject != "":
		return errors.New("--subject names a thing of a layout: name the layout as well, after the check")
	case len(args) == 0:
		return a.listChecks(a.onTerminal(v))
	}
	only, err := a.only(args[0])
	if err != nil {
		return err
	}
	if len(args) == 2 {
		return a.showWorking(cmd, v, f, only, args[1])
	}
	p := a.onTerminal(v).page()
	for i := range only.Checks {
		describe(p, &only.Checks[i].Descriptor)
	}
	for _, each := range only.Figures {
		p.Item(text.Strong, 0, 2, each.ID+": "+each.Title)
		p.Para(text.Plain, 0, fmt.Sprintf("A figure, computed for a layout; its working: lowvent explain %s layout.json", each.ID))
	}
	return a.print(p)
}

// only is the set of the one check or figure of that id.
func (a *app) only(id string) (check.Set, error) {
	set := a.set()
	var found check.Set
	for _, c := range set.Checks {
		if c.ID == id {
			found.Checks = append(found.Checks, c)
		}
	}
	for _, each := range set.Figures {
		if each.ID == id {
			found.Figures = append(found.Figures, each)
		}
	}
	if len(found.Checks)+len(found.Figures) > 0 {
		return found, nil
	}
	return check.Set{}, advice{fmt.Errorf("there is no check or figure %q%s", id, meant(id, a.explainable())), `"lowvent explain" lists them all.`}
}

// listChecks lists every check with its question, by package.
func (a *app) listChecks(v view) error {
	p := v.page()
	column := 0
	for _, id := range a.explainable() {
		column = max(column, len(id)+2)
	}
	column = min(column, v.width/2)
	for i, each := range a.parts {
		if i > 0 {
			p.Blank()
		}
		p.Para(text.Strong, 0, each.title)
		for _, c := range each.set.Checks {
			p.Row(2, c.ID, column, c.Asks)
		}
		for _, shown := range each.set.Figures {
			p.Row(2, shown.ID, column, "figure: "+shown.Title)
		}
	}
	p.Blank()
	p.Para(text.Plain, 0, "What one asks, why and how to measure for it: lowvent explain CHECK")
	return a.print(p)
}

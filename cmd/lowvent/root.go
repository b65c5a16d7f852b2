package main

import (
	"errors"
	"fmt"
	"os"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/report"
)

// root builds the command tree.
func (a *app) root() *cobra.Command {
	v := &viewFlags{}
	root := &cobra.Command{
		Use:   "lowvent",
		Short: "Check a propane installation, as a file describes it, before anybody lights a burner",
		Long: caution() + `
lowvent reads a file in which the builder of a van, bus, boat, cabin or tiny
house describes its propane installation, and tells what in it breaks the code
and the rules of the trade, and what nobody has measured yet. What the file does
not state is not known, and never counts as good.

Exit status: 0 nothing at or above the threshold (which is no approval of the
installation), 1 findings, 2 a file or the command line can't be used, 3 a fault
of the program.`,
		Example: `  lowvent starter --scene van        write a first layout.json to fill in
  lowvent check layout.json          check it
  lowvent explain locker.low-vent    what a check asks, and why
  lowvent codes                      the codes that a layout can be judged by`,
		Version:       a.version,
		SilenceErrors: true,
		SilenceUsage:  true,
		Args:          a.unknownCommand,
		RunE: func(*cobra.Command, []string) error {
			return advice{errors.New("no command was given"),
				`Try "lowvent check layout.json" for a layout that you have, "lowvent starter" for a first one, or "lowvent help".`}
		},
	}
	root.SetIn(a.stdin)
	root.SetOut(a.stdout)
	root.SetErr(a.stderr)
	root.SetUsageTemplate(usage(root.UsageTemplate()))
	v.register(root)
	root.SetFlagErrorFunc(flagError)
	root.AddCommand(a.checkCommand(v), a.compareCommand(v), a.trialCommand(v), a.explainCommand(v), a.handoffCommand(v), a.codesCommand(v), a.schemaCommand(), a.starterCommand(), a.worksheetCommand(v), a.versionCommand())
	root.SetHelpCommand(a.helpCommand())
	return root
}

// caution is what every report begins with, for the head of the help.
func caution() string {
	p := text.New(text.Usual, nil)
	for _, each := range report.Cautions() {
		p.Para(text.Plain, 0, each)
	}
	return p.String()
}

// usage fits the usual template to a page, and leaves out the line that would
// say that the program can be run without a command.
func usage(template string) string {
	return strings.NewReplacer("FlagUsages ", "FlagUsagesWrapped 80 ", "{{if .Runnable}}", "{{if and .Runnable .HasParent}}").Replace(template)
}

// unknownCommand refuses what is no command, with the one that may be meant.
func (a *app) unknownCommand(cmd *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	word := args[0]
	message := fmt.Sprintf("there is no command %q", word)
	var names []string
	for _, each := range cmd.Commands() {
		if each.IsAvailableCommand() {
			names = append(names, each.Name())
		}
	}
	message += meant(word, names)
	if _, err := os.Stat(word); err == nil || strings.HasSuffix(word, ".json") {
		message += fmt.Sprintf("\nTo check that file: lowvent check %s", word)
	}
	return advice{errors.New(message), "The commands are: " + strings.Join(names, ", ")}
}

// flagError adds to a message on a flag the one that may be meant.
func flagError(cmd *cobra.Command, err error) error {
	var names []string
	cmd.Flags().VisitAll(func(f *pflag.Flag) { names = append(names, f.Name) })
	var unknown *pflag.NotExistError
	if errors.As(err, &unknown) {
		err = fmt.Errorf("%w%s", err, meant(unknown.GetSpecifiedName(), names))
	}
	return advice{err, fmt.Sprintf("Try %q.", cmd.CommandPath()+" --help")}
}

// helpCommand is help that refuses a topic that there is not.
func (a *app) helpCommand() *cobra.Command {
	return &cobra.Command{
		Use:     "help [COMMAND]",
		Short:   "Tell how a command is used",
		Example: "  lowvent help check",
		RunE: func(cmd *cobra.Command, args []string) error {
			found, rest, err := cmd.Root().Find(args)
			if err != nil || len(rest) > 0 {
				return a.unknownCommand(cmd.Root(), args)
			}
			return found.Help()
		},
	}
}

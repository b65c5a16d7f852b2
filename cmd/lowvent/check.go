package main

import (
	"errors"
	"fmt"
	"runtime"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

type checkFlags struct {
	format  choice
	out     outFlag
	failAt  choice
	books   bookFlags
	on      dateFlag
	working bool
	accept  bool
	workers workersFlag
	schema  bool
	shown   shownFlags
	watch   bool
}

func newCheckFlags() checkFlags {
	return checkFlags{
		format: choice{what: "format", kind: "FORMAT", value: formatNames()[0], allowed: formatNames()},
		out:    outFlag{allowed: formatNames()},
		failAt: choice{what: "signal word", kind: "WORD", value: string(report.Warning), allowed: signals()},
	}
}

func (a *app) checkCommand(v *viewFlags) *cobra.Command {
	f := newCheckFlags()
	cmd := &cobra.Command{
		Use:   "check [FILE|FOLDER|-]...",
		Short: "Check layouts and tell what is not met and what is not known",
		Long: `Check judges each layout by the code that is chosen for it, and by common
practice and this program's own rules, and writes a report. A folder stands for
every layout in it and below it; "-" is standard input. A file that can't be used
does not end the run: its faults stand in the report.

--by, --only, --brief and --show choose what the terminal form shows, on the screen
and in a file. They never choose what is judged: counts, result and exit status are
those of the whole, and a narrowed report says so in its head. Every other form is
always whole.

With --watch the first report is followed, after each save, by what changed in the
files that hold something else than before, by their counts and by the result of all.
Without --on a new day counts from the next save on. What changed is told whole,
whatever else is shown. An interrupt ends it, with the status of the last report.

Exit status: 0 nothing at or above the threshold (no approval of the
installation), 1 findings, 2 a file or the command line can't be used, 3 a fault
of the program.`,
		Example: `  lowvent check layout.json
  lowvent check --code us-mobile-structure --on 2026-11-25 layout.json
  lowvent check --by subject --only locker. --only "appliance hob" layout.json
  lowvent check --brief --show within,not-covered layout.json
  lowvent check --fail-at DANGER --out json=report.json layouts/
  lowvent check --overlay county.json layout.json
  lowvent check --watch --brief layout.json
  lowvent check --format json --working - < layout.json`,
		RunE: func(cmd *cobra.Command, args []string) error { return a.check(cmd, v, &f, args) },
	}
	f.register(cmd)
	f.shown.register(cmd)
	cmd.Flags().BoolVar(&f.watch, "watch", false, "go on: after each save judge what changed, and tell what is worse, unknown or better than before; the files of --out are written anew each time")
	return cmd
}

// register adds the flags that check and trial have in common.
func (f *checkFlags) register(cmd *cobra.Command) {
	flags := cmd.Flags()
	flags.Var(&f.format, "format", "form of the report on standard output: "+strings.Join(formatNames(), ", "))
	flags.Var(&f.out, "out", "write the report into a file as well, whole or not at all; may be repeated. As FILE, - is standard output, and nothing else goes there")
	flags.Var(&f.failAt, "fail-at", "least signal word that makes the exit status 1: "+strings.Join(signals(), ", "))
	f.books.register(flags)
	flags.Var(&f.on, "on", "judge as on this day (default today)")
	flags.BoolVar(&f.working, "working", false, "put the working of every finding and figure into JSON")
	flags.BoolVar(&f.accept, "accept-waivers", false, "let findings with a waiver in force not count towards the exit status; they stand in the report all the same")
	flags.BoolVar(&f.schema, "cross-check", false, "hold each layout against the published JSON Schema as well, a second opinion on this program's own reader")
	flags.Var(&f.workers, "workers", "how many checks to run at a time (default one a processor); the report is the same for any number")
	oneScreen(cmd, &f.format, &f.out)
	complete(cmd, "format", formatNames)
	complete(cmd, "fail-at", signals)
	complete(cmd, "code", codeIDs)
}

func signals() []string {
	var words []string
	for _, each := range report.Signals() {
		words = append(words, string(each))
	}
	return words
}

// check runs the command: all inputs are read and judged, then every output is
// made, and only then is anything written.
func (a *app) check(cmd *cobra.Command, v *viewFlags, f *checkFlags, names []string) error {
	if len(names) == 0 {
		return advice{errors.New("name a layout to check, for example: lowvent check layout.json"),
			`If there is none yet, "lowvent starter --scene van" writes a first layout.json to fill in.`}
	}
	if f.watch {
		return a.watch(cmd, v, f, names)
	}
	books, files, unusable, err := a.books(f.books)
	if err != nil {
		return err
	}
	j := f.judging(a, books)
	if unusable != nil {
		return a.told(f, a.reportOf(j, unusable), v, excerpts(files))
	}
	inputs, err := a.inputs(names)
	if err != nil {
		return err
	}
	run := a.reportOf(j, j.all(cmd.Context(), inputs))
	return a.told(f, run, v, excerpts(inputs))
}

// day is the date that was asked for, else today.
func (a *app) day(on dateFlag) unit.Date {
	if on.IsZero() {
		return a.today()
	}
	return on.Date
}

func (a *app) reportOf(j judging, files []report.FileReport) *report.Run {
	return &report.Run{Format: report.Format, Program: report.Program{Name: "lowvent", Version: a.version},
		On: j.options.On.String(), FailAt: j.failAt, Accept: j.acceptWaivers, Caution: report.Cautions(),
		Files: files, Status: worst(files, j.acceptWaivers)}
}

// told delivers a run, unless what was asked to be shown of it can't be.
func (a *app) told(f *checkFlags, run *report.Run, v *viewFlags, excerpt excerptFunc) error {
	d := f.delivery()
	if err := f.shown.refuse(run, d.asked()); err != nil {
		return err
	}
	return a.deliver(d, run, run.Status, v, excerpt)
}

func (f *checkFlags) delivery() delivery {
	return delivery{forms: formats(), screen: f.format.value, files: f.out.asked, shown: f.shown.view()}
}

// mostWorkers is more than any machine of a builder has use for.
const mostWorkers = 256

// workersFlag is a number of workers; 0 is none given.
type workersFlag int

func (w workersFlag) count() int {
	if w == 0 {
		return runtime.GOMAXPROCS(0)
	}
	return int(w)
}

func (w *workersFlag) Set(s string) error {
	n, err := strconv.Atoi(s)
	if err != nil || n < 1 || n > mostWorkers {
		return fmt.Errorf("a number from 1 to %d is wanted", mostWorkers)
	}
	*w = workersFlag(n)
	return nil
}

func (w *workersFlag) String() string {
	if w == nil || *w == 0 {
		return ""
	}
	return strconv.Itoa(int(*w))
}

// Type names the flag's value in help.
func (w *workersFlag) Type() string { return "N" }

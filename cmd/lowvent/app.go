package main

import (
	"errors"
	"fmt"
	"io"
	"runtime/debug"
	"strings"
	"time"

	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/gas"
	"lowvent.example/schema/check"
	"lowvent.example/schema/unit"
	"lowvent.example/vent"
)

// The exit statuses. The worst of a run counts.
const (
	statusNothing  = 0 // nothing at or above the threshold in what the files state
	statusFindings = 1
	statusUnusable = 2 // a file or the command line can't be used
	statusFault    = 3 // a fault of the program
)

// app is the program with everything that it takes from its surroundings, so
// that a test can run any command in-process.
type app struct {
	stdin    io.Reader
	stdout   io.Writer
	stderr   io.Writer
	env      func(string) (string, bool)
	terminal func() (width int, is bool) // of standard output
	now      func() time.Time            // the only clock
	version  string
	parts    []part
	outside  surroundings // of a check that watches
}

// part is one package of checks, as explain lists them.
type part struct {
	name, title string
	set         check.Set
}

func parts() []part {
	return []part{
		{"gas", "Supply: cylinders, regulators, lines and what the appliances ask of them", gas.Checks()},
		{"vent", "Air and place: lockers and their vents, what is near, and alarms", vent.Checks()},
	}
}

// set is every check and figure of the program.
func (a *app) set() check.Set {
	var sets []check.Set
	for _, each := range a.parts {
		sets = append(sets, each.set)
	}
	return check.Join(sets...)
}

// today is the date by the one clock.
func (a *app) today() unit.Date {
	y, m, d := a.now().Date()
	return unit.Date{Year: y, Month: m, Day: d}
}

// status is an error that only carries an exit status: all has been said.
type status int

func (s status) Error() string { return fmt.Sprintf("exit status %d", int(s)) }

// advice is an error with a second line that shows a way on.
type advice struct {
	what error
	next string
}

func (a advice) Error() string { return a.what.Error() + "\n" + a.next }

// exit turns a status into the error that a command returns for it.
func exit(s int) error {
	if s == statusNothing {
		return nil
	}
	return status(s)
}

// run runs one command line and gives the exit status. A panic anywhere below
// ends here, in a message and not in a stack.
func (a *app) run(args []string) (code int) {
	defer func() {
		if p := recover(); p != nil {
			code = a.fault(p)
		}
	}()
	root := a.root()
	root.SetArgs(append([]string{}, args...))
	err := root.Execute()
	var s status
	switch {
	case err == nil:
		return statusNothing
	case errors.As(err, &s):
		return int(s)
	}
	a.say("%s", err)
	return statusUnusable
}

// say puts one message on standard error. Nothing can be done when that fails.
func (a *app) say(format string, values ...any) {
	lines := strings.Split(fmt.Sprintf(format, values...), "\n")
	for i := range lines {
		lines[i] = text.Clean(lines[i])
	}
	fmt.Fprintf(a.stderr, "lowvent: %s\n", strings.Join(lines, "\n"))
}

// caught is a panic that was carried over from another goroutine.
type caught struct {
	value any
	stack []byte
}

// traceVariable asks for the stack of a fault of the program.
const traceVariable = "LOWVENT_TRACE"

// fault tells of a fault of the program. One that check.Run met in a worker of
// its own brings that worker's stack below its message.
func (a *app) fault(p any) int {
	stack := string(debug.Stack())
	if c, ok := p.(caught); ok {
		p, stack = c.value, string(c.stack)
	}
	message, below, _ := strings.Cut(fmt.Sprint(p), "\n\n")
	if below != "" {
		stack = below
	}
	a.say("this is a fault of the program, not of your file: %s\nNothing was judged, and no output can be relied on. Please report it to whoever gave you the program,\nwith the command, the file and what \"lowvent version\" prints. %s=1 adds the stack.", message, traceVariable)
	if v, _ := a.env(traceVariable); v != "" {
		fmt.Fprintf(a.stderr, "%s\n", stack)
	}
	return statusFault
}

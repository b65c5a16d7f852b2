// Command lowvent checks the propane installation of a small self-built
// dwelling, as its owner wrote it into a file, before anybody lights a burner.
// It reads files and nothing else: it inspects nothing, and what it prints is
// for a licensed gas fitter, who decides, tests and signs.
package main

import (
	"os"
	"runtime/debug"
	"time"
)

// growth is how far the heap may grow, in per cent, before it is collected. A run
// is short and small: collecting would take a quarter of its time and free little.
const growth = 800

func main() {
	debug.SetGCPercent(growth)
	os.Exit(program().run(os.Args[1:]))
}

// program is the program in its real surroundings.
func program() *app {
	return &app{
		stdin: os.Stdin, stdout: os.Stdout, stderr: os.Stderr,
		env: os.LookupEnv, terminal: terminalOf(os.Stdout), now: time.Now, version: builtAs(), parts: parts(), outside: realSurroundings(),
	}
}

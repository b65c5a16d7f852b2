package main

import (
	"strings"
	"testing"
)

// TestNoBinaryFormGoesToATerminal: to a pipe it may.
func TestNoBinaryFormGoesToATerminal(t *testing.T) {
	sedge := in(t, "sedge.json")
	binary := map[string]bool{"html": false, "pdf": true, "card": true, "calendar": false}
	for _, form := range handoffNames() {
		refused, known := binary[form]
		if !known {
			t.Errorf("%s: say whether it may go to a terminal", form)
		}
		for _, terminal := range []bool{false, true} {
			got := run(func(a *app) { a.terminal = func() (int, bool) { return 80, terminal } }, "handoff", sedge, "--out", form+"=-")
			switch {
			case terminal && refused:
				want := form + " is no text, and standard output is a terminal: send it into a file, --out " + form + "=" + form + ".pdf, or through a pipe"
				if got.status != statusUnusable || got.stdout != "" || !strings.Contains(got.stderr, want) {
					t.Errorf("%s at a terminal: status %d, %d bytes, %q", form, got.status, len(got.stdout), got.stderr)
				}
			case got.status != statusNothing || got.stdout == "" || !strings.Contains(got.stderr, "Wrote "+form+" to standard output"):
				t.Errorf("%s, terminal %t: status %d, %d bytes, %q", form, terminal, got.status, len(got.stdout), got.stderr)
			}
			if strings.Contains(got.stdout, "Wrote ") || strings.Contains(got.stderr, "\x1b") {
				t.Errorf("%s, terminal %t: told beside it %q", form, terminal, got.stderr)
			}
		}
	}
}

// TestAPaperThatStandardOutputDoesNotTake keeps back no other.
func TestAPaperThatStandardOutputDoesNotTake(t *testing.T) {
	sedge := in(t, "sedge.json")
	t.Chdir(t.TempDir())
	got := run(func(a *app) { a.stdout = full{} }, "handoff", sedge, "--out", "html=-", "--out", "calendar=due.ics")
	if got.status != statusUnusable || !strings.Contains(got.stderr, "standard output could not be written to: no room on the disk") {
		t.Errorf("status %d, %q", got.status, got.stderr)
	}
	if strings.Contains(got.stderr, "Wrote html") || !strings.Contains(got.stderr, "Wrote due.ics") || !strings.Contains(content(t, "due.ics"), "END:VCALENDAR") {
		t.Errorf("what was told: %q", got.stderr)
	}
}

// TestStandardOutputHasTheBytesOfAFile, whatever the form.
func TestStandardOutputHasTheBytesOfAFile(t *testing.T) {
	sedge := in(t, "sedge.json")
	t.Chdir(t.TempDir())
	of := map[string][]string{"check": formatNames(), "explain": workingFormats(), "handoff": handoffNames()}
	for command, forms := range of {
		args := []string{command, sedge}
		if command == "explain" {
			args = []string{command, "locker.low-vent", sedge}
		}
		for _, form := range forms {
			file := command + "." + form
			into, shown := run(nil, append(args, "--out", form+"="+file)...), run(nil, append(args, "--out", form+"=-")...)
			if into.status != shown.status || shown.stdout != content(t, file) {
				t.Errorf("%s %s: status %d and %d bytes, in a file status %d and %d bytes", command, form, shown.status, len(shown.stdout), into.status, len(content(t, file)))
			}
		}
	}
}

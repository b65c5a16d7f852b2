package main

import (
	"fmt"
	"slices"
	"strings"
	"testing"
)

// anyLines stands, alone on a line of a console block, for any number of lines.
const anyLines = "…"

// refreshed gives what a block should show of what a command printed. A line that
// is only "…" stands for any number of lines; each run of lines between is looked
// for by its first line, or by one that begins alike, since a count may have changed.
// The first run without "…" before it is at the top, the last without "…" after it at
// the end. With an error, which tells of a run that is nowhere, comes what was shown.
func refreshed(shown, printed []string) ([]string, error) {
	if len(printed) == 1 && printed[0] == "" {
		printed = nil
	}
	if !slices.Contains(shown, anyLines) {
		return printed, nil
	}
	before := shown
	var out []string
	at, loose := 0, false
	for len(shown) > 0 {
		if shown[0] == anyLines {
			out, shown, loose = append(out, anyLines), shown[1:], true
			continue
		}
		n := slices.Index(append(slices.Clone(shown), anyLines), anyLines)
		from, err := found(shown[:n], printed, at, loose, n == len(shown))
		if err != nil {
			return before, err
		}
		out, shown, at, loose = append(out, printed[from:from+n]...), shown[n:], from+n, false
	}
	if !loose && at < len(printed) {
		return before, fmt.Errorf("%d more lines were printed, beginning with %q", len(printed)-at, printed[at])
	}
	return out, nil
}

// found looks for a run of lines from a line on.
func found(run, printed []string, at int, loose, last bool) (int, error) {
	from := at
	switch i := alike(printed[at:], run[0]); {
	case loose && last:
		from = len(printed) - len(run)
	case loose && i < 0:
		return 0, fmt.Errorf("nothing printed is the line %q; show another", run[0])
	case loose:
		from = at + i
	}
	if from < at || from+len(run) > len(printed) {
		return 0, fmt.Errorf("fewer lines were printed than %q and the %d below it", run[0], len(run)-1)
	}
	return from, nil
}

// alike gives the index of a line, or of the one that begins most like it, eight
// characters at least; or -1.
func alike(printed []string, line string) int {
	best, most := slices.Index(printed, line), 7
	if best >= 0 {
		return best
	}
	for i, each := range printed {
		n := 0
		for n < min(len(line), len(each)) && line[n] == each[n] {
			n++
		}
		if n > most && strings.TrimSpace(each[:n]) != "" {
			best, most = i, n
		}
	}
	return best
}

func TestDocsShown(t *testing.T) {
	printed := lines("a\nb\nc\nb\nd\ne")
	tests := []struct {
		name, shown, want, fault string
	}{
		{"all of it", "a\nb\nc\nb\nd\ne", "a\nb\nc\nb\nd\ne", ""},
		{"nothing yet", "", "a\nb\nc\nb\nd\ne", ""},
		{"out of date", "x", "a\nb\nc\nb\nd\ne", ""},
		{"the top", "a\nb\n…", "a\nb\n…", ""},
		{"the top, out of date", "x\nb\n…", "a\nb\n…", ""},
		{"the end", "…\nx\ne", "…\nd\ne", ""},
		{"the middle", "…\nb\nx\n…", "…\nb\nc\n…", ""},
		{"twice", "…\nb\nc\n…\nb\n…", "…\nb\nc\n…\nb\n…", ""},
		{"any", "…", "…", ""},
		{"not printed", "…\nx\n…", "", `nothing printed is the line "x"`},
		{"begins otherwise", "…\nbcdefghij\n…", "", "nothing printed"},
		{"in another order", "…\nd\n…\nc\n…", "", `nothing printed is the line "c"`},
		{"too long", "…\nd\ne\nf\n…", "", "fewer lines"},
		{"too long at the end", "a\n…\n1\n2\n3\n4\n5\n6", "", "fewer lines"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, err := refreshed(lines(tt.shown), printed)
			switch {
			case (err != nil) != (tt.fault != ""):
				t.Errorf("error %v, want %q", err, tt.fault)
			case err == nil && !slices.Equal(got, lines(tt.want)):
				t.Errorf("got %q, want %q", got, lines(tt.want))
			}
		})
	}
	counted := lines("top\nfindings 3: here\nfindings 4: there")
	if got, err := refreshed(lines("…\nfindings 2: there\n…"), counted); err != nil || got[1] != "findings 3: here" {
		t.Errorf("a count that has changed: %q, %v", got, err)
	}
	if got, err := refreshed(nil, lines("")); len(got) != 0 || err != nil {
		t.Errorf("a silent command: %q, %v", got, err)
	}
}

package source

import (
	"cmp"
	"slices"
	"strings"
)

// Fault is one thing that is wrong with a file: where, what, what was expected
// instead and how to mend it. A function that gives a *Fault gives nil when
// all is well; do not store that nil in an error.
type Fault struct {
	Place    Place
	Related  []Place // other places that the fault speaks of, such as the first of two equal names
	What     string  // what was wrong
	Expected string  // what was expected there; may be empty
	Mend     string  // how to mend it; may be empty
}

// Error gives the fault on one line: name:line:column: what; expected …; mend: ….
func (f Fault) Error() string {
	var b strings.Builder
	if at := f.Place.String(); at != "" {
		b.WriteString(at + ": ")
	}
	b.WriteString(f.What)
	if f.Expected != "" {
		b.WriteString("; expected " + f.Expected)
	}
	if f.Mend != "" {
		b.WriteString("; mend: " + f.Mend)
	}
	return strings.Map(visible, b.String())
}

// Faults is what is wrong with one or more files.
type Faults []Fault

// Error gives one line for each fault, in the order held.
func (fs Faults) Error() string {
	lines := make([]string, len(fs))
	for i, f := range fs {
		lines[i] = f.Error()
	}
	return strings.Join(lines, "\n")
}

// Sort orders the faults by file name and offset. At one offset the most
// specific comes first: the deeper value, then the shorter span. The texts
// decide what is left, so the order never depends on how the faults were found.
func (fs Faults) Sort() { slices.SortStableFunc(fs, compareFaults) }

func compareFaults(a, b Fault) int {
	return cmp.Or(
		strings.Compare(a.Place.name(), b.Place.name()),
		cmp.Compare(a.Place.Span.Start, b.Place.Span.Start),
		cmp.Compare(strings.Count(b.Place.Pointer, "/"), strings.Count(a.Place.Pointer, "/")),
		cmp.Compare(a.Place.Span.Len(), b.Place.Span.Len()),
		strings.Compare(a.Place.Pointer, b.Place.Pointer),
		strings.Compare(a.What, b.What),
		strings.Compare(a.Expected, b.Expected),
		strings.Compare(a.Mend, b.Mend),
	)
}

func (p Place) name() string {
	if p.File == nil {
		return ""
	}
	return p.File.Name
}

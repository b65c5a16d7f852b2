package main

import (
	"context"
	"fmt"
	"runtime/debug"
	"slices"
	"sort"
	"strings"
	"sync"

	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
)

// judging is what every layout of a run is judged by.
type judging struct {
	set     check.Set
	books   books
	options check.Options
	failAt  report.Signal

	acceptWaivers bool // waived findings do not count towards the exit status
	crossCheck    bool // hold each layout against the published schema as well
}

// all judges every input. Each worker writes into a slot of its own, so the
// number of workers changes nothing but the time it takes.
func (j judging) all(ctx context.Context, inputs []input) []report.FileReport {
	reports := make([]report.FileReport, len(inputs))
	workers := max(1, min(j.options.Workers, len(inputs)))
	j.options.Workers = max(1, j.options.Workers/max(1, len(inputs)))
	next := make(chan int)
	var group sync.WaitGroup
	go code.Use("") // reads the books that every run asks, which takes as long as a layout does
	var panics sync.Map
	for range workers {
		group.Go(func() {
			for i := range next {
				guard(&panics, i, func() { reports[i] = j.one(ctx, inputs[i]) })
			}
		})
	}
	for i := range inputs {
		next <- i
	}
	close(next)
	group.Wait()
	for i := range inputs {
		if p, is := panics.Load(i); is {
			panic(p)
		}
	}
	return reports
}

// guard keeps a panic for the goroutine that waits.
func guard(panics *sync.Map, i int, f func()) {
	defer func() {
		if p := recover(); p != nil {
			panics.Store(i, caught{value: p, stack: debug.Stack()})
		}
	}()
	f()
}

// one judges one input; a file that can't be used gives its faults and nothing
// else.
func (j judging) one(ctx context.Context, in input) report.FileReport {
	l, codes, faults := j.load(in)
	if faults != nil {
		return check.FaultReport(in.name, faults)
	}
	r, err := check.Report(ctx, j.set, l, codes, j.options, j.failAt)
	if err != nil {
		panic(err) // the context is never cancelled, so this is a fault of the program
	}
	return r
}

// load reads the layout and finds the code that it is to be judged by.
func (j judging) load(in input) (*layout.Layout, code.Codes, source.Faults) {
	if in.fault != nil {
		return nil, code.Codes{}, source.Faults{*in.fault}
	}
	l, faults := layout.Load(in.file)
	if faults == nil && j.crossCheck {
		faults = layout.Validate(l)
	}
	if faults != nil {
		return nil, code.Codes{}, faults
	}
	if j.books.code != nil {
		codes, err := code.Use("")
		if err != nil {
			panic(err) // the books that every run is judged by are part of the program
		}
		return l, codes.With(j.books.code), nil
	}
	id, stated := l.Where.Code.Get()
	if j.books.codeID != "" {
		id = j.books.codeID
	}
	codes, err := code.Use(id)
	if err != nil || stated && id == "" {
		return nil, code.Codes{}, source.Faults{unusableCode(l, id)}
	}
	return l, codes, nil
}

// unusableCode is the fault of a file that asks for a code that there is not.
func unusableCode(l *layout.Layout, id string) source.Fault {
	ids := codeIDs()
	mend := "choose one of them, or leave the key out: then no code is chosen" + meant(id, ids)
	return source.Fault{Place: l.Where.Code.Spot().Place(), What: fmt.Sprintf("there is no code %q", id), Expected: "one of " + strings.Join(ids, ", "), Mend: mend}
}

// excerpts shows the lines of the files that were read.
func excerpts(inputs []input) excerptFunc {
	files := map[string]*source.File{}
	for _, in := range inputs {
		if in.file != nil {
			files[in.name] = in.file
		}
	}
	return func(p report.Place, width int) source.Excerpt {
		f := files[p.File]
		if f == nil || p.Line == 0 {
			return source.Excerpt{}
		}
		span := source.Span{Start: offset(f, p.Line, p.Column), End: offset(f, p.EndLine, p.EndColumn)}
		return source.Place{File: f, Span: span}.Excerpt(width)
	}
}

// offset finds the byte at a line and column.
func offset(f *source.File, line, column int) int32 {
	return int32(sort.Search(len(f.Data), func(i int) bool {
		l, c := f.Position(i)
		return l > line || l == line && c >= column
	}))
}

// worst gives the exit status of a run. Waived findings count like any other, unless
// it was asked that they do not.
func worst(reports []report.FileReport, acceptWaivers bool) int {
	status := statusNothing
	for i := range reports {
		counted := reports[i].Counts.AtOrAbove
		if acceptWaivers {
			counted -= reports[i].Counts.Excused
		}
		switch {
		case len(reports[i].Faults) > 0:
			return statusUnusable
		case counted > 0:
			status = statusFindings
		}
	}
	return status
}

// chosen checks the id of a code that was given on the command line.
func chosen(id string) error {
	switch {
	case id == "" || slices.Contains(codeIDs(), id):
		return nil
	case slices.Contains(bookIDs(), id):
		return advice{fmt.Errorf("%q is asked in every run and can't be chosen", id), "The codes are: " + strings.Join(codeIDs(), ", ")}
	}
	return advice{unknownWord("code", id, codeIDs()), `"lowvent codes" tells what each of them is.`}
}

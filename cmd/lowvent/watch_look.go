package main

import (
	"bytes"
	"fmt"
	"maps"
	"os"
	"slices"

	"lowvent.example/cmd/lowvent/internal/render/term"
	"lowvent.example/schema/check"
	"lowvent.example/schema/report"
)

// sight is one look at all files: what they held, and what was judged of it.
type sight struct {
	day     string
	books   string            // what the files of codes and local rules held
	bytes   map[string]string // what each layout held, or why it could not be read
	run     *report.Run
	excerpt excerptFunc
	judged  bool // not when a file of codes or local rules can't be used
}

// report is what was told of a file, nil for nothing.
func (s *sight) report(name string) *report.FileReport {
	if s.run == nil {
		return nil
	}
	for i := range s.run.Files {
		if s.run.Files[i].File == name {
			return &s.run.Files[i]
		}
	}
	return nil
}

// because tells why every file is judged anew, or none, since other books were last told
// of and another day was judged on; "" when it is only a matter of their own bytes.
func (s *sight) because(books, day string) string {
	switch {
	case s.books != books && !s.judged:
		return "What is judged by has changed, and can't be used: nothing is judged until it can."
	case s.books != books:
		return "What is judged by has changed: every file is judged by it as it is now."
	case s.judged && day != "" && s.day != day:
		return fmt.Sprintf("It is %s now, no more %s: every file was judged anew.", s.day, day)
	}
	return ""
}

// unusable lists the files of codes and local rules that can't be used, once.
func (s *sight) unusable(why string) []term.Anew {
	var files []term.Anew
	for i := range s.run.Files {
		if why != "" {
			files = append(files, term.Anew{Name: s.run.Files[i].File, Now: &s.run.Files[i]})
		}
	}
	return files
}

// look reads all files, and judges those that hold something else than at the last look:
// all, when the day or what is judged by is another.
func (w *watching) look() (sight, error) {
	books, bookInputs, unusable, err := w.app.books(w.flags.books)
	if err != nil {
		return sight{}, err
	}
	j := w.flags.judging(w.app, books)
	s := sight{day: j.options.On.String(), bytes: map[string]string{}, judged: unusable == nil}
	for _, in := range bookInputs {
		s.books += held(in)
	}
	if unusable != nil {
		s.run, s.excerpt = w.reportOf(j, unusable), excerpts(bookInputs)
		return s, nil
	}
	inputs, err := w.read()
	if err != nil {
		return sight{}, err
	}
	for _, in := range inputs {
		s.bytes[in.name] = held(in)
	}
	s.run, s.excerpt = w.reportOf(j, w.judge(j, &s, inputs)), excerpts(append(inputs, bookInputs...))
	return s, nil
}

// held is what an input holds, or what stands in the way of reading it, for telling
// whether it is another than before.
func held(in input) string {
	if in.fault != nil {
		return "\x00" + in.name + ": " + in.fault.What
	}
	return string(in.file.Data)
}

// read reads the layouts. What was passed over is said once, until that is another; not
// while a damaged layout would be taken for that.
func (w *watching) read() ([]input, error) {
	var said bytes.Buffer
	aside := *w.app
	aside.stderr = &said
	inputs, err := aside.inputs(w.names)
	damaged := w.damaged(inputs)
	if said.String() != w.said && len(damaged) == 0 {
		w.said = said.String()
		fmt.Fprint(w.stderr, w.said)
	}
	return append(inputs, damaged...), err
}

// damaged reads the layouts of the last look that are still there, though nothing in them
// says any more that they are layouts. They can't be used, and are not to be passed over.
func (w *watching) damaged(inputs []input) []input {
	var still []input
	for _, name := range slices.Sorted(maps.Keys(w.seen.bytes)) {
		known := slices.ContainsFunc(inputs, func(in input) bool { return in.name == name })
		if _, err := os.Stat(name); err == nil && !known {
			still = append(still, read(name))
		}
	}
	return still
}

// judge judges what is not as it was, and takes the rest from the last look.
func (w *watching) judge(j judging, s *sight, inputs []input) []report.FileReport {
	reports := make([]report.FileReport, len(inputs))
	alike := w.seen.judged && s.books == w.seen.books && s.day == w.seen.day
	var stale []input
	var slots []int
	for i, in := range inputs {
		if was, there := w.seen.bytes[in.name]; alike && there && was == s.bytes[in.name] {
			reports[i] = *w.seen.report(in.name)
			continue
		}
		stale, slots = append(stale, in), append(slots, i)
	}
	for i, r := range j.all(w.cmd.Context(), stale) {
		reports[slots[i]] = r
	}
	return reports
}

// judging is what these flags have layouts judged by.
func (f *checkFlags) judging(a *app, b books) judging {
	return judging{set: a.set().WithoutDetail(), books: b, failAt: report.Signal(f.failAt.value), acceptWaivers: f.accept, crossCheck: f.schema,
		options: check.Options{On: a.day(f.on), Working: f.working, Workers: f.workers.count(), Overlay: b.overlay}}
}

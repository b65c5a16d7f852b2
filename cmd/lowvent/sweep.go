package main

import (
	"context"
	"fmt"
	"io"
	"slices"
	"strings"

	"lowvent.example/cmd/lowvent/internal/render/jsonout"
	"lowvent.example/cmd/lowvent/internal/render/term"
	"lowvent.example/cmd/lowvent/internal/sweep"
	"lowvent.example/schema/check"
	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
)

// sweepFlag is what --sweep asks for.
type sweepFlag struct {
	sweep.Range
	asked bool
}

func (s *sweepFlag) Set(text string) error {
	if s.asked {
		return fmt.Errorf("one quantity is swept at a time, and %s is already", s.Pointer)
	}
	r, err := sweep.Parse(text)
	s.Range, s.asked = r, err == nil
	return err
}

func (s *sweepFlag) String() string { return "" }

// Type names the flag's value in help.
func (s *sweepFlag) Type() string { return "/PATH=FROM..TO[/COUNT]" }

// sweepForms are the forms in which a sweep can be written.
func sweepForms() []string { return []string{"terminal", "json"} }

// sweeping is one sweep under way.
type sweeping struct {
	judging
	*trial
	sweep.Scale
	pointer string
	edits   []source.Edit
}

// unusable is a value of the sweep with which the layout can't be used.
type unusable struct{ of report.FileReport }

func (u unusable) Error() string { return u.of.Faults[0].What }

// sweepTrial judges a trial at many values of one quantity, and tells what turns where.
// If the layout can't be used at one of them, it tells that, and nothing else.
func (a *app) sweepTrial(ctx context.Context, v *viewFlags, f *trialFlags, j judging, t *trial) error {
	s, err := a.newSweep(f, j, t)
	if err != nil {
		return err
	}
	files, lanes, err := s.run(ctx)
	if err != nil {
		return a.refuseSweep(err, v, f, j, t)
	}
	out := a.sweepOf(s, files, lanes)
	plots, err := plotted(out, f.figures)
	if err != nil {
		return err
	}
	bodies := make([][]byte, len(f.out.asked))
	for i, each := range f.out.asked {
		bodies[i] = writtenSweep(out, each.format, a.inFile(v), plots)
	}
	return a.hand(writtenSweep(out, f.format.value, a.onTerminal(v), plots), f.out.asked, bodies, statusNothing)
}

// newSweep makes ready what the flags ask for, or tells why that can't be swept.
func (a *app) newSweep(f *trialFlags, j judging, t *trial) (*sweeping, error) {
	for _, each := range append(slices.Clone(f.out.asked), outSpec{format: f.format.value}) {
		if !slices.Contains(sweepForms(), each.format) {
			return nil, fmt.Errorf("a sweep is no report, and can't be written as %s; there are: %s", each.format, strings.Join(sweepForms(), ", "))
		}
	}
	pointer := f.sweep.Pointer
	if slices.ContainsFunc(f.edits, func(e source.Edit) bool { return under(pointer, e.Pointer) || under(e.Pointer, pointer) }) {
		return nil, fmt.Errorf("%s is swept, and can't be edited as well", pointer)
	}
	if err := leads(t.root, source.Edit{Pointer: pointer}); err != nil {
		return nil, err
	}
	scale, err := f.sweep.Scale()
	if err != nil {
		return nil, err
	}
	edits := slices.Clone(t.made)
	for _, e := range t.evidenceOf(source.Edit{Pointer: pointer, Value: `"swept"`}, t.made) {
		edits, t.Edits = append(edits, e), append(t.Edits, t.told(e))
	}
	j.set, err = a.setWith(f.figures)
	return &sweeping{judging: j, trial: t, Scale: scale, pointer: pointer, edits: edits}, err
}

// run judges every check at every value, and then, between two values, those alone that
// turn there: what a check answers hangs on no other check.
func (s *sweeping) run(ctx context.Context) ([]report.FileReport, []sweep.Lane, error) {
	files, err := s.at(ctx, s.At)
	if err != nil {
		return nil, nil, err
	}
	few := *s
	few.set.Figures = nil
	lanes, err := sweep.Lanes(s.At, findingsOf(files), func(at []int64, checks []string) ([][]report.Finding, error) {
		few.set.Checks = slices.DeleteFunc(slices.Clone(s.set.Checks), func(c check.Check) bool { return !slices.Contains(checks, c.ID) })
		judged, err := few.at(ctx, at)
		return findingsOf(judged), err
	})
	return files, lanes, err
}

// writtenSweep writes a sweep in one of its forms.
func writtenSweep(s *report.Sweep, form string, look view, plots []int) []byte {
	return inMemory(func(w io.Writer) error {
		if form == "json" {
			return jsonout.Encode(w, s)
		}
		return term.Sweep(w, s, term.SweepOptions{Width: look.width, Colour: look.colour, Plots: plots, Plot: plot})
	})
}

// refuseSweep tells of the value with which the layout can't be used.
func (a *app) refuseSweep(err error, v *viewFlags, f *trialFlags, j judging, t *trial) error {
	u, is := err.(unusable)
	if !is {
		return err
	}
	run := a.trialReport(j, t, u.of)
	return a.deliver(f.delivery(), run, run.Status, v, excerpts([]input{t.input}))
}

// at judges the trial with each of those values in its place. The error is unusable, for
// the first of them that the layout can't be used with, or tells that it can't be put there.
func (s *sweeping) at(ctx context.Context, steps []int64) ([]report.FileReport, error) {
	inputs := make([]input, len(steps))
	for i, n := range steps {
		file, err := s.edited(append(slices.Clone(s.edits), s.edit(n)))
		if err != nil {
			return nil, err
		}
		inputs[i] = input{name: file.Name, file: file}
	}
	files := s.all(ctx, inputs)
	for i := range files {
		if len(files[i].Faults) > 0 {
			s.input = inputs[i]
			s.Edits = append(s.Edits, s.told(s.edit(steps[i])))
			return nil, unusable{files[i]}
		}
	}
	return files, nil
}

func (s *sweeping) edit(n int64) source.Edit {
	return source.Edit{Pointer: s.pointer, Value: s.JSON(n)}
}

func findingsOf(files []report.FileReport) [][]report.Finding {
	findings := make([][]report.Finding, len(files))
	for i := range files {
		findings[i] = files[i].Findings
	}
	return findings
}

// setWith is the usual set, with those figures as well that were asked for by name. A name
// may have the pointer of a subject behind it, after a colon.
func (a *app) setWith(figures []string) (check.Set, error) {
	all := a.set()
	set := all.WithoutDetail()
	var known []string
	for _, each := range all.Figures {
		known = append(known, each.ID)
	}
	for _, name := range figures {
		id, _, _ := strings.Cut(name, ":")
		i := slices.Index(known, id)
		if i < 0 {
			return set, advice{fmt.Errorf("there is no figure %q%s", id, meant(id, known)), `"lowvent explain" lists them.`}
		}
		if all.Figures[i].Detail && !slices.ContainsFunc(set.Figures, func(f check.Shown) bool { return f.ID == id }) {
			set.Figures = append(set.Figures, all.Figures[i])
		}
	}
	return set, nil
}

package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"os/signal"
	"slices"
	"strings"
	"syscall"
	"time"

	"github.com/spf13/cobra"

	"lowvent.example/cmd/lowvent/internal/render/term"
	"lowvent.example/cmd/lowvent/internal/watch"
	"lowvent.example/schema/report"
)

// surroundings are what watching takes from outside: the changes on the disk, a timer, and
// the interrupt that ends it.
type surroundings struct {
	events    func() (*watch.Events, error)
	after     func(time.Duration) <-chan time.Time
	interrupt func(context.Context) (context.Context, context.CancelFunc)
}

func realSurroundings() surroundings {
	return surroundings{events: watch.Disk, after: time.After,
		interrupt: func(ctx context.Context) (context.Context, context.CancelFunc) {
			return signal.NotifyContext(ctx, os.Interrupt, syscall.SIGTERM)
		}}
}

// watching is a check that goes on: what was told last, so that the next save can be held
// against it.
type watching struct {
	*app
	cmd      *cobra.Command
	view     *viewFlags
	flags    *checkFlags
	names    []string
	events   *watch.Events
	books    string                        // the files of codes and local rules, as they were last told of
	seen     sight                         // the last look at which layouts were judged
	findings map[string]*report.FileReport // of each file, the last report with findings
	said     string                        // on standard error, at the last look
	status   error                         // that of the last report
}

// watch checks, and checks again after each save, until it is interrupted.
func (a *app) watch(cmd *cobra.Command, v *viewFlags, f *checkFlags, names []string) error {
	if err := f.watchable(names); err != nil {
		return err
	}
	ctx, stop := a.outside.interrupt(cmd.Context())
	defer stop()
	events, err := a.outside.events()
	if err != nil {
		return err
	}
	w := &watching{app: a, cmd: cmd, view: v, flags: f, names: names, events: events, findings: map[string]*report.FileReport{}}
	err = w.first()
	if err == nil {
		a.say("watching for saves; an interrupt (Ctrl+C) ends it")
		err = (&watch.Loop{Events: events, After: a.outside.after, Again: w.again, Trouble: w.trouble}).Run(ctx)
	}
	if err = errors.Join(err, events.Close()); err != nil {
		return err
	}
	return w.status
}

// watchable refuses what can't be watched, or can't be told more than once.
func (f *checkFlags) watchable(names []string) error {
	if slices.Contains(names, "-") {
		return errors.New("standard input can't be watched: it is read once. Name files or folders with --watch")
	}
	if f.format.value != terminalForm {
		return advice{fmt.Errorf("--watch tells on the screen what each save changed, and has no form %q for it", f.format.value),
			fmt.Sprintf("For the whole report of the last save in a file: --out %s=FILE", f.format.value)}
	}
	return nil
}

// trouble tells of changes that may have been missed. All files are looked at again.
func (w *watching) trouble(err error) { w.say("some changes may have been missed: %s", err) }

// first tells the whole report. The folders are followed before anything is read, so that
// no save falls between.
func (w *watching) first() error {
	if err := w.follow(); err != nil {
		return err
	}
	s, err := w.look()
	if err != nil {
		return err
	}
	w.status = w.told(w.flags, s.run, w.view, s.excerpt)
	w.keep(s)
	return fatal(w.status)
}

// again tells what changed since the last look; nothing when nothing did.
func (w *watching) again() error {
	if err := w.follow(); err != nil {
		w.trouble(err)
	}
	s, err := w.look()
	if err != nil {
		return err
	}
	files, why := w.differs(s)
	if len(files) == 0 && why == "" {
		return nil
	}
	var screen bytes.Buffer
	look := w.onTerminal(w.view)
	if err := term.Again(&screen, s.run, files, why, term.Options{Width: look.width, Colour: look.colour, Excerpt: s.excerpt}); err != nil {
		return err
	}
	w.status = w.put(w.flags.delivery(), s.run, s.run.Status, w.view, s.excerpt, screen.Bytes())
	w.keep(s)
	return fatal(w.status)
}

// fatal is an error that ends the watching: any but an exit status.
func fatal(err error) error {
	var s status
	if errors.As(err, &s) {
		return nil
	}
	return err
}

// follow sees to it that a change in any folder that matters is told. Folders come and go.
func (w *watching) follow() error {
	names := append(slices.Clone(w.names), w.flags.books.files()...)
	var lost error
	for _, folder := range watch.Folders(names) {
		if err := w.events.Follow(folder); err != nil {
			lost = errors.Join(lost, fmt.Errorf("%s can't be watched: %w", folder, err))
		}
	}
	return lost
}

// differs lists what is to be told of a look, and why all was judged anew if it was.
func (w *watching) differs(s sight) (files []term.Anew, why string) {
	why = s.because(w.books, w.seen.day)
	if !s.judged {
		return s.unusable(why), why
	}
	for i := range s.run.Files {
		now := &s.run.Files[i]
		before, was := w.findings[now.File], w.seen.report(now.File)
		touched := was == nil || s.bytes[now.File] != w.seen.bytes[now.File]
		if touched || turnedOver(was, now) {
			files = append(files, term.Anew{Name: now.File, Now: now, Before: before, Broken: was != nil && len(was.Faults) > 0})
		}
	}
	return append(files, w.gone(&s)...), why
}

// turnedOver tells whether a file whose bytes are as before is to be told of all the same.
func turnedOver(was, now *report.FileReport) bool {
	if len(was.Faults)+len(now.Faults) > 0 {
		return len(was.Faults) == 0 || len(now.Faults) == 0
	}
	return len(report.Compare(was, now)) > 0
}

// gone lists the files of the last look that are not there any more.
func (w *watching) gone(s *sight) []term.Anew {
	var files []term.Anew
	for name := range w.seen.bytes {
		if _, there := s.bytes[name]; !there {
			files = append(files, term.Anew{Name: name})
		}
	}
	slices.SortFunc(files, func(a, b term.Anew) int { return strings.Compare(a.Name, b.Name) })
	return files
}

// keep holds a look for the next to be held against. A file that can't be used keeps its
// last findings only for that; they are in no report.
func (w *watching) keep(s sight) {
	w.books = s.books
	if !s.judged {
		return
	}
	w.seen = s
	for i := range s.run.Files {
		if f := &s.run.Files[i]; len(f.Faults) == 0 {
			w.findings[f.File] = f
		}
	}
}

// Package watch waits until something in a few folders has changed and come to rest. It
// tells that something changed, never what: whoever asked looks for himself, since an
// event may be lost, come twice, or speak of a file that has gone again.
package watch

import (
	"context"
	"fmt"
	"time"

	"github.com/fsnotify/fsnotify"
)

// An editor saves in several steps within a few milliseconds: a new file, a rename, a
// change of rights. Between them the layout may be missing or half written.
const (
	Quiet   = 200 * time.Millisecond // nothing may have changed for so long
	Longest = 2 * time.Second        // and no longer than this is waited, in a folder that never rests
)

// Events is where changes come from.
type Events struct {
	Changed <-chan fsnotify.Event // closed when nothing more comes
	Trouble <-chan error          // after which changes may have been missed
	Follow  func(folder string) error
	Close   func() error
}

// Disk gives the changes on this machine's disks. The error is that the system has none to
// give, or no more.
func Disk() (*Events, error) {
	w, err := fsnotify.NewWatcher()
	if err != nil {
		return nil, fmt.Errorf("this system does not tell of changes to files: %w", err)
	}
	return &Events{Changed: w.Events, Trouble: w.Errors, Follow: w.Add, Close: w.Close}, nil
}

// Loop does something again after each change.
type Loop struct {
	Events  *Events
	After   func(time.Duration) <-chan time.Time // as time.After
	Again   func() error                         // an error ends the loop
	Trouble func(error)                          // is told what Events has trouble with
}

// Run runs the loop until the context is done, the changes end or Again returns an error,
// and returns that.
func (l *Loop) Run(ctx context.Context) error {
	for l.settled(ctx) {
		if err := l.Again(); err != nil {
			return err
		}
	}
	return nil
}

// settled waits for a change, and then until there is no other. It is false when there is
// nothing to wait for any more.
func (l *Loop) settled(ctx context.Context) bool {
	var quiet, longest <-chan time.Time
	for {
		open := true
		select {
		case <-ctx.Done():
			return false
		case <-quiet:
			return true
		case <-longest:
			return true
		case _, open = <-l.Events.Changed:
		case err, more := <-l.Events.Trouble:
			if open = more; open {
				l.Trouble(err)
			}
		}
		if !open {
			return false
		}
		quiet = l.After(Quiet)
		if longest == nil {
			longest = l.After(Longest)
		}
	}
}

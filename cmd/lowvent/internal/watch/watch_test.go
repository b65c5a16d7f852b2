package watch

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/fsnotify/fsnotify"
	"github.com/google/go-cmp/cmp"
)

// timer is one that somebody asked for; the test decides when it ends.
type timer struct {
	asked time.Duration
	ends  chan time.Time
}

// stage is a loop on which a test plays both the disk and the clock.
type stage struct {
	changed chan fsnotify.Event
	trouble chan error
	timers  chan timer
	again   chan struct{}
	told    []error
	end     context.CancelFunc
	done    chan error
}

func onStage(t *testing.T, fails error) *stage {
	t.Helper()
	ctx, end := context.WithCancel(t.Context())
	s := &stage{changed: make(chan fsnotify.Event), trouble: make(chan error), timers: make(chan timer), again: make(chan struct{}), end: end, done: make(chan error, 1)}
	l := &Loop{
		Events: &Events{Changed: s.changed, Trouble: s.trouble},
		After: func(d time.Duration) <-chan time.Time {
			c := timer{d, make(chan time.Time)}
			s.timers <- c
			return c.ends
		},
		Again:   func() error { s.again <- struct{}{}; return fails },
		Trouble: func(err error) { s.told = append(s.told, err) },
	}
	go func() { s.done <- l.Run(ctx) }()
	return s
}

// save sends one change and gives the timer that it starts, and for the first since the
// last rest the longest one as well.
func (s *stage) save(first bool) (quiet, longest timer) {
	s.changed <- fsnotify.Event{Name: "layout.json"}
	quiet = <-s.timers
	if first {
		longest = <-s.timers
	}
	return quiet, longest
}

// TestOneSaveOfManyStepsIsOneChange: each step starts the wait anew, and what was waited
// for before it does not count any more.
func TestOneSaveOfManyStepsIsOneChange(t *testing.T) {
	s := onStage(t, nil)
	for range 3 {
		quiet, longest := s.save(true)
		if quiet.asked != Quiet || longest.asked != Longest {
			t.Errorf("waits %s and %s", quiet.asked, longest.asked)
		}
		s.save(false)
		last, _ := s.save(false)
		select {
		case quiet.ends <- time.Time{}:
			t.Error("the wait for the first step still counts")
		case last.ends <- time.Time{}:
		}
		<-s.again
	}
	s.end()
	if err := <-s.done; err != nil {
		t.Error(err)
	}
}

func TestAFolderThatNeverRestsIsLookedAtAllTheSame(t *testing.T) {
	s := onStage(t, nil)
	_, longest := s.save(true)
	for range 10 {
		s.save(false)
	}
	longest.ends <- time.Time{}
	<-s.again
	quiet, _ := s.save(true) // the next change waits anew
	quiet.ends <- time.Time{}
	<-s.again
	s.end()
	<-s.done
}

// TestTroubleIsToldAndLookedInto: what was missed may have been a change.
func TestTroubleIsToldAndLookedInto(t *testing.T) {
	s := onStage(t, nil)
	lost := errors.New("too many changes")
	s.trouble <- lost
	quiet := <-s.timers
	<-s.timers
	quiet.ends <- time.Time{}
	<-s.again
	s.end()
	<-s.done
	if len(s.told) != 1 || s.told[0] != lost {
		t.Errorf("told %v", s.told)
	}
}

func TestWaysToEnd(t *testing.T) {
	broken := errors.New("the screen is gone")
	tests := []struct {
		name string
		end  func(*stage)
		want error
	}{
		{"an interrupt", func(s *stage) { s.end() }, nil},
		{"an interrupt while it waits for rest", func(s *stage) { s.save(true); s.end() }, nil},
		{"no more changes", func(s *stage) { close(s.changed) }, nil},
		{"no more trouble", func(s *stage) { close(s.trouble) }, nil},
		{"what is done again fails", func(s *stage) {
			quiet, _ := s.save(true)
			quiet.ends <- time.Time{}
			<-s.again
		}, broken},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			s := onStage(t, broken)
			tt.end(s)
			if err := <-s.done; err != tt.want {
				t.Errorf("ended with %v, want %v", err, tt.want)
			}
		})
	}
}

// TestDisk: a file that takes the name of another is a change, in a folder that is followed.
func TestDisk(t *testing.T) {
	e, err := Disk()
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	if err := e.Follow(dir); err != nil {
		t.Fatal(err)
	}
	if err := e.Follow(filepath.Join(dir, "nowhere")); err == nil {
		t.Error("a folder that is not there is followed")
	}
	l := &Loop{Events: e, After: time.After, Again: func() error { return errors.New("seen") }, Trouble: func(err error) { t.Error(err) }}
	done := make(chan error)
	go func() { done <- l.Run(t.Context()) }()
	touch(t, filepath.Join(dir, "new"))
	if err := os.Rename(filepath.Join(dir, "new"), filepath.Join(dir, "layout.json")); err != nil {
		t.Fatal(err)
	}
	if err := <-done; err == nil || err.Error() != "seen" {
		t.Errorf("the loop ended with %v", err)
	}
	if err := e.Close(); err != nil {
		t.Error(err)
	}
}

func touch(t *testing.T, path string) {
	t.Helper()
	if err := os.WriteFile(path, nil, 0o666); err != nil {
		t.Fatal(err)
	}
}

func TestFolders(t *testing.T) {
	t.Chdir(t.TempDir())
	for _, each := range []string{"vans/old/attic", "vans/.git/objects", "boats"} {
		if err := os.MkdirAll(each, 0o777); err != nil {
			t.Fatal(err)
		}
	}
	touch(t, "vans/a.json")
	touch(t, "boats/b.json")
	if err := os.Symlink("boats/b.json", "link.json"); err != nil {
		t.Fatal(err)
	}
	tests := []struct {
		name  string
		names []string
		want  []string
	}{
		{"a file", []string{"vans/a.json"}, []string{"vans"}},
		{"a file here, and another", []string{"layout.json", "./other.json"}, []string{"."}},
		{"a folder, without what is hidden in it", []string{"vans/"}, []string{"vans", "vans/old", "vans/old/attic"}},
		{"this folder", []string{"."}, []string{".", "boats", "vans", "vans/old", "vans/old/attic"}},
		{"a link, and what it leads to", []string{"link.json"}, []string{".", "boats"}},
		{"what is not there yet", []string{"vans/new/deep/c.json", "nowhere/d.json"}, []string{".", "vans"}},
		{"a file where a folder should be", []string{"vans/a.json/x.json"}, []string{"vans"}},
		{"none", nil, nil},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got := Folders(tt.names)
			for i := range got {
				got[i] = filepath.ToSlash(got[i])
			}
			if diff := cmp.Diff(tt.want, got); diff != "" {
				t.Errorf("(-want +got):\n%s", diff)
			}
		})
	}
}

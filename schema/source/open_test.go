package source

import (
	"bytes"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// counting reads without end and counts how much was asked of it.
type counting struct {
	given  int
	closed bool
}

func (c *counting) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = ' '
	}
	c.given += len(p)
	return len(p), nil
}

func (c *counting) Close() error { c.closed = true; return nil }

// A stream without end is given up one byte past the limit.
func TestOpenNeverReadsOn(t *testing.T) {
	in := &counting{}
	f, fault := Open("-", func() (io.ReadCloser, error) { return in, nil }, Limits{Bytes: 1000})
	if f != nil || fault == nil || !strings.Contains(fault.What, "larger than 1000 bytes") {
		t.Errorf("got %v", fault)
	}
	if in.given > 1001 {
		t.Errorf("%d bytes were read", in.given)
	}
	if !in.closed {
		t.Error("left open")
	}
	if fault.Place.Line() != 0 || fault.Place.String() != "-" {
		t.Errorf("a file that was not kept has the line %d", fault.Place.Line())
	}
}

func TestOpenAtTheLimit(t *testing.T) {
	for _, size := range []int{0, 1, 9, 10} {
		data := bytes.Repeat([]byte("x"), size)
		f, fault := Open("van.json", func() (io.ReadCloser, error) { return io.NopCloser(bytes.NewReader(data)), nil }, Limits{Bytes: 10})
		if fault != nil || f.Name != "van.json" || !bytes.Equal(f.Data, data) {
			t.Errorf("%d bytes: %v", size, fault)
		}
	}
}

// failing gives some bytes and then an error.
type failing struct{ left int }

func (f *failing) Read(p []byte) (int, error) {
	if f.left == 0 {
		return 0, &fs.PathError{Op: "read", Path: "/secret", Err: errors.New("input/output error")}
	}
	n := min(f.left, len(p))
	f.left -= n
	return n, nil
}

func (f *failing) Close() error { return nil }

func TestOpenFailures(t *testing.T) {
	tests := []struct {
		name               string
		open               func() (io.ReadCloser, error)
		what, mend, silent string
	}{
		{"breaks off", func() (io.ReadCloser, error) { return &failing{left: 5000}, nil }, "could not be read to its end: input/output error", "copy the file", "/secret"},
		{"missing", func() (io.ReadCloser, error) { return nil, fs.ErrNotExist }, "no such file", "spelling", "open"},
		{"not allowed", func() (io.ReadCloser, error) {
			return nil, &fs.PathError{Op: "open", Path: "/secret", Err: fs.ErrPermission}
		}, "may not be read by this user", "permissions", "/secret"},
		{"refused by the opener", func() (io.ReadCloser, error) {
			return nil, errors.Join(refuseIrregular("van.json", fs.ModeNamedPipe), nil)
		}, "a pipe", "name -", "could not"},
		{"anything else", func() (io.ReadCloser, error) {
			return nil, &fs.PathError{Op: "open", Path: "/secret", Err: errors.New("too many open files")}
		}, "could not be opened: too many open files", "the disk it is on", "/secret"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			f, fault := Open("van.json", test.open, Limits{})
			if f != nil || fault == nil {
				t.Fatalf("%v %v", f, fault)
			}
			if !strings.Contains(fault.What, test.what) || !strings.Contains(fault.Mend, test.mend) || fault.Expected == "" {
				t.Errorf("got %v", fault)
			}
			if strings.Contains(fault.Error(), test.silent) || !strings.HasPrefix(fault.Error(), "van.json: ") {
				t.Errorf("got %v", fault)
			}
		})
	}
}

func TestReadPath(t *testing.T) {
	dir := t.TempDir()
	write := func(name, text string) string {
		path := filepath.Join(dir, name)
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		return path
	}
	good, large, empty := write("good.json", "{}"), write("large.json", "{         }"), write("empty.json", "")
	link := filepath.Join(dir, "link.json")
	if err := os.Symlink(good, link); err != nil {
		t.Fatal(err)
	}
	for path, want := range map[string]string{good: "{}", link: "{}", empty: ""} {
		f, fault := ReadPath(path, Limits{Bytes: 10})
		if fault != nil || string(f.Data) != want || f.Name != path {
			t.Errorf("%s: %v", path, fault)
		}
	}
	refused := []struct{ path, what, mend string }{
		{large, "larger than 10 bytes", "meant"},
		{filepath.Join(dir, "gone.json"), "no such file", "spelling"},
		{"", "no such file", "spelling"},
		{filepath.Join(good, "under.json"), "could not be opened", "name of the file"},
		{dir, "a folder", "inside it"},
		{os.DevNull, "not a regular file", "name -"},
	}
	for _, test := range refused {
		f, fault := ReadPath(test.path, Limits{Bytes: 10})
		if f != nil || fault == nil {
			t.Errorf("%s is read", test.path)
			continue
		}
		if !strings.Contains(fault.What, test.what) || !strings.Contains(fault.Mend, test.mend) {
			t.Errorf("%s: %v", test.path, fault)
		}
	}
}

// An empty file is read; that it holds nothing is for Parse, with a place.
func TestEmptyFileHasAPlace(t *testing.T) {
	path := filepath.Join(t.TempDir(), "empty.json")
	if err := os.WriteFile(path, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	f, fault := ReadPath(path, Limits{})
	if fault != nil {
		t.Fatal(fault)
	}
	if _, fault = Parse(f, Limits{}); fault == nil || fault.Place.String() != path+":1:1" {
		t.Errorf("got %v", fault)
	}
}

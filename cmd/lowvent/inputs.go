package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"lowvent.example/cmd/lowvent/internal/render/saying"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/source"
)

// stdinName is how standard input is named in places.
const stdinName = "<stdin>"

// input is one layout to be judged, or what stands in the way of reading it.
type input struct {
	name  string
	file  *source.File
	fault *source.Fault
}

// inputs reads everything that the command line names: files, the layouts in
// folders, and standard input. A name that comes twice is read once.
func (a *app) inputs(names []string) ([]input, error) {
	var all []input
	seen := map[string]bool{}
	for _, name := range names {
		key := filepath.Clean(name)
		if seen[key] {
			if name == "-" {
				return nil, errors.New(`standard input was named twice: "-" can be read once`)
			}
			continue
		}
		seen[key] = true
		for _, in := range a.named(name) {
			if path := filepath.Clean(in.name); path == key || !seen[path] {
				seen[path] = true
				all = append(all, in)
			}
		}
	}
	return all, nil
}

func (a *app) named(name string) []input {
	if name == "-" {
		return []input{a.standardInput()}
	}
	if info, err := os.Stat(name); err == nil && info.IsDir() {
		return a.folder(name)
	}
	return []input{read(name)}
}

func (a *app) standardInput() input {
	open := func() (io.ReadCloser, error) { return io.NopCloser(a.stdin), nil }
	file, fault := source.Open(stdinName, open, source.DefaultLimits())
	return input{name: stdinName, file: file, fault: fault}
}

func read(path string) input {
	file, fault := source.ReadPath(path, source.DefaultLimits())
	return input{name: path, file: file, fault: fault}
}

// folder reads the layouts in a folder and below it, in the order of their
// names. Other JSON files are passed over and counted.
func (a *app) folder(root string) []input {
	var found []input
	others := 0
	err := filepath.WalkDir(root, func(path string, entry fs.DirEntry, err error) error {
		switch {
		case err != nil:
			found = append(found, input{name: path, fault: unwalkable(path, err)})
		case entry.IsDir() && path != root && hidden(entry.Name()):
			return fs.SkipDir
		case !entry.IsDir() && isJSON(path):
			if in := read(path); isLayout(in) {
				found = append(found, in)
			} else {
				others++
			}
		}
		return nil
	})
	if err != nil {
		found = append(found, input{name: root, fault: unwalkable(root, err)})
	}
	if others > 0 {
		a.say("passed over %s in %s that %s no layout", saying.Count(others, "JSON file"), root, be(others))
	}
	if len(found) == 0 {
		found = append(found, input{name: root, fault: &source.Fault{Place: nowhere(root), What: "there is no layout in this folder",
			Expected: fmt.Sprintf("at least one .json file whose \"format\" is %q", layout.Format),
			Mend:     `name another folder, or write a first layout with "lowvent starter"`}})
	}
	slices.SortStableFunc(found, func(x, y input) int { return strings.Compare(x.name, y.name) })
	return found
}

func hidden(name string) bool { return strings.HasPrefix(name, ".") }

// isJSON tells whether a path could be a layout: by its name, and by not being
// so large that it can be none.
func isJSON(path string) bool {
	if !strings.EqualFold(filepath.Ext(path), ".json") || hidden(filepath.Base(path)) {
		return false
	}
	info, err := os.Stat(path)
	return err != nil || info.Mode().IsRegular() && info.Size() <= int64(source.DefaultLimits().Bytes)
}

// layoutWord begins the format word of every layout, whatever its version.
const layoutWord = "lowvent-layout"

// isLayout tells whether a file found in a folder is meant to be a layout. One
// that can't be read, or that is damaged but speaks of itself as a layout, must
// not be passed over: it would be taken for one in which nothing was found.
func isLayout(in input) bool {
	if in.fault != nil {
		return true
	}
	root, fault := source.Parse(in.file, source.DefaultLimits())
	if fault != nil {
		text := bytes.ReplaceAll(in.file.Data, []byte{0}, nil) // a wide encoding puts zeros between letters
		return bytes.Contains(text, []byte(layoutWord))
	}
	if root.Kind != source.Object {
		return false
	}
	format := root.Member("format")
	return format != nil && format.Kind == source.String && strings.HasPrefix(format.Text(), layoutWord)
}

func unwalkable(path string, err error) *source.Fault {
	var of *fs.PathError
	if errors.As(err, &of) {
		err = of.Err
	}
	return &source.Fault{Place: nowhere(path), What: "the folder could not be looked through: " + err.Error(),
		Expected: "a folder that can be read", Mend: "change its permissions, or name the files one by one"}
}

// nowhere is the place of a path that has no lines.
func nowhere(path string) source.Place {
	_, fault := source.Open(path, func() (io.ReadCloser, error) { return nil, fs.ErrInvalid }, source.DefaultLimits())
	return fault.Place
}

func be(n int) string {
	if n == 1 {
		return "is"
	}
	return "are"
}

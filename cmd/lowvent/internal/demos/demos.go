// Package demos loads and judges the demonstration layouts for the tests of whatever draws
// or writes them.
package demos

import (
	"context"
	"fmt"
	"path/filepath"
	"runtime"
	"strings"
	"sync"
	"testing"

	"lowvent.example/gas"
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
	"lowvent.example/schema/unit"
	"lowvent.example/vent"
)

// Demo is one layout with what was found in it.
type Demo struct {
	Name   string
	Layout *layout.Layout
	Report *report.FileReport
}

// On is the day that they are judged on.
func On() unit.Date { return unit.Date{Year: 2026, Month: 11, Day: 25} }

// folders hold the layouts of the project, from its root: the demonstrations, those of the
// command's tests, and those that starter writes.
func folders() []string {
	return []string{"testdata/layouts", "cmd/lowvent/testdata/layouts", "cmd/lowvent/internal/starter"}
}

// All is every demonstration, judged with all figures and their courses. They are loaded
// once for all tests of a package, and must not be changed.
func All(t testing.TB) []Demo {
	t.Helper()
	all, err := load()
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// One is the demonstration of that name, without its folder.
func One(t testing.TB, name string) Demo {
	t.Helper()
	for _, d := range All(t) {
		if filepath.Base(d.Name) == name {
			return d
		}
	}
	t.Fatalf("there is no demonstration %q", name)
	return Demo{}
}

var load = sync.OnceValues(func() ([]Demo, error) {
	var all []Demo
	for _, folder := range folders() {
		files, err := filepath.Glob(filepath.Join(root(), folder, "*.json"))
		if err != nil {
			return nil, err
		}
		for _, path := range files {
			d, err := read(path)
			if err != nil {
				return nil, err
			}
			if d.Layout == nil {
				continue
			}
			d.Name = folder + "/" + strings.TrimSuffix(filepath.Base(path), ".json")
			all = append(all, d)
		}
	}
	if len(all) < 8 {
		return nil, fmt.Errorf("only %d layouts load", len(all))
	}
	return all, nil
})

// read loads and judges a file. One that is broken on purpose has no layout.
func read(path string) (Demo, error) {
	file, fault := source.ReadPath(path, source.DefaultLimits())
	if fault != nil {
		return Demo{}, source.Faults{*fault}
	}
	l, faults := layout.Load(file)
	if faults != nil {
		return Demo{}, nil
	}
	r, err := Report(l)
	return Demo{Layout: l, Report: r}, err
}

// Report judges a layout by the code that it names, with every working.
func Report(l *layout.Layout) (*report.FileReport, error) {
	id, _ := l.Where.Code.Get()
	codes, err := code.Use(id)
	if err != nil {
		return nil, err
	}
	options := check.Options{On: On(), Workers: 2, Working: true}
	r, err := check.Report(context.Background(), check.Join(gas.Checks(), vent.Checks()), l, codes, options, report.Warning)
	return &r, err
}

// root is the folder of the whole project, from where this file was built.
func root() string {
	_, here, _, _ := runtime.Caller(0)
	return filepath.Join(filepath.Dir(here), "..", "..", "..", "..")
}

// Members are the pointers of all members of a file, of objects in objects too.
func Members(n *source.Node) []string {
	var all []string
	for _, child := range n.Children {
		if n.Kind == source.Object {
			all = append(all, child.Pointer())
		}
		all = append(all, Members(child)...)
	}
	return all
}

// Package demos loads and judges the demonstration layouts for the tests of whatever draws
// or writes them.
package demos

import (
	"context"
	"path/filepath"
	"runtime"
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

// Names lists the demonstrations that are whole layouts.
func Names() []string {
	return []string{"testdata/layouts/sorrel", "testdata/layouts/sorrel-faulty", "testdata/layouts/teal",
		"cmd/lowvent/testdata/layouts/willow", "cmd/lowvent/testdata/layouts/sedge", "cmd/lowvent/testdata/layouts/bare"}
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
	for _, name := range Names() {
		file, fault := source.ReadPath(filepath.Join(root(), name+".json"), source.DefaultLimits())
		if fault != nil {
			return nil, source.Faults{*fault}
		}
		d, err := Judge(file)
		if err != nil {
			return nil, err
		}
		d.Name = name
		all = append(all, d)
	}
	return all, nil
})

// Judge loads and judges one file.
func Judge(file *source.File) (Demo, error) {
	l, faults := layout.Load(file)
	if faults != nil {
		return Demo{}, faults
	}
	id, _ := l.Where.Code.Get()
	codes, err := code.Use(id)
	if err != nil {
		return Demo{}, err
	}
	r, err := check.Report(context.Background(), check.Join(gas.Checks(), vent.Checks()), l, codes, check.Options{On: On(), Workers: 1}, report.Warning)
	return Demo{Layout: l, Report: &r}, err
}

// root is the folder of the whole project, from where this file was built.
func root() string {
	_, here, _, _ := runtime.Caller(0)
	return filepath.Join(filepath.Dir(here), "..", "..", "..", "..")
}

package draw

import (
	"path/filepath"
	"testing"

	"lowvent.example/cmd/lowvent/internal/demos"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

// demo is a layout of the tests and its report.
type demo struct {
	name   string
	layout *layout.Layout
	report *report.FileReport
}

// scenes are all the layouts of the tests that load.
func scenes(t testing.TB) []demo {
	t.Helper()
	var all []demo
	for _, d := range demos.All(t) {
		all = append(all, demo{filepath.Base(d.Name) + ".json", d.Layout, d.Report})
	}
	return all
}

// judged is the report on a layout, by the code that it names.
func judged(t testing.TB, l *layout.Layout) *report.FileReport {
	t.Helper()
	r, err := demos.Report(l)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// demoOf is one of them.
func demoOf(t testing.TB, name string) demo {
	t.Helper()
	for _, d := range scenes(t) {
		if d.name == name {
			return d
		}
	}
	t.Fatalf("no layout %s", name)
	return demo{}
}

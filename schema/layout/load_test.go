package layout

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/iotest"

	"lowvent.example/schema/source"
)

// TestReadFileRefuses holds what is told of files that can't be had; the file
// system makes these, not testdata.
func TestReadFileRefuses(t *testing.T) {
	folder := t.TempDir()
	large := filepath.Join(folder, "large.json")
	if err := os.WriteFile(large, []byte(`{"format":"lowvent-layout/1","note":"`+strings.Repeat("x", source.DefaultLimits().Bytes)+`"}`), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ path, what string }{
		{large, "larger than"},
		{folder, "folder"},
		{filepath.Join(folder, "missing.json"), "no such file"},
		{filepath.Join(large, "below.json"), "could not be opened"},
		{"", "no such file"},
	} {
		l, faults := ReadFile(c.path)
		if l != nil || len(faults) != 1 || !strings.Contains(faults[0].What, c.what) || faults[0].Expected == "" || faults[0].Mend == "" {
			t.Errorf("%q: %v", c.path, faults)
		}
	}
}

func TestReadFrom(t *testing.T) {
	l, faults := ReadFrom("-", strings.NewReader(readText(t, cabin)))
	if len(faults) > 0 || l.File().Name != "-" || len(l.Lines.All()) != 2 {
		t.Errorf("%v", faults)
	}
	l, faults = ReadFrom("-", iotest.ErrReader(errors.New("the cable was pulled")))
	if l != nil || len(faults) != 1 || !strings.Contains(faults[0].Error(), "the cable was pulled") {
		t.Errorf("%v", faults)
	}
	l, faults = ReadFrom("-", strings.NewReader(""))
	if l != nil || len(faults) != 1 {
		t.Errorf("%v", faults)
	}
}

// TestAllOrNothing holds that a file with a single fault yields no layout.
func TestAllOrNothing(t *testing.T) {
	text := strings.Replace(readText(t, pontoon), `"gross": "90 cm2"`, `"gross": "90"`, 1)
	l, faults := loadText(text)
	if l != nil || len(faults) != 1 || faults[0].Place.Pointer != "/lockers/side/vents/low/gross" {
		t.Errorf("%v", faults)
	}
}

package layout

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/schema/source"
)

const (
	malformed = "../../testdata/malformed"
	expected  = malformed + "/expect.txt"
)

// malformedKinds are the ways in which a layout file goes wrong that must each
// have a file of their own.
var malformedKinds = []string{
	"empty", "only-spaces", "byte-order-mark", "not-utf-8", "truncated", "trailing-comma", "comment", "duplicate-key", "duplicate-key-nested",
	"wrong-unit", "no-unit", "bare-number", "decimal-comma", "unknown-key-near", "key-of-another-object", "wrong-type-list", "wrong-type-section",
	"wrong-type-text", "wrong-type-flag", "wrong-type-count", "bad-choice", "null", "missing-format", "wrong-format", "missing-from-and-to",
	"dangling-reference", "reference-to-wrong-kind", "line-circle", "fed-twice", "ends-nowhere", "line-to-itself", "negative-length", "share-over-100",
	"zero-area", "below-absolute-zero", "propane-over-water", "flat-box", "backward-box", "point-of-two", "bad-date", "bad-id", "evidence-for-nothing",
	"proved-by-nothing", "survey-of-nothing", "word-twice", "huge-number", "too-deep", "empty-text", "many-at-once",
}

func malformedFiles(t testing.TB) []*source.File {
	t.Helper()
	paths, err := filepath.Glob(malformed + "/*.json")
	if err != nil {
		t.Fatal(err)
	}
	var files []*source.File
	for _, path := range paths {
		data, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		files = append(files, source.NewFile(filepath.Base(path), data))
	}
	return files
}

// TestMalformed holds what each bad file is told, to the letter. With -update
// it writes the goldens; read the difference before you keep it.
func TestMalformed(t *testing.T) {
	var got bytes.Buffer
	for _, file := range malformedFiles(t) {
		l, faults := Load(file)
		if l != nil || len(faults) == 0 {
			t.Errorf("%s: loaded", file.Name)
		}
		fmt.Fprintf(&got, "%s\n", file.Name)
		for _, f := range faults {
			at := strings.TrimSpace(fmt.Sprintf("%d:%d %s", f.Place.Line(), f.Place.Column(), f.Place.Pointer))
			fmt.Fprintf(&got, "  %s\n    %s\n    expected %s\n    mend: %s\n", at, f.What, f.Expected, f.Mend)
		}
	}
	if *update {
		if err := os.WriteFile(expected, got.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	if diff := cmp.Diff(readText(t, expected), got.String()); diff != "" {
		t.Errorf("what the malformed files are told has changed (-want +got):\n%s", diff)
	}
}

func TestMalformedHasEveryKind(t *testing.T) {
	var names []string
	for _, file := range malformedFiles(t) {
		names = append(names, strings.TrimSuffix(file.Name, ".json"))
	}
	for _, kind := range malformedKinds {
		if !slices.Contains(names, kind) {
			t.Errorf("no malformed file %s.json", kind)
		}
	}
}

// TestEveryFaultHelps holds that whoever meets a fault is told where it is,
// what is wrong, what was expected and how to mend it, and one thing a place.
func TestEveryFaultHelps(t *testing.T) {
	for _, file := range malformedFiles(t) {
		_, faults := Load(file)
		last := int32(-1)
		for _, f := range faults {
			if f.Place.Line() < 1 || f.Place.Column() < 1 || f.What == "" || f.Expected == "" || f.Mend == "" {
				t.Errorf("%s: a fault that leaves something open: %+v", file.Name, f)
			}
			if f.Place.Span.Start <= last {
				t.Errorf("%s: two faults at one place, or out of order: %v", file.Name, faults)
			}
			if root, fault := source.Parse(file, source.Limits{}); fault == nil && root.At(f.Place.Pointer) == nil {
				t.Errorf("%s: the fault's pointer %q leads nowhere", file.Name, f.Place.Pointer)
			}
			last = f.Place.Span.Start
		}
	}
}

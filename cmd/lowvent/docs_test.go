package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// The documents at the top and in docs that a test makes or executes. What is
// made whole: docs/checks.md, docs/codes.md and docs/requirements.md. What is executed where it stands:
// fenced console blocks and excerpts in all of them, the walk of docs/add-a-check.md,
// the worked examples of docs/physics.md. With -update they are written anew.

// moduleTop is the top of the module.
func moduleTop(t *testing.T) string { return filepath.Join(home(t), "..", "..") }

// readDoc reads a document by its path from the top of the module.
func readDoc(t *testing.T, name string) string {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(moduleTop(t), filepath.FromSlash(name)))
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// fresh holds that a document says what it should, or with -update makes it so.
func fresh(t *testing.T, name, want string) {
	t.Helper()
	path := filepath.Join(moduleTop(t), filepath.FromSlash(name))
	if *update {
		if err := os.WriteFile(path, []byte(want), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	if diff := cmp.Diff(lines(want), lines(readDoc(t, name))); diff != "" {
		t.Errorf("%s is out of date; go test ./cmd/lowvent -run Docs -update writes it anew (-should be +is):\n%s", name, diff)
	}
}

// documents lists the documents with blocks to execute, by their paths.
func documents(t *testing.T) []string {
	t.Helper()
	paths, err := filepath.Glob(filepath.Join(moduleTop(t), "docs", "*.md"))
	if err != nil || len(paths) < 5 {
		t.Fatalf("only %d documents in docs (%v)", len(paths), err)
	}
	all := []string{"README.md"}
	for _, path := range paths {
		all = append(all, "docs/"+filepath.Base(path))
	}
	return all
}

// lines parts a text without a line for its last line end.
func lines(text string) []string { return strings.Split(strings.TrimSuffix(text, "\n"), "\n") }

// TestDocsNameNoMachine holds that no document tells where it was made.
func TestDocsNameNoMachine(t *testing.T) {
	folder, err := filepath.Abs(moduleTop(t))
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range documents(t) {
		for _, word := range []string{folder, os.TempDir() + "/", "/home/", "/root/"} {
			if strings.Contains(readDoc(t, name), word) {
				t.Errorf("%s names %s, a folder of the machine that made it", name, word)
			}
		}
	}
}

// TestDocsLead holds that what a document links to is there.
func TestDocsLead(t *testing.T) {
	for _, name := range append(documents(t), "SAFETY.md", "DEVELOPERS.md") {
		for _, piece := range strings.Split(readDoc(t, name), "](")[1:] {
			target, _, _ := strings.Cut(piece, ")")
			target, _, _ = strings.Cut(target, "#")
			if target == "" || strings.Contains(target, "://") {
				continue
			}
			if _, err := os.Stat(filepath.Join(moduleTop(t), filepath.Dir(name), filepath.FromSlash(target))); err != nil {
				t.Errorf("%s links to %s, which is not there", name, target)
			}
		}
	}
}

package main

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// fence is one fenced block of a document.
type fence struct {
	language string            // the first word after the ticks
	options  map[string]string // the words after it, key=value or key alone
	body     []string          // the lines between
	first    int               // index of the body's first line in the document
}

// at tells where the block begins, for messages.
func (f *fence) at(doc string) string { return fmt.Sprintf("%s:%d", doc, f.first) }

// fences finds the fenced blocks of a document. A fence that is never closed is an
// error.
func fences(text []string) ([]fence, error) {
	var all []fence
	var open *fence
	ticks := ""
	for i, line := range text {
		run := line[:len(line)-len(strings.TrimLeft(line, "`"))]
		switch {
		case open == nil && len(run) >= 3:
			open, ticks = begun(line[len(run):], i+1), run
		case open != nil && line == ticks:
			open.body = slices.Clone(text[open.first:i])
			all, open = append(all, *open), nil
		}
	}
	if open != nil {
		return nil, fmt.Errorf("line %d: the block is never closed", open.first)
	}
	return all, nil
}

func begun(info string, first int) *fence {
	f := &fence{options: map[string]string{}, first: first}
	for i, word := range strings.Fields(info) {
		if i == 0 {
			f.language = word
			continue
		}
		key, value, _ := strings.Cut(word, "=")
		f.options[key] = value
	}
	return f
}

// fencesOf reads the blocks of a document.
func fencesOf(t *testing.T, doc string, text []string) []fence {
	t.Helper()
	all, err := fences(text)
	if err != nil {
		t.Fatalf("%s: %v", doc, err)
	}
	return all
}

// replaced puts other bodies in the place of those of the blocks, which are in
// the order of the document.
func replaced(text []string, blocks []fence, bodies [][]string) []string {
	var out []string
	from := 0
	for i, f := range blocks {
		out = append(append(out, text[from:f.first]...), bodies[i]...)
		from = f.first + len(f.body)
	}
	return append(out, text[from:]...)
}

func TestDocsFences(t *testing.T) {
	text := lines("a\n```console dir=first exit=1\n$ b\n```\n\n````text\n```\nc\n```\n````\n```\n```\nd\n")
	got, err := fences(text)
	want := []fence{
		{"console", map[string]string{"dir": "first", "exit": "1"}, []string{"$ b"}, 2},
		{"text", map[string]string{}, []string{"```", "c", "```"}, 6},
		{"", map[string]string{}, []string{}, 11},
	}
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(want, got, cmp.AllowUnexported(fence{})); diff != "" {
		t.Errorf("-want +got:\n%s", diff)
	}
	changed := replaced(text, got, [][]string{{"x", "y"}, {}, {"z"}})
	if want := lines("a\n```console dir=first exit=1\nx\ny\n```\n\n````text\n````\n```\nz\n```\nd"); !slices.Equal(changed, want) {
		t.Errorf("replaced: %q", changed)
	}
	if _, err := fences(lines("```console\n$ a\n")); err == nil || !strings.Contains(err.Error(), "line 1") {
		t.Errorf("a block that is never closed: %v", err)
	}
}

// FuzzDocsFences holds that putting each body back gives the document.
func FuzzDocsFences(f *testing.F) {
	for _, seed := range []string{"", "```", "```a b=c\nd\n```", "````\n```\n````\ntext", "``\n```` x\n````"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, document string) {
		text := lines(document)
		blocks, err := fences(text)
		if err != nil {
			return
		}
		var bodies [][]string
		for _, b := range blocks {
			bodies = append(bodies, b.body)
		}
		if again := replaced(text, blocks, bodies); !slices.Equal(again, text) {
			t.Errorf("%q came back as %q", text, again)
		}
	})
}

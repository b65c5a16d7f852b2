package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf16"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
)

func TestIsLayout(t *testing.T) {
	wide := func(s string) string {
		var b strings.Builder
		for _, u := range utf16.Encode([]rune(s)) {
			b.Write([]byte{byte(u), byte(u >> 8)})
		}
		return b.String()
	}
	tests := []struct {
		name, content string
		want          bool
	}{
		{"a layout", `{"format":"lowvent-layout/1"}`, true},
		{"a layout of a later version", `{"format":"lowvent-layout/9"}`, true},
		{"a report", `{"format":"lowvent-report/1"}`, false},
		{"another thing", `{"name":"x"}`, false},
		{"a list", `["x"]`, false},
		{"a list that speaks of layouts", `["lowvent-layout/1"]`, true},
		{"a format that is no text", `{"format":{"x":"lowvent-layout/1"}}`, false},
		{"no JSON", `{"name":`, false},
		{"empty", ``, false},
		{"a torn layout", `{"format":"lowvent-layout/1",`, true},
		{"a layout in a wide encoding", wide(`{"format":"lowvent-layout/1"}`), true},
		{"a layout with a doubled key", `{"format":"lowvent-layout/1","format":"lowvent-layout/1"}`, true},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := isLayout(input{name: "x", file: source.NewFile("x", []byte(tt.content))}); got != tt.want {
				t.Errorf("isLayout = %t, want %t", got, tt.want)
			}
		})
	}
}

func TestFolderKeepsWhatCantBeRead(t *testing.T) {
	dir := t.TempDir()
	if err := os.Symlink(filepath.Join(dir, "gone.json"), filepath.Join(dir, "link.json")); err != nil {
		t.Fatal(err)
	}
	large := filepath.Join(dir, "large.json")
	if err := os.WriteFile(large, bytes.Repeat([]byte(" "), source.DefaultLimits().Bytes+1), 0o666); err != nil {
		t.Fatal(err)
	}
	if err := os.Mkdir(filepath.Join(dir, "folder.json"), 0o777); err != nil {
		t.Fatal(err)
	}
	got := run(nil, "check", dir)
	if got.status != statusUnusable || !strings.Contains(got.stdout, "link.json") || strings.Contains(got.stdout, "large.json") {
		t.Errorf("status %d\n%s%s", got.status, got.stdout, got.stderr)
	}
}

func TestInputsComeInTheOrderGiven(t *testing.T) {
	a, _, _ := bench(nil)
	b, w := in(t, "broken.json"), in(t, "willow.json")
	got, err := a.inputs([]string{w, b, w, filepath.Dir(w)})
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, each := range got {
		names = append(names, filepath.Base(each.name))
	}
	if diff := cmp.Diff([]string{"willow.json", "broken.json", "bare.json", "sedge.json"}, names); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

func TestOffsetFindsWhatPositionGave(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.SliceOf(rapid.OneOf(rapid.SampledFrom([]byte("ab\n\r{}\"\xc3\xa9\xff")), rapid.Byte())).Draw(t, "text")
		f := source.NewFile("x", text)
		at := rapid.IntRange(0, len(text)).Draw(t, "at")
		line, column := f.Position(at)
		got := int(offset(f, line, column))
		if l, c := f.Position(got); l != line || c != column || got > at {
			t.Fatalf("offset %d of line %d, column %d is at line %d, column %d", got, line, column, l, c)
		}
	})
}

func TestExcerpts(t *testing.T) {
	show := excerpts([]input{{name: "x.json", file: source.NewFile("x.json", []byte("{\n  \"é\": 12,\n}\n"))}, {name: "gone.json"}})
	tests := []struct {
		name  string
		place report.Place
		want  source.Excerpt
	}{
		{"a value after a letter of two bytes", report.Place{File: "x.json", Line: 2, Column: 8, EndLine: 2, EndColumn: 10}, source.Excerpt{Line: 2, Text: `  "é": 12,`, From: 7, To: 9}},
		{"no line", report.Place{File: "x.json"}, source.Excerpt{}},
		{"a file that was not read", report.Place{File: "gone.json", Line: 1, Column: 1}, source.Excerpt{}},
		{"a file that nobody named", report.Place{File: "y.json", Line: 1, Column: 1}, source.Excerpt{}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if diff := cmp.Diff(tt.want, show(tt.place, 40)); diff != "" {
				t.Errorf("(-want +got):\n%s", diff)
			}
		})
	}
}

package main

import (
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"lowvent.example/schema/check/checktest"
	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
)

// TestDocsWalk does what docs/add-a-check.md tells, on copies: it builds the program
// with the new check, runs the document's console blocks with it, and holds that the
// new check says of each example what that wants.
func TestDocsWalk(t *testing.T) {
	text := readDoc(t, walkDoc)
	w := walk{t: t, files: map[string][]byte{}, edits: map[string][]source.Edit{}}
	for _, f := range fencesOf(t, walkDoc, lines(text)) {
		w.follow(&f)
	}
	program := w.build()
	c := console{t: t, doc: walkDoc, program: program, folders: map[string]string{}}
	fresh(t, walkDoc, c.document(text))
	w.examples(program)
	w.hazards(program)
}

// walk is the state of the module as the reader changes it.
type walk struct {
	t     *testing.T
	files map[string][]byte        // by path from the top of the module
	edits map[string][]source.Edit // that made some of them
}

// follow makes the change that a block tells: file=PATH is a new file, append=PATH
// goes to the end of one, edit=PATH holds edits of a JSON file, one a line.
func (w *walk) follow(f *fence) {
	w.t.Helper()
	body := []byte(strings.Join(f.body, "\n") + "\n")
	for option, path := range f.options {
		switch option {
		case "file":
			if _, err := os.Stat(w.path(path)); err == nil || w.files[path] != nil {
				w.t.Fatalf("%s: %s is there already", f.at(walkDoc), path)
			}
			w.files[path] = body
		case "append":
			w.files[path] = slices.Concat(w.now(path), []byte("\n"), body)
		case "edit":
			w.files[path] = w.edited(f, path)
		}
	}
}

func (w *walk) path(path string) string {
	return filepath.Join(moduleTop(w.t), filepath.FromSlash(path))
}

// now gives a file as it is by now.
func (w *walk) now(path string) []byte {
	w.t.Helper()
	if data := w.files[path]; data != nil {
		return data
	}
	data, err := os.ReadFile(w.path(path))
	if err != nil {
		w.t.Fatal(err)
	}
	return data
}

func (w *walk) edited(f *fence, path string) []byte {
	w.t.Helper()
	var edits []source.Edit
	for _, line := range f.body {
		edit, err := source.ParseEdit(line)
		if err != nil {
			w.t.Fatalf("%s: %v", f.at(walkDoc), err)
		}
		edits = append(edits, edit)
	}
	file, err := source.Apply(source.NewFile(path, w.now(path)), nil, edits)
	if err != nil {
		w.t.Fatalf("%s: %v", f.at(walkDoc), err)
	}
	w.edits[path] = append(w.edits[path], edits...)
	return file.Data
}

// build builds the program with the changed files in the place of those that are
// there, which stay as they are.
func (w *walk) build() string {
	w.t.Helper()
	folder := w.t.TempDir()
	overlay := map[string]map[string]string{"Replace": {}}
	for path, data := range w.files {
		copied := filepath.Join(folder, strings.ReplaceAll(path, "/", "_"))
		if err := os.WriteFile(copied, data, 0o666); err != nil {
			w.t.Fatal(err)
		}
		absolute, err := filepath.Abs(w.path(path))
		if err != nil {
			w.t.Fatal(err)
		}
		overlay["Replace"][absolute] = copied
	}
	data, err := json.Marshal(overlay)
	if err != nil {
		w.t.Fatal(err)
	}
	list, program := filepath.Join(folder, "overlay.json"), filepath.Join(folder, "lowvent-with-check.exe")
	if err := os.WriteFile(list, data, 0o666); err != nil {
		w.t.Fatal(err)
	}
	cmd := exec.Command("go", "build", "-overlay", list, "-o", program, "./cmd/lowvent")
	cmd.Dir, cmd.Env = moduleTop(w.t), append(os.Environ(), "GOPROXY=off", "GOFLAGS=")
	if out, err := cmd.CombinedOutput(); err != nil {
		w.t.Fatalf("the program with the check of %s does not build: %v\n%s", walkDoc, err, out)
	}
	return program
}

// examples judges each case of the examples that the walk adds.
func (w *walk) examples(program string) {
	w.t.Helper()
	var kinds []string
	for path, data := range w.files {
		if filepath.Ext(path) != ".txtar" {
			continue
		}
		e, err := checktest.Parse(path, data)
		if err != nil {
			w.t.Fatal(err)
		}
		for i := range e.Cases {
			c := &e.Cases[i]
			kinds = append(kinds, c.Name)
			said := w.judge(program, e.Base, c.Code, c.Edits)
			for _, v := range c.Want {
				if got := said[e.Check+" "+v.Subject]; checktest.Of(got) != v {
					w.t.Errorf("%s, %s: got %s, want %s", e.Check, c.Name, checktest.Of(got), v)
				}
			}
		}
	}
	for _, kind := range []string{"good", "bad", "unknown"} {
		if !slices.Contains(kinds, kind) {
			w.t.Errorf("%s adds no example %q", walkDoc, kind)
		}
	}
}

// hazards holds that each hazard that the walk adds raises what it says.
func (w *walk) hazards(program string) {
	w.t.Helper()
	for path, data := range w.files {
		head, raises, isHazard := strings.Cut(string(data), "\nraises:\n")
		if !isHazard || filepath.Ext(path) != ".txt" {
			continue
		}
		var edits []source.Edit
		for _, line := range lines(head) {
			if edit, err := source.ParseEdit(line); err == nil {
				edits = append(edits, edit)
			}
		}
		said := w.judge(program, checktest.DefaultBase, checktest.DefaultCode, edits)
		for _, line := range lines(raises) {
			words := strings.Fields(line)
			if len(words) != 4 || len(edits) == 0 {
				w.t.Fatalf("%s: %d edits, and %q is no word, check, subject and outcome", path, len(edits), line)
			}
			if got := said[words[1]+" "+words[2]]; string(got.Word) != words[0] || string(got.Outcome) != words[3] {
				w.t.Errorf("%s: got %s %s, want %q", path, got.Word, checktest.Of(got), line)
			}
		}
	}
}

// judge has the program check a demonstration layout, with what the walk changes in
// it and with more edits, and gives the findings by check and subject.
func (w *walk) judge(program, base, code string, edits []source.Edit) map[string]report.Finding {
	w.t.Helper()
	b, err := checktest.NewBench(".")
	if err != nil {
		w.t.Fatal(err)
	}
	l, err := b.Layout(base, slices.Concat(w.edits[base], edits))
	if err != nil {
		w.t.Fatal(err)
	}
	path := filepath.Join(w.t.TempDir(), "layout.json")
	if err := os.WriteFile(path, l.Root().File().Data, 0o666); err != nil {
		w.t.Fatal(err)
	}
	out, err := exec.Command(program, "check", "--on", checktest.Day.String(), "--code", code, "--format", "json", path).Output()
	var r report.Run
	if jsonErr := json.Unmarshal(out, &r); jsonErr != nil || len(r.Files) != 1 {
		w.t.Fatalf("%s check: %v, %v", program, err, jsonErr)
	}
	said := map[string]report.Finding{}
	for _, f := range r.Files[0].Findings {
		said[f.Check+" "+checktest.Of(f).Subject] = f
	}
	return said
}

package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// tree lists a folder: each name with its content, links with their target.
func tree(t *testing.T, dir string) map[string]string {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	found := map[string]string{}
	for _, e := range entries {
		path := filepath.Join(dir, e.Name())
		switch {
		case e.IsDir():
			found[e.Name()] = "folder"
		case e.Type()&os.ModeSymlink != 0:
			to, err := os.Readlink(path)
			if err != nil {
				t.Fatal(err)
			}
			found[e.Name()] = "-> " + to
		default:
			data, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			found[e.Name()] = string(data)
		}
	}
	return found
}

func put(t *testing.T, dir string, files map[string]string) {
	t.Helper()
	for name, content := range files {
		var err error
		path := filepath.Join(dir, name)
		switch to, link := strings.CutPrefix(content, "-> "); {
		case content == "folder":
			err = os.Mkdir(path, 0o777)
		case link:
			err = os.Symlink(to, path)
		default:
			err = os.WriteFile(path, []byte(content), 0o666)
		}
		if err != nil {
			t.Fatal(err)
		}
	}
}

func TestWriteWhole(t *testing.T) {
	tests := []struct {
		name          string
		before, after map[string]string
		to            string
		refused       string // part of the message, "" when it is written
	}{
		{"a new file", nil, map[string]string{"r.json": "new"}, "r.json", ""},
		{"in place of an old one", map[string]string{"r.json": "a longer old text"}, map[string]string{"r.json": "new"}, "r.json", ""},
		{"through a link", map[string]string{"real.json": "old", "r.json": "-> real.json"}, map[string]string{"real.json": "new", "r.json": "-> real.json"}, "r.json", ""},
		{"beside what an earlier crash left", map[string]string{".r.json.0.part": "half"}, map[string]string{".r.json.0.part": "half", "r.json": "new"}, "r.json", ""},
		{"a folder has that name", map[string]string{"r.json": "folder"}, map[string]string{"r.json": "folder"}, "r.json", "no ordinary file"},
		{"no such folder", nil, map[string]string{}, "gone/r.json", "could not be written"},
		{"a file where the folder should be", map[string]string{"gone": "text"}, map[string]string{"gone": "text"}, "gone/r.json", "could not be written"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			dir := t.TempDir()
			put(t, dir, tt.before)
			err := writeWhole(filepath.Join(dir, tt.to), []byte("new"))
			if (err != nil) != (tt.refused != "") || err != nil && !strings.Contains(err.Error(), tt.refused) {
				t.Errorf("error %v, want %q", err, tt.refused)
			}
			if diff := cmp.Diff(tt.after, tree(t, dir)); diff != "" {
				t.Errorf("the folder afterwards (-want +got):\n%s", diff)
			}
		})
	}
}

func TestWriteNewNeverTouchesWhatIsThere(t *testing.T) {
	for _, there := range []string{"mine", "folder", "-> elsewhere.json"} {
		dir := t.TempDir()
		put(t, dir, map[string]string{"layout.json": there})
		err := writeNew(filepath.Join(dir, "layout.json"), []byte("new"))
		if err == nil || !strings.Contains(err.Error(), "is there already") {
			t.Errorf("%s: error %v", there, err)
		}
		if diff := cmp.Diff(map[string]string{"layout.json": there}, tree(t, dir)); diff != "" {
			t.Errorf("%s was touched (-want +got):\n%s", there, diff)
		}
	}
}

func TestAReportInAFileIsThatOnStandardOutput(t *testing.T) {
	dir := t.TempDir()
	for _, form := range formatNames() {
		path := filepath.Join(dir, form)
		got := run(nil, "check", in(t, "sedge.json"), "--format", form, "--out", form+"="+path)
		if diff := cmp.Diff(got.stdout, tree(t, dir)[form]); diff != "" {
			t.Errorf("%s (-standard output +file):\n%s", form, diff)
		}
	}
}

package main

import (
	"encoding/json"
	"maps"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"go.yaml.in/yaml/v3"

	"lowvent.example/schema/report"
)

// top is the path of a file of the module.
func top(t *testing.T, name string) string {
	t.Helper()
	return filepath.Join(home(t), "..", "..", name)
}

func readYAML(t *testing.T, name string, into any) {
	t.Helper()
	data, err := os.ReadFile(top(t, name))
	if err != nil {
		t.Fatal(err)
	}
	dec := yaml.NewDecoder(strings.NewReader(string(data)))
	dec.KnownFields(true)
	if err := dec.Decode(into); err != nil {
		t.Fatalf("%s: %v", name, err)
	}
}

// matcher is one problem matcher, with the keys of the public form of such files
// (actions/toolkit, docs/problem-matchers.md).
type matcher struct {
	Owner    string
	Severity string
	Pattern  []struct {
		Regexp                            string
		File, Line, Column, Message, Code int
	}
}

func matchers(t *testing.T) []matcher {
	t.Helper()
	data, err := os.ReadFile(top(t, ".github/lowvent-problem-matcher.json"))
	if err != nil {
		t.Fatal(err)
	}
	var file struct{ ProblemMatcher []matcher }
	dec := json.NewDecoder(strings.NewReader(string(data)))
	dec.DisallowUnknownFields()
	if err := dec.Decode(&file); err != nil {
		t.Fatal(err)
	}
	return file.ProblemMatcher
}

// match reads a line by the one matcher that fits: severity, file, line, column, code and
// message; nil where none fits.
func match(t *testing.T, all []matcher, line string) (got []string) {
	t.Helper()
	for _, m := range all {
		p := m.Pattern[0]
		if groups := regexp.MustCompile(p.Regexp).FindStringSubmatch(line); groups != nil {
			if got != nil {
				t.Errorf("two matchers fit %q", line)
			}
			got = []string{m.Severity, groups[p.File], groups[p.Line], groups[p.Column], groups[p.Code], groups[p.Message]}
		}
	}
	return got
}

// TestProblemMatchersReadTheLines: what the matchers take from --format lines is what the
// JSON form says, and the lines with the cautions and the result are no findings.
func TestProblemMatchersReadTheLines(t *testing.T) {
	all := matchers(t)
	severities := map[report.Signal]string{report.Danger: "error", report.Warning: "error", report.Caution: "warning", report.Notice: "notice"}
	seen := map[string]bool{}
	for _, layout := range demos(t) {
		got, r := inForm(t, "lines", layout)
		lines := strings.Split(strings.TrimSuffix(got.stdout, "\n"), "\n")
		var want, have [][]string
		for i := range r.Files {
			for _, f := range r.Files[i].Faults {
				want = append(want, []string{"error", f.Place.File, strconv.Itoa(f.Place.Line), strconv.Itoa(f.Place.Column), "UNUSABLE", f.What})
			}
		}
		want = append(want, findings(&r, func(f *report.Finding) []string {
			return []string{severities[f.Word], f.Place.File, strconv.Itoa(f.Place.Line), strconv.Itoa(f.Place.Column), f.Check, string(f.Word) + ": " + f.Check + ", " + f.Label + ": " + strings.ReplaceAll(string(f.Outcome), "-", " ")}
		})...)
		for i, line := range lines {
			m := match(t, all, line)
			if (m != nil) != (i >= len(report.Cautions()) && i < len(lines)-1) {
				t.Errorf("line %d is taken for a finding, or is not: %q", i, line)
			}
			if m != nil {
				seen[m[0]] = true
				have = append(have, m)
			}
		}
		for i := range min(len(have), len(want)) { // the message begins so, and goes on with what was found
			if message := want[i][5]; strings.HasPrefix(have[i][5], message) {
				have[i][5] = message
			}
		}
		if diff := cmp.Diff(want, have); diff != "" {
			t.Errorf("%s (-json +matched):\n%s", layout, diff)
		}
	}
	if len(seen) != 3 {
		t.Errorf("only %v came", seen)
	}
}

func TestProblemMatchersOnHardLines(t *testing.T) {
	all := matchers(t)
	for _, tt := range []struct {
		line string
		want []string
	}{
		{"gone.json: UNUSABLE: there is no such file", []string{"error", "gone.json", "", "", "UNUSABLE", "there is no such file"}},
		{`a: b "c" 100%.json:3:7: CAUTION: line.size, line x: not known`, []string{"warning", `a: b "c" 100%.json`, "3", "7", "line.size", "CAUTION: line.size, line x: not known"}},
		{"C:\\van\\layout.json:3:7: DANGER: a.b-c, x: not met: at x.json:1:2: DANGER: no", []string{"error", "C:\\van\\layout.json", "3", "7", "a.b-c", "DANGER: a.b-c, x: not met: at x.json:1:2: DANGER: no"}},
		{"./::error::x.json:1:1: NOTICE: a.b, x: not met", []string{"notice", "./::error::x.json", "1", "1", "a.b", "NOTICE: a.b, x: not met"}},
		{"Result of this file check: 3 not met and 2 not known at WARNING or above.", nil},
		{"x.json:1:1: danger: a.b, x", nil},
	} {
		if diff := cmp.Diff(tt.want, match(t, all, tt.line)); diff != "" {
			t.Errorf("%q:\n%s", tt.line, diff)
		}
	}
}

// hook is an entry of .pre-commit-hooks.yaml, with the keys of that public form.
type hook struct {
	ID, Name, Description, Entry, Language, Files string
	Args, Types                                   []string
	RequireSerial                                 bool `yaml:"require_serial"`
}

func theHook(t *testing.T) hook {
	t.Helper()
	var all []hook
	readYAML(t, ".pre-commit-hooks.yaml", &all)
	if len(all) != 1 || all[0].ID != "lowvent-check" || all[0].Name == "" || all[0].Language != "golang" || !all[0].RequireSerial {
		t.Fatalf("%+v", all)
	}
	return all[0]
}

// TestTheHookRuns does what the framework does: it takes the files whose names fit, and
// runs the entry with its arguments and those files.
func TestTheHookRuns(t *testing.T) {
	h := theHook(t)
	layouts := map[string]string{}
	for _, name := range []string{"sedge.json", "bare.json", "broken.json"} {
		data, err := os.ReadFile(in(t, name))
		if err != nil {
			t.Fatal(err)
		}
		layouts[name] = string(data)
	}
	for _, tt := range []struct {
		name     string
		files    map[string]string
		status   int
		says     string
		saysNone string
	}{
		{"findings", map[string]string{"layout.json": layouts["sedge.json"], "package.json": "{}"}, 1, "layout.json:54:22: DANGER: cylinder.outside-living", "package.json"},
		{"nothing that counts is no approval", map[string]string{"bus-layout.json": layouts["bare.json"]}, 0, "Keep the gas off", "DANGER"},
		{"unusable", map[string]string{"van.layout.json": layouts["broken.json"]}, 2, "van.layout.json:48:29: UNUSABLE", "DANGER"},
		{"names that a shell or a flag parser would take apart", map[string]string{"--accept-waivers-layout.json": layouts["bare.json"], "-layout.json": layouts["sedge.json"], "a b;'\"$(touch pwned)-layout.json": layouts["sedge.json"]},
			1, `a b;'"$(touch pwned)-layout.json:54:22: DANGER`, "no such file"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			dir := t.TempDir()
			put(t, dir, tt.files)
			command := append(strings.Fields(h.Entry), h.Args...)
			for _, name := range slices.Sorted(maps.Keys(tree(t, dir))) {
				if regexp.MustCompile(h.Files).MatchString(name) {
					command = append(command, name)
				}
			}
			cmd := exec.Command(command[0], command[1:]...)
			cmd.Dir = dir
			out, err := cmd.CombinedOutput()
			if got := cmd.ProcessState.ExitCode(); got != tt.status || !strings.Contains(string(out), tt.says) || strings.Contains(string(out), tt.saysNone) {
				t.Errorf("%q: status %d, %v\n%s", command, got, err, out)
			}
			if _, made := tree(t, dir)["pwned"]; made {
				t.Error("a name was run as a command")
			}
		})
	}
}

func TestTheHookTakesLayoutsOnly(t *testing.T) {
	files := regexp.MustCompile(theHook(t).Files)
	for name, want := range map[string]bool{"layout.json": true, "a/layout.json": true, "a/van-layout.json": true, "van.layout.json": true, "layouts/bus.json": true, "x/layouts/y/bus.json": true,
		"package.json": false, "mylayout.json": false, "layout.json.bak": false, "layouts/read.me": false, "layout.schema.json": false, "old/layouts.json": false} {
		if files.MatchString(name) != want {
			t.Errorf("%s: %t", name, !want)
		}
	}
}

// TestTheHookInstalls: the framework installs every main package of the module; the entry
// has to be one of them.
func TestTheHookInstalls(t *testing.T) {
	cmd := exec.Command("go", "list", "-f", `{{if eq .Name "main"}}{{.ImportPath}}{{end}}`, "./...")
	cmd.Dir = top(t, ".")
	out, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	if got := path.Base(strings.TrimSpace(string(out))); got != strings.Fields(theHook(t).Entry)[0] {
		t.Errorf("it would install %q", got)
	}
}

package main

import (
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"go.yaml.in/yaml/v3"
)

// action is a composite action, with the keys of the public form of action.yml.
type action struct {
	Name, Description string
	Inputs            map[string]struct{ Description, Default string }
	Outputs           map[string]struct{ Description, Value string }
	Runs              struct {
		Using string
		Steps []step
	}
}

type step struct {
	Name, ID, Shell, Run string
	Env                  map[string]string
}

var expression = regexp.MustCompile(`\$\{\{ *([a-z._-]+) *\}\}`)

// runner stands for the CI: it gives each step the environment that the CI would give,
// and keeps what the steps write.
type runner struct {
	t         *testing.T
	action    action
	temp      string
	workspace string
}

func newRunner(t *testing.T) *runner {
	t.Helper()
	r := &runner{t: t, temp: t.TempDir()}
	readYAML(t, ".github/actions/check/action.yml", &r.action)
	if r.action.Runs.Using != "composite" || len(r.action.Runs.Steps) != 2 {
		t.Fatalf("%+v", r.action.Runs)
	}
	return r
}

// value puts the values of expressions into a text.
func (r *runner) value(text string, known map[string]string) string {
	return expression.ReplaceAllStringFunc(text, func(e string) string {
		name := expression.FindStringSubmatch(e)[1]
		v, is := known[name]
		if !is {
			r.t.Errorf("the action asks for %s, which the CI does not have", name)
		}
		return v
	})
}

// step runs one step in the workspace as "shell: bash" does, and gives the exit status,
// what was printed, and the step's outputs.
func (r *runner) step(s step, inputs map[string]string) (int, string, map[string]string) {
	r.t.Helper()
	known := map[string]string{"github.action_path": filepath.Dir(top(r.t, ".github/actions/check/action.yml"))}
	for name, each := range r.action.Inputs {
		known["inputs."+name] = each.Default
	}
	for name, v := range inputs {
		if _, is := known["inputs."+name]; !is {
			r.t.Fatalf("there is no input %s", name)
		}
		known["inputs."+name] = v
	}
	script, output := filepath.Join(r.temp, "script.sh"), filepath.Join(r.temp, "output")
	put(r.t, r.temp, map[string]string{"script.sh": s.Run, "output": ""})
	cmd := exec.Command("bash", "--noprofile", "--norc", "-eo", "pipefail", script)
	cmd.Dir = r.workspace
	cmd.Env = append(os.Environ(), "RUNNER_TEMP="+r.temp, "GITHUB_OUTPUT="+output)
	for name, v := range s.Env {
		cmd.Env = append(cmd.Env, name+"="+r.value(v, known))
	}
	printed, err := cmd.CombinedOutput()
	if cmd.ProcessState == nil {
		r.t.Fatal(err)
	}
	return cmd.ProcessState.ExitCode(), string(printed), r.outputs(output)
}

// outputs reads what a step wrote, and gives the action's outputs by it.
func (r *runner) outputs(file string) map[string]string {
	data, err := os.ReadFile(file)
	if err != nil {
		r.t.Fatal(err)
	}
	known := map[string]string{}
	for name := range r.action.Outputs {
		known["steps.check.outputs."+name] = ""
	}
	for _, line := range strings.Split(strings.TrimSuffix(string(data), "\n"), "\n") {
		if name, v, is := strings.Cut(line, "="); is {
			known["steps.check.outputs."+name] = v
		} else if line != "" {
			r.t.Errorf("the step wrote the output %q", line)
		}
	}
	given := map[string]string{}
	for name, each := range r.action.Outputs {
		given[name] = r.value(each.Value, known)
	}
	return given
}

func TestTheActionRuns(t *testing.T) {
	sedge, bare, broken := string(readLayout(t, in(t, "sedge.json"))), string(readLayout(t, in(t, "bare.json"))), string(readLayout(t, in(t, "broken.json")))
	r := newRunner(t)
	r.workspace = t.TempDir()
	if status, printed, _ := r.step(r.action.Runs.Steps[0], nil); status != 0 {
		t.Fatalf("it does not build: status %d\n%s", status, printed)
	}
	hostile := []string{`a b;'"$(touch pwned)` + "`touch pwned`.json", "-x.json", "::error::x.json", "100%,a:b.json", "##[add-mask]x.json"}
	for _, tt := range []struct {
		name    string
		files   map[string]string
		inputs  map[string]string
		outputs map[string]string
		says    []string
		not     string // a pattern
	}{
		{"as it comes", map[string]string{"layout.json": sedge}, nil, map[string]string{"status": "1", "sarif": "lowvent.sarif"},
			[]string{"::error file=layout.json,line=54", "Keep the gas off"}, "UNUSABLE"},
		{"nothing that counts", map[string]string{"layout.json": bare}, map[string]string{"sarif": "out file.sarif"}, map[string]string{"status": "0", "sarif": "out file.sarif"},
			[]string{"no finding at WARNING", "Keep the gas off"}, "::error"},
		{"no SARIF", map[string]string{"layout.json": sedge}, map[string]string{"sarif": ""}, map[string]string{"status": "1", "sarif": ""}, []string{"::error file="}, "UNUSABLE"},
		{"unusable", map[string]string{"a.json": broken, "b.json": bare}, map[string]string{"layouts": "a.json\r\n\nb.json\n"}, map[string]string{"status": "2", "sarif": "lowvent.sarif"},
			[]string{"::error file=a.json,line=48", "2 files, of which 1 can't be used"}, "no such file"},
		{"every input", map[string]string{"layout.json": sedge, "lowvent.sarif": "old"}, map[string]string{"fail-at": "danger", "accept-waivers": "true", "code": "us-mobile-structure"},
			map[string]string{"status": "1", "sarif": "lowvent.sarif"}, []string{"at DANGER or above"}, "UNUSABLE"},
		{"an overlay that is not there", map[string]string{"layout.json": sedge}, map[string]string{"overlay": "gone.json"}, map[string]string{"status": "2", "sarif": "lowvent.sarif"},
			[]string{"::error file=gone.json,title=UNUSABLE::"}, "DANGER"},
		{"a wrong word leaves no old SARIF to be taken for new", map[string]string{"layout.json": sedge, "lowvent.sarif": "old"}, map[string]string{"fail-at": "SOON"}, map[string]string{"status": "2", "sarif": ""},
			[]string{"lowvent: "}, "::error"},
		{"inputs that would be commands", map[string]string{"layout.json": sedge}, map[string]string{"code": "x; touch pwned #", "on": "$(touch pwned)", "fail-at": "`touch pwned`", "overlay": "' || touch pwned"},
			map[string]string{"status": "2", "sarif": ""}, []string{"lowvent: "}, "::error"},
		{"an output that would be two", map[string]string{"layout.json": sedge}, map[string]string{"sarif": "a\nstatus=0"}, map[string]string{"status": "", "sarif": ""}, []string{`::error title=lowvent::the input "sarif"`}, "file="},
		{"no truth", map[string]string{"layout.json": sedge}, map[string]string{"accept-waivers": "yes"}, map[string]string{"status": "", "sarif": ""}, []string{`the input "accept-waivers" is true or false`}, "file="},
		{"no layouts", nil, map[string]string{"layouts": "\n"}, map[string]string{"status": "2", "sarif": ""}, []string{"name a layout to check"}, "::error"},
		{"names that would be commands", map[string]string{hostile[0]: sedge, hostile[1]: bare, hostile[2]: sedge, hostile[3]: bare, hostile[4]: broken}, map[string]string{"layouts": strings.Join(hostile, "\n")},
			map[string]string{"status": "2", "sarif": "lowvent.sarif"}, []string{"5 files, of which 1 can't be used and 2 have findings", "file=%3A%3Aerror%3A%3Ax.json,line="}, `(?m)^\s*::error::|^lowvent: .*##\[`},
		{"a message that would be a command", map[string]string{"##[add-mask]y": "folder"}, map[string]string{"layouts": "##[add-mask]y\n::add-mask::z"}, map[string]string{"status": "2", "sarif": "lowvent.sarif"},
			[]string{"UNUSABLE"}, `(?m)^\s*::add-mask|^lowvent: .*##\[`},
	} {
		t.Run(tt.name, func(t *testing.T) {
			r.t, r.workspace = t, t.TempDir()
			put(t, r.workspace, tt.files)
			inputs := map[string]string{"on": "2026-11-25"} // today, where the CI leaves it out
			maps.Copy(inputs, tt.inputs)
			status, printed, outputs := r.step(r.action.Runs.Steps[1], inputs)
			want := tt.outputs["status"]
			if want == "" {
				want = "2"
			}
			if string(rune('0'+status)) != want {
				t.Errorf("status %d, want %s", status, want)
			}
			if diff := cmp.Diff(tt.outputs, outputs); diff != "" {
				t.Errorf("outputs (-want +got):\n%s", diff)
			}
			for _, each := range tt.says {
				if !strings.Contains(printed, each) {
					t.Errorf("%q is missing", each)
				}
			}
			if found := regexp.MustCompile(tt.not).FindString(printed); found != "" {
				t.Errorf("it says %q", found)
			}
			after := tree(t, r.workspace)
			if _, made := after["pwned"]; made {
				t.Error("an input was run as a command")
			}
			if file := outputs["sarif"]; file != "" && !strings.Contains(after[file], `"version": "2.1.0"`) {
				t.Errorf("%s is no SARIF", file)
			}
			if t.Failed() {
				t.Log(printed)
			}
		})
	}
}

// TestNoInputIsPutIntoAScript: what the CI would put into the text of a script could be
// anything, so no script has an expression, and every input is used.
func TestNoInputIsPutIntoAScript(t *testing.T) {
	r := newRunner(t)
	var used []string
	for _, s := range r.action.Runs.Steps {
		if s.Shell != "bash" || strings.Contains(s.Run, "${{") || s.Name == "" {
			t.Errorf("%q: %q", s.Name, s.Run)
		}
		for _, v := range s.Env {
			used = append(used, expression.FindStringSubmatch(v)[1])
		}
	}
	for name, each := range r.action.Inputs {
		if !slices.Contains(used, "inputs."+name) || each.Description == "" {
			t.Errorf("the input %s is not used or not described", name)
		}
	}
}

// TestTheGuideNamesWhatThereIs holds the workflows of docs/ci.md against the action and
// the hook.
func TestTheGuideNamesWhatThereIs(t *testing.T) {
	r, h := newRunner(t), theHook(t)
	var shown []string
	for _, f := range fencesOf(t, "docs/ci.md", lines(readDoc(t, "docs/ci.md"))) {
		if f.language != "yaml" {
			continue
		}
		var workflow struct {
			Jobs map[string]struct {
				Steps []struct {
					Uses string
					With map[string]string
				}
			}
			Repos []struct{ Hooks []hook }
		}
		if err := yaml.Unmarshal([]byte(strings.Join(f.body, "\n")), &workflow); err != nil {
			t.Fatalf("%s: %v", f.at("docs/ci.md"), err)
		}
		for _, s := range workflow.Jobs["layouts"].Steps {
			path, ours := strings.CutPrefix(strings.TrimSuffix(s.Uses, "@REF"), "OWNER/lowvent/")
			if !ours {
				continue
			}
			shown = append(shown, path)
			if _, err := os.Stat(top(t, path+"/action.yml")); err != nil {
				t.Error(err)
			}
			for name := range s.With {
				if _, is := r.action.Inputs[name]; !is {
					t.Errorf("the action has no input %s", name)
				}
			}
		}
		for _, repo := range workflow.Repos {
			shown = append(shown, repo.Hooks[0].ID)
		}
	}
	if diff := cmp.Diff([]string{".github/actions/check", h.ID}, shown); diff != "" {
		t.Error(diff)
	}
}

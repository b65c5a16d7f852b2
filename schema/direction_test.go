package schema_test

import (
	"encoding/json"
	"os/exec"
	"slices"
	"strings"
	"testing"
)

const module = "lowvent.example/"

// allowed is the design's table of directions: what each part may import of this
// module. A folder stands for all below it, the longest match decides.
var allowed = map[string][]string{
	"schema":                             {},
	"schema/unit":                        {},
	"schema/source":                      {"schema/unit"},
	"schema/layout":                      {"schema/unit", "schema/source"},
	"schema/code":                        {"schema/unit", "schema/source"},
	"schema/report":                      {"schema/unit", "schema/source", "schema/layout", "schema/code"},
	"schema/check":                       {"schema/unit", "schema/source", "schema/layout", "schema/code", "schema/report"},
	"schema/check/checktest":             {"schema"},
	"gas":                                {"schema/unit", "schema/source", "schema/layout", "schema/code", "schema/report", "schema/check", "gas"},
	"gas/propane":                        {"schema/unit", "gas/solve"},
	"gas/cylinder":                       {"schema/unit", "gas/solve", "gas/propane"},
	"gas/air":                            {"schema/unit"},
	"gas/burner":                         {"schema/unit", "gas/solve", "gas/propane", "gas/air"},
	"gas/leak":                           {"schema/unit", "gas/solve", "gas/propane", "gas/air"},
	"gas/pipe":                           {"schema/unit", "gas/solve", "gas/propane", "gas/air"},
	"gas/regulator":                      {"schema/unit", "gas/solve", "gas/propane", "gas/air"},
	"gas/demand":                         {"schema/unit", "gas/solve", "gas/propane"},
	"gas/solve":                          {"schema/unit", "gas/solve"},
	"vent":                               {"schema/unit", "schema/source", "schema/layout", "schema/code", "schema/report", "schema/check", "gas", "vent"},
	"vent/box":                           {"schema/unit"},
	"vent/flow":                          {"schema/unit", "gas/solve", "gas/propane", "gas/air"},
	"vent/locker":                        {"schema/unit", "gas/solve", "gas/propane", "gas/air", "vent/flow"},
	"vent/pool":                          {"schema/unit", "gas/solve", "gas/propane", "gas/air", "vent/flow"},
	"vent/room":                          {"schema/unit", "gas/solve", "gas/propane", "gas/air", "vent/flow"},
	"cmd":                                {"schema", "gas", "vent", "cmd"},
	"cmd/lowvent/internal/letter":        {},
	"cmd/lowvent/internal/draw":          {"schema", "vent/box", "cmd/lowvent/internal/letter"},
	"cmd/lowvent/internal/paper":         {"cmd/lowvent/internal/draw"},
	"cmd/lowvent/internal/handoff":       {"schema", "cmd/lowvent/internal/draw", "cmd/lowvent/internal/paper", "cmd/lowvent/internal/render/saying", "cmd/lowvent/internal/render/calendar"},
	"cmd/lowvent/internal/render":        append([]string{"schema"}, shared...),
	"cmd/lowvent/internal/render/text":   {},
	"cmd/lowvent/internal/render/saying": {"schema", "cmd/lowvent/internal/render/text"},
	"cmd/lowvent/internal/render/markup": {"cmd/lowvent/internal/render/text"},
}

// shared is what a form may import beside the report: no form imports another one.
var shared = []string{"cmd/lowvent/internal/letter", "cmd/lowvent/internal/draw", "cmd/lowvent/internal/paper",
	"cmd/lowvent/internal/render/text", "cmd/lowvent/internal/render/saying", "cmd/lowvent/internal/render/markup", "cmd/lowvent/internal/render/svg"}

// pure are the folders of physics and geometry: no files, no clock, no network.
var pure = []string{"gas/propane", "gas/cylinder", "gas/demand", "gas/air", "gas/burner", "gas/leak", "gas/pipe", "gas/regulator", "gas/solve", "vent/box", "vent/flow", "vent/locker", "vent/pool", "vent/room", "schema/unit"}

// impure are packages of the standard library that pure folders must not import
// themselves; time is allowed to schema/unit for the calendar alone.
var impure = []string{"os", "io", "net", "time", "log", "os/exec", "net/http"}

func TestDirectionOfImports(t *testing.T) {
	for _, p := range packages(t) {
		own := strings.TrimPrefix(p.ImportPath, module)
		may := rule(own)
		if may == nil {
			t.Errorf("%s: no rule for this folder in the table of directions", own)
			continue
		}
		for _, imported := range p.Imports {
			inner, ours := strings.CutPrefix(imported, module)
			if ours && !slices.ContainsFunc(may, func(part string) bool { return inner == part || strings.HasPrefix(inner, part+"/") }) {
				t.Errorf("%s imports %s, which the table of directions does not allow", own, inner)
			}
			if !ours && slices.Contains(pure, own) && slices.Contains(impure, imported) && !(own == "schema/unit" && imported == "time") {
				t.Errorf("%s is pure and imports %s", own, imported)
			}
		}
	}
}

// TestTheTableCanRefuse shows that the table is no formality.
func TestTheTableCanRefuse(t *testing.T) {
	if slices.Contains(rule("schema/check"), "gas") || slices.Contains(rule("gas"), "vent") || slices.Contains(rule("cmd/lowvent/internal/render/sarif"), "cmd/lowvent/internal/render/term") || rule("elsewhere") != nil {
		t.Error("the table of directions allows what the design forbids")
	}
}

func rule(folder string) []string {
	for part := folder; part != ""; part = parent(part) {
		if may, ok := allowed[part]; ok {
			return may
		}
	}
	return nil
}

func parent(folder string) string {
	i := strings.LastIndex(folder, "/")
	return folder[:max(i, 0)]
}

type listed struct {
	ImportPath string
	Imports    []string
}

func packages(t *testing.T) []listed {
	t.Helper()
	out, err := exec.Command("go", "list", "-json=ImportPath,Imports", module+"...").Output()
	if err != nil {
		t.Fatalf("go list: %v", err)
	}
	var all []listed
	for d := json.NewDecoder(strings.NewReader(string(out))); d.More(); {
		var p listed
		if err := d.Decode(&p); err != nil {
			t.Fatal(err)
		}
		all = append(all, p)
	}
	if len(all) < 10 {
		t.Fatalf("go list named only %d packages", len(all))
	}
	return all
}

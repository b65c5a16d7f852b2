package layout

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// withLines makes a file of lines, each "from → to", between things that are
// there.
func withLines(lines ...string) string {
	var out []string
	lists := map[string]map[string]bool{"lines": {}}
	for i, line := range lines {
		from, to, _ := strings.Cut(line, " → ")
		out = append(out, fmt.Sprintf(`"l%02d": { "from": %q, "to": %q }`, i, from, to))
		for _, end := range []string{from, to} {
			section, id, _ := strings.Cut(end, "/")
			if lists[section] == nil {
				lists[section] = map[string]bool{}
			}
			lists[section][id] = true
		}
	}
	text := `{ "format": "lowvent-layout/1", "lines": { ` + strings.Join(out, ", ") + " }"
	for _, section := range slices.Sorted(maps.Keys(lists)) {
		for _, id := range slices.Sorted(maps.Keys(lists[section])) {
			out := fmt.Sprintf(`%q: {}`, id)
			if strings.Contains(text, fmt.Sprintf(`, %q: {`, section)) {
				text = strings.Replace(text, fmt.Sprintf(`, %q: {`, section), fmt.Sprintf(`, %q: { %s,`, section, out), 1)
			} else {
				text += fmt.Sprintf(`, %q: { %s }`, section, out)
			}
		}
	}
	return text + " }"
}

func TestLineTree(t *testing.T) {
	for _, c := range []struct {
		name  string
		lines []string
		want  []string // pointer and the beginning of what is told
	}{
		{"one line", []string{"cylinders/A → appliances/hob"}, nil},
		{"two cylinders into a changeover", []string{"cylinders/A → changeovers/c", "cylinders/B → changeovers/c", "changeovers/c → appliances/hob"}, nil},
		{"a branch", []string{"cylinders/A → junctions/t", "junctions/t → appliances/hob", "junctions/t → outdoorOutlets/o", "junctions/t → openEnds/e"}, nil},
		{"no cylinder", []string{"regulators/r → appliances/hob"}, nil},
		{"fed twice", []string{"cylinders/A → appliances/hob", "cylinders/B → appliances/hob", "cylinders/C → appliances/hob"},
			[]string{"/lines/l01/to appliances/hob is already fed", "/lines/l02/to appliances/hob is already fed"}},
		{"ends at a junction", []string{"cylinders/A → junctions/t"}, []string{"/lines/l00/to the line \"l00\" ends at junctions/t"}},
		{"ends at a regulator", []string{"cylinders/A → regulators/r"}, []string{"/lines/l00/to the line \"l00\" ends at regulators/r"}},
		{"ends at a changeover", []string{"cylinders/A → changeovers/c", "cylinders/B → changeovers/c"},
			[]string{"/lines/l00/to the line \"l00\" ends at", "/lines/l01/to the line \"l01\" ends at"}},
		{"itself", []string{"junctions/t → junctions/t"}, []string{"/lines/l00 the line \"l00\" ends where it begins"}},
		{"a circle", []string{"junctions/a → junctions/b", "junctions/b → junctions/c", "junctions/c → junctions/a"},
			[]string{"/lines/l00 gas would run in a circle through the lines l00 → l01 → l02 → l00"}},
		{"a circle with a way out", []string{"junctions/a → junctions/b", "junctions/b → junctions/a", "junctions/a → appliances/hob", "junctions/b → openEnds/e"},
			[]string{"/lines/l00 gas would run in a circle through the lines l00 → l01 → l00"}},
		{"a circle after a cylinder", []string{"cylinders/A → changeovers/c", "changeovers/c → regulators/r", "regulators/r → changeovers/c", "regulators/r → appliances/hob"},
			[]string{"/lines/l01 gas would run in a circle through the lines l01 → l02 → l01"}},
		{"two circles", []string{"junctions/a → junctions/b", "junctions/b → junctions/a", "junctions/c → junctions/d", "junctions/d → junctions/c"},
			[]string{"/lines/l00 gas would run in a circle", "/lines/l02 gas would run in a circle"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, faults := loadText(withLines(c.lines...))
			var got []string
			for i, f := range faults {
				text := f.Place.Pointer + " " + f.What
				if i < len(c.want) && strings.HasPrefix(text, c.want[i]) {
					text = c.want[i]
				}
				got = append(got, text)
			}
			if diff := cmp.Diff(c.want, got); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// TestCirclesAreFound draws nets of lines and holds the search for circles
// against the plain definition: some line can be reached from its own end.
func TestCirclesAreFound(t *testing.T) {
	nodes := []string{"junctions/a", "junctions/b", "junctions/c", "changeovers/d", "changeovers/e", "regulators/f", "regulators/g"}
	round, straight := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		var lines []string
		next := map[string][]string{}
		for range rapid.IntRange(1, 9).Draw(t, "lines") {
			from, to := rapid.SampledFrom(nodes).Draw(t, "from"), rapid.SampledFrom(nodes).Draw(t, "to")
			lines = append(lines, from+" → "+to)
			next[from] = append(next[from], to)
		}
		reached := func(from string) map[string]bool {
			seen, todo := map[string]bool{}, slices.Clone(next[from])
			for len(todo) > 0 {
				at := todo[0]
				if todo = todo[1:]; !seen[at] {
					seen[at] = true
					todo = append(todo, next[at]...)
				}
			}
			return seen
		}
		want := slices.ContainsFunc(nodes, func(n string) bool { return reached(n)[n] })
		_, faults := loadText(withLines(lines...))
		got := false
		for _, f := range faults {
			got = got || strings.Contains(f.What, "circle") || strings.Contains(f.What, "ends where it begins")
		}
		if got != want {
			t.Fatalf("%v: a circle was found: %v, is there: %v\n%v", lines, got, want, faults)
		}
		if want {
			round++
		} else {
			straight++
		}
	})
	if round == 0 || straight == 0 {
		t.Errorf("%d nets with a circle, %d without: the test says little", round, straight)
	}
}

// TestLongLines holds that neither a long chain nor a long circle of lines
// takes long or floods a message.
func TestLongLines(t *testing.T) {
	const n = 6000
	var lines, things strings.Builder
	for i := range n {
		fmt.Fprintf(&lines, `"l%04d": { "from": "junctions/j%04d", "to": "junctions/j%04d" },`, i, i, i+1)
		fmt.Fprintf(&things, `"j%04d": {},`, i)
	}
	file := func(last string) string {
		return `{ "format": "lowvent-layout/1", "lines": { ` + lines.String() + `"z": { "from": "junctions/j6000", "to": "` + last + `" } }, "junctions": { ` + things.String() + `"j6000": {} }, "appliances": { "hob": {} } }`
	}
	if l := mustLoad(t, file("appliances/hob")); len(l.FedBy("appliances/hob")) != 1 {
		t.Error("the chain is broken")
	}
	_, faults := loadText(file("junctions/j0000"))
	if len(faults) != 1 || !strings.Contains(faults[0].What, "l0000 → l0001 → l0002 → l0003 → l0004 → l0005 → l0006 → l0007 → … → l0000") {
		t.Errorf("%v", faults)
	}
}

package layout

import (
	"maps"
	"os"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/schema/source"
)

// pontoon is an invented dwelling in which every key of the contract stands;
// cabin is one of ordinary size, about 6 KB.
const (
	pontoon = "testdata/pontoon.json"
	cabin   = "testdata/cabin.json"
)

// good reads a fixture that must have no fault.
func good(t testing.TB, path string) *Layout {
	t.Helper()
	l, faults := ReadFile(path)
	if len(faults) > 0 {
		t.Fatalf("%s:\n%v", path, faults)
	}
	return l
}

// loadText loads a layout from a text.
func loadText(text string) (*Layout, source.Faults) {
	return Load(source.NewFile("layout.json", []byte(text)))
}

// mustLoad loads a text that must have no fault.
func mustLoad(t testing.TB, text string) *Layout {
	t.Helper()
	l, faults := loadText(text)
	if len(faults) > 0 {
		t.Fatalf("%s\n%v", text, faults)
	}
	return l
}

func readText(t testing.TB, path string) string {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// contractTemplates lists the template of every key of the Go contract.
func contractTemplates() []string {
	var all []string
	walkContract(reflect.TypeFor[Layout](), "", func(t reflect.Type, at string) bool {
		for _, name := range shapeOf(t).names {
			all = append(all, source.Join(at, name))
		}
		return true
	})
	slices.Sort(all)
	return all
}

// writtenTemplates lists the template of every member that a file has.
func writtenTemplates(n *source.Node, into map[string]bool) {
	for _, child := range n.Children {
		if n.Kind == source.Object {
			into[Template(child.Pointer())] = true
		}
		writtenTemplates(child, into)
	}
}

// TestPontoonIsComplete holds that one fixture says everything that the
// contract can say, so that every reader of a key has met a file that has it.
// Notes and evidence are the same in every object.
func TestPontoonIsComplete(t *testing.T) {
	common := func(template string) bool {
		return strings.HasSuffix(template, "/note") || strings.Contains(template, "/evidence")
	}
	written := map[string]bool{}
	writtenTemplates(good(t, pontoon).Root(), written)
	want := slices.DeleteFunc(contractTemplates(), common)
	// The positions of ids are no keys of the contract.
	got := slices.DeleteFunc(slices.Sorted(maps.Keys(written)), func(s string) bool { return common(s) || strings.HasSuffix(s, "/*") })
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("keys of the contract (-) and of %s (+):\n%s", pontoon, diff)
	}
	if !written["/lockers/*/liner/evidence/*/basis"] {
		t.Error("the fixture has no evidence")
	}
}

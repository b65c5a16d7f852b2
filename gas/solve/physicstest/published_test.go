package physicstest

import (
	"os"
	"path/filepath"
	"testing"
)

// failure is a testing.TB that notes a failure instead of ending the test.
type failure struct {
	testing.TB
	failed bool
}

func (f *failure) Helper() {}
func (f *failure) Fatal(...any) {
	f.failed = true
	panic(f)
}
func (f *failure) Fatalf(string, ...any) { f.Fatal() }

// fails tells whether do ends in a failure of the test handed to it.
func fails(t *testing.T, do func(testing.TB)) bool {
	f := &failure{TB: t}
	func() {
		defer func() { _ = recover() }()
		do(f)
	}()
	return f.failed
}

// module makes a folder with a go.mod and one published table, and works in it.
func module(t *testing.T, table string) {
	t.Helper()
	root := t.TempDir()
	published := filepath.Join(root, "testdata", "published")
	inner := filepath.Join(root, "a", "b")
	for _, folder := range []string{published, inner} {
		if err := os.MkdirAll(folder, 0o755); err != nil {
			t.Fatal(err)
		}
	}
	for name, text := range map[string]string{filepath.Join(root, "go.mod"): "module m", filepath.Join(published, "t.csv"): table} {
		if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	t.Chdir(inner)
}

func TestPublishedReadsRowsByColumn(t *testing.T) {
	module(t, "x,name,provenance\n1.5,\"a, b\",read\n-2,c,computed\n")
	rows := Published(t, "t.csv")
	if len(rows) != 2 || rows[0]["name"] != "a, b" || rows[0].Number(t, "x") != 1.5 || rows[1].Number(t, "x") != -2 {
		t.Errorf("rows = %v", rows)
	}
	if !fails(t, func(t testing.TB) { rows[0].Number(t, "name") }) {
		t.Error("a text passed as a number")
	}
}

func TestPublishedFailsOnWhatIsNoGround(t *testing.T) {
	for name, table := range map[string]string{
		"empty":       "",
		"header only": "x,provenance\n",
		"from memory": "x,provenance\n1,memory\n",
		"ragged":      "x,provenance\n1\n",
	} {
		t.Run(name, func(t *testing.T) {
			module(t, table)
			if !fails(t, func(t testing.TB) { Published(t, "t.csv") }) {
				t.Error("passed")
			}
		})
	}
	t.Run("a table takes any provenance", func(t *testing.T) {
		module(t, "x,provenance\n1,memory\n")
		if rows := Table(t, "t.csv"); len(rows) != 1 || rows[0]["x"] != "1" {
			t.Errorf("rows = %v", rows)
		}
	})
	t.Run("no such table", func(t *testing.T) {
		module(t, "x\n1\n")
		if !fails(t, func(t testing.TB) { Published(t, "other.csv") }) {
			t.Error("passed")
		}
	})
}

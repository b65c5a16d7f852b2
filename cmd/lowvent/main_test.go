package main

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/rogpeppe/go-internal/testscript"
)

// The scripts drive the real program, as a shell would. lowvent-traced is the
// same program, which also tells whether it compiled a JSON Schema.
func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){
		"lowvent":        main,
		"lowvent-traced": traced,
	})
}

// TestScripts gives each script the layouts of testdata/layouts in its folder.
func TestScripts(t *testing.T) {
	layouts := os.DirFS(filepath.Join("testdata", "layouts"))
	testscript.Run(t, testscript.Params{
		Dir:   filepath.Join("testdata", "script"),
		Setup: func(env *testscript.Env) error { return os.CopyFS(env.WorkDir, layouts) },
		Cmds:  map[string]func(*testscript.TestScript, bool, []string){"status": exitsWith},
	})
}

// exitsWith is "status N command...": it holds that the program ends with just
// that status.
func exitsWith(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: status N command...")
	}
	got := 0
	if err := ts.Exec(args[1], args[2:]...); err != nil {
		if _, scanErr := fmt.Sscanf(err.Error(), "exit status %d", &got); scanErr != nil {
			ts.Fatalf("%s: %v", strings.Join(args[1:], " "), err)
		}
	}
	if fmt.Sprint(got) != args[0] {
		ts.Fatalf("%s: exit status %d, want %s", strings.Join(args[1:], " "), got, args[0])
	}
}

// traced runs the program with every allocation on record, and looks in the
// record for this program compiling a JSON Schema. (The library compiles its own
// while the process starts; that is not ours.)
func traced() {
	runtime.MemProfileRate = 1
	code := program().run(os.Args[1:])
	runtime.GC()
	runtime.GC()
	records := make([]runtime.MemProfileRecord, 1<<17)
	n, complete := runtime.MemProfile(records, true)
	if !complete {
		fmt.Fprintln(os.Stderr, "too many records")
		os.Exit(statusFault)
	}
	compiled := false
	for _, r := range records[:n] {
		compiled = compiled || compiles(r.Stack())
	}
	fmt.Fprintf(os.Stderr, "schemas compiled: %t\n", compiled)
	os.Exit(code)
}

// compiles tells whether a stack is that of this program in the compiler.
func compiles(stack []uintptr) bool {
	ours, compiler := false, false
	frames := runtime.CallersFrames(stack)
	for more := true; more; {
		var f runtime.Frame
		f, more = frames.Next()
		ours = ours || strings.HasPrefix(f.Function, "lowvent.example/schema/")
		compiler = compiler || strings.Contains(f.Function, "jsonschema/v5.(*Compiler)")
	}
	return ours && compiler
}

// outcome is what one command line did, run in-process.
type outcome struct {
	status         int
	stdout, stderr string
}

// bench is the program in made-up surroundings.
func bench(change func(*app)) (*app, *bytes.Buffer, *bytes.Buffer) {
	var out, err bytes.Buffer
	a := &app{stdin: strings.NewReader(""), stdout: &out, stderr: &err,
		env:      func(string) (string, bool) { return "", false },
		terminal: func() (int, bool) { return 0, false },
		now:      func() time.Time { return time.Date(2026, 11, 25, 8, 0, 0, 0, time.UTC) },
		version:  "v0.0.0-test", parts: parts()}
	if change != nil {
		change(a)
	}
	return a, &out, &err
}

func run(change func(*app), args ...string) outcome {
	a, out, err := bench(change)
	status := a.run(args)
	return outcome{status, out.String(), err.String()}
}

var update = flag.Bool("update", false, "write the golden files anew")

// golden compares a text with a file of testdata/golden.
func golden(t *testing.T, name, got string) {
	t.Helper()
	path := filepath.Join(home(t), "testdata", "golden", name)
	if *update {
		if err := os.WriteFile(path, []byte(got), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), got); diff != "" {
		t.Errorf("%s (-want +got):\n%s", name, diff)
	}
}

// home is the folder of this package, wherever a test has gone to.
func home(t *testing.T) string {
	t.Helper()
	_, file, _, ok := runtime.Caller(0)
	if !ok {
		t.Fatal("the test does not know where it is")
	}
	return filepath.Dir(file)
}

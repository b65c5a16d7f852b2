package main

import (
	"cmp"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"lowvent.example/.ci/mutate/mutation"
)

// TestMerged: each kind of mutant is put around the original so that both stand there.
func TestMerged(t *testing.T) {
	for _, c := range []struct{ source, want string }{
		{"func f() { if a < 3 {\n} }", `if ((mutation.Compare(1, "<", a , 3)) != mutation.On(0)) {`},
		{"func f() { if a == 3 {\n} }", "if ((a == 3) != mutation.On(0)) {"},
		{"func f() { if a && b {\n} }", "if ((mutation.Both(1, true, a , func() bool { return ( b) })) != mutation.On(0)) {"},
		{"func f() { x = a*b - c }", `x = mutation.Reckon(1, "-", mutation.Reckon(0, "*", a,b) , c)`},
		{"func f() { x = max(a, b) + 1 }", `x = mutation.Reckon(1, "+", mutation.Most(0, a, b) , 1)`},
		{"func f() { g(s) }", "if !mutation.On(0) { g(s) }"},
		{"func f() bool { return ok }", "return (mutation.On(0) || ((!mutation.On(1) && (ok))))"},
		{"func f() { x = false }", "x = ((false) != mutation.On(0))"},
		{"func f() { x = &a.Low }", "x = &(*mutation.Either(0, &a.Low, &a.High))"},
		{"func f() { x = gap(a).Low }", "x = mutation.Either(0, gap(a).Low, gap(a).High)"},
		{"import \"m/layout\"\nfunc f() { x = layout.VentLevelLow }", "x = mutation.Either(0, layout.VentLevelLow, layout.VentLevelHigh)"},
		{"func f() { x = g(s, code.A) }", "x = g(s, mutation.Either(0, code.A, code.B))"},
		{"func f() { x = check.AtMost(s, a) }", "x = mutation.Either(0, func() check.Ruling { return check.AtMost(s, a) }, func() check.Ruling { return check.AtLeast(s, a) })()"},
		{"func f() { x = check.All(s, a, b) }", "check.All(s, mutation.Without(1, 0, mutation.Without(2, 1, a, b)...)...) }"},
	} {
		got := string(mergedText(t, c.source))
		if !strings.Contains(got, c.want) || !strings.HasPrefix(got, "package p; import \""+choosing+"\"\n") {
			t.Errorf("%s: want %s in\n%s", c.source, c.want, got)
		}
	}
}

func mergedText(t *testing.T, source string) []byte {
	t.Helper()
	data := []byte("package p\n" + source + "\n")
	all, err := ofFile("gas/p.go", data, map[string][]string{"A": {"A", "B"}})
	if err != nil {
		t.Fatal(err)
	}
	some := map[int]mutant{}
	for i, m := range all {
		some[i] = m
	}
	text, spans := merged(data, some)
	for id, span := range spans {
		if !strings.Contains(string(text[span[0]:span[1]]), fmt.Sprint(id)) {
			t.Errorf("%s: mutant %d is said to stand at %q", source, id, text[span[0]:span[1]])
		}
	}
	return text
}

// TestChoosing: what is chosen, and nothing else, comes out wrong.
func TestChoosing(t *testing.T) {
	defer mutation.Choose(-1)
	yes, no := func() bool { return true }, func() bool { return false }
	for _, c := range []struct {
		name string
		it   func(id int) any
		good any
		bad  any
	}{
		{"either", func(id int) any { return mutation.Either(id, "a", "b") }, "a", "b"},
		{"and", func(id int) any { return mutation.Both(id, true, true, no) }, false, true},
		{"and of two", func(id int) any { return mutation.Both(id, true, false, yes) }, false, true},
		{"or", func(id int) any { return mutation.Both(id, false, true, no) }, true, false},
		{"less, at the limit", func(id int) any { return mutation.Compare(id, "<", 2, 2) }, false, true},
		{"at most, at the limit", func(id int) any { return mutation.Compare(id, "<=", 2, 2) }, true, false},
		{"more, at the limit", func(id int) any { return mutation.Compare(id, ">", 2, 2) }, false, true},
		{"at least, at the limit", func(id int) any { return mutation.Compare(id, ">=", 2, 2) }, true, false},
		{"less, under it", func(id int) any { return mutation.Compare(id, "<", 1, 2) }, true, true},
		{"more, over it", func(id int) any { return mutation.Compare(id, ">", 3, 2) }, true, true},
		{"plus", func(id int) any { return mutation.Reckon(id, "+", 6.0, 2) }, 8.0, 4.0},
		{"minus", func(id int) any { return mutation.Reckon(id, "-", 6.0, 2) }, 4.0, 8.0},
		{"times", func(id int) any { return mutation.Reckon(id, "*", 6.0, 2) }, 12.0, 3.0},
		{"over", func(id int) any { return mutation.Reckon(id, "/", 6.0, 2) }, 3.0, 12.0},
		{"least", func(id int) any { return mutation.Least(id, 2, 1, 3) }, 1, 3},
		{"most", func(id int) any { return mutation.Most(id, 2, 1, 3) }, 3, 1},
		{"without", func(id int) any { return fmt.Sprint(mutation.Without(id, 1, "a", "b", "c")) }, "[a b c]", "[a c]"},
	} {
		for chosen, want := range map[int]any{-1: c.good, 6: c.good, 7: c.bad} {
			if mutation.Choose(chosen); c.it(7) != want {
				t.Errorf("%s with %d chosen: %v, want %v", c.name, chosen, c.it(7), want)
			}
		}
	}
}

// TestFit: in a real file nearly all mutants stand beside each other, and what can't be
// is told from what does not build at all.
func TestFit(t *testing.T) {
	root, err := moduleRoot()
	if err != nil {
		t.Fatal(err)
	}
	all, err := mutants(root)
	if err != nil {
		t.Fatal(err)
	}
	all = chosen(all, options{only: "gas/tree.go"})
	p, err := listed(root, all)
	if err != nil {
		t.Fatal(err)
	}
	wrong := all[0]
	wrong.beside, wrong.text = form{from: wrong.from, to: wrong.to, open: "mutation.Nothing(ID, ", end: ")"}, "nobody.knows"
	right := all[0]
	right.beside.open = ""
	f := p.fit(append(all, wrong, right))
	if f.beside[len(all)] || f.alone[len(all)] || f.beside[len(all)+1] || !f.alone[len(all)+1] {
		t.Errorf("a mutant that does not build, and one without a form: %v", f)
	}
	if n := count(f.beside); n < len(all)*9/10 {
		t.Errorf("of %d mutants %d stand beside each other", len(all), n)
	}
}

// TestLedger: a run goes on from what an earlier one noted, though it was stopped in the
// middle of a line.
func TestLedger(t *testing.T) {
	path := filepath.Join(t.TempDir(), "ledger")
	l, err := openLedger(path)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range []entry{{alive, 0}, {killed, 1}} {
		if err := l.note("a → b", e); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.WriteFile(path, append(read(t, path), "alive\t"...), 0o600); err != nil {
		t.Fatal(err)
	}
	again, err := openLedger(path)
	if err != nil {
		t.Fatal(err)
	}
	if e, known := again.entry("a → b"); !known || e != (entry{killed, 1}) || len(again.of) != 1 {
		t.Errorf("%v", again.of)
	}
}

func read(t *testing.T, path string) []byte {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// TestNames: two mutants of one key have names of their own.
func TestNames(t *testing.T) {
	m := generated(t)[0]
	if got := names([]mutant{m, m}); got[0] != m.key() || got[1] != m.key()+" (2)" {
		t.Errorf("%q", got)
	}
}

// TestStages: the examples of the check come first, and all the tests come in the end.
func TestStages(t *testing.T) {
	reaching := []example{{"./vent", "locker.low-vent"}, {"./vent", "locker.pool"}, {"./gas", "hose.age"}}
	for path, want := range map[string]string{
		"vent/locker_low_vent.go": `./vent E(locker\.low-vent)$ -, ./gas E(hose\.age)$ -, ./vent E(locker\.pool)$ -, ./vent W -, ./vent C/^(locker\.low-vent|locker\.pool|hose\.age)$ -, ./vent A -, ./vent - S|T|W, ./vent T -, ./vent S -`,
		"vent/geometry.go":        `./gas E(hose\.age)$ -, ./vent E(locker\.low-vent|locker\.pool)$ -, ./vent W -, ./vent C/^(locker\.low-vent|locker\.pool|hose\.age)$ -, ./vent A -, ./vent - S|T|W, ./vent T -, ./vent S -`,
		"gas/hose_age.go":         `./gas E(hose\.age)$ -, ./vent E(locker\.low-vent|locker\.pool)$ -, ./vent W -, ./vent C/^(locker\.low-vent|locker\.pool|hose\.age)$ -, ./gas - X, ./vent A -, ./vent - S|T|W, ./vent T -, ./gas X -, ./vent S -`,
		"schema/check/fold.go":    `./schema/check - -, ./gas E(hose\.age)$ -, ./vent E(locker\.low-vent|locker\.pool)$ -, ./vent W -, ./vent C/^(locker\.low-vent|locker\.pool|hose\.age)$ -, ./gas - X, ./vent A -, ./vent - S|T|W, ./vent T -, ./gas X -, ./vent S -`,
	} {
		var got []string
		for _, some := range stages(path, reaching) {
			for _, s := range some {
				text := func(of string) string {
					return strings.NewReplacer(sweeps, "S", tables, "T", byCheck, "C", working, "W", reckoned, "A", "^TestExamples$/^", "E", "^TestExamples$", "X").Replace(cmp.Or(of, "-"))
				}
				got = append(got, s.pkg+" "+text(s.run)+" "+text(s.skip))
			}
		}
		if strings.Join(got, ", ") != want {
			t.Errorf("%s: %s, want %s", path, strings.Join(got, ", "), want)
		}
	}
}

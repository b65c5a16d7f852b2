package main

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

const sample = `package p

var lowVent = add(check.For(check.Descriptor{ID: "locker.low-vent", NeverWaive: true}, lockers, first, second(code.LockerLowVentArea), third))

func first(s *check.Sheet, k *layout.Locker) check.Ruling {
	check.Inventory(s, list)
	if a := check.Measure(s, "a", &k.A); a < 3 || !open(k) {
		return check.AtLeast(s, a, need)
	}
	return check.AtMost(s, max(a, b+c), need)
}

func open(k *layout.Locker) bool { return len(k.Vents) == 0 }
`

func generated(t *testing.T) []mutant {
	t.Helper()
	all, err := ofFile("vent/p.go", []byte(sample), map[string][]string{"LockerLowVentArea": {"LockerHighVentArea", "LockerLowVentArea"}})
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// TestMutantsOfASample: every kind of change is made where it can be.
func TestMutantsOfASample(t *testing.T) {
	var got []string
	for _, m := range generated(t) {
		got = append(got, m.key())
	}
	for _, want := range []string{
		"vent/p.go locker.low-vent: constant: true → false",
		"vent/p.go locker.low-vent: clause 1 of check.For dropped: first, → nothing",
		"vent/p.go locker.low-vent: clause 3 of check.For dropped: , third → nothing",
		"vent/p.go locker.low-vent: limit: LockerLowVentArea → LockerHighVentArea",
		"vent/p.go first: dropped: check.Inventory(s, list) → nothing",
		"vent/p.go first: negated: a < 3 || !open(k) → !(a < 3 || !open(k))",
		"vent/p.go first: operator in a < 3 [||] !open(k): || → &&",
		"vent/p.go first: operator in a [<] 3: < → >=",
		"vent/p.go first: operator in a [<] 3: < → <=",
		"vent/p.go first: swapped in check.AtLeast(s, a, need): AtLeast → AtMost",
		"vent/p.go first: swapped in check.AtMost(s, max(a, b+c), need): AtMost → AtLeast",
		"vent/p.go first: swapped in max(a, b+c): max → min",
		"vent/p.go first: operator in b[+]c: + → -",
		"vent/p.go open: operator in len(k.Vents) [==] 0: == → !=",
		"vent/p.go open: constant: len(k.Vents) == 0 → true",
		"vent/p.go open: constant: len(k.Vents) == 0 → false",
	} {
		if !slices.Contains(got, want) {
			t.Errorf("no mutant %q in\n%s", want, strings.Join(got, "\n"))
		}
	}
}

// TestEachMutantChangesOnePlace of the file, and its text is what the mutant says.
func TestEachMutantChangesOnePlace(t *testing.T) {
	for _, m := range generated(t) {
		text := string(m.bytes())
		if text == sample || !strings.HasPrefix(text, sample[:m.from]) || !strings.HasSuffix(text, sample[m.to:]) || text[m.from:m.from+len(m.text)] != m.text {
			t.Errorf("%s gives\n%s", m, text)
		}
	}
}

func TestChosen(t *testing.T) {
	all := generated(t)
	a, b := chosen(all, options{sample: 5, seed: 1}), chosen(all, options{sample: 5, seed: 1})
	other := chosen(all, options{sample: 5, seed: 2})
	key := func(list []mutant) (keys []string) {
		for _, m := range list {
			keys = append(keys, m.key())
		}
		return keys
	}
	if len(a) != 5 || !slices.Equal(key(a), key(b)) || slices.Equal(key(a), key(other)) {
		t.Errorf("samples %v, %v, %v", key(a), key(b), key(other))
	}
	if n := len(chosen(all, options{only: "gas/"})); n != 0 {
		t.Errorf("%d mutants of another folder", n)
	}
	if n := len(chosen(all, options{sample: 1000})); n != len(all) {
		t.Errorf("%d of %d", n, len(all))
	}
}

// TestExplained: each mutant that is let live has a reason, and is still one of the
// mutants that there are.
func TestExplained(t *testing.T) {
	root, err := moduleRoot()
	if err != nil {
		t.Fatal(err)
	}
	reasons, err := explained(filepath.Join(root, ".ci", "mutate", "equivalent.txt"))
	if err != nil {
		t.Fatal(err)
	}
	all, err := mutants(root)
	if err != nil {
		t.Fatal(err)
	}
	if len(all) < 500 {
		t.Errorf("only %d mutants", len(all))
	}
	for key, why := range reasons {
		if !slices.ContainsFunc(all, func(m mutant) bool { return m.key() == key }) {
			t.Errorf("there is no mutant %q any more", key)
		}
		if len(why) < 20 {
			t.Errorf("%q: the reason is %q", key, why)
		}
	}
	bad := filepath.Join(t.TempDir(), "bad.txt")
	if err := os.WriteFile(bad, []byte("a key\nanother key\n  with a reason\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := explained(bad); err == nil || !strings.Contains(err.Error(), `"a key"`) {
		t.Errorf("a key without a reason: %v", err)
	}
}

func TestTestedBy(t *testing.T) {
	for path, want := range map[string]string{"vent/alarms.go": "./vent", "gas/tree.go": "./gas ./vent", "schema/check/fold.go": "./schema/check ./gas ./vent"} {
		if got := strings.Join(testedBy(path), " "); got != want {
			t.Errorf("%s: %q, want %q", path, got, want)
		}
	}
}

package source

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func TestNearest(t *testing.T) {
	known := []string{"cylinder", "regulator", "locker", "lockers", "low_vent", "high_vent", "floor", "id"}
	tests := []struct{ why, word, want string }{
		{"as it is", "locker", "locker"},
		{"other case", "LowVent", "low_vent"},
		{"one letter left out", "regulatr", "regulator"},
		{"one letter too many", "cyllinder", "cylinder"},
		{"one letter replaced", "cylindor", "cylinder"},
		{"two neighbours swapped", "cylidner", "cylinder"},
		{"swapped in a short word", "di", "id"},
		{"two slips in a long word", "regultaro", "regulator"},
		{"equally near: first in byte order", "lockerz", "locker"},
		{"too many slips", "relugator_x", ""},
		{"a short word with nothing in common", "x", ""},
		{"two letters, both other", "xy", ""},
		{"empty", "", ""},
		{"unlike all", "photograph", ""},
	}
	for _, test := range tests {
		if got := Nearest(test.word, known); got != test.want {
			t.Errorf("%s: %q gives %q, want %q", test.why, test.word, got, test.want)
		}
	}
	if got := Nearest("x", []string{"y"}); got != "" {
		t.Errorf("a letter for another: %q", got)
	}
	if got := Nearest("locker", nil); got != "" {
		t.Errorf("of nothing: %q", got)
	}
}

// The worked values of the optimal string alignment distance: "kitten" and
// "sitting" are the textbook pair for edits without swaps; "ca" and "abc" the
// textbook pair on which this distance (3) differs from the unrestricted
// Damerau–Levenshtein distance (2). From memory.
func TestAlignment(t *testing.T) {
	tests := []struct {
		a, b string
		want int
	}{
		{"", "", 0}, {"", "abc", 3}, {"abc", "", 3}, {"abc", "abc", 0},
		{"kitten", "sitting", 3}, {"saturday", "sunday", 3},
		{"ca", "abc", 3}, {"ab", "ba", 1}, {"abcd", "badc", 2},
		{"é", "e", 1}, {"€x", "x€", 1},
	}
	for _, test := range tests {
		if got := alignment([]rune(test.a), []rune(test.b)); got != test.want {
			t.Errorf("%q %q: %d, want %d", test.a, test.b, got, test.want)
		}
		if got := alignment([]rune(test.b), []rune(test.a)); got != test.want {
			t.Errorf("%q %q: %d, want %d", test.b, test.a, got, test.want)
		}
	}
}

// slowAlignment follows the definition by recursion.
func slowAlignment(a, b []rune) int {
	if len(a) == 0 || len(b) == 0 {
		return len(a) + len(b)
	}
	x, y := a[:len(a)-1], b[:len(b)-1]
	d := slowAlignment(x, y)
	if a[len(x)] != b[len(y)] {
		d++
	}
	d = min(d, slowAlignment(x, b)+1, slowAlignment(a, y)+1)
	if len(x) > 0 && len(y) > 0 && a[len(x)] == b[len(y)-1] && a[len(x)-1] == b[len(y)] {
		d = min(d, slowAlignment(x[:len(x)-1], y[:len(y)-1])+1)
	}
	return d
}

func TestAlignmentAgreesWithDefinition(t *testing.T) {
	word := rapid.StringOfN(rapid.RuneFrom([]rune("abcé")), 0, 6, -1)
	rapid.Check(t, func(t *rapid.T) {
		a, b := []rune(word.Draw(t, "a")), []rune(word.Draw(t, "b"))
		if got, want := alignment(a, b), slowAlignment(a, b); got != want {
			t.Fatalf("%q %q: %d, want %d", string(a), string(b), got, want)
		}
	})
}

func TestNearestDoesNotHangOnTheOrder(t *testing.T) {
	word := rapid.StringOfN(rapid.RuneFrom([]rune("abcd")), 1, 6, -1)
	rapid.Check(t, func(t *rapid.T) {
		known := rapid.SliceOfN(word, 0, 8).Draw(t, "known")
		w := word.Draw(t, "word")
		got := Nearest(w, known)
		if other := Nearest(w, rapid.Permutation(slices.Clone(known)).Draw(t, "shuffled")); other != got {
			t.Fatalf("%q or %q", got, other)
		}
		if got != "" && !slices.Contains(known, got) {
			t.Fatalf("%q is not known", got)
		}
	})
}

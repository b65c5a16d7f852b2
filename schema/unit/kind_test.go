package unit

import "testing"

// TestKindNamed: each kind is found by its own name, and a word that is none's by nothing.
func TestKindNamed(t *testing.T) {
	for _, k := range Kinds() {
		if got, is := KindNamed(k.String()); got != k || !is {
			t.Errorf("%q is found as %v, %v", k, got, is)
		}
	}
	for _, word := range []string{"", "words", "Length", "metre"} {
		if got, is := KindNamed(word); got != 0 || is {
			t.Errorf("%q is found as %v", word, got)
		}
	}
}

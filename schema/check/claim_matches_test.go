package check

import "testing"

func TestTemplatesMatchPointers(t *testing.T) {
	for _, c := range []struct {
		template, pointer string
		want              bool
	}{
		{"/lockers/*/sealedFrom/*/seal", "/lockers/side/sealedFrom/cabin/seal", true},
		{"/lockers/*/sealedFrom/*/seal", "/lockers/side/sealedFrom/cabin", false},
		{"/lockers/*/sealedFrom/*", "/lockers/side/sealedFrom/cabin/seal", false},
		{"/lockers/*", "/cylinders/a", false},
		{"/wants/timeBetweenSwaps", "/wants/timeBetweenSwaps", true},
		{"/wants", "/wants/timeBetweenSwaps", false},
		{"", "", true},
		{"", "/wants", false},
	} {
		if got := matches(c.template, c.pointer); got != c.want {
			t.Errorf("%q for %q: %t, want %t", c.template, c.pointer, got, c.want)
		}
	}
}

package check

import (
	"testing"

	"lowvent.example/schema/unit"
)

// TestMargin: by how much a limit is kept, as a share of it, where there is a limit that
// it can be a share of and something to hold against it.
func TestMargin(t *testing.T) {
	for _, c := range []struct {
		name  string
		sizes sizes
		share float64
		ok    bool
	}{
		{"kept by a fifth", sizes{kind: unit.KindLength, found: 1.2, needed: 1, over: 0.2}, 0.2, true},
		{"broken by half", sizes{kind: unit.KindLength, found: 2, needed: 4, over: -2, broken: true}, -0.5, true},
		{"below zero", sizes{kind: unit.KindTemperature, found: -3, needed: -4, over: 1}, 0.25, true},
		{"a limit of zero", sizes{kind: unit.KindLength, found: 1, over: 1}, 0, false},
		{"never measured", sizes{kind: unit.KindLength, needed: 1, unmeasured: true}, 0, false},
		{"no quantities", sizes{}, 0, false},
	} {
		share, ok := c.sizes.margin()
		if ok != c.ok || ok && share != c.share {
			t.Errorf("%s: %v, %v; want %v, %v", c.name, share, ok, c.share, c.ok)
		}
	}
}

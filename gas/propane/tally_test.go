package propane

import (
	"math"
	"slices"
	"testing"
)

// tally gathers the errors of one comparison with published figures and logs
// them as one line when the test ends: name, rows, worst and median error.
type tally struct {
	name   string
	errors []float64
}

func newTally(t *testing.T, name string) *tally {
	k := &tally{name: name}
	t.Cleanup(func() {
		if len(k.errors) == 0 {
			t.Errorf("%s: no rows", k.name)
			return
		}
		slices.SortFunc(k.errors, func(a, b float64) int {
			if math.Abs(a) < math.Abs(b) {
				return -1
			}
			return 1
		})
		t.Logf("%s: rows %d, worst %+.4g %%, median %+.4g %%", k.name, len(k.errors),
			100*k.errors[len(k.errors)-1], 100*k.errors[len(k.errors)/2])
	})
	return k
}

func (k *tally) add(got, want float64) { k.errors = append(k.errors, got/want-1) }

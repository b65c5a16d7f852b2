package gas

import (
	"testing"

	"lowvent.example/gas/pipe"
	"lowvent.example/schema/unit"
)

// TestFrictionText: the law that is shown is the one that the flow obeys.
func TestFrictionText(t *testing.T) {
	for reynolds, want := range map[unit.Ratio]string{
		0:                   "",
		1:                   pipe.LaminarFormula,
		pipe.LaminarTo:      pipe.LaminarFormula,
		pipe.LaminarTo + 1:  pipe.ColebrookFormula,
		10 * pipe.LaminarTo: pipe.ColebrookFormula,
	} {
		if got := frictionText(reynolds); got != want {
			t.Errorf("with %v: %q, want %q", reynolds, got, want)
		}
	}
}

package physicstest

import (
	"errors"
	"testing"

	"lowvent.example/schema/unit"
)

// verdict is a testing.TB that notes what is reported to it.
type verdict struct {
	failure
	errors int
}

func (v *verdict) Errorf(string, ...any) { v.errors++ }

func TestComparison(t *testing.T) {
	v := &verdict{failure: failure{TB: t}}
	c := Comparison{Name: "tiny"}
	c.Add(v, "near", 1.009, 1, 0.01)
	c.Add(v, "low", 0.991, 1, 0.01)
	if v.errors != 0 {
		t.Errorf("two that agree: %d errors", v.errors)
	}
	c.Add(v, "far", 1.02, 1, 0.01)
	c.Add(v, "none", 0, 0, 0.01)
	if v.errors != 2 {
		t.Errorf("one far off and one that is no number: %d errors", v.errors)
	}
	if !fails(t, func(t testing.TB) { (&Comparison{Name: "empty"}).Log(t) }) {
		t.Error("nothing was compared, and it passed")
	}
	(&Comparison{Name: "one", off: []float64{0.01}}).Log(t)
}

func TestMust(t *testing.T) {
	if got := Must[unit.Length](t)(2, nil); got != 2 {
		t.Errorf("got %v", got)
	}
	if !fails(t, func(t testing.TB) { Must[unit.Length](t)(2, errors.New("no")) }) {
		t.Error("an error passed")
	}
}

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

// outside is an error as the physics makes it for a number outside its range.
type outside struct{}

func (*outside) Error() string { return "it lies outside the range" }

func TestRefuses(t *testing.T) {
	root := func(x float64) (float64, error) {
		if !(x >= 0 && x <= 9) {
			return 0, &outside{}
		}
		return x, nil
	}
	for name, c := range map[string]struct {
		f    func(float64) (float64, error)
		good float64
		want int
	}{
		"as asked":             {root, 4, 0},
		"refuses a good one":   {root, -4, 1},
		"takes whatever":       {func(x float64) (float64, error) { return x, nil }, 4, 4},
		"one error in another": {func(x float64) (float64, error) { _, err := root(x); return 0, errors.Join(err, nil) }, 4, 0},
		"an error of no kind":  {func(float64) (float64, error) { return 0, errors.New("it lies outside the range") }, 4, 5},
	} {
		v := &verdict{failure: failure{TB: t}}
		Refuses[*outside](v, name, c.f, c.good, []float64{-1})
		if v.errors != c.want {
			t.Errorf("%s: %d errors, want %d", name, v.errors, c.want)
		}
	}
}

func TestMust(t *testing.T) {
	if got := Must[unit.Length](t)(2, nil); got != 2 {
		t.Errorf("got %v", got)
	}
	if !fails(t, func(t testing.TB) { Must[unit.Length](t)(2, errors.New("no")) }) {
		t.Error("an error passed")
	}
}

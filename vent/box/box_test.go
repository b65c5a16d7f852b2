package box

import (
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"lowvent.example/schema/unit"
)

func exact(x float64) unit.Value[unit.Length] { return unit.Exactly(unit.Length(x)) }

func about(x, tolerance float64) unit.Value[unit.Length] {
	return unit.Value[unit.Length]{Nominal: unit.Length(x), Low: unit.Length(x - tolerance), High: unit.Length(x + tolerance)}
}

func point(x, y, z float64) Point { return Point{exact(x), exact(y), exact(z)} }

// boxed makes a box from its extents: x from, x to, y from, y to, z from, z to.
func boxed(x0, x1, y0, y1, z0, z1 float64) Box {
	return Box{point(x0, y0, z0), point(x1, y1, z1)}
}

// loose gives every coordinate of b the same tolerance.
func loose(b Box, tolerance float64) Box {
	for _, p := range []*Point{&b.From, &b.To} {
		for _, c := range p.coordinates() {
			*c = about(float64(c.Nominal), tolerance)
		}
	}
	return b
}

func TestNewBoxOrdersItsCorners(t *testing.T) {
	good := boxed(0, 1, 0, 2, 0, 3)
	for _, c := range []struct {
		name     string
		from, to Point
		inverted string
	}{
		{"in order", point(0, 0, 0), point(1, 2, 3), ""},
		{"x exchanged", point(1, 0, 0), point(0, 2, 3), "x"},
		{"y exchanged", point(0, 2, 0), point(1, 0, 3), "y"},
		{"z exchanged", point(0, 0, 3), point(1, 2, 0), "z"},
		{"all exchanged", point(1, 2, 3), point(0, 0, 0), "xyz"},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := NewBox(c.from, c.to)
			if diff := cmp.Diff(good, got); diff != "" {
				t.Error(diff)
			}
			var fault *CornerError
			if !errors.As(err, &fault) {
				fault = &CornerError{}
			}
			if want := (CornerError{Inverted: c.inverted}); *fault != want {
				t.Errorf("error %v, want %+v", err, want)
			}
			if c.inverted != "" && !strings.Contains(err.Error(), "exchanged along "+c.inverted) {
				t.Errorf("the error does not name the axes: %v", err)
			}
		})
	}
}

func TestNewBoxKeepsBandsAndTexts(t *testing.T) {
	high := unit.Value[unit.Length]{Nominal: 1, Low: 0.9, High: 1.2, Written: "1 m"}
	from, to := point(0, 0, 0), point(1, 1, 0)
	from.Z = high
	got, err := NewBox(from, to)
	if err == nil || got.To.Z != high {
		t.Errorf("To.Z = %+v, %v; want it whole from the other corner", got.To.Z, err)
	}
}

func TestNewBoxTakesFlatBoxesAndOverlappingBands(t *testing.T) {
	for name, corners := range map[string][2]Point{
		"a point":              {point(1, 1, 1), point(1, 1, 1)},
		"flat":                 {point(0, 0, 0), point(1, 1, 0)},
		"thin, loosely taped":  {loose(At(point(0, 0, 0)), 0.01).From, loose(At(point(1, 1, 0.018)), 0.01).From},
		"at the farthest edge": {point(-1e6, 0, 0), point(1e6, 1, 1)},
	} {
		if _, err := NewBox(corners[0], corners[1]); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestNewBoxRefusesWhatIsNoPlace(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for name, v := range map[string]unit.Value[unit.Length]{
		"undefined":           exact(nan),
		"undefined low":       {Nominal: 1, Low: unit.Length(nan), High: 2},
		"undefined high":      {Nominal: 1, Low: 0, High: unit.Length(nan)},
		"endless":             exact(inf),
		"endless band":        {Nominal: 1, Low: unit.Length(-inf), High: 2},
		"band beyond 1000 km": {Nominal: 1, Low: 0, High: 1.1e6},
		"band upside":         {Nominal: 1, Low: 2, High: 0},
		"outside band":        {Nominal: 3, Low: 0, High: 2},
		"beyond 1000 km":      exact(1.1e6),
		"beyond -1000 km":     exact(-1.1e6),
	} {
		from, to := point(0, 0, 0), point(2e6, 2, 2)
		to.X = exact(2)
		from.Y, to.Z = v, v
		_, err := NewBox(from, to)
		var fault *CornerError
		if !errors.As(err, &fault) || fault.Undefined != "yz" || !strings.Contains(err.Error(), "along yz") {
			t.Errorf("%s: error %v, want y and z named", name, err)
		}
	}
}

// Nothing that goes in makes a result NaN or infinite, or a band unordered, and
// what is not known is never taken as known.
func TestNothingUndefinedComesOut(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	other := boxed(0, 1, 0, 1, 0, 1)
	for name, v := range map[string]unit.Value[unit.Length]{
		"NaN":          exact(nan),
		"NaN band":     {Nominal: 0, Low: unit.Length(nan), High: unit.Length(nan)},
		"+Inf":         exact(inf),
		"-Inf":         exact(-inf),
		"endless band": {Nominal: 0, Low: unit.Length(-inf), High: unit.Length(inf)},
		"inverted":     {Nominal: 1, Low: 5, High: -5},
		"greatest":     exact(math.MaxFloat64),
	} {
		b := boxed(3, 4, 0, 1, 0, 1)
		b.From.X, b.To.Y, b.From.Z = v, v, v
		for what, r := range results(b, other) {
			for _, x := range r {
				if math.IsNaN(x) || math.IsInf(x, 0) {
					t.Errorf("%s: %s = %v", name, what, r)
				}
			}
			if r[0] > r[1] || r[1] > r[2] {
				t.Errorf("%s: %s = %v is no band", name, what, r)
			}
		}
	}
	unknown := other
	unknown.From.X, unknown.To.X = exact(nan), exact(nan)
	if g := Gap(unknown, other); g.Low != 0 || float64(g.High) < 1e5 {
		t.Errorf("distance to an unknown place: %v", g)
	}
	for what, answer := range map[string]Answer{
		"Meet": Meet(unknown, other), "Encloses": Encloses(other, unknown),
		"Above": Above(other, Box{unknown.From, point(nan, 1, 2)}), "OnWall": OnWall(other, Point{exact(nan), exact(0), exact(0)}, Left, 0.01),
	} {
		if answer != Unsure {
			t.Errorf("%s with an unknown coordinate: %v", what, answer)
		}
	}
}

// results gathers every figure of the package as low, nominal, high.
func results(a, b Box) map[string][3]float64 {
	lowest, _ := LowestPoint(a, b)
	highest, _ := HighestPoint(a, b)
	return map[string][3]float64{
		"Gap": three(Gap(a, b)), "PlanGap": three(PlanGap(a, b)), "VerticalGap": three(VerticalGap(a, b)),
		"Rise": three(Rise(a, b)), "LowestPoint": three(lowest), "HighestPoint": three(highest),
		"Height": three(Height(a)), "FloorArea": three(FloorArea(a)), "Volume": three(Volume(a)),
		"PlanOverlap": three(PlanOverlap(a, b)), "Overlap": three(Overlap(a, b)),
	}
}

func three[Q unit.Quantity](v unit.Value[Q]) [3]float64 {
	return [3]float64{float64(v.Low), float64(v.Nominal), float64(v.High)}
}

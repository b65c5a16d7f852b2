package unit

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestSteps(t *testing.T) {
	for _, c := range []struct {
		kind Kind
		like string
		most float64
		size string
		n    int64
		text string
		si   float64
	}{
		{KindLength, "20 in", 0.0254 * 0.012, "0.01 in", 2400, "24 in", 0.6096}, // 24 in = 609.6 mm: in = 25.4 mm exactly, NIST SP 811 B.6
		{KindLength, "5 ft 6 in", 0.0254, "1 in", 70, "70 in", 1.778},
		{KindLength, "1 m", 25, "10 m", 3, "30 m", 30},
		{KindArea, "20 cm2", 18e-6, "0.1 cm2", 558, "55.8 cm2", 0.00558},
		{KindTemperature, "-20 degC", 0.06, "0.01 degC", -150, "-1.5 degC", 271.65},
		{KindCount, "1", 0.02, "1", 4, "4", 4},
		{KindRatio, "5 %", 0.001, "0.1 %", 655, "65.5 %", 0.655},
	} {
		s, err := StepsLike(c.kind, c.like, c.most)
		if err != nil {
			t.Errorf("%s: %v", c.like, err)
			continue
		}
		if s.Size() != c.size || s.Text(c.n) != c.text || s.SI(c.n) != c.si || s.Nearest(c.si) != c.n || s.Kind() != c.kind {
			t.Errorf("%s: step %s, %s is %v, %d steps; want %s, %s, %v, %d", c.like, s.Size(), s.Text(c.n), s.SI(c.n), s.Nearest(c.si), c.size, c.text, c.si, c.n)
		}
	}
}

func TestStepsThatCannotBe(t *testing.T) {
	for _, c := range []struct {
		like string
		most float64
	}{{"20", 1}, {"20 kg", 1}, {"1 m", 0}, {"1 m", -1}, {"1 m", math.NaN()}, {"1 m", 1e-20}, {"1 mm", 1e20}} {
		if s, err := StepsLike(KindLength, c.like, c.most); err == nil {
			t.Errorf("%s in steps of at most %v: %+v", c.like, c.most, s)
		}
	}
}

// TestStepsParseBack: whatever the kind and the size, each step's text parses to its own
// size and to no other step, and the step is at most what was asked and more than a tenth.
func TestStepsParseBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		kind := rapid.SampledFrom(Kinds()).Draw(t, "kind")
		spelled := rapid.SampledFrom(kind.info().units).Draw(t, "unit")
		most := math.Pow(10, rapid.Float64Range(-6, 3).Draw(t, "power")) * ratio(spelled.factor())
		s, err := StepsLike(kind, withUnit("1", &spelled), most)
		if err != nil {
			t.Fatal(err)
		}
		n := rapid.Int64Range(0, 100000).Draw(t, "n")
		r, err := ParseKind(kind, s.Text(n))
		if err != nil || r.Nominal != s.SI(n) || s.Nearest(r.Nominal) != n {
			t.Fatalf("%d steps of %s: %q is %v, %v, %d steps; %v", n, s.Size(), s.Text(n), r.Nominal, s.SI(n), s.Nearest(r.Nominal), err)
		}
		if step := s.SI(1) - s.SI(0); !kind.info().whole && (step > most*(1+1e-9) || step < most*0.0999) {
			t.Fatalf("a step of %s for at most %v", s.Size(), most)
		}
	})
}

package propane

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"lowvent.example/gas/solve/physicstest"
	"lowvent.example/schema/unit"
)

// boilOff draws a filling off in small steps, each with the vapour that stands over the
// liquid by Raoult's law: the balance of propane and nothing else.
func boilOff(alpha, x0, left float64, steps int) float64 {
	n, propane := 1.0, x0
	for n > left {
		x := propane / n
		y := alpha * x / (1 + (alpha-1)*x)
		dn := min((1-left)/float64(steps), n-left)
		mid := (propane - y*dn/2) / (n - dn/2) // the vapour of the middle of the step
		propane -= alpha * mid / (1 + (alpha-1)*mid) * dn
		n -= dn
	}
	return propane / n
}

// TestTheRestIsWhatIsLeftAfterBoilingOff holds Rayleigh's equation against the balance
// of propane in small steps.
func TestTheRestIsWhatIsLeftAfterBoilingOff(t *testing.T) {
	for _, c := range []struct{ celsius, x0, left float64 }{
		{20, 0.95, 0.25}, {20, 0.90, 0.25}, {20, 0.50, 0.5}, {-10, 0.90, 0.25}, {-30, 0.80, 0.1}, {40, 0.30, 0.6}, {0, 0.99, 0.02},
	} {
		T := unit.Temperature(c.celsius + 273.15)
		alpha, err := Volatility(T)
		if err != nil {
			t.Fatal(err)
		}
		got, err := ShareLeft(T, unit.Ratio(c.x0), unit.Ratio(c.left))
		want := boilOff(float64(alpha), c.x0, c.left, 20000)
		if err != nil || math.Abs(float64(got)-want) > 1e-6 {
			t.Errorf("%+v: %v, %v; step by step %v", c, got, err, want)
		}
		if result, F, err := physicstest.Evaluate(RestFormula, map[string]float64{"x": float64(got), "x_0": c.x0, "alpha": float64(alpha)}); err != nil || result != "F" || math.Abs(F-c.left) > 1e-9 {
			t.Errorf("%+v: the text gives %s = %v, %v", c, result, F, err)
		}
	}
}

// TestVolatility: about four moles of propane to one of butane over half and half at
// 20 °C, and more in the cold. Source: the saturation pressures of the two.
func TestVolatility(t *testing.T) {
	for celsius, want := range map[float64]float64{20: 4.03, -10: 4.96, -40: 6.62} {
		if got, err := Volatility(unit.Temperature(celsius + 273.15)); err != nil || math.Abs(float64(got)/want-1) > 0.01 {
			t.Errorf("%v °C: %v, %v", celsius, got, err)
		}
	}
}

func TestShareLeftAtItsEnds(t *testing.T) {
	for _, c := range []struct{ x0, left, want unit.Ratio }{{1, 0.25, 1}, {0, 0.25, 0}, {0.9, 1, 0.9}} {
		if got, err := ShareLeft(273.15, c.x0, c.left); err != nil || got != c.want {
			t.Errorf("%+v: %v, %v", c, got, err)
		}
	}
	for _, c := range [][3]float64{{0, 0.9, 0.5}, {273.15, -0.1, 0.5}, {273.15, 1.1, 0.5}, {273.15, 0.9, 0}, {273.15, 0.9, 1.1}, {math.NaN(), 0.9, 0.5}, {273.15, math.NaN(), 0.5}, {273.15, 0.9, math.NaN()}} {
		var out *RangeError
		if _, err := ShareLeft(unit.Temperature(c[0]), unit.Ratio(c[1]), unit.Ratio(c[2])); !errors.As(err, &out) {
			t.Errorf("%v: %v", c, err)
		}
	}
}

// TestTheRestGrowsPoorer: with every bit drawn off, from a poorer filling, and in the
// colder; never richer than what was filled in, never below nothing.
func TestTheRestGrowsPoorer(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		T := rapid.Float64Range(228.15, 343.15).Draw(t, "T")
		x0, left := rapid.Float64Range(0, 1).Draw(t, "x0"), rapid.Float64Range(0.001, 1).Draw(t, "left")
		of := func(T, x0, left float64) float64 {
			x, err := ShareLeft(unit.Temperature(T), unit.Ratio(x0), unit.Ratio(left))
			if err != nil {
				t.Fatal(err)
			}
			return float64(x)
		}
		x := of(T, x0, left)
		if x < 0 || x > x0 {
			t.Fatalf("x = %v of %v", x, x0)
		}
		const rounding = 1e-9
		if of(T, x0, left+(1-left)/2) < x-rounding || of(T, x0/2, left) > x+rounding || of(T-(T-228.15)/2, x0, left) > x+rounding {
			t.Fatalf("more left, a richer filling or warmth made it poorer: T %v, x0 %v, left %v", T, x0, left)
		}
	})
}

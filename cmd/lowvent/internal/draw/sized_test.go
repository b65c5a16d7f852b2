package draw

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// TestSmallerFits: a drawing made smaller fits the room, never keeps its size, and one to
// scale comes out at a scale of whole numbers.
func TestSmallerFits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := rapid.Float64Range(50, 2000)
		d := &Drawing{Width: size.Draw(t, "wide"), Height: size.Draw(t, "high"), Scale: rapid.SampledFrom([]float64{0, 200, 100, 50, 40, 20, 10, 1}).Draw(t, "scale")}
		wide, high := rapid.Float64Range(50, 300).Draw(t, "room"), rapid.Float64Range(50, 300).Draw(t, "height")
		f := d.Smaller(wide, high)
		if f >= 1 || f <= 0 || d.Width*f > wide+1e-9 || d.Height*f > high+1e-9 {
			t.Fatalf("%g of %g by %g does not fit %g by %g", f, d.Width, d.Height, wide, high)
		}
		if said := d.Scaled(f); !strings.Contains(said, "made smaller") {
			t.Fatalf("%q", said)
		}
		if ratio := 1000 / d.Scale / f; d.Scale > 0 && math.Abs(ratio-math.Round(ratio)) > 1e-9*ratio {
			t.Fatalf("the scale is 1:%g", ratio)
		}
	})
}

func TestScaled(t *testing.T) {
	for _, c := range []struct {
		scale, factor float64
		want          string
	}{
		{20, 1, "Scale 1:50 when printed at 100 %."},
		{20, 50.0 / 65, "Too large for this sheet at its scale of 1:50: made smaller, to 76.92 %, which is 1:65 when printed at 100 %."},
		{0, 1, ""},
		{0, 0.96, "Too large for this sheet: made smaller, to 96 %."},
	} {
		if got := (&Drawing{Scale: c.scale}).Scaled(c.factor); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

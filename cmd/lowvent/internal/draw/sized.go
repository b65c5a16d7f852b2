package draw

import (
	"fmt"
	"math"
)

// Smaller is the factor at which a drawing that is too large for a room fits into it: for
// one to scale that of the next smaller scale that a ruler can be held to, else a whole
// percentage. It is below 1 in any case.
func (d *Drawing) Smaller(wide, high float64) float64 {
	f := min(wide/max(d.Width, 1), high/max(d.Height, 1), 0.99)
	if d.Scale > 0 {
		ratio := 1000 / d.Scale
		return ratio / round(ratio/f)
	}
	return math.Floor(f*100) / 100
}

// round is the next larger scale that a ruler can be held to: a whole number, and from 10
// on a multiple of 5.
func round(ratio float64) float64 {
	if ratio > 10 {
		return 5 * math.Ceil(ratio/5)
	}
	return math.Ceil(ratio)
}

// Scaled tells the drawing's scale on paper, and by how much it was made smaller where the
// factor is not 1: nothing of a chart, which has axes instead, nor of a schematic, whose
// title says that it is not to scale.
func (d *Drawing) Scaled(factor float64) string {
	switch {
	case d.Scale > 0 && factor == 1:
		return fmt.Sprintf("Scale 1:%s when printed at 100 %%.", digits(1000/d.Scale))
	case d.Scale > 0:
		return fmt.Sprintf("Too large for this sheet at its scale of 1:%s: made smaller, to %s %%, which is 1:%s when printed at 100 %%.",
			digits(1000/d.Scale), digits(100*factor), digits(1000/d.Scale/factor))
	case factor != 1:
		return fmt.Sprintf("Too large for this sheet: made smaller, to %s %%.", digits(100*factor))
	}
	return ""
}

// digits is a number to four digits, as 20 or 33.33.
func digits(x float64) string { return fmt.Sprintf("%.4g", x) }

package draw

import (
	"fmt"
	"math"
	"strconv"
)

// sheet is what a printer reaches of both A4 and Letter, in mm.
type sheet struct{ wide, high float64 }

var sheets = []sheet{{250, 165}, {180, 225}}

// ratios are the scales of drawings of buildings and fittings (common practice, no source).
var ratios = []float64{5, 10, 20, 25, 50, 100}

// ratio is the scale at a step, the largest first. Beyond the usual ones it goes on for as
// long as it takes when somebody wrote kilometres for metres.
func ratio(step int) float64 {
	if step < len(ratios) {
		return ratios[step]
	}
	step -= len(ratios)
	return [...]float64{200, 500, 1000}[step%3] * math.Pow(10, float64(step/3))
}

// mostSteps bounds the search for a scale.
const mostSteps = 300

// fitting is the largest scale, in mm a metre, at which something goes onto a sheet, and
// that sheet. needs tells the least size on paper at a scale; the sheet's width is given
// since what is written takes fewer lines on a wider one.
func fitting(needs func(scale, wide float64) (w, h float64)) (scale float64, on sheet) {
	for step := range mostSteps {
		scale = 1000 / ratio(step)
		for _, on = range sheets {
			if w, h := needs(scale, on.wide); w <= on.wide && h <= on.high {
				return scale, on
			}
		}
	}
	return scale, sheets[0]
}

// ratioText writes a scale as drawings do: "1 : 25".
func ratioText(scale float64) string {
	return "1 : " + strconv.FormatFloat(1000/scale, 'f', -1, 64)
}

// barHigh is how high the scale and its two bars are, in mm.
const barHigh = 13.0

// scaleBars is the scale in figures, and a bar in metres and one in feet, from a corner on.
func scaleBars(at Point, scale float64) []Mark {
	marks := []Mark{&Text{At: at.plus(0, 6.6), Size: large, Bold: true, Content: ratioText(scale)}}
	marks = append(marks, bar(at.plus(22, 2.9), scale, "m")...)
	return append(marks, bar(at.plus(22, 9.2), scale*0.3048, "ft")...)
}

// bar is a bar of four fields, black and white by turns.
func bar(at Point, scale float64, unit string) []Mark {
	field := fieldOf(scale)
	var marks []Mark
	for i := range 4 {
		left := at.X + float64(i)*field*scale
		fill := [...]Ink{Black, White}[i%2]
		marks = append(marks, Rectangle{left, at.Y, left + field*scale, at.Y + 1.2}.drawn(Pen{Width: thin}, fill))
	}
	for _, i := range []float64{0, 2, 4} {
		text := strconv.FormatFloat(i*field, 'g', 6, 64)
		if i == 4 {
			text = fmt.Sprint(text, " ", unit)
		}
		marks = append(marks, &Text{At: Point{at.X + i*field*scale, at.Y - 0.6}, Size: small, Anchor: Middle, Content: text})
	}
	return marks
}

// fieldOf is a round length for a field of a scale bar, at least 9 mm on paper.
func fieldOf(scale float64) float64 {
	for power := 1e-4; ; power *= 10 {
		for _, step := range []float64{1, 2.5, 5} {
			if step*power*scale >= 9 {
				return step * power
			}
		}
	}
}

package draw

import (
	"fmt"
	"strconv"
)

// sheet is what a printer reaches of both A4 and Letter, in mm.
type sheet struct{ wide, high float64 }

var sheets = []sheet{{250, 165}, {180, 225}}

// ratios are the scales of engineering drawings (ISO 5455, from memory), and beyond them
// what it takes when somebody wrote feet for inches.
var ratios = []float64{5, 10, 20, 25, 50, 100, 200, 500, 1000, 2000, 5000, 10000, 20000, 50000, 100000, 200000, 500000, 1000000, 2000000, 5000000, 10000000, 20000000}

// fitting is the largest scale, in mm a metre, at which something goes onto a sheet, and
// that sheet. needs tells the least size on paper at a scale; the sheet's width is given
// since what is written takes fewer lines on a wider one.
func fitting(needs func(scale, wide float64) (w, h float64)) (scale float64, on sheet) {
	for _, ratio := range ratios {
		scale = 1000 / ratio
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

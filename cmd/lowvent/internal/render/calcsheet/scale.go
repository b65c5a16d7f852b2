package calcsheet

import (
	"math"
	"strconv"
	"strings"

	"lowvent.example/schema/unit"
)

// scales are the units that an axis may be told in, by kind, the smallest first; beside
// them the unit of the other system, if it has one. Any other kind is told in SI.
var scales = map[unit.Kind]struct {
	metric []string
	us     string
}{
	unit.KindDuration:    {[]string{"s", "min", "h", "days"}, ""},
	unit.KindTemperature: {[]string{"degC"}, "degF"},
	unit.KindPropaneMass: {[]string{"g", "kg"}, "lb"},
	unit.KindMass:        {[]string{"g", "kg"}, "lb"},
	unit.KindRatio:       {[]string{"%"}, ""},
}

// steps are the usual steps between marks in units that are not counted by tens.
var steps = map[string][]float64{
	"s": {1, 2, 5, 10, 15, 30}, "min": {1, 2, 5, 10, 15, 30}, "h": {0.5, 1, 2, 3, 4, 6, 12, 24}, "days": {0.5, 1, 2, 5, 7, 14, 28},
}

// measure is a unit to tell numbers in: so much SI for one of it, from a zero of its own.
type measure struct {
	name         string
	factor, zero float64
}

func (m measure) of(si float64) float64  { return (si - m.zero) / m.factor }
func (m measure) toSI(x float64) float64 { return x*m.factor + m.zero }
func measureOf(k unit.Kind, name string) measure {
	one, err := unit.ParseKind(k, "1 "+name)
	none, errNone := unit.ParseKind(k, "0 "+name)
	if err != nil || errNone != nil {
		return measure{name: strings.TrimPrefix(k.Symbol(), "1"), factor: 1}
	}
	return measure{name: name, factor: one.Nominal - none.Nominal, zero: none.Nominal}
}

// suiting chooses the unit for numbers up to a size: the largest of which that is two or
// more.
func suiting(k unit.Kind, size float64) measure {
	names := scales[k].metric
	if len(names) == 0 {
		return measureOf(k, k.Symbol())
	}
	m := measureOf(k, names[0])
	for _, name := range names[1:] {
		if larger := measureOf(k, name); size/larger.factor >= 2 {
			m = larger
		}
	}
	return m
}

// axis is one side of a chart: from low to high, with marks a step apart, all in its
// unit.
type axis struct {
	measure
	low, high, step float64
}

// level is the share of its size below which a course is told as level: what is smaller is
// the rounding of its numbers, and marks so near to each other could not be told apart.
const level = 1e-6

// mostMarks is how many steps an axis has at most.
const mostMarks = 6

// axisOf makes the axis for SI numbers from low to high. A rounded one begins and ends
// on a mark, and at zero where zero means that there is nothing.
func axisOf(k unit.Kind, low, high float64, rounded bool) axis {
	a := axis{measure: suiting(k, max(math.Abs(low), math.Abs(high)))}
	a.low, a.high = a.of(low), a.of(high)
	if rounded && a.low > 0 && k != unit.KindTemperature {
		a.low = 0
	}
	if a.high-a.low <= level*max(math.Abs(a.low), math.Abs(a.high)) {
		a.high = a.low + max(1, math.Abs(a.low)/10)
	}
	a.step = stepFor(a.name, (a.high-a.low)/mostMarks)
	if rounded {
		a.low, a.high = math.Floor(a.low/a.step)*a.step, math.Ceil(a.high/a.step)*a.step
	}
	return a
}

// stepFor gives the least usual step that is no smaller.
func stepFor(unit string, least float64) float64 {
	for _, each := range steps[unit] {
		if each >= least {
			return each
		}
	}
	ten := math.Pow(10, math.Floor(math.Log10(least)))
	for _, each := range []float64{1, 2, 5} {
		if each*ten >= least {
			return each * ten
		}
	}
	return 10 * ten
}

// marks lists where the axis is marked.
func (a axis) marks() []float64 {
	var all []float64
	for n := math.Ceil(a.low/a.step - 1e-9); n*a.step <= a.high+a.step*1e-9; n++ {
		all = append(all, n*a.step)
	}
	return all
}

// label writes a mark with as many decimals as its step asks for.
func label(x, step float64, more int) string {
	decimals := max(0, more-int(math.Floor(math.Log10(step)+1e-9)))
	s := strconv.FormatFloat(x, 'f', decimals, 64)
	if decimals > 0 {
		s = strings.TrimSuffix(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}

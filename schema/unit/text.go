package unit

import (
	"math"
	"math/big"
	"strconv"
	"strings"
)

// scale is one unit that Text prints in, for values from |from| in SI upwards
// until the next scale begins.
type scale struct {
	unit     string
	from     float64
	sig      int  // significant digits
	decimals int  // at most so many decimals, unless that left fewer than two digits
	coarse   bool // never more decimals than that: a scale with a zero of its own
}

// Beyond these sizes, in the unit to print in, a value is no quantity of a
// dwelling and is printed in its SI unit with a power of ten.
const (
	largestPlain  = 1e12
	smallestPlain = 1e-9
)

// Text prints a quantity in both systems of units, such as "30 cm2 (4.7 in2)",
// "2.74 kPa (11 inH2O)" or "-12 degC (10.4 degF)", with as many digits as a
// reader can use. Kinds that both systems measure alike print once. It never
// prints "-0". The part before the bracket parses, apart from sizes that need
// a power of ten (10¹² and more of the unit, or less than 10⁻⁹); NaN prints
// "not a number" and an infinity "without limit".
func Text[Q Quantity](q Q) string { return TextOf(q.Kind(), float64(q)) }

// TextOf is Text for a kind that is known only at run time; si is in the SI
// unit of k. A value that is no kind prints the number alone.
func TextOf(k Kind, si float64) string {
	if word := unprintable(si); word != "" {
		return word
	}
	if unusual(k, si) {
		return inPowers(k, si, 3)
	}
	info := k.info()
	return both(shown(info, info.metric, si, si, 0), shown(info, info.us, si, si, 0))
}

// TextApart prints two quantities of one kind, usually found and needed, with
// as many digits as it takes for the two to differ in each system whenever the
// numbers differ, and in the same unit unless their sizes are far apart.
func TextApart(k Kind, a, b float64) (string, string) {
	if unprintable(a)+unprintable(b) != "" {
		return TextOf(k, a), TextOf(k, b)
	}
	if unusual(k, a) || unusual(k, b) {
		return apart(func(si float64, more int) string { return inPowers(k, si, 3+more) }, a, b)
	}
	info := k.info()
	in := func(scales []scale) func(float64, int) string {
		return func(si float64, more int) string { return shown(info, scales, si, yardstick(si, a, b), more) }
	}
	metricA, metricB := apart(in(info.metric), a, b)
	usA, usB := apart(in(info.us), a, b)
	return both(metricA, usA), both(metricB, usB)
}

// apart prints a and b with ever more digits until they differ, if they do.
// Unequal float64 differ within 17 significant digits and the conversion is
// exact, so the loop ends.
func apart(show func(si float64, more int) string, a, b float64) (string, string) {
	x, y := show(a, 0), show(b, 0)
	for more := 1; a != b && x == y && x != ""; more++ {
		x, y = show(a, more), show(b, more)
	}
	return x, y
}

// yardstick is the size by which the unit for si is chosen: that of the larger
// of the pair, as long as the smaller still reads well in it.
func yardstick(si, a, b float64) float64 {
	larger := max(math.Abs(a), math.Abs(b))
	if si == 0 || math.Abs(si)*100 > larger {
		return larger
	}
	return si
}

// shown prints si in the unit that suits a value of the given size, with more
// digits than usual if asked; "" when there is no scale to print in.
func shown(info *kindInfo, scales []scale, si, size float64, more int) string {
	if len(scales) == 0 {
		return ""
	}
	s := suiting(scales, size)
	unit := find(info.units, s.unit)
	if text, ok := s.quick(unit, si, more); ok {
		return withUnit(text, unit)
	}
	v := unit.from(si)
	return withUnit(plain(v, s.places(v)+more), unit)
}

// suiting gives the scale for a value of the given size in SI.
func suiting(scales []scale, size float64) scale {
	s := scales[0]
	for _, next := range scales[1:] {
		if math.Abs(size) >= next.from {
			s = next
		}
	}
	return s
}

// from gives what number of the unit si is, exactly.
func (s *spelling) from(si float64) *big.Rat {
	v := new(big.Rat).SetFloat64(si)
	v.Sub(v, s.offset())
	return v.Quo(v, s.factor())
}

// places tells how many decimals to print v with; below zero they are zeros
// before the point.
func (s scale) places(v *big.Rat) int {
	size := magnitude(v, s.sig)
	least := s.decimals
	if !s.coarse {
		least = max(least, 1-size)
	}
	return min(s.sig-1-size, least)
}

// magnitude gives the power of ten of v's first digit once v is rounded to sig
// significant digits; 0 for 0.
func magnitude(v *big.Rat, sig int) int {
	f, _ := v.Float64()
	return powerOf(f, sig)
}

// plain prints v rounded to so many decimals, half away from zero, without
// trailing zeros and without a minus before a zero. With decimals below zero
// so many digits before the point become zeros; v is at least that large.
func plain(v *big.Rat, decimals int) string {
	if decimals < 0 {
		return plain(new(big.Rat).Quo(v, tenTo(-decimals)), 0) + strings.Repeat("0", -decimals)
	}
	text := v.FloatString(decimals)
	if decimals > 0 {
		text = strings.TrimSuffix(strings.TrimRight(text, "0"), ".")
	}
	if text == "-0" {
		return "0"
	}
	return text
}

// tenTo gives 10ⁿ for n ≥ 0.
func tenTo(n int) *big.Rat {
	return new(big.Rat).SetInt(new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(n)), nil))
}

// withUnit puts a number and its unit together.
func withUnit(number string, unit *spelling) string {
	if unit.name == "" {
		return number
	}
	return number + " " + unit.name
}

// both puts the second system in brackets after the first.
func both(metric, us string) string {
	if us == "" {
		return metric
	}
	return metric + " (" + us + ")"
}

// inPowers prints a value of unusual size in the SI unit.
func inPowers(k Kind, si float64, sig int) string {
	return strings.TrimSpace(strconv.FormatFloat(si+0, 'g', sig, 64) + " " + k.Symbol())
}

// unusual tells whether si has no metric unit in which plain digits would do.
func unusual(k Kind, si float64) bool {
	info := k.info()
	if len(info.metric) == 0 {
		return true
	}
	s := suiting(info.metric, si)
	unit := find(info.units, s.unit)
	size := math.Abs(si / float64(unit.num) * float64(unit.den))
	return size >= largestPlain || size != 0 && size < smallestPlain && !s.coarse
}

// unprintable gives the words for what is no finite number, else "".
func unprintable(si float64) string {
	switch {
	case math.IsNaN(si):
		return "not a number"
	case math.IsInf(si, 0):
		return "without limit"
	}
	return ""
}

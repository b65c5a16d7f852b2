package unit

import (
	"math"
	"math/big"
)

// writtenDigits is how many significant digits a written size has. Three keep
// the step below 1 % and a tape measure can follow them.
const writtenDigits = 3

// WriteAtLeast writes a text that parses to at least si (in k's SI unit) and
// to at most about 1 % more, in the unit used by like, a text that the user
// wrote; in the unit that Text would choose when like is empty or no quantity
// of the kind. The readable size that is exactly enough is kept: 0.6096 m like
// "20 in" gives "24 in". Temperatures go up by steps of a tenth of a degree,
// counts by one.
// It gives "" when si is not finite or no accepted text can say it.
func WriteAtLeast(k Kind, si float64, like string) string {
	return rounded(k, si, like, 1)
}

// WriteAtMost is WriteAtLeast to the other side: the text parses to at most si.
func WriteAtMost(k Kind, si float64, like string) string {
	return rounded(k, si, like, -1)
}

// rounded writes si rounded towards the side of sign, +1 up or -1 down.
func rounded(k Kind, si float64, like string, sign int) string {
	if !k.valid() || math.IsNaN(si) || math.IsInf(si, 0) {
		return ""
	}
	for _, unit := range unitsLike(k, si, like) {
		v := unit.from(si)
		step := stepOf(k, unit, v)
		text := withUnit(plain(v, step), unit)
		if !onSide(k, text, si, sign) {
			text = withUnit(plain(nudged(v, step, sign), step), unit)
		}
		if onSide(k, text, si, sign) {
			return text
		}
	}
	return ""
}

// onSide tells whether text parses to si or to the side of sign.
func onSide(k Kind, text string, si float64, sign int) bool {
	r, err := ParseKind(k, text)
	return err == nil && (sign > 0 && r.Nominal >= si || sign < 0 && r.Nominal <= si)
}

// unitsLike gives the unit of like, then the one that suits the size.
func unitsLike(k Kind, si float64, like string) []*spelling {
	info := k.info()
	var units []*spelling
	if w, bad := scan(info, like); bad == nil {
		units = append(units, w.first.finest())
	}
	return append(units, find(info.units, suiting(info.metric, si).unit))
}

// finest gives the unit of an amount, of a compound its smaller one.
func (a amount) finest() *spelling {
	if a.small != nil {
		return a.small
	}
	return a.unit
}

// stepOf gives the number of decimals to write v with in the unit; below zero
// they are zeros before the point.
func stepOf(k Kind, unit *spelling, v *big.Rat) int {
	if k.info().whole {
		return 0
	}
	if unit.offDen != 0 {
		return 1
	}
	return min(writtenDigits-1-magnitude(v, writtenDigits), mostDigits)
}

// nudged gives the next number of so many decimals on the side of sign.
func nudged(v *big.Rat, decimals, sign int) *big.Rat {
	step := tenTo(max(decimals, -decimals))
	if decimals > 0 {
		step.Inv(step)
	}
	if sign < 0 {
		step.Neg(step)
	}
	return new(big.Rat).Add(v, step.Mul(step, big.NewRat(1, 2)))
}

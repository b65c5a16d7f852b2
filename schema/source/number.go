package source

import (
	"strconv"
	"strings"
)

// Bounds of a number token. Nothing that can be measured in a dwelling comes
// near them; past them a validator that makes exact rationals of numbers runs
// for ages or gives up.
const (
	maxNumberBytes = 40
	maxExponent    = 400
)

// absurdNumber reports whether a number token is past the bounds.
func absurdNumber(token string) bool {
	if len(token) > maxNumberBytes {
		return true
	}
	e := exponent(token)
	return e > maxExponent || e < -maxExponent
}

// exponent reads the exponent part of a number token, 0 without one. An
// exponent too large for an int is given as the largest.
func exponent(token string) int {
	i := strings.IndexAny(token, "eE")
	if i < 0 {
		return 0
	}
	e, _ := strconv.Atoi(token[i+1:]) // on overflow Atoi gives the nearest end of int
	return e
}

// plainDecimal spells a number token canonically: without exponent, leading or
// trailing zeros when its exact value has at most 21 digits before the point
// and 6 zeros after it, else as digits, "e" and an exponent. Zero is "0",
// whatever its sign.
func plainDecimal(token string) string {
	sign, digits, point := decimalParts(token)
	switch {
	case digits == "":
		return "0"
	case point > 21 || point < -6:
		return sign + digits + "e" + strconv.Itoa(point-len(digits))
	case point <= 0:
		return sign + "0." + strings.Repeat("0", -point) + digits
	case point >= len(digits):
		return sign + digits + strings.Repeat("0", point-len(digits))
	}
	return sign + digits[:point] + "." + digits[point:]
}

// decimalParts takes a number token apart into its sign, its significant
// digits and the power of ten of the point before them: ±0.digits × 10^point.
func decimalParts(token string) (sign, digits string, point int) {
	point = exponent(token)
	if i := strings.IndexAny(token, "eE"); i >= 0 {
		token = token[:i]
	}
	token, negative := strings.CutPrefix(token, "-")
	if negative {
		sign = "-"
	}
	whole, fraction, _ := strings.Cut(token, ".")
	digits, point = whole+fraction, point+len(whole)
	trimmed := strings.TrimLeft(digits, "0")
	point -= len(digits) - len(trimmed)
	return sign, strings.TrimRight(trimmed, "0"), point
}

package unit

import (
	"math"
	"strconv"
	"strings"
)

// quick prints what shown prints, in floats, where that can't come out otherwise
// than in rationals: where neither the last digit printed nor the digit that
// decides the scale is anywhere near a tie. A report prints thousands of figures,
// and few of them are.
func (s scale) quick(unit *spelling, si float64, more int) (text string, ok bool) {
	v := unit.near(si)
	if v == 0 || s.sig < 1 {
		return "", false
	}
	size := powerOf(v, s.sig)
	least := s.decimals
	if !s.coarse {
		least = max(least, 1-size)
	}
	decimals := min(s.sig-1-size, least) + more
	if decimals < 0 || decimals > 12 || tied(v, s.sig-1-size) || tied(v, decimals) {
		return "", false
	}
	text = strconv.FormatFloat(v, 'f', decimals, 64)
	if decimals > 0 {
		text = strings.TrimSuffix(strings.TrimRight(text, "0"), ".")
	}
	return text, text != "-0"
}

// near is from in floats: out by a few parts in 10¹⁶ of si or of the offset.
func (s *spelling) near(si float64) float64 {
	if s.offDen != 0 {
		si -= float64(s.offNum) / float64(s.offDen)
	}
	return si / float64(s.num) * float64(s.den)
}

// powerOf gives the power of ten of v's first digit once v is rounded to sig
// significant digits.
func powerOf(v float64, sig int) int {
	text := strconv.FormatFloat(v, 'e', sig-1, 64)
	power, _ := strconv.Atoi(text[strings.IndexByte(text, 'e')+1:])
	return power
}

// tied tells whether v, cut to so many decimals, is so near the middle between two
// of them, or so large, that the error of floats could decide.
func tied(v float64, decimals int) bool {
	if decimals < -300 || decimals > 300 {
		return true
	}
	scaled := math.Abs(v) * math.Pow(10, float64(decimals))
	_, rest := math.Modf(scaled)
	return !(scaled < 1e9) || math.Abs(rest-0.5) < 1e-5
}

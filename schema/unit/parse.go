package unit

import (
	"math"
	"math/big"
	"unicode/utf8"
)

// ParseKind is Parse for a kind that is known only at run time. A value that
// is no kind is refused like any text.
func ParseKind(k Kind, text string) (Reading, error) {
	if !k.valid() {
		return Reading{}, &ParseError{Text: text, Why: "no such kind of quantity"}
	}
	r, bad := read(k, text)
	if bad != nil {
		return Reading{}, refuse(k, text, bad)
	}
	return r, nil
}

// read is ParseKind without the words of a refusal.
func read(k Kind, text string) (Reading, *fault) {
	if utf8.RuneCountInString(text) > MaxLength {
		return Reading{}, &fault{why: whyLong}
	}
	info := k.info()
	w, bad := scan(info, text)
	if bad != nil {
		return Reading{}, bad
	}
	r := w.reading()
	r.Kind, r.Written = k, text
	switch {
	case r.Low > r.High:
		return Reading{}, &fault{why: whyBackwards}
	case info.floor != "" && r.Low < 0:
		return Reading{}, &fault{why: whyFloor, at: info.floor}
	case info.whole && !r.whole():
		return Reading{}, &fault{why: whyWhole}
	}
	return r, nil
}

// whole tells whether the value and both ends of its band are whole numbers.
func (r Reading) whole() bool {
	return r.Nominal == math.Trunc(r.Nominal) && r.Low == math.Trunc(r.Low) && r.High == math.Trunc(r.High)
}

// reading turns a text taken apart into numbers. For a range that runs
// backwards Low > High.
func (w written) reading() Reading {
	if w.join == joinNone {
		v, ok := w.first.fast()
		if !ok {
			v, _ = w.first.rat().Float64()
		}
		return Reading{Nominal: v, Low: v, High: v}
	}
	return w.band()
}

// band evaluates a tolerance or a range, in rationals throughout.
func (w written) band() Reading {
	nominal, low, high := w.first.rat(), new(big.Rat), new(big.Rat)
	if w.join == joinRange {
		low.Set(nominal)
		high = w.second.rat()
		nominal = new(big.Rat).Add(low, high)
		nominal.Mul(nominal, big.NewRat(1, 2))
	} else {
		slack := w.slack(nominal)
		low.Sub(nominal, slack)
		high.Add(nominal, slack)
	}
	var r Reading
	r.Nominal, _ = nominal.Float64()
	r.Low, _ = low.Float64()
	r.High, _ = high.Float64()
	return r
}

// slack gives half the width of a tolerance's band.
func (w written) slack(nominal *big.Rat) *big.Rat {
	if w.join == joinShare {
		share := new(big.Rat).Abs(nominal)
		share.Mul(share, w.second.n.rat())
		return share.Mul(share, big.NewRat(1, 100))
	}
	return new(big.Rat).Mul(w.second.n.rat(), w.second.unit.factor())
}

// rat gives the amount in SI, exactly.
func (a amount) rat() *big.Rat {
	v := a.n.rat()
	v.Mul(v, a.unit.factor())
	if a.small != nil {
		v.Add(v, new(big.Rat).Mul(a.extra.rat(), a.small.factor()))
	}
	if a.negative {
		v.Neg(v)
	}
	return v.Add(v, a.unit.offset())
}

// factor gives the size of the unit in SI.
func (s *spelling) factor() *big.Rat { return big.NewRat(s.num, s.den) }

// offset gives where the unit's zero lies in SI.
func (s *spelling) offset() *big.Rat {
	if s.offDen == 0 {
		return new(big.Rat)
	}
	return big.NewRat(s.offNum, s.offDen)
}

// fast gives what rat would, rounded, when its numerator and denominator are
// both whole numbers that float64 holds: then one division of floats is
// already the float64 nearest to the exact quotient (IEEE 754, 5.4.1).
func (a amount) fast() (float64, bool) {
	top, bottom, ok := a.n.parts()
	if a.small != nil || !ok || !fits(top, a.unit.num, gapless) || !fits(bottom, a.unit.den, gapless) {
		return 0, false
	}
	top, bottom = top*a.unit.num, bottom*a.unit.den
	if a.negative {
		top = -top
	}
	if off, per := a.unit.offNum, a.unit.offDen; per != 0 {
		if !fits(top, per, gapless/2) || !fits(bottom, off, gapless/2) || !fits(bottom, per, gapless) {
			return 0, false
		}
		top, bottom = top*per+bottom*off, bottom*per
	}
	return float64(top) / float64(bottom), true
}

// gapless bounds the whole numbers that float64 holds without leaving one out.
const gapless = 1 << 53

// fits tells whether a·b stays within the bound on either side; b > 0.
func fits(a, b, bound int64) bool { return max(a, -a) <= bound/b }

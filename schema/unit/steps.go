package unit

import (
	"fmt"
	"math"
	"math/big"
)

// Steps writes quantities that lie a whole number of equal steps from zero, in
// one unit and with no more decimals than the step has, so that each is a size
// that a person could have written and measured. The zero Steps writes nothing.
type Steps struct {
	kind     Kind
	unit     *spelling
	decimals int
}

// StepsLike gives the steps in the unit of like, a text that parses as k; of a
// compound, in its smaller unit. A step is the largest power of ten of that unit
// that is at most most (a difference in k's SI unit); of counts it is one. The
// error tells that like is no such text, or that the step would be too small to
// write.
func StepsLike(k Kind, like string, most float64) (Steps, error) {
	if _, err := ParseKind(k, like); err != nil {
		return Steps{}, err
	}
	w, _ := scan(k.info(), like)
	s := Steps{kind: k, unit: w.first.finest()}
	if k.info().whole {
		return s, nil
	}
	size := most / ratio(s.unit.factor())
	s.decimals = -int(math.Floor(math.Log10(size)))
	if math.IsNaN(size) || size <= 0 || s.decimals > mostDigits || s.decimals < -mostDigits {
		return Steps{}, fmt.Errorf("no step of %s can be written in %s", inPowers(k, most, 3), s.unit.name)
	}
	return s, nil
}

func ratio(r *big.Rat) float64 {
	f, _ := r.Float64()
	return f
}

// Kind is the kind of quantity that is written.
func (s Steps) Kind() Kind { return s.kind }

// Text writes the quantity at so many steps from the unit's zero.
func (s Steps) Text(n int64) string { return withUnit(plain(s.number(n), max(0, s.decimals)), s.unit) }

// Size writes one step: "0.1 in". Of a scale of temperature it is a difference.
func (s Steps) Size() string { return withUnit(plain(s.number(1), max(0, s.decimals)), s.unit) }

// SI gives the quantity at so many steps, as its text parses.
func (s Steps) SI(n int64) float64 {
	v := s.number(n)
	v.Mul(v, s.unit.factor())
	return ratio(v.Add(v, s.unit.offset()))
}

// Nearest gives how many steps from the unit's zero lie nearest to si.
func (s Steps) Nearest(si float64) int64 {
	v := s.unit.from(si)
	return int64(math.Round(ratio(v.Quo(v, s.number(1)))))
}

// number is so many steps as a number of the unit.
func (s Steps) number(n int64) *big.Rat {
	v := new(big.Rat).SetInt64(n)
	if s.decimals < 0 {
		return v.Mul(v, tenTo(-s.decimals))
	}
	return v.Quo(v, tenTo(s.decimals))
}

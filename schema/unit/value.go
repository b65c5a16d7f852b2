package unit

import "fmt"

// Value is a quantity as written, with the band that its tolerance spans:
// Low ≤ Nominal ≤ High, all finite, in the SI unit of Q. Without a tolerance
// the three are equal. Written is the text it came from, or "" for a value
// that nobody wrote.
type Value[Q Quantity] struct {
	Nominal, Low, High Q
	Written            string
}

// Exact tells whether the band is a single point.
func (v Value[Q]) Exact() bool { return v.Low == v.High }

// Exactly gives q without a tolerance.
func Exactly[Q Quantity](q Q) Value[Q] {
	return Value[Q]{Nominal: q, Low: q, High: q}
}

// Reading is a Value whose kind is known only at run time; its numbers are in
// the SI unit of Kind.
type Reading struct {
	Kind               Kind
	Nominal, Low, High float64
	Written            string
}

// MaxLength is the most code points that a text may have to be read.
const MaxLength = 64

// Parse reads a quantity with its unit, and its tolerance or range if it has
// one. The forms are:
//
//	1.32 m      -0.62 m      5/8 in      1 1/2 in      .049 in
//	4 ft 6 in   20 lb 4 oz   1 h 30 min  (less than one of the big unit in the second part)
//	1.32 m ± 2 cm            "+/-" and "+-" are the same
//	1.32 m ± 2 %             a share of the value; not of a temperature
//	70 % ± 5 %               of a ratio: 65 % to 75 %
//	-12 degC ± 2 K           a temperature's tolerance is a difference
//	1.30 m to 1.34 m         a band; the nominal value is its middle
//
// The space before a unit is optional, "−" (U+2212) is a minus, "cm²" is
// "cm2". Numbers have no grouping, no decimal comma and no exponent, at most
// 12 digits on either side of the point and 4 above and below a fraction
// stroke. The exact rational value is rounded once to float64; by these bounds
// it is always finite. The error is always a *ParseError.
func Parse[Q Quantity](text string) (Value[Q], error) {
	var zero Q
	r, err := ParseKind(zero.Kind(), text)
	if err != nil {
		return Value[Q]{}, err
	}
	return Value[Q]{Nominal: Q(r.Nominal), Low: Q(r.Low), High: Q(r.High), Written: text}, nil
}

// MustParse gives the nominal value of a text that is known to be good, for
// tables and tests. It panics when the text is refused.
func MustParse[Q Quantity](text string) Q {
	v, err := Parse[Q](text)
	if err != nil {
		panic(fmt.Sprintf("unit.MustParse: %v", err))
	}
	return v.Nominal
}

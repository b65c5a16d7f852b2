package unit

import "math/big"

// Bounds on the digits of a number: enough for any measurement, and they keep
// every accepted text far from overflow (10¹² of the largest unit is 10¹⁸).
const (
	mostDigits         = 12 // before the point, and after it
	mostFractionDigits = 4  // above the fraction stroke, and below it
)

// number is an unsigned number as written: whole.decimals, or whole and
// over/under, as runs of digits; absent parts are "".
type number struct {
	whole, decimals, over, under string
}

// fraction tells whether the number was written with a stroke.
func (n number) fraction() bool { return n.under != "" }

// parts gives the number as top/bottom; ok is false when 64 bits can't hold it
// with room to spare.
func (n number) parts() (top, bottom int64, ok bool) {
	if n.fraction() {
		w, o, u := digits(n.whole), digits(n.over), digits(n.under)
		return w*u + o, u, true // under 10¹²·10⁴ + 10⁴
	}
	if len(n.whole)+len(n.decimals) > 15 {
		return 0, 0, false
	}
	bottom = 1
	for range n.decimals {
		bottom *= 10
	}
	return digits(n.whole)*bottom + digits(n.decimals), bottom, true
}

// rat gives the number exactly.
func (n number) rat() *big.Rat {
	if top, bottom, ok := n.parts(); ok {
		return big.NewRat(top, bottom)
	}
	r, _ := new(big.Rat).SetString("0" + n.whole + "." + n.decimals)
	return r
}

// digits reads a run of at most 15 decimal digits; "" is 0.
func digits(run string) int64 {
	var v int64
	for i := 0; i < len(run); i++ {
		v = v*10 + int64(run[i]-'0')
	}
	return v
}

// scanNumber reads an unsigned number at the start of text and gives what
// follows it. why is "" when it could be read.
func scanNumber(text string) (n number, rest, why string) {
	run, rest := digitRun(text)
	switch {
	case len(rest) > 1 && rest[0] == '.' && isDigit(rest[1]):
		n.whole = run
		n.decimals, rest = digitRun(rest[1:])
		return n, rest, tooLong(run, n.decimals)
	case run == "":
		return n, rest, whyNoNumber
	case startsStroke(rest):
		return scanFraction(number{over: run}, rest[1:])
	}
	n.whole = run
	if over, after, ok := numerator(rest); ok {
		n.over = over
		return scanFraction(n, after[1:])
	}
	return n, rest, tooLong(run, "")
}

// tooLong gives the reason when a number has too many digits, else "".
func tooLong(whole, decimals string) string {
	if len(whole) > mostDigits || len(decimals) > mostDigits {
		return whyDigits
	}
	return ""
}

// numerator finds, after a whole number, spaces and the top of a fraction.
func numerator(text string) (over, rest string, ok bool) {
	next := skipSpace(text)
	over, rest = digitRun(next)
	return over, rest, next != text && over != "" && startsStroke(rest)
}

// startsStroke tells whether text begins with "/" and a digit.
func startsStroke(text string) bool {
	return len(text) > 1 && text[0] == '/' && isDigit(text[1])
}

// scanFraction reads the digits below the stroke and checks the fraction.
func scanFraction(n number, text string) (number, string, string) {
	var rest string
	n.under, rest = digitRun(text)
	switch {
	case len(n.whole) > mostDigits || len(n.over) > mostFractionDigits || len(n.under) > mostFractionDigits:
		return n, rest, whyDigits
	case n.under[0] == '0':
		return n, rest, whyZeroUnder
	case n.whole != "" && digits(n.over) >= digits(n.under):
		return n, rest, whyImproper
	}
	return n, rest, ""
}

// digitRun splits the ASCII digits off the start of text.
func digitRun(text string) (run, rest string) {
	i := 0
	for i < len(text) && isDigit(text[i]) {
		i++
	}
	return text[:i], text[i:]
}

func isDigit(c byte) bool { return c >= '0' && c <= '9' }

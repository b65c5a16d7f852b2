package unit

import (
	"fmt"
	"strings"
)

// Hints for habits of writing that the grammar refuses.
const (
	hintComma    = "a comma is taken neither for a decimal point nor for thousands: write a point, and no grouping"
	hintGrouping = "digits are not grouped: write 1200, not 1 200"
	hintExponent = "a power of ten is not taken: write the digits out"
	hintMarks    = `the marks ' and " for feet and inches are too easily lost: write ft and in`
	hintDash     = `a dash after a number can mean several things: write a range as "2 to 3" with a unit on each, a mixed number as "1 1/2"`
	hintVulgar   = "write a fraction with a stroke, as in 1/2"
	hintGallon   = "a gallon is 3.785 L in the United States and 4.546 L elsewhere: write galUS or galImp"
	hintPsi      = "psi leaves open whether the air outside is counted in: write psia for a pressure above vacuum"
	hintPsia     = "psia counts from vacuum, and this is a pressure above the air outside: write psi or psig"
	hintCase     = "%q: large and small letters matter, m is a thousandth and M a million"
	hintOther    = "%q is a unit of %s, not of %s"
)

// hintFor gives the reason for a refusal in terms of a known habit, or "".
func hintFor(k Kind, text string, bad *fault) string {
	switch {
	case bad.why == whyBackwards || bad.why == whyFloor || bad.why == whyCarry:
		return ""
	case strings.Contains(text, ","):
		return hintComma
	case strings.ContainsAny(text, `"'′″’”`):
		return hintMarks
	case strings.ContainsAny(text, vulgarFractions):
		return hintVulgar
	case grouped(text):
		return hintGrouping
	case dashed(text):
		return hintDash
	case bad.why == whyUnit:
		return unitHint(k, bad.at)
	}
	return ""
}

// unitHint says why a word is no unit of the kind, if that is known.
func unitHint(k Kind, word string) string {
	low := strings.ToLower(word)
	switch {
	case low[0] == 'e' && strings.Trim(low[1:], "0123456789-") == "":
		return hintExponent
	case k == KindAbsolutePressure && (low == "psi" || low == "psig"):
		return hintPsi
	case k == KindGaugePressure && low == "psia":
		return hintPsia
	case find(k.info().units, "galUS") != nil && strings.HasPrefix(low, "gal"):
		return hintGallon
	case onlyLetterSize(k, word):
		return fmt.Sprintf(hintCase, word)
	}
	for _, other := range Kinds() {
		if find(other.info().units, word) != nil {
			return fmt.Sprintf(hintOther, word, other.phrase(), k.phrase())
		}
	}
	return ""
}

// onlyLetterSize tells whether word is a unit of the kind but for an m that
// should be M, or the reverse: what was meant can't be told.
func onlyLetterSize(k Kind, word string) bool {
	for _, s := range k.info().units {
		if strings.EqualFold(s.name, word) && milliMega(s.name, word) {
			return true
		}
	}
	return false
}

// milliMega tells whether two spellings differ in the size of a leading m.
func milliMega(a, b string) bool {
	return a != "" && b != "" && a[0] != b[0] && (a[0] == 'm' || a[0] == 'M')
}

// grouped tells whether a space parts two runs of digits like thousands.
func grouped(text string) bool {
	for rest := text; rest != ""; {
		run, after := digitRun(rest)
		if run == "" {
			rest = rest[1:]
			continue
		}
		next := skipSpace(after)
		group, end := digitRun(next)
		if next != after && len(run) <= 3 && len(group) == 3 && !startsStroke(end) {
			return true
		}
		rest = after
	}
	return false
}

// dashed tells whether a dash follows a digit.
func dashed(text string) bool {
	last := ' '
	for _, r := range text {
		if strings.ContainsRune("-–—−", r) && last < 0x80 && isDigit(byte(last)) {
			return true
		}
		last = r
	}
	return false
}

package unit

import (
	"fmt"
	"strings"
)

// ParseError tells why a text was refused and how to mend it.
type ParseError struct {
	Kind Kind   // 0 for a date, a time of day, or a value that is no kind
	Text string // as it was written
	Why  string // what was wrong, without a full stop
	Try  string // a text that would be taken and probably was meant, or ""
}

// Error gives one line: the text, what was wrong, the accepted spellings with
// an example, and the text that probably was meant. A text of more than
// MaxLength code points is quoted by its beginning.
func (e *ParseError) Error() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%q: %s", shortened(e.Text), e.Why)
	if e.Kind.valid() {
		fmt.Fprintf(&b, "; %s is written with %s, for example %q", withArticle(e.Kind.phrase()), e.Kind.Accepted(), e.Kind.info().example)
	}
	if e.Try != "" {
		fmt.Fprintf(&b, "; did you mean %q?", e.Try)
	}
	return b.String()
}

// shortened cuts a text that is too long to quote in full.
func shortened(text string) string {
	seen := 0
	for i := range text {
		if seen++; seen > MaxLength {
			return text[:i] + "…"
		}
	}
	return text
}

// withArticle puts "a" or "an" before a phrase.
func withArticle(phrase string) string {
	if strings.ContainsRune("aeiou", rune(phrase[0])) {
		return "an " + phrase
	}
	return "a " + phrase
}

// fault is why a text can't be taken, and the part of it that is to blame.
type fault struct {
	why string
	at  string
}

// The reasons for a refusal, in the words of the message. A %q or %s takes the
// part to blame.
const (
	whyLong        = "longer than 64 characters"
	whyNoNumber    = "no number where one is expected"
	whyDigits      = "too many digits: at most 12 on either side of the point, and 4 above and below a fraction stroke"
	whyZeroUnder   = "below its stroke a fraction needs a number that is not 0 and does not begin with 0"
	whyImproper    = "the fraction after a whole number must be smaller than one"
	whyNoUnit      = "the unit is missing"
	whyUnit        = "%q is none of its units"
	whyTrailing    = "can't read %q after the quantity"
	whyCompound    = "only feet and inches, pounds and ounces, or hours and minutes go together"
	whyCarry       = "the second part must be less than one of the first part's unit"
	whySignedSlack = "a tolerance has no sign of its own"
	whyNoShare     = "a tolerance in per cent means nothing on a scale of temperature; give it in K, degC or degF"
	whyAlike       = "write both numbers in the same way, both with % or both without"
	whyBackwards   = "the range runs backwards: write the smaller value first"
	whyFloor       = "that is below %s"
	whyWhole       = "only whole numbers count things"
)

// refuse makes the error for a fault.
func refuse(k Kind, text string, bad *fault) *ParseError {
	e := &ParseError{Kind: k, Text: text, Why: bad.why}
	if bad.why == whyLong {
		return e
	}
	switch {
	case strings.Contains(bad.why, "%q"), strings.Contains(bad.why, "%s"):
		e.Why = fmt.Sprintf(bad.why, bad.at)
	}
	if hint := hintFor(k, text, bad); hint != "" {
		e.Why = hint
	}
	e.Try = mended(k, text)
	return e
}

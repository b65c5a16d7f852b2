package calcsheet

import (
	"slices"
	"strconv"
	"strings"

	"lowvent.example/cmd/lowvent/internal/render/text"
)

// numbers are the columns that hold a number or nothing.
var numbers = []string{"clause", "si_value", "si_low", "si_high", "line", "column", "point", "across_si"}

// cell is what stands in a column of the table for a text.
func cell(column, s string) string {
	if slices.Contains(numbers, column) {
		return s
	}
	return guard(clean(s))
}

// guard puts an apostrophe before a text that a spreadsheet could take for a formula,
// one that begins with = + - @ or their wide forms, whether or not spaces stand before
// that. A text that begins with an apostrophe gets one more, so that taking one away
// always gives the text back. Numbers stand in columns of their own and are never
// guarded: -5 stays a number.
func guard(s string) string {
	first := strings.TrimLeft(s, " \u00a0\u3000")
	if first != "" && strings.ContainsRune("=+-@＝＋－＠−", []rune(first)[0]) || strings.HasPrefix(s, "'") {
		return "'" + s
	}
	return s
}

// number writes a number with all the digits that it has, so that reading it gives the
// same number.
func number(x float64) string { return strconv.FormatFloat(x+0, 'g', -1, 64) }

// clean brings a text into one line of characters that both forms can hold.
func clean(s string) string { return strings.Map(allowed, text.Clean(s)) }

// allowed replaces the two characters of the Basic Multilingual Plane that XML has none
// of, and that are no control characters either.
func allowed(r rune) rune {
	if r == '\ufffe' || r == '\uffff' {
		return '\ufffd'
	}
	return r
}

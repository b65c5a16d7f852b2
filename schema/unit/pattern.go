package unit

import (
	"fmt"
	"regexp"
	"strings"
)

// Pieces of the pattern. They hold the characters themselves, not escapes,
// since RE2 and ECMA-262 spell escapes of code points differently.
const (
	anySpace  = "[ \u00a0\u2009\u202f]*"
	someSpace = "[ \u00a0\u2009\u202f]+"
	aSign     = "[+−-]?"
	plusMinus = `(±|\+/-|\+-)`
)

// Pattern gives a regular expression for JSON Schema that holds for exactly
// the texts whose form Parse accepts: number, unit spelling and tolerance. A
// text that matches can still be refused for what no expression can count: its
// length (MaxLength), a fraction of one or more after a whole number, a
// second part of a compound that reaches one of the first, a range that runs
// backwards, a value below absolute zero or a vacuum. The expression means the
// same in ECMA-262 (with or without the u flag) and in RE2.
func (k Kind) Pattern() string {
	if !k.valid() {
		return `^[^\s\S]$`
	}
	info := k.info()
	if !info.alike {
		return anchored(info, info.units)
	}
	forms := make([]string, len(info.units))
	for i := range info.units {
		forms[i] = anchored(info, info.units[i:i+1])
	}
	return strings.Join(forms, "|")
}

// anchored gives the pattern of a whole text in any of the units.
func anchored(info *kindInfo, units []spelling) string {
	value := aSign + onePart(units)
	if info.pair.big != "" {
		value = fmt.Sprintf("%s(%s|%s)", aSign, onePart(units), compound(info))
	}
	slack := units
	if info.slack != nil {
		slack = info.slack
	}
	tolerance := choice(slack)
	if info.relative {
		tolerance = "(" + tolerance + "|%)"
	}
	return fmt.Sprintf("^%[1]s%[2]s(%[1]s%[3]s%[1]s%[4]s%[1]s%[5]s|%[6]sto%[6]s%[2]s)?%[1]s$",
		anySpace, value, plusMinus, unsigned(), tolerance, someSpace)
}

// onePart gives the pattern of an unsigned number with its unit.
func onePart(units []spelling) string {
	return unsigned() + anySpace + choice(units)
}

// compound gives the pattern of a whole number of the big unit and a number of
// the small one.
func compound(info *kindInfo) string {
	return fmt.Sprintf("[0-9]{1,%d}%s%s%s%s%s%s", mostDigits, anySpace, info.pair.big, someSpace, unsigned(), anySpace, info.pair.small)
}

// unsigned gives the pattern of a number.
func unsigned() string {
	return fmt.Sprintf(`([0-9]{1,%[1]d}(\.[0-9]{1,%[1]d})?|\.[0-9]{1,%[1]d}|([0-9]{1,%[1]d}%[2]s)?[0-9]{1,%[3]d}/[1-9][0-9]{0,%[4]d})`,
		mostDigits, someSpace, mostFractionDigits, mostFractionDigits-1)
}

// choice gives the pattern of any of the units' spellings.
func choice(units []spelling) string {
	var words []string
	for _, s := range units {
		words = append(words, regexp.QuoteMeta(s.name))
		for _, twin := range s.also {
			words = append(words, regexp.QuoteMeta(twin))
		}
	}
	if len(words) == 1 {
		return words[0]
	}
	return "(" + strings.Join(words, "|") + ")"
}

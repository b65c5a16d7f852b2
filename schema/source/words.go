package source

import (
	"bytes"
	"fmt"
	"strings"
	"unicode"
)

// number finds slips in and after numbers: units without quotes, decimal
// commas, gaps, leading zeros and signs.
func (s *site) number() *Fault {
	switch {
	case s.turn == wantComma && s.last().Kind == Number:
		return s.afterNumber(s.last())
	case s.turn == wantName && s.last() != nil && s.last().Kind == Number:
		return s.decimalComma(s.last())
	case s.turn != wantValue:
		return nil
	}
	c := s.data[s.start]
	switch {
	case (c == '+' || c == '.') && (isDigit(s.byteAt(s.start+1)) || c == '+' && s.byteAt(s.start+1) == '.'):
		return s.fault(s.span(s.start, s.wordEnd(s.start+1)), fmt.Sprintf(`a number that begins with "%c"`, c), "a digit first, or - and a digit", "write 0.5 for .5 and 5 for +5")
	}
	return nil
}

func (s *site) brokenNumber() *Fault {
	return s.fault(s.span(s.start, s.at), "a number that breaks off", "a digit after the sign, the point or the e", "write the number out, such as 1.0 or 0.5")
}

func isDigit(c byte) bool { return '0' <= c && c <= '9' }

// afterNumber explains what follows a number where a comma was due.
func (s *site) afterNumber(last *Node) *Fault {
	r := s.runeAt(s.at)
	adjacent := int(last.Span.End) == s.at
	whole := s.span(int(last.Span.Start), s.wordEnd(s.at))
	raw := strings.TrimPrefix(last.Raw(), "-")
	switch {
	case adjacent && raw == "0" && (isDigit(s.data[s.at]) || strings.ContainsRune("xXoObB", r)):
		return s.aboutNumber(last, whole, "a number that begins with a zero", "a decimal number without zeros before it", "write 5 for 05; hexadecimal is not known to JSON")
	case adjacent && (r == '_' || r == '.'), s.p.open.Kind == Object && isDigit(s.data[s.at]):
		return s.aboutNumber(last, whole, "a number with a gap or a second point in it", "digits without spaces between them, and one decimal point", "write 12000 for 12 000 or 12_000")
	case s.unitFollows(r, adjacent):
		whole = s.span(int(last.Span.Start), s.phraseEnd(s.at))
		return s.aboutNumber(last, whole, "a measure with its unit, not in quotes", "a text in double quotes", `write the number and its unit between double quotes, such as "24 in"`)
	}
	return nil
}

// unitFollows reports whether what follows a number is meant as its unit: a
// word that is not itself a name, or a mark for feet, inches, degrees and so on.
func (s *site) unitFollows(r rune, adjacent bool) bool {
	switch {
	case r == '"' || r == '\'':
		return adjacent
	case strings.ContainsRune("′″’”%°/½¼¾⅛⅜⅝⅞±×", r):
		return true
	}
	return unicode.IsLetter(r) && !s.nameFollows()
}

// nameFollows reports whether the word at the fault is meant as a name: a
// colon comes after it, perhaps with the second of two quotation marks between.
func (s *site) nameFollows() bool {
	end := s.wordEnd(s.at)
	if s.byteAt(end) == '"' {
		end++
	}
	return s.byteAt(s.skipBlanks(end)) == ':'
}

// phraseEnd is where the words that begin at i end on their line.
func (s *site) phraseEnd(i int) int {
	if s.data[i] == '"' {
		return i + 1
	}
	end := len(s.data)
	if n := bytes.IndexAny(s.data[i:], ",]}\"\r\n"); n >= 0 {
		end = i + n
	}
	return i + len(bytes.TrimRight(s.data[i:end], blanks))
}

// decimalComma finds 1,5 written for 1.5 in an object, where the 5 then stands
// in the place of a name.
func (s *site) decimalComma(last *Node) *Fault {
	if int(last.Span.End) != s.delim || s.start != s.delim+1 || !isDigit(s.data[s.start]) {
		return nil
	}
	whole := s.span(int(last.Span.Start), s.wordEnd(s.start))
	return s.aboutNumber(last, whole, "a number with a decimal comma", "a decimal point", "write 1.5 for 1,5")
}

func (s *site) aboutNumber(n *Node, span Span, what, expected, mend string) *Fault {
	f := s.fault(span, what, expected, mend)
	f.Place.Pointer = n.Pointer()
	return f
}

// value explains what stands where a value belongs.
func (s *site) value() *Fault {
	if s.turn == wantValue && unicode.IsLetter(s.runeAt(s.start)) {
		return s.bareText(s.start)
	}
	return nil
}

// bareText explains words without quotes that begin at from.
func (s *site) bareText(from int) *Fault {
	span := s.span(from, s.phraseEnd(from))
	phrase := string(s.data[span.Start:span.End])
	mend := "write it between double quotes: " + quoted(phrase)
	switch strings.ToLower(phrase) {
	case "true", "false":
		mend = "write it in small letters: " + strings.ToLower(phrase)
	case "yes", "on":
		mend = "write true"
	case "no", "off":
		mend = "write false"
	case "nan", "inf", "infinity":
		mend = "write the figure that was measured, or leave the name out: what is left out counts as not known"
	case "null", "nil", "none", "undefined", "unknown":
		mend = "leave the name out: what is left out counts as not known"
	}
	return s.fault(span, fmt.Sprintf("the word %s without quotes", quoted(phrase)), s.wanted(), mend)
}
